"""The schemas that editors use: whole, in step with the guide, and as strict as the reader."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from jsonschema import Draft7Validator

from tests.conftest import read_small, write_small
from tests.guide.editor import as_editor, core, older
from triage.cli import main
from triage.guide import fields
from triage.guide.find import knowledge_root
from triage.guide.leaves import Prose, Ref
from triage.guide.model import Guide
from triage.guide.names import names_in
from triage.guide.notes import FILE_NOTES, NOTES
from triage.guide.schema import FILES, Book, file_schema, schema_name, schema_of, schema_texts
from triage.guide.shapes import ListOf, MapOf, Record
from triage.problems import errors

ROOT = Path(str(knowledge_root()))
SHIPPED = sorted(str(path.relative_to(ROOT)) for path in ROOT.rglob("*.yaml"))
OWN_FIELDS = {"topic": {"topic", "nodes"}, "how-to": {"how-to"}}
"""Fields that the reader takes off a file before the rest of it becomes a record."""


def told(folder: Path, file: str, scalar: Callable[[yaml.ScalarNode], Any] = core) -> list[str]:
    """Return what the schema says of one file in a folder, by the names in that folder."""
    schema = file_schema(schema_name(file), names_in(folder).names)
    value = as_editor((folder / file).read_text(encoding="utf-8"), scalar)
    return [each.message for each in Draft7Validator(schema).iter_errors(value)]


def records() -> Iterator[Record[Any]]:
    """Every record of the format: those in the table, and those inside them."""
    waiting: list[Any] = [each for each in vars(fields).values() if dataclasses.is_dataclass(each)]
    while waiting:
        shape = waiting.pop()
        if isinstance(shape, Record):
            yield shape
            waiting += [inner for inner, _ in shape.shapes.values()]
        elif isinstance(shape, ListOf | MapOf):
            waiting.append(shape.each)


@pytest.mark.parametrize("name", FILES)
@pytest.mark.parametrize("named", [True, False])
def test_a_schema_is_a_schema(name: str, named: bool) -> None:
    """Each schema is valid JSON Schema of draft 7, and refers to nothing that it does not define."""
    schema = file_schema(name, names_in(ROOT).names if named else None)
    text = json.dumps(schema)

    Draft7Validator.check_schema(schema)
    used = {each.split('"')[0] for each in text.split('"#/definitions/')[1:]}
    assert used == set(schema["definitions"])


def test_the_kept_schemas_are_those_of_the_guide() -> None:
    """The schemas in the knowledge folder are what its fields and names make now."""
    kept = {path.name: path.read_text(encoding="utf-8") for path in (ROOT / ".schema").iterdir()}
    made = schema_texts(names_in(ROOT).names)

    stale = sorted(name for name in kept.keys() | made.keys() if kept.get(name) != made.get(name))
    assert not stale, f"{', '.join(stale)} no longer fit; run 'triage schema' and commit what it writes"


@pytest.mark.parametrize("file", SHIPPED)
def test_a_shipped_file_tells_an_editor_its_schema(file: str) -> None:
    """The first line of each file names the schema beside it, by a path that is there."""
    first = (ROOT / file).read_text(encoding="utf-8").partition("\n")[0]
    up = "../" * file.count("/")

    assert first == f"# yaml-language-server: $schema={up}.schema/{schema_name(file)}.json"
    assert ((ROOT / file).parent / first.partition("=")[2]).is_file()


@pytest.mark.parametrize("scalar", [core, older])
def test_shipped_files_are_valid(scalar: Callable[[yaml.ScalarNode], Any]) -> None:
    """An editor finds no fault with the guide as it is, by YAML 1.2 or by 1.1."""
    assert {file: said for file in SHIPPED if (said := told(ROOT, file, scalar))} == {}


def test_without_names_any_name_is_allowed(tmp_path: Path) -> None:
    """A schema without names holds to the fields alone."""
    folder = write_small(tmp_path, ("topics/first.yaml", "go: feel", "go: fel"))
    value = as_editor((folder / "topics/first.yaml").read_text())

    assert told(folder, "topics/first.yaml")
    assert Draft7Validator(file_schema("topic")).is_valid(value)


MISTAKES = [
    ("topics/first.yaml", "    likely: It is ill.\n", "    likly: It is ill.\n"),
    ("topics/first.yaml", "    call_vet: Now.\n", ""),
    ("topics/first.yaml", "about: The only topic.\n", ""),
    ("topics/first.yaml", "topic: first", "topic: First One"),
    ("topics/first.yaml", "  feel:\n", "  Feel It:\n"),
    ("topics/first.yaml", "{is: warm, go: well}", "{is: warm, otherwise: true, go: well}"),
    ("topics/first.yaml", "{is: warm, go: well}", "{go: well}"),
    ("topics/first.yaml", "{is: warm, go: well}", "{is: warm}"),
    ("topics/first.yaml", "{is: warm, go: well}", "{is: [], go: well}"),
    ("topics/first.yaml", "otherwise: true", "otherwise: false"),
    ("topics/first.yaml", "    ask: mouth", "    ask: mouth\n    end: vet-now"),
    ("topics/first.yaml", "    ask: mouth", "    aks: mouth"),
    ("topics/first.yaml", "ask: mouth", "ask: mout"),
    ("topics/first.yaml", "go: feel", "go: fel"),
    ("topics/first.yaml", "up_to: chill", "up_to: chil"),
    ("topics/first.yaml", "end: care-here", "end: care-her"),
    ("topics/first.yaml", "tag: warm", "tag: wram"),
    ("topics/first.yaml", "Warm it., tag", '"Warm to {chil}.", tag'),
    ("topics/first.yaml", "Warm it., tag", '"Warm {it", tag'),
    ("topics/first.yaml", "at_most: 2", "at_most: two"),
    ("topics/first.yaml", "at_most: 2", "at_most: 0"),
    ("topics/first.yaml", "    else: still-cold\n", ""),
    ("topics/first.yaml", "    call_vet: Now.\n", "    call_vet: Now.\n    for: {mouth: {}}\n"),
    ("topics/first.yaml", "    call_vet: Now.\n", "    call_vet: Now.\n    for: {mouth: {is: warm, unsure: true}}\n"),
    ("topics/first.yaml", "    call_vet: Now.\n", "    call_vet: Now.\n    for: {mout: {is: warm}}\n"),
    ("topics/first.yaml", "    call_vet: Now.\n", "    call_vet:\n"),
    ("findings/all.yaml", "  choices: {limp: Limp, none: Not limp}\n", ""),
    ("findings/all.yaml", "  measure: kg\n", "  measure: kg\n  choices: {a: A}\n"),
    ("findings/all.yaml", "  plausible: [25, 43]\n", ""),
    ("findings/all.yaml", "[25, 43]", "[25]"),
    ("findings/all.yaml", "how: measure-it", "how: measure"),
    ("findings/all.yaml", "stand_ins: [mouth]", "stand_ins: mouth"),
    ("findings/all.yaml", "label: Danger", "label: [Danger]"),
    ("numbers.yaml", "value: 37\n", "value: warm\n"),
    ("numbers.yaml", "unit: degC", "unit: degreesC"),
    ("numbers.yaml", "safer: higher", "safer: up"),
    ("numbers.yaml", "{a-paper: 20}", "{a-papr: 20}"),
    ("numbers.yaml", "{a-paper: 20}", "{}"),
    ("numbers.yaml", "certainty: high\npause", "certainty: sure\npause"),
    ("sources.yaml", "grade: A", "grade: E"),
    ("sources.yaml", "a-paper", "A_Paper"),
    ("glossary.yaml", "means", "mean"),
    ("how-to/measure-it.yaml", "how-to: measure-it\n", ""),
    ("how-to/measure-it.yaml", "steps: [Hold it still.]", "steps: Hold it still."),
    ("guide.yaml", "way_in: danger", "way_in: dangr"),
    ("guide.yaml", "topics: [first]", "topics: [frist]"),
    ("guide.yaml", "danger_signs: {danger", "danger_signs: {dangr"),
    ("guide.yaml", "title: A small guide\n", ""),
]  # fmt: skip


@pytest.mark.parametrize(("file", "old", "new"), MISTAKES)
def test_a_mistake_is_seen_by_both(tmp_path: Path, file: str, old: str, new: str) -> None:
    """A mistake that the reader refuses is a warning in the editor, in the same file."""
    read = read_small(tmp_path, (file, old, new))

    assert any(each.place.file == file for each in errors(read.problems))
    assert told(tmp_path, file)


RULES = [
    ("{because: B., sources: [a-paper]}", False),
    ("{because: B., sources: [a-paper], never: {tag: warm}}", True),
    ("{because: B., sources: [a-paper], never: {tag: warm}, always: {tag: phone}}", False),
    ("{because: B., sources: [a-paper], never: {tag: warm, shows: chill}}", False),
    ("{because: B., sources: [a-paper], never: {urgency: vet-now}}", False),
    ("{because: B., sources: [a-paper], always: {urgency: vet-now}}", True),
    ("{because: B., sources: [a-paper], always: {tag: warm}, where_asked: true, when: {mouth: {is: cold}}}", False),
    ("{because: B., sources: [a-paper], never: {tag: warm}, where_asked: true}", False),
    ("{because: B., sources: [a-paper], never: {tag: warm}, where_asked: true, when: {mouth: {is: cold}}}", True),
    ("{because: B., sources: [a-paper], never: {tag: warm}, when: {temperature: {from: chill, above: chill}}}", False),
    ("{because: B., sources: [a-paper], never: {tag: warm}, when: {temperature: {from: chill, below: chill}}}", True),
]  # fmt: skip


@pytest.mark.parametrize(("rule", "sound"), RULES)
def test_a_rule_is_judged_alike(tmp_path: Path, rule: str, sound: bool) -> None:
    """What a rule's fields ask of each other is known to the reader and to the schema."""
    read = read_small(tmp_path, ("rules.yaml", "", f"a-rule: {rule}\n"))

    assert (read.guide is not None) is sound, read.problems
    assert (not told(tmp_path, "rules.yaml")) is sound


def test_a_text_that_looks_like_something_else_is_a_text(tmp_path: Path) -> None:
    """`2026.1`, `true`, `no` and a date need no quotes, in the reader or in the editor."""
    changes = (
        ("guide.yaml", 'edition: "test"', "edition: 2026.1"),
        ("guide.yaml", 'date: "2026-01-01"', "date: 2026-01-01"),
        ("findings/all.yaml", "none: Not limp", "no: true"),
        ("topics/first.yaml", "is: none", "is: no"),
    )
    read = read_small(tmp_path, *changes)

    assert read.problems == ()
    for scalar in (core, older):
        assert [told(tmp_path, file, scalar) for file, _, _ in changes] == [[], [], [], []]


def test_each_field_is_told_in_a_sentence() -> None:
    """Every field of every record has a note, and no note is left of a field that is gone."""
    there = {record.what: set(record.shapes) | OWN_FIELDS.get(record.what, set()) for record in records()}
    there["topic"] = {*fields.TOPIC_FIELDS, *OWN_FIELDS["topic"]}

    assert {what: set(notes) for what, notes in NOTES.items()} == there, "see triage/guide/notes.py"
    assert all(note.endswith(".") and len(note) < 110 for each in NOTES.values() for note in each.values())
    assert set(FILE_NOTES) == set(FILES)


def test_each_field_shows_its_sentence() -> None:
    """An editor finds the note beside the field."""
    topic = file_schema("topic")

    assert (
        topic["definitions"]["branch"]["properties"]["go"]["description"] == "The node this answer leads to."
    )
    assert topic["properties"]["nodes"]["description"] == NOTES["topic"]["nodes"]


def test_a_shape_without_a_schema_is_told() -> None:
    """A new shape can't be forgotten: there is no schema until it is registered."""
    with pytest.raises(TypeError, match="no schema for a int"):
        schema_of(3, Book())


def test_two_records_of_one_name_are_told() -> None:
    """Two different records that call themselves alike would hide each other."""
    book = Book()
    schema_of(Record("thing", dict, {"a": Prose()}), book)

    with pytest.raises(ValueError, match="two schemas would be called 'thing'"):
        schema_of(Record("thing", dict, {"b": Ref(("node",))}), book)


def test_the_names_are_those_of_the_guide(guide: Guide) -> None:
    """The names gathered from the files are those that the reader knows."""
    names = names_in(ROOT).names

    assert names["finding"] == set(guide.findings)
    assert names["node"] == set(guide.nodes)
    assert names["topic"] == set(guide.topics)
    assert names["number"] == set(guide.numbers)
    assert names["how-to"] == set(guide.how_tos)
    assert names["source"] >= set(guide.sources)
    assert names["urgency"] == {each.name for each in guide.front.urgencies}
    assert names["act tag"] == set(guide.front.act_tags)


def test_a_half_written_entry_can_be_named(tmp_path: Path) -> None:
    """A finding that still lacks its fields is offered by name, as its mistakes are told elsewhere."""
    folder = write_small(tmp_path, ("findings/all.yaml", "weight:\n", "gums:\n  label: Gums\nweight:\n"))

    assert "gums" in names_in(folder).names["finding"]


def test_the_command_writes_them(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`triage schema FOLDER` writes a schema for each kind of file, and the reader passes over them."""
    folder = write_small(tmp_path)

    assert main(["schema", str(folder)]) == 0
    assert "15 schemas are in" in capsys.readouterr().out
    kept = {path.name: path.read_text(encoding="utf-8") for path in (folder / ".schema").iterdir()}
    assert kept == schema_texts(names_in(folder).names)
    assert '"care-here"' in kept["topic.json"]
    assert read_small(tmp_path).problems == ()

    assert main(["schema", str(folder), "--no-names"]) == 0
    assert (folder / ".schema" / "topic.json").read_text() == schema_texts()["topic.json"]


def test_the_command_tells_why_it_can_not(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """No folder, a file that hides its names, and a place that can't be written are each told."""
    assert main(["schema", str(tmp_path)]) == 2
    assert "there is no guide.yaml" in capsys.readouterr().err

    folder = write_small(tmp_path, ("numbers.yaml", "chill:", "chill: ["))
    assert main(["schema", str(folder)]) == 1
    assert "numbers.yaml:" in (said := capsys.readouterr().err)
    assert "No schema was written" in said
    assert not (folder / ".schema").exists()

    write_small(tmp_path)
    (folder / ".schema").write_text("in the way")
    assert main(["schema", str(folder)]) == 2
    assert "could not be written" in capsys.readouterr().err
