"""A new topic: what is laid down can be read, and what the check then says is for its author to decide."""

from __future__ import annotations

import datetime
from itertools import pairwise
from pathlib import Path

import pytest

from tests.author.conftest import New
from tests.author.following import follow
from tests.conftest import write_small
from triage.author.topic import BORROWED, PAGES, nodes_of, topic_text
from triage.author.ways import next_edition
from triage.check import check
from triage.guide.read import read_guide
from triage.guide.texts import UNWRITTEN
from triage.problems import Problem
from triage.review.upkeep import upkeep

UNDECIDED = {"unreachable", "no-lamb-comes", "unused", "page-without-case", "unwritten"}
"""That nothing leads there, that it is not listed, and that nobody has practised it; and what is to be written."""


def everything(folder: Path) -> list[Problem]:
    """What `triage check` says of a folder."""
    read = read_guide(folder)
    if read.guide is None:
        return list(read.problems)
    made = datetime.date.fromisoformat(read.guide.front.date)
    return [*read.problems, *check(read.guide), *upkeep(folder, read.guide, made)]


def test_the_shipped_guide_is_fine_to_begin_with(shipped: Path) -> None:
    """What is said below comes from the topic alone."""
    assert everything(shipped) == []


def test_a_topic_is_read_as_it_is_laid_down(shipped: Path, new: New) -> None:
    """No mistake of YAML or of shape; what the check says is about this topic, and for its author to decide."""
    assert new("topic", "worms", "--in", shipped) == 0

    assert read_guide(shipped).problems == ()
    said = everything(shipped)
    assert {each.rule for each in said} == UNDECIDED
    assert {each.place.file for each in said} == {"topics/worms.yaml"}


def test_a_topic_has_each_kind_of_place() -> None:
    """A question, something to do that waits and comes again a limited number of times, and two ends."""
    lines = topic_text("worms").splitlines()

    fields = {line.strip().split(":")[0] for line in lines if not line.strip().startswith(("#", "-"))}
    assert {"ask", "act", "end", "wait", "forget", "at_most", "then", "else", "look_again"} <= fields
    assert sum(line.startswith("    end:") for line in lines) == 2


def test_each_field_has_a_word_on_it() -> None:
    """Above each field stands a comment of one line, or another field of the same subject that has one."""
    lines = topic_text("worms").splitlines()
    bare = [
        line.strip().split(":")[0]
        for above, line in pairwise(lines)
        if ":" in line and not line.strip().startswith(("#", "-")) and not above.strip().startswith("#")
    ]
    assert sorted(bare) == ["certainty", "certainty", "end", "end"]


def test_who_pastes_what_is_printed_has_little_left(
    shipped: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """Followed to the letter, three things are left: a list that is too long now, the texts, and the reason why.

    No rule is broken and no lamb is less urgent: the rest of the proof is silent.
    """
    new("topic", "worms", "--in", shipped)
    printed = capsys.readouterr().out

    done = follow(shipped, printed)

    assert sorted(set(done)) == sorted(
        ["guide.yaml", "findings/story.yaml", "topics/first-look.yaml", "practice/worms.yaml", "changes.yaml"]
    )
    said = everything(shipped)
    assert sorted(each.rule for each in said if each.rule != "unwritten") == ["shape", "too-many-items"]
    left = [each for each in said if each.rule == "unwritten"]
    assert len(left) == sum(
        UNWRITTEN in line.partition("#")[0]
        for file in shipped.rglob("*.yaml")
        for line in file.read_text().splitlines()
    )
    assert next(each.place.file for each in said if each.rule == "shape") == "changes.yaml"


def test_the_rest_is_silent_once_the_author_has_written(
    shipped: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """The texts written and the reason given: the check says no more than that one list is too long."""
    new("topic", "worms", "--in", shipped)
    follow(shipped, capsys.readouterr().out)

    for file in (*shipped.glob("*/worms.yaml"), shipped / "findings/story.yaml"):
        file.write_text(file.read_text().replace(f"{UNWRITTEN}:", "About").replace(UNWRITTEN, "Say"))
    (shipped / "changes.yaml").write_text(
        (shipped / "changes.yaml").read_text().replace('why: ""', "why: An invented reason.")
    )
    said = everything(shipped)

    assert [each.rule for each in said] == ["too-many-items"]


def test_a_topic_never_says_less_than_to_phone_today(
    shipped: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """Until its author has earned less, each end calls a vet."""
    new("topic", "worms", "--in", shipped)
    follow(shipped, capsys.readouterr().out)
    (shipped / "changes.yaml").unlink()
    guide = read_guide(shipped).guide
    assert guide is not None
    ends = [guide.nodes[f"worms-{each}"] for each in ("today", "now")]

    assert [getattr(end, "urgency", "") for end in ends] == ["vet-today", "vet-now"]


def test_a_second_topic_goes_under_the_same_edition(
    shipped: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """The next edition is named once; another topic adds its reason to it."""
    new("topic", "worms", "--in", shipped)
    follow(shipped, capsys.readouterr().out)
    new("topic", "coats", "--in", shipped)
    printed = capsys.readouterr().out
    follow(shipped, printed)

    assert "edition:" not in printed
    guide, changes = read_guide(shipped).guide, (shipped / "changes.yaml").read_text()
    assert guide is not None
    assert changes.count(f'"{guide.front.edition}":') == 1
    assert changes.count('why: ""') == 2
    assert sorted({each.rule for each in everything(shipped)}) == [
        "shape",
        "too-many-items",
        "unwritten",
    ]


def test_nothing_is_written_over(shipped: Path, new: New, capsys: pytest.CaptureFixture[str]) -> None:
    """A topic, or a file of its name, that is there already is left as it is, with a sentence."""
    file = shipped / "topics/cold.yaml"
    before = file.read_bytes()

    assert new("topic", "cold", "--in", shipped) == 1
    assert (
        capsys.readouterr().err
        == "Nothing was written. There is a topic 'cold' already; take another name.\n"
    )
    assert file.read_bytes() == before

    other = shipped / "topics/worms.yaml"
    other.write_text("topic: another\n")
    assert new("topic", "worms", "--in", shipped) == 1
    assert "is there already, and is left as it is" in capsys.readouterr().err
    assert other.read_text() == "topic: another\n"


def test_a_place_of_that_name_elsewhere_is_told(
    shipped: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """Places have one name in the whole guide, so a topic named like one is refused before it is laid down."""
    assert new("topic", "gasping", "--in", shipped) == 1
    assert "a place 'gasping' in another topic" in capsys.readouterr().err
    assert not (shipped / "topics/gasping.yaml").exists()


@pytest.mark.parametrize("name", ["", "Worms", "two words", "worms-", "../worms", "worms.yaml", "worms\n"])
def test_a_name_that_is_none_is_told(
    shipped: Path, new: New, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Names are lower-case with single hyphens; nothing is written for any other."""
    before = sorted((shipped / "topics").iterdir())

    assert new("topic", *([name] if name else []), "--in", shipped) == 2

    assert "Write one of lower-case letters, digits and single hyphens" in capsys.readouterr().err
    assert sorted((shipped / "topics").iterdir()) == before


def test_a_folder_that_is_no_guide_is_told(
    tmp_path: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """A topic goes into a guide's folder only."""
    assert new("topic", "worms", "--in", tmp_path) == 2
    assert "There is no guide.yaml" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_guide_without_those_names_is_told_so(
    tmp_path: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """In a guide of another make the topic is laid down, and what it lacks there is named."""
    folder = write_small(tmp_path)

    assert new("topic", "worms", "--in", folder) == 0

    printed = capsys.readouterr().out
    assert "This guide has no manner, mild-check, phone-the-vet-well, vet-today, dry, check:" in printed
    assert "The guide has mistakes" in printed


def test_a_list_in_lines_gets_a_line(tmp_path: Path, new: New, capsys: pytest.CaptureFixture[str]) -> None:
    """Where topics stand one to a line, the new one is a line below the last."""
    folder = write_small(
        tmp_path,
        ("guide.yaml", "topics: [first]", "topics:\n  - first"),
        ("guide.yaml", "phone: Phone", "phone: Phone, dry: Dry it, check: Look"),
        ("guide.yaml", "  - {urgency: care-here", "  - {urgency: vet-today, say: Phone today, means: Today.}\n  - {urgency: care-here"),
        ("findings/all.yaml", "danger:\n", "manner:\n  label: M\n  ask: How is it?\n  why: So.\n  choices: {bright: B, missed: M, dull: D, sore: S}\ndanger:\n"),
        ("numbers.yaml", "pause:", "mild-check:"),
        ("topics/first.yaml", "wait: pause", "wait: mild-check"),
        ("topics/first.yaml", "look_again: pause", "look_again: mild-check"),
        ("how-to/measure-it.yaml", "how-to: measure-it", "how-to: phone-the-vet-well"),
        ("findings/all.yaml", "how: measure-it", "how: phone-the-vet-well"),
    )  # fmt: skip
    new("topic", "worms", "--in", folder)
    printed = capsys.readouterr().out
    follow(folder, printed)

    assert "No answer leads to it yet. Give one a branch, such as {is: ANSWER, go: worms}." in printed
    assert "topics:\n  - first\n  - worms\n" in (folder / "guide.yaml").read_text()
    assert read_guide(folder).problems == ()


@pytest.mark.parametrize(
    ("edition", "after"),
    [
        ("2026.2", "2026.3"),
        ("2026.9", "2026.10"),
        ("7", "8"),
        ("spring", "spring.1"),
        ("2026.2b", "2026.2b.1"),
    ],
)
def test_the_next_edition_has_a_name(edition: str, after: str) -> None:
    """The last number and one; a name without a number gets one."""
    assert next_edition(edition) == after


def test_what_is_borrowed_is_in_the_topic() -> None:
    """The names of the shipped guide that are told as missing elsewhere are those which the topic uses."""
    text = topic_text("worms")
    for names in BORROWED.values():
        for name in names:
            assert f"{name}" in text
    assert nodes_of("worms") == ("worms", *(f"worms-{page}" for page in PAGES))
