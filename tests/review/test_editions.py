"""Editions: each change is explained, and a guide is told to be overdue whatever the clock says."""

from __future__ import annotations

import io
import tempfile
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.conftest import read_small, small_guide, write_small
from triage import amounts
from triage.cli import main
from triage.clock import Now
from triage.facts import Facts
from triage.guide.files import KNOWN
from triage.guide.model import Front, Guide
from triage.guide.read import read_guide
from triage.page.page import page_of
from triage.problems import Place
from triage.review.dates import day_of, overdue
from triage.review.editions import Cut, moved_since, read_cut, write_cut
from triage.review.statements import statements_of
from triage.review.upkeep import upkeep
from triage.walk import Walk

TODAY = date(2026, 11, 29)
VALUE = ("numbers.yaml", "value: 37", "value: 36.5")
NEXT = ("guide.yaml", 'edition: "test"', 'edition: "next"')


def cut(folder: Path) -> Path:
    """Write the small guide, and cut its edition."""
    guide = small_guide(folder)
    write_cut(folder, guide.front.edition, statements_of(guide).values())
    return folder


def kept(folder: Path, *changes: tuple[str, str, str], why: str = "") -> list[tuple[str, str]]:
    """Return kind and place of what is wrong with the upkeep of a folder after changes."""
    write_small(folder, *changes)
    if why:
        (folder / "changes.yaml").write_text(why, encoding="utf-8")
    guide = read_guide(folder).guide
    assert guide is not None
    return [(each.rule, each.place.file) for each in upkeep(folder, guide, TODAY)]


def test_each_change_has_its_reason(tmp_path: Path) -> None:
    """A changed number must be explained, in the next edition; a reason for what did not change is refused."""
    folder = cut(tmp_path)

    assert kept(folder) == []
    assert kept(folder, VALUE) == [("same-edition", "guide.yaml")]
    assert kept(folder, VALUE, NEXT) == [("unexplained-change", "numbers.yaml")]
    assert kept(folder, VALUE, NEXT, why="next: [{of: number/chill, why: A trial says so.}]\n") == []
    for_nothing = "next: [{of: [number/chill, number/pause, number/chil], why: A trial.}]\n"
    assert kept(folder, VALUE, NEXT, why=for_nothing) == [("reason-for-nothing", "changes.yaml")] * 2
    assert kept(folder, VALUE, NEXT, why="other: [{of: number/chill, why: A trial.}]\n") == [("unexplained-change", "numbers.yaml")]  # fmt: skip
    assert kept(folder, VALUE, NEXT, why="next: [{of: chill, why: A trial.}]\n")[0] == (
        "shape",
        "changes.yaml",
    )
    assert kept(folder, VALUE, NEXT, why="next: [{of: [number/chill]}]\n")[0] == ("missing-field", "changes.yaml")  # fmt: skip


def test_what_is_new_or_gone_has_its_reason_too(tmp_path: Path) -> None:
    """A statement more, and one less, are changes."""
    folder = cut(tmp_path)
    gone = ("glossary.yaml", "limp: {means: 'Soft, with no strength.'}", "weak: {means: 'Soft.'}")

    found = kept(folder, gone, NEXT)

    assert found == [("unexplained-change", "glossary.yaml"), ("unexplained-change", "changes.yaml")]
    assert kept(folder, gone, NEXT, why="next: [{of: [term/limp, term/weak], why: Plainer.}]\n") == []


def test_comments_need_no_reason(tmp_path: Path) -> None:
    """Nor do layout, the name of the edition, its day, and the day of the next review."""
    folder = cut(tmp_path)
    front = ("guide.yaml", 'date: "2026-01-01"', 'date: "2026-10-01"\nreview_by: 2027-01-01')

    assert kept(folder, ("numbers.yaml", "chill:", "# a comment\n\nchill:"), front, NEXT) == []


def test_check_tells_an_unexplained_change(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`triage check` fails with the kind and the place of the change, and passes with a reason."""
    folder = cut(tmp_path)
    write_small(folder, VALUE, NEXT)
    assert main(["check", str(folder)]) == 1
    told = capsys.readouterr().out
    assert "numbers.yaml:1:1: 'number/chill' has changed" in told
    assert "[unexplained-change]" in told

    (folder / "changes.yaml").write_text("next: [{of: number/chill, why: A trial says so.}]\n")
    main(["check", str(folder)])
    assert "[unexplained-change]" not in capsys.readouterr().out


def test_a_vet_is_shown_first_what_the_edition_changed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Among what was never reviewed, what this edition changed leads, with the reason that its editor gave."""
    folder = cut(tmp_path)
    write_small(folder, VALUE, NEXT)
    (folder / "changes.yaml").write_text("next: [{of: number/chill, why: A trial says so.}]\n")
    assert main(["sign", "--queue", "--guide", str(folder)]) == 0
    groups = [line for line in capsys.readouterr().out.splitlines() if line.endswith(":")]
    assert groups[0].startswith("Changed in this edition")
    assert any(line.startswith("Never reviewed") for line in groups[1:])

    monkeypatch.setattr("sys.stdin", io.StringIO("q\n"))
    main(["sign", "--plain", "--by", "A. Name", "--as", "vet", "--licence", "", "--guide", str(folder)])
    assert "Why it was changed: A trial says so." in capsys.readouterr().out


def test_cut_refuses_and_leaves_all_as_it_was(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With a change unexplained no edition is cut: the files beside the guide are byte for byte as they were."""
    folder = cut(tmp_path)
    write_small(folder, VALUE, NEXT)
    before = {file: file.read_bytes() for file in folder.rglob("*") if file.is_file()}

    assert main(["cut", str(folder)]) == 1

    assert {file: file.read_bytes() for file in folder.rglob("*") if file.is_file()} == before
    assert "No edition was cut" in capsys.readouterr().err


def test_a_cut_edition_is_read_again(tmp_path: Path) -> None:
    """What was cut is what is read, and a damaged file is never less to explain."""
    folder = cut(tmp_path)
    file = folder / KNOWN / "edition"
    whole = file.read_text()
    found = read_cut(folder)
    assert found is not None
    assert found.own == {key: each.own for key, each in statements_of(small_guide(folder)).items()}

    file.write_text("".join(whole.splitlines(keepends=True)[:-3]))
    assert {rule for rule, _ in kept(folder, NEXT)} == {"unexplained-change"}


# --- days ---


@pytest.mark.parametrize(
    ("today", "said"),
    [("2026-01-01", ""), ("2026-06-30", ""), ("2026-07-01", "Overdue"), ("2099-01-01", "Overdue"), ("2025-12-31", "clock"), ("1970-01-01", "clock")],
)  # fmt: skip
def test_overdue(tmp_path: Path, today: str, said: str) -> None:
    """Up to the day nothing is told, after it that it is overdue, and before the edition that the clock is wrong."""
    guide = small_guide(tmp_path, ("guide.yaml", "way_in: danger", "way_in: danger\nreview_by: 2026-06-30"))
    walk = Walk(guide)

    told = overdue(guide.front, date.fromisoformat(today))

    assert (said in told) if said else not told
    blocks = [block.text for block in page_of(walk, "metric", today=date.fromisoformat(today)).blocks]
    assert (told in blocks) == (said == "Overdue")  # on a page a wrong clock says nothing of the guidance


def test_without_a_day_nothing_is_overdue(tmp_path: Path) -> None:
    """A guide that names no day is never overdue."""
    assert overdue(small_guide(tmp_path / "x").front, date.max) == ""


@pytest.mark.parametrize("day", ["2026-02-30", "2026-13-01", "30.6.2026", "soon", "2026-6-1", "20260601", "2026-W01-1", "２０２６-01-01", "0000-01-01"])  # fmt: skip
def test_nonsense_days_are_refused(tmp_path: Path, day: str) -> None:
    """What is no day of the calendar is refused where it stands."""
    read = read_small(tmp_path, ("guide.yaml", "way_in: danger", f"way_in: danger\nreview_by: {day}"))

    assert read.guide is None
    assert [each.place for each in read.problems] == [Place("guide.yaml", 7, 12)]
    assert "is not a day" in read.problems[0].what


def test_days_at_the_ends_of_the_world() -> None:
    """No zone, no change of the clocks, and no odd text of a day stops anything."""
    zones = [UTC, timezone(timedelta(hours=14)), timezone(timedelta(hours=-12)), ZoneInfo("Europe/Paris"), ZoneInfo("Australia/Lord_Howe")]  # fmt: skip
    moments = [datetime(2026, 3, 29, 1, 30, tzinfo=UTC), datetime(2026, 10, 25, 1, 30, tzinfo=UTC), datetime(2026, 6, 30, 23, 59, tzinfo=UTC)]  # fmt: skip
    front = small_front()
    for zone in zones:
        for moment in moments:
            here = Now(moment, zone).moment.astimezone(zone).date()
            assert bool(overdue(front, here)) == (here > date(2026, 6, 30))
    for text in ("", "x", "2026-02-30", "today     ", "9999-99-99"):
        assert day_of(text) is None


def small_front() -> Front:

    with tempfile.TemporaryDirectory() as folder:
        return small_guide(Path(folder), ("guide.yaml", "way_in: danger", "way_in: danger\nreview_by: 2026-06-30")).front  # fmt: skip


# --- sums ---


@pytest.mark.parametrize("name", sorted(amounts.AMOUNTS))
def test_a_changed_formula_has_its_reason_and_a_moved_number_asks_for_no_other(
    guide: Guide, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    """Another formula is a change of its sum, also where a number under it moved; a number's move is its own alone."""
    amount, before = amounts.AMOUNTS[name], statements_of(guide)
    cut = Cut(guide.front.edition, {key: each.own for key, each in before.items()})
    moved = {
        each: replace(guide.numbers[each], value=guide.numbers[each].value * 4) for each in amount.numbers
    }
    other = replace(guide, numbers={**guide.numbers, **moved})
    numbers = {f"number/{each}" for each in moved}
    assert set(moved_since(cut, statements_of(other)).all) == numbers

    def more(facts: Facts, system: Any) -> Any:
        return _Longer(amount.work_out(facts, system).words(system))

    monkeypatch.setitem(amounts.AMOUNTS, name, replace(amount, work_out=more))
    assert set(moved_since(cut, statements_of(other)).all) == {*numbers, f"sum/{name}"}


@dataclass(frozen=True)
class _Longer:
    """An amount told with one figure more."""

    said: str

    def words(self, system: Any) -> str:
        return f"{self.said}0"


def test_a_signature_of_ones_own_hides_no_unexplained_change(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """With an own folder beside it a guide is held to its edition as without."""
    folder, own = cut(tmp_path / "guide"), tmp_path / "own"
    (own / "reviews").mkdir(parents=True)
    write_small(folder, VALUE)
    for arguments in (["check", str(folder)], ["check", str(folder), "--own", str(own)]):
        assert main(arguments) == 1
        assert "[same-edition]" in capsys.readouterr().out
