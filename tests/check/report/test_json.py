"""The report for programs: what its documentation says is there, and stays there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tests.check.report.made import UNSURE, WARNED, json_report
from triage.check import Tally
from triage.check.report import Checked, as_json, json_
from triage.problems import Place, Problem


def test_a_sound_guide(tmp_path: Path) -> None:
    """A sound guide has an edition, counts and no problem."""
    status, made = json_report(tmp_path)

    assert status == 0
    assert made["schema"] == {"name": "triage-check", "version": 1}
    assert (made["edition"], made["sound"], made["problems"]) == ("test", True, [])
    assert made["folder"] == str(tmp_path / "guide")
    assert (made["counts"]["asks"], made["counts"]["ends"]) == (3, {"vet-now": 1, "care-here": 1})


def test_a_warning_leaves_a_guide_sound(tmp_path: Path) -> None:
    """A warning is among the problems of a guide that is sound all the same."""
    status, made = json_report(tmp_path, WARNED)

    assert status == 0
    assert made["sound"] is True
    assert made["counts"] is not None
    assert [problem["weight"] for problem in made["problems"]] == ["warning"]


def test_a_problem_and_its_walk(tmp_path: Path) -> None:
    """A problem has its place in three fields, and the walk that shows it as it would be replayed."""
    status, made = json_report(tmp_path, UNSURE)
    problem = next(each for each in made["problems"] if each["rule"] == "no-unsure")

    assert status == 1
    assert (made["sound"], made["counts"]) == (False, None)
    assert (problem["file"], problem["line"], problem["column"]) == ("topics/first.yaml", 17, 3)
    assert problem["weight"] == "error"
    assert problem["walk"].startswith("danger: ")


def test_a_guide_that_could_not_be_read_has_no_edition(tmp_path: Path) -> None:
    """When the guide is too broken to be read, what it would say of itself is null."""
    status, made = json_report(tmp_path, ("sources.yaml", "grade: A", "grade: E"))

    assert status == 1
    assert (made["edition"], made["sound"], made["counts"]) == (None, False, None)
    assert [(problem["file"], problem["walk"]) for problem in made["problems"]] == [("sources.yaml", None)]


def test_unusual_characters_stay_as_they_are() -> None:
    """A program gets what was written, in characters rather than escapes where they print."""
    problem = Problem(Place("topics/né w.yaml"), "'\x1b\n' at 37 °C", "gap")

    text = as_json(Checked.of("guide", [problem]))

    assert "topics/né w.yaml" in text
    assert r"'\u001b\n' at 37 °C" in text


@dataclass(frozen=True)
class _Shown:
    screens: int
    seen: tuple[str, ...]


@dataclass(frozen=True)
class _Larger(Tally):
    pages: dict[str, _Shown]


def test_counts_that_are_yet_to_come(tmp_path: Path) -> None:
    """Whatever the summary counts is in the report under its own name."""
    tally = _Larger(1, 0, {}, 1, 0, 0, 0, 0, 0, ("a",), 2, 3, 0.5, {"well": _Shown(2, ("a", "b"))})

    text = as_json(Checked("guide", (), tally))

    assert '"pages": {\n      "well": {\n        "screens": 2,' in text


def test_every_field_is_documented(tmp_path: Path) -> None:
    """The documentation names every field of the report and of a problem."""
    _, made = json_report(tmp_path, UNSURE)

    assert set(_fields(made)) <= set((json_.__doc__ or "").split("`")[1::2])


def _fields(made: dict[str, Any]) -> Iterator[str]:
    yield from made
    for problem in made["problems"]:
        yield from problem
