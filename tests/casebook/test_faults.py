"""Faults that a night brings: the guide goes on, and what was kept stays kept."""

from __future__ import annotations

import io
import resource
import sqlite3
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path

import platformdirs
import pytest

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.killing import ROOT, kill_and_read
from tests.casebook.test_opening import filled
from triage import cli
from triage.casebook import opening
from triage.casebook.failing import NotKept
from triage.casebook.opening import open_casebook
from triage.casebook.rows import Case
from triage.clock import Now
from triage.guide.model import Guide
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.walk import Walk


def session(guide: Guide, path: Path) -> Session:
    opened = opened_at(path)
    return Session(Walk(guide), clock=lambda: Now(NOW), house=House(Keeping(opened.book)))


def test_a_killed_process_loses_nothing(path: Path) -> None:
    """Killed with SIGKILL at random moments: every answer that was acknowledged is there, the file is sound,
    and the next start is clean and under a second. tests/bench/kills.py does it 500 times."""
    killed = kill_and_read(path, 15, seed=3)

    assert killed.kills == 15
    assert killed.acknowledged > 100
    assert (killed.lost, killed.damaged, killed.told) == ([], 0, [])
    assert killed.slowest < 1


def test_a_full_disk_is_told_and_made_good(guide: Guide, path: Path) -> None:
    """While the disk is full the guide walks on and says so on each page; once there is room again,
    all answers are kept, those given meanwhile too."""
    held = session(guide, path)
    held.take("6")
    database = held.desk.keeping.book._database  # type: ignore[union-attr]
    pages = database.execute("PRAGMA page_count").fetchone()[0]
    database.execute(f"PRAGMA max_page_count = {pages}")
    for _ in range(400):  # what is taken back stays in the file, so that this uses up its last page
        held.take("39.3")
        held.take("b")
    held.take("39.3")
    held.take("1")

    assert "Not kept: the disk is full" in held.page().alarm
    assert len(held.walk.moves) == 3
    database.execute("PRAGMA max_page_count = 1000000")
    held.watch()
    assert held.told == "Everything is kept again."
    assert held.page().alarm == ""
    case = opened_at(path).book.case(held.desk.keeping.case.id)  # type: ignore[union-attr]
    assert case.moves == held.walk.moves  # type: ignore[union-attr]


def test_a_disk_that_is_full_at_the_start(tmp_path: Path) -> None:
    """Where not even an empty casebook fits, the guide still opens and walks, and says that nothing is kept."""
    code = "import signal, resource; signal.signal(signal.SIGXFSZ, signal.SIG_IGN); "
    code += "resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100)); import triage.cli; "
    code += f"raise SystemExit(triage.cli.main(['walk', '--plain', '--casebook', {str(tmp_path / 'c.sqlite')!r}]))"
    ran = subprocess.run(
        [sys.executable, "-c", code],
        input="6\n39.3\n",
        capture_output=True,
        text=True,
        cwd=ROOT,
        timeout=60,
        check=False,
    )

    assert "Not kept:" in ran.stdout
    assert "39.3 °C" in ran.stdout
    assert "Traceback" not in ran.stderr
    assert resource.getrlimit(resource.RLIMIT_FSIZE)[0] != 100


def test_a_home_that_can_not_be_written_to(guide: Guide, tmp_path: Path) -> None:
    """In a folder that may only be read, or that can't be made, nothing is kept and the reason is told."""
    (tmp_path / "file").write_text("in the way")
    came = open_casebook(tmp_path / "file" / "deep" / "casebook.sqlite")
    assert isinstance(came, NotKept)

    held = Session(Walk(guide), house=House(Keeping(None, came.why)))
    for line in ("6", "39.3", "l", "7", "A note of the night", "b", "v"):
        held.take(line)

    texts = " ".join(block.text for block in held.page().blocks)
    assert "Not kept: " in held.page().alarm
    assert "A note of the night" in texts
    assert "39.3 °C" in texts


def test_no_home_at_all(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """With no home folder the guide opens and walks, and makes no folder of a strange name."""
    monkeypatch.setattr(platformdirs, "user_data_path", lambda *_, **__: Path("~/.local/share/bummer-triage"))
    monkeypatch.setattr(platformdirs, "user_config_path", lambda *_, **__: Path("~/.config/bummer-triage"))
    monkeypatch.setattr(sys, "stdin", io.StringIO("6\n39.3\n"))

    assert cli.main(["walk", "--plain"]) == 0

    said = capsys.readouterr().out
    assert "Not kept: this machine names no home folder" in said
    assert "39.3 °C" in said
    assert not Path("~").exists()


def test_a_second_copy_that_holds_the_lock(guide: Guide, path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """While another copy is in the middle of a writing, answers wait for it; if it takes too long, the
    guide says so, and keeps all of them afterwards."""
    monkeypatch.setattr(opening, "PATIENCE", 0.05)
    held = session(guide, path)
    held.take("6")
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")

    held.take("39.3")

    assert "another copy of this guide is writing" in held.page().alarm
    other.execute("ROLLBACK")
    other.close()
    held.take("1")
    assert held.page().alarm == ""
    assert held.desk.keeping.case.moves == held.walk.moves  # type: ignore[union-attr]


def test_two_copies_at_once(path: Path) -> None:
    """Two copies that write at the same time both keep everything, and each sees the other's lambs."""

    def write(copy: str) -> int:
        book = opened_at(path).book
        kept = 0
        for number in range(60):
            name = f"{copy}-{number}"
            kept += isinstance(book.begin(replace(LAMB, id=name), replace(CASE, id=name)), Case)
        book.close()
        return kept

    opened_at(path).book.close()
    with ThreadPoolExecutor(2) as both:
        assert list(both.map(write, ("one", "other"))) == [60, 60]
    book = opened_at(path).book
    assert book.count_open() == 120
    assert book.sound()


def test_two_copies_on_one_lamb(guide: Guide, path: Path) -> None:
    """Two copies that go on with the same walk: the one that is behind gets a walk of its own, told so, and
    every answer of both is kept."""
    one = session(guide, path)
    one.take("6")
    other = session(guide, path)
    other.open("lambs")
    other.take("2")
    one.take("39.3")
    other.take("38.2")

    assert "Another copy went on with this walk" in other.told
    one.open("lambs")
    lines = [block.text for block in one.page().blocks if block.mark.isdecimal()]
    assert len(lines) == 3
    book = one.desk.keeping.book
    temperatures = {case.moves[1].value for _, case in book.open_cases(9)}  # type: ignore[union-attr]
    assert temperatures == {39.3, 38.2}


def test_damage_met_at_night_is_mended(guide: Guide, path: Path) -> None:
    """A file that turns out to be damaged is kept aside, a new one begun, and the walk in hand is in it."""
    held = session(guide, path)
    held.take("6")
    database = held.desk.keeping.book._database  # type: ignore[union-attr]
    database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    database.execute("PRAGMA cache_size = 0")
    spoilt = bytearray(path.read_bytes())
    spoilt[4096:] = b"\xff" * (len(spoilt) - 4096)
    path.write_bytes(spoilt)

    held.take("39.3")
    held.take("1")

    assert held.page().alarm == ""
    assert list(path.parent.glob("casebook.sqlite.damaged-*"))
    case = opened_at(path).book.case(held.desk.keeping.case.id)  # type: ignore[union-attr]
    assert case.moves == held.walk.moves  # type: ignore[union-attr]


@pytest.mark.parametrize("hours", [-1, -24 * 365 * 56])
def test_a_clock_that_was_set_back(guide: Guide, path: Path, hours: int) -> None:
    """With the clock an hour back, or in 1970, walks are kept, resumed and looked at: early, never late."""
    from datetime import timedelta

    held = session(guide, path)
    for line in ("5", "36.2", "3h", "d"):
        held.take(line)
    back = Now(NOW + timedelta(hours=hours))
    again = Session(Walk(guide), clock=lambda: back, house=House(Keeping(opened_at(path).book)))
    again.watch()
    again.open("lambs")

    texts = " ".join(block.text for block in again.page().blocks)
    assert "look now. The clock was set back" in texts
    assert "Look again now" in again.page().alarm
    for line in ("2", "38.1", "l", "1", "38.2", "b", "v", "b"):
        again.take(line)
    assert again.page().kind == "ask"
    assert again.page().alarm == ""


def test_damage_that_nothing_met_is_found(guide: Guide, path: Path) -> None:
    """The whole file is read once after the start, so that damage in an old page does not wait for the night
    on which it is needed."""
    filled(path, 60)
    whole = bytearray(path.read_bytes())
    middle = len(whole) // 2 // 4096 * 4096
    whole[middle : middle + 4096] = b"\x55" * 4096
    path.write_bytes(whole)
    held = session(guide, path)

    held.watch()

    assert "The casebook was damaged. It is kept as" in held.told
    held.take("6")
    assert held.page().alarm == ""
    assert held.desk.keeping.book.sound()  # type: ignore[union-attr]


def test_several_lambs_while_the_disk_is_full(guide: Guide, path: Path) -> None:
    """What was answered and noted for one lamb while nothing could be kept is kept as that lamb's, also when
    another one has been taken up meanwhile."""
    held = session(guide, path)
    held.take("6")
    database = held.desk.keeping.book._database  # type: ignore[union-attr]
    database.execute(f"PRAGMA max_page_count = {database.execute('PRAGMA page_count').fetchone()[0]}")
    for _ in range(400):
        held.take("39.3")
        held.take("b")
    blue = ("39.3", "l", "c", "1", "Blue 7", "", "1", "39.1")
    for line in (*blue, "o", "1", "5", "36.2", "l", "1", "36.4"):
        held.take(line)
    assert "Not kept" in held.page().alarm

    database.execute("PRAGMA max_page_count = 1000000")
    held.watch()

    assert held.told == "Everything is kept again."
    book = opened_at(path).book
    lambs = {lamb.name: lamb for lamb in book.lambs()}  # type: ignore[union-attr]
    other = next(lamb for name, lamb in lambs.items() if name != "Blue 7")
    for lamb, moves, seen in ((lambs["Blue 7"], ["none", 39.3], 39.1), (other, ["limp", 36.2], 36.4)):
        [case] = book.cases_of(lamb.id)  # type: ignore[misc]
        assert [move.value for move in case.moves] == moves  # type: ignore[union-attr]
        [note] = book.observations_of(lamb.id)  # type: ignore[misc]
        assert note.parts == {"temperature": seen}
