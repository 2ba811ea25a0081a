"""The shelf's file: written whole or not at all, and nothing of a person's own is lost by it."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

import pytest

from triage.cupboard.file import change_shelf, read_shelf
from triage.cupboard.shelf import Shelf
from triage.own_file import BIGGEST

UNITS = {"probe": "count", "powder": "kg"}


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "own" / "shelf.txt"


def by_hand(path: Path, text: str) -> Path:
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def packs(path: Path, name: str) -> list[str]:
    return [str(lot) for lot in read_shelf(path, UNITS).shelf.lots[name]]


def test_what_is_set_is_there(path: Path) -> None:
    """What was set is read again, and a missing file is an empty shelf."""
    assert read_shelf(path, UNITS).shelf == Shelf()
    assert change_shelf({"lambs": "5", "powder": "10 kg, 03/2027"}, path, UNITS) == ()

    read = read_shelf(path, UNITS)
    assert read.problems == ()
    assert read.shelf.lambs == 5
    assert packs(path, "powder") == ["10 kg, 2027-03"]


def test_packs_can_be_added(path: Path) -> None:
    """With a plus what was bought comes to what is there."""
    change_shelf({"powder": "10 kg, 2027-03"}, path, UNITS)

    assert change_shelf({"powder+": "5 kg"}, path, UNITS) == ()
    assert packs(path, "powder") == ["10 kg, 2027-03", "5 kg"]


def test_nothing_is_added_to_a_line_that_can_not_be_read(path: Path) -> None:
    """What stands there can't be summed up, so it is told and left as it is."""
    by_hand(path, "powder: 2 big bags\n")

    assert "can't be read" in change_shelf({"powder+": "5 kg"}, path, UNITS)[0]
    assert path.read_text(encoding="utf-8") == "powder: 2 big bags\n"


def test_own_lines_stay(path: Path) -> None:
    """Notes, an order of one's own and lines of another edition are there after a change."""
    by_hand(path, "# Ann has the key\nold-thing: 3\nprobe: 1 # drawer\n")

    assert change_shelf({"probe": "2", "lambs": "4"}, path, UNITS) == ()
    assert (
        path.read_text(encoding="utf-8") == "# Ann has the key\nold-thing: 3\nprobe: 2  # drawer\nlambs: 4\n"
    )


def test_all_or_nothing(path: Path) -> None:
    """Of several changes none is written where one is wrong; each wrong one is told."""
    by_hand(path, "probe: 1\n")

    wrong = change_shelf({"probe": "2", "powder": "10", "bogus": "1"}, path, UNITS)

    assert [line.partition(":")[0] for line in wrong] == ["powder", "bogus"]
    assert path.read_text(encoding="utf-8") == "probe: 1\n"


def test_too_many_packs_are_told(path: Path) -> None:
    """Packs added beyond what a line can hold are refused, as they could not be read again."""
    change_shelf({"powder": "; ".join(["1 kg"] * 20)}, path, UNITS)

    assert "more than 20 packs" in change_shelf({"powder+": "1 kg"}, path, UNITS)[0]


@pytest.mark.parametrize(
    ("raw", "why"), [(b"probe: \xff\n", "not UTF-8"), (b"x" * (BIGGEST + 1), "longer than")]
)
def test_what_can_not_be_read_is_not_written_over(path: Path, raw: bytes, why: str) -> None:
    """A file that is no text is told, and stays as it is."""
    path.parent.mkdir()
    path.write_bytes(raw)

    assert why in str(read_shelf(path, UNITS).problems[0])
    assert why in change_shelf({"probe": "2"}, path, UNITS)[0]
    assert path.read_bytes() == raw


def test_a_pipe_in_its_place_is_left_alone(path: Path) -> None:
    """A pipe that nobody reads is neither waited for nor replaced."""
    path.parent.mkdir()
    os.mkfifo(path)

    assert "this is not a file" in change_shelf({"probe": "2"}, path, UNITS)[0]
    assert stat.S_ISFIFO(path.stat().st_mode)


def test_a_full_disk_loses_nothing(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When there is no room, the file stands as it was and nothing is left beside it."""
    by_hand(path, "probe: 1\n")

    def full(handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)

    assert "No space left on device" in change_shelf({"probe": "2"}, path, UNITS)[0]
    assert os.listdir(path.parent) == ["shelf.txt"]
    assert path.read_text(encoding="utf-8") == "probe: 1\n"


def test_only_the_owner_may_read_it(path: Path) -> None:
    """The file and its folder are the owner's alone."""
    before = os.umask(0)
    change_shelf({"probe": "2"}, path, UNITS)
    os.umask(before)

    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700


def test_packs_beyond_what_was_looked_at_are_not_lost(path: Path) -> None:
    """Past fifty mistakes nothing is read, so nobody can tell what a line further on holds; it is left alone."""
    text = "".join(f"junk-{number}: 1\n" for number in range(60)) + "powder: 10 kg, 2027-03\n"
    by_hand(path, text)

    assert "too many mistakes" in "".join(change_shelf({"powder+": "5 kg"}, path, UNITS))
    assert path.read_text(encoding="utf-8") == text
