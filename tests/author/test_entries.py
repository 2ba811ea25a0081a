"""Single entries: each can be read where it is told to stand, and nothing that is there is lost."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest

from tests.author.conftest import New
from triage.author.entries import ENTRIES, entry_text, file_of
from triage.check import check
from triage.guide.read import read_guide
from triage.guide.texts import UNWRITTEN

PASTED = [kind for kind, entry in ENTRIES.items() if not entry.alone]
ALONE = [kind for kind, entry in ENTRIES.items() if entry.alone]

HELD = {"number": "numbers", "finding": "findings", "how-to": "how_tos", "rule": "rules", "source": "sources"}

LEFT = {
    "number": {"unused", "unwritten"},
    "finding": {"unwritten"},
    "how-to": {"unused", "unwritten"},
    "rule": {"unwritten"},
    "source": {"unwritten"},
}
"""What the check says of each as it is laid down: that nothing uses it, or that its texts are to be written."""


@pytest.mark.parametrize("kind", PASTED)
def test_what_is_printed_can_go_to_the_end_of_its_file(
    shipped: Path, new: New, kind: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """All of it, the line that says where it goes among it; the rest of the file is as it was."""
    assert new(kind, "worm-line", "--in", shipped) == 0

    printed, file = capsys.readouterr().out, shipped / ENTRIES[kind].file
    assert printed.startswith(f"# Put this at the end of {file}")
    with file.open("a", encoding="utf-8") as opened:
        opened.write(printed)
    read = read_guide(shipped)
    assert read.problems == ()
    assert "worm-line" in getattr(read.guide, HELD[kind])


@pytest.mark.parametrize("kind", ALONE)
def test_what_has_a_file_of_its_own_is_written(shipped: Path, new: New, kind: str) -> None:
    """In its folder, under its name."""
    assert new(kind, "worm-line", "--in", shipped) == 0

    assert (shipped / file_of(kind, "worm-line")).read_text(encoding="utf-8") == entry_text(kind, "worm-line")
    read = read_guide(shipped)
    assert read.problems == ()
    assert "worm-line" in getattr(read.guide, HELD[kind])


@pytest.mark.parametrize("kind", ENTRIES)
def test_what_the_check_says_of_it_is_for_the_author(
    shipped: Path, new: New, kind: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """That nothing uses it yet, and that its texts are to be written; no more."""
    before = set(check_of(shipped))
    new(kind, "worm-line", "--in", shipped)
    if kind in PASTED:
        with (shipped / ENTRIES[kind].file).open("a", encoding="utf-8") as opened:
            opened.write(capsys.readouterr().out)

    said = [what for what in check_of(shipped) if what not in before]

    assert {rule for rule, _ in said} == LEFT[kind]
    assert all("worm-line" in what or UNWRITTEN in what for _, what in said)


def check_of(folder: Path) -> list[tuple[str, str]]:
    guide = read_guide(folder).guide
    assert guide is not None
    return [(each.rule, each.what) for each in check(guide)]


@pytest.mark.parametrize("kind", ENTRIES)
def test_each_field_has_a_word_on_it(kind: str) -> None:
    """Above each field that is not inside another stands a comment."""
    lines = entry_text(kind, "worm-line").splitlines()
    fields = [
        (above, line)
        for above, line in pairwise(lines)
        if ":" in line and not line.strip().startswith(("#", "-")) and not line.startswith("    ")
    ]
    assert len(fields) >= 4
    assert [line for above, line in fields if not above.strip().startswith("#")] == []


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        ("number", "severe-chill"),
        ("finding", "manner"),
        ("how-to", "bottle-feed"),
        ("rule", "no-cold-water"),
        ("source", "vsheet"),
    ],
)
def test_a_name_that_is_taken_is_told(
    shipped: Path, new: New, kind: str, name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is printed or written for it."""
    assert new(kind, name, "--in", shipped) == 1

    told = capsys.readouterr()
    assert told.err == f"Nothing was written. There is a {kind} '{name}' already; take another name.\n"
    assert told.out == ""


def test_a_number_with_the_name_of_a_sum_is_told(
    shipped: Path, new: New, capsys: pytest.CaptureFixture[str]
) -> None:
    """Texts name both in the same way, so one name can't be both."""
    assert new("number", "first-milk", "--in", shipped) == 1
    assert "There is a sum 'first-milk' already" in capsys.readouterr().err
