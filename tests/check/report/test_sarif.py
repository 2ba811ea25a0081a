"""The SARIF report, held to the schema that OASIS publishes and to what only the prose of the standard says.

The schema lies in `tests/published/`, unaltered, so nothing is fetched. Its source, its copyright and the terms
on which it may be copied are in the notice beside it.
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

import pytest
from jsonschema import Draft4Validator
from jsonschema.validators import validator_for

from tests.check.report.made import FIRST, UNSURE, WARNED, report, report_of, write_eleven
from tests.conftest import write_small
from triage.check.kinds import KINDS
from triage.check.report import Checked, as_sarif
from triage.check.report.sarif import SCHEMA
from triage.guide.find import knowledge_root
from triage.problems import Place, Problem

PUBLISHED = Path(__file__).parents[2] / "published"
RELATIVE = re.compile(r"(?:[A-Za-z0-9._~!$&'()*+,;=@/-]|%[0-9A-F]{2})+")
"""What RFC 3986 lets stand in a relative path; a colon could be taken for a scheme."""


@pytest.fixture(scope="module")
def valid() -> Draft4Validator:
    """The validator of the published schema."""
    schema = json.loads((PUBLISHED / "sarif-schema-2.1.0.json").read_text(encoding="utf-8"))
    Draft4Validator.check_schema(schema)
    return Draft4Validator(schema)


def run_of(text: str, valid: Draft4Validator) -> dict[str, Any]:
    """Return the one run of a SARIF log that is valid by the schema and by the prose."""
    log = json.loads(text)
    valid.validate(log)
    (run,) = log["runs"]
    assert set(run["originalUriBaseIds"]) == {"KNOWLEDGE"}
    base = run["originalUriBaseIds"]["KNOWLEDGE"]["uri"]
    assert base.startswith("file:///")
    assert base.endswith("/")
    assert not base.endswith("//") or base == "file:///"
    rules = run["tool"]["driver"]["rules"]
    for result in run["results"]:
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"]
        (place,) = result["locations"]
        assert place["physicalLocation"]["artifactLocation"]["uriBaseId"] == "KNOWLEDGE"
        assert RELATIVE.fullmatch(place["physicalLocation"]["artifactLocation"]["uri"])
        for message in result["message"].values():
            assert not set("{}") & set(message.replace("{{", "").replace("}}", ""))
    assert len({rule["id"] for rule in rules}) == len(rules)
    made: dict[str, Any] = run
    return made


def one(problem: Problem, valid: Draft4Validator) -> dict[str, Any]:
    """Return the result that a problem alone becomes."""
    (result,) = run_of(as_sarif(Checked.of("/guide", [problem])), valid)["results"]
    made: dict[str, Any] = result
    return made


def test_the_schema_is_the_published_one_and_whole(valid: Draft4Validator) -> None:
    """It is written in draft 4, refers to nothing outside itself, and refuses what is no SARIF."""
    schema: dict[str, Any] = valid.schema  # type: ignore[assignment]
    text = json.dumps(schema)

    assert validator_for(schema) is Draft4Validator
    assert schema["id"] == SCHEMA
    assert {"run", "result", "invocation", "reportingDescriptor"} <= schema["definitions"].keys()
    assert all(ref.startswith("#/definitions/") for ref in re.findall(r'"\$ref": "([^"]+)"', text))
    assert not valid.is_valid({"version": "2.1.0"})
    assert not valid.is_valid({"version": "2.1.0", "runs": [{"results": []}]})


def test_the_shipped_guide(tmp_path: Path, valid: Draft4Validator) -> None:
    """The shipped guide has a run without results, which says that it was checked and is sound."""
    status, text = report_of(Path(str(knowledge_root())), "sarif", tmp_path / "report")
    run = run_of(text, valid)

    assert status == 0
    assert run["results"] == []
    assert run["invocations"] == [{"executionSuccessful": True, "exitCode": 0}]
    assert run["columnKind"] == "unicodeCodePoints"
    assert run["tool"]["driver"]["name"] == "triage"
    assert run["tool"]["driver"]["version"]


def test_every_rule_is_described(tmp_path: Path, valid: Draft4Validator) -> None:
    """Each kind of problem that could occur has its sentence, whether it occurs or not."""
    _, text = report(tmp_path, "sarif")
    rules = run_of(text, valid)["tool"]["driver"]["rules"]

    assert {rule["id"]: rule["shortDescription"]["text"] for rule in rules} == KINDS


def test_a_rule_of_the_guide_is_described_by_its_reason(valid: Draft4Validator) -> None:
    """A guide's own rule has its own reason; a word that nothing explains stands for itself."""
    broken = Problem(Place(FIRST), "'well' feeds it", "no-milk-to-a-cold-lamb")
    unknown = Problem(Place(FIRST), "whatever this is", "yet-to-come")
    own = {"no-milk-to-a-cold-lamb": "It can't swallow {well}.", "not-broken": "It could be."}

    run = run_of(as_sarif(Checked("/guide", (broken, unknown), own_rules=own)), valid)
    said = {rule["id"]: rule["shortDescription"]["text"] for rule in run["tool"]["driver"]["rules"]}

    assert said["no-milk-to-a-cold-lamb"] == "It can't swallow {{well}}."
    assert said["not-broken"] == "It could be."
    assert said["yet-to-come"] == "yet-to-come"


def test_a_warning_leaves_a_guide_sound(tmp_path: Path, valid: Draft4Validator) -> None:
    """A warning is a result of that level, and the exit status is still 0."""
    status, text = report(tmp_path, "sarif", WARNED)
    run = run_of(text, valid)
    (result,) = run["results"]

    assert status == run["invocations"][0]["exitCode"] == 0
    assert (result["ruleId"], result["level"]) == ("cut-text", "warning")


def test_a_result_leads_to_its_file(tmp_path: Path, valid: Draft4Validator) -> None:
    """The base and the path together name the file, and line and column count from 1."""
    status, text = report(tmp_path / "a [b] é#?", "sarif", UNSURE)
    run = run_of(text, valid)
    result = next(each for each in run["results"] if each["ruleId"] == "no-unsure")
    place = result["locations"][0]["physicalLocation"]
    uri = run["originalUriBaseIds"]["KNOWLEDGE"]["uri"] + place["artifactLocation"]["uri"]

    assert status == run["invocations"][0]["exitCode"] == 1
    assert Path(unquote(urlsplit(uri).path)) == tmp_path / "a [b] é#?" / "guide" / FIRST
    assert place["region"] == {"startLine": 17, "startColumn": 3}


def test_the_walk_is_shown_and_can_be_taken_out(tmp_path: Path, valid: Draft4Validator) -> None:
    """The walk is in the formatted message, as a block of YAML, and as it is among the properties."""
    _, text = report(tmp_path, "sarif", UNSURE)
    result = next(each for each in run_of(text, valid)["results"] if each["ruleId"] == "no-unsure")

    assert result["properties"]["walk"].startswith("danger: ")
    assert f"\n\n```yaml\n{result['properties']['walk']}\n```" in result["message"]["markdown"]
    assert "```" not in result["message"]["text"]


def test_unusual_characters(valid: Draft4Validator) -> None:
    """Nothing in a name or a message is taken for a link, a placeholder, markup or a line's end."""
    what = "'[a](b) {0} <b>*x*</b> `y` & \x1b\n' at 37 °C"
    result = one(Problem(Place("topics/né w: 100%{0}.yaml"), what, "gap", walk="a: b  # ```{0}\x07"), valid)
    uri = result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]

    assert unquote(uri) == "topics/né w: 100%{0}.yaml"
    assert result["message"]["text"] == r"'[a] (b) {{0}} <b>*x*</b> `y` & \x1b\n' at 37 °C"
    assert result["message"]["markdown"].startswith(
        r"'\[a\](b) {{0}} \<b\>\*x\*\</b\> \`y\` \& \\x1b\\n' at 37 °C"
    )
    assert "\n````yaml\na: b  # ```{{0}}\\x07\n````" in result["message"]["markdown"]


def test_a_file_name_that_is_no_utf_8(valid: Draft4Validator) -> None:
    """A name that is only bytes keeps its bytes in the URI."""
    name = os.fsdecode(b"topics/caf\xe9.yaml")

    uri = one(Problem(Place(name), "no", "gap"), valid)["locations"][0]["physicalLocation"][
        "artifactLocation"
    ]

    assert uri["uri"] == "topics/caf%E9.yaml"


def test_the_root_of_the_file_system_is_a_folder_too(valid: Draft4Validator) -> None:
    """A base ends with one slash, the root as well."""
    run = run_of(as_sarif(Checked("/", ())), valid)

    assert run["originalUriBaseIds"]["KNOWLEDGE"]["uri"] == "file:///"


def broken_ones(folder: Path) -> Iterator[tuple[Path, str]]:
    """Yield guides with one file that can't be read, and its URI."""
    gone = write_small(folder / "gone")
    (gone / "findings" / "a lost one.yaml").symlink_to("nowhere")
    yield gone, "findings/a%20lost%20one.yaml"
    bytes_only = write_small(folder / "bytes")
    (bytes_only / "findings" / "bytes.yaml").write_bytes(b"legs: \xff\n")
    yield bytes_only, "findings/bytes.yaml"
    yield write_eleven(folder / "eleven"), "findings/broken.yaml"


def test_one_file_that_cannot_be_read(tmp_path: Path, valid: Draft4Validator) -> None:
    """A file that is gone, is no text or is no YAML has a result; the good ones beside it have none."""
    for guide, uri in broken_ones(tmp_path):
        status, text = report_of(guide, "sarif", tmp_path / "report")
        results = run_of(text, valid)["results"]
        files = {each["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] for each in results}

        assert status == 1
        assert files == {uri}
