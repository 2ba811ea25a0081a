"""The report for people: a line for each problem, and beneath it the walk that shows it."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.check.report.made import FIRST, UNSURE, WARNED, report, report_of, write_eleven
from triage.check.report import Checked, as_text
from triage.check.report.text import SHOWS_IT
from triage.problems import Place, Problem


def test_a_sound_guide_is_told_by_its_counts(tmp_path: Path) -> None:
    """Of a sound guide there is the summary alone, and status 0."""
    status, text = report(tmp_path, "text")

    assert status == 0
    assert text.startswith("Sound: 3 questions, 1 acts, 2 ends")
    assert text.endswith("\n")


def test_a_warning_leaves_a_guide_sound(tmp_path: Path) -> None:
    """A warning is marked as one, and the summary follows it."""
    status, text = report(tmp_path, "text", WARNED)

    assert status == 0
    assert text.startswith(f"{FIRST}:3:23: warning: the text is cut here")
    assert "\nSound: " in text


def test_the_walk_stands_under_its_problem(tmp_path: Path) -> None:
    """A walk is set off by four spaces, ready to be cut out, under a line that says what it is."""
    status, text = report(tmp_path, "text", UNSURE)
    lines = text.splitlines()
    at = lines.index(SHOWS_IT)

    assert status == 1
    assert "'feel' has no way out for \"not sure\"" in lines[at - 1]
    assert lines[at + 1].startswith("    danger: ")
    assert "  # Is it limp? " in lines[at + 1]
    assert "Sound" not in text


def test_the_number_of_problems_is_told_on_stderr(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """However the report is made, people are told how many problems there are; warnings are not counted."""
    for form in ("text", "json", "sarif"):
        report(tmp_path, form, WARNED, ("sources.yaml", "grade: A", "grade: E"))

        told = capsys.readouterr()
        assert told.out == ""
        assert told.err.startswith("1 problem found.\n")


def test_problems_come_in_the_order_of_their_places(tmp_path: Path) -> None:
    """Problems of the reading and of the proof are told together, by file, line and column."""
    later = Problem(Place("topics/b.yaml", 1, 1), "third", "gap")
    earlier = Problem(Place("topics/a.yaml", 10, 1), "second", "cut-text", "warning")
    first = Problem(Place("topics/a.yaml", 9, 1), "first", "gap")

    text = as_text(Checked.of("guide", [later, earlier, first, later]))

    assert [line.partition("[")[0].split()[-1] for line in text.splitlines()] == ["first", "second", "third"]


def test_nothing_in_a_guide_ends_a_line_or_steers_a_terminal() -> None:
    """Characters that do not print are written out, in file names, messages and walks alike."""
    place = Place("topics/a\nb\udce9.yaml", 2, 3)
    problem = Problem(place, "no 'x\x1b[2J\u2028y'", "gap", walk="a: b\x07  # Is it 37 °C?")

    lines = as_text(Checked.of("guide", [problem])).split("\n")

    assert lines == [
        r"topics/a\nb\udce9.yaml:2:3: no 'x\x1b[2J\u2028y' [gap]",
        SHOWS_IT,
        r"    a: b\x07  # Is it 37 °C?",
        "",
    ]


def test_one_broken_file_among_ten(tmp_path: Path) -> None:
    """What is wrong with one file is told of that file."""
    status, text = report_of(write_eleven(tmp_path / "guide"), "text", tmp_path / "report")

    assert status == 1
    assert "findings/broken.yaml:2:1: not YAML: " in text
    assert all(line.startswith("findings/broken.yaml:") for line in text.splitlines())
