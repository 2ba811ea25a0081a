"""Mending a damaged casebook: what is saved of it, and what can go wrong meanwhile."""

from __future__ import annotations

import errno
import os
import random
import sqlite3
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.damaging import (
    CASES,
    MOVES,
    PAGE,
    aside_of,
    put,
    read_all,
    rows,
    use,
)
from tests.casebook.killing import ROOT
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened, mend, open_casebook
from triage.casebook.rows import Case
from triage.casebook.schema import LOST
from triage.walk import Answer


def test_answers_whose_case_was_lost_get_one(whole: bytes, path: Path) -> None:
    """When the page of the walks is gone, each walk's answers come back as a walk of a lamb without a card."""
    put(path, whole)
    with sqlite3.connect(path) as raw:
        page = raw.execute("SELECT rootpage FROM sqlite_master WHERE name = 'cases'").fetchone()[0]
    raw.close()
    spoilt = bytearray(path.read_bytes())
    spoilt[(page - 1) * PAGE : page * PAGE] = bytes(PAGE)
    path.write_bytes(spoilt)

    came = use(path)

    assert isinstance(came, Opened)
    cases = came.book.open_cases(99)
    assert isinstance(cases, tuple)
    assert {(lamb.name, len(case.moves), case.begun) for lamb, case in cases} == {(LOST, MOVES, NOW)}
    assert len(cases) == CASES
    came.book.close()


COLUMNS = (
    "lambs.id", "lambs.name", "lambs.added", "lambs.born", "lambs.born_guessed", "lambs.birth_type", "lambs.sex",
    "cases.id", "cases.lamb", "cases.begun", "cases.touched", "cases.edition", "cases.look_set",
    "cases.look_due", "cases.closed", "cases.version",
    "moves.case_id", "moves.place", "moves.name", "moves.value", "moves.said", "moves.at", "moves.dropped",
    "observations.id", "observations.lamb", "observations.kind", "observations.at", "observations.written",
    "observations.parts",
)  # fmt: skip


@pytest.mark.parametrize("column", COLUMNS)
def test_a_value_of_the_wrong_kind(column: str, whole: bytes, path: Path) -> None:
    """A value that SQLite takes for sound and no reader can use costs its own row at most, and is met once."""
    table, _, name = column.partition(".")
    for value in ("x'00ff'", "CAST(x'ff41' AS TEXT)", "'last night'", "9223372036854775807", "1e300", "NULL"):
        put(path, whole)
        with sqlite3.connect(path) as raw, suppress(sqlite3.IntegrityError):
            raw.execute(f"UPDATE {table} SET {name} = {value} WHERE rowid = 4")
        raw.close()

        came = use(path)

        assert isinstance(came, Opened)
        assert not read_all(came.book)
        assert rows(came.book, "moves") >= CASES * MOVES - 1
        case = came.book.case("case-7")
        assert isinstance(case, Case)
        kept = came.book.keep(replace(case, moves=(*case.moves, Answer("age", 2.0))), NOW)
        assert isinstance(kept, Case)
        came.book.close()
        again = use(path)
        assert isinstance(again, Opened)
        assert again.told == ""
        again.book.close()
        for each in path.parent.iterdir():
            each.unlink()


def test_a_full_disk_while_mending_changes_nothing(whole: bytes, path: Path) -> None:
    """When there is no room for a new casebook, the damaged one stays where it was, to be mended later."""
    spoilt = whole[: len(whole) // 2]
    put(path, spoilt)
    code = "import resource, signal, sys; from pathlib import Path\n"
    code += "from triage.casebook.opening import open_casebook\n"
    code += "signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
    code += "resource.setrlimit(resource.RLIMIT_FSIZE, (9000, 9000))\n"
    code += "print(open_casebook(Path(sys.argv[1])))"
    ran = subprocess.run(
        [sys.executable, "-c", code, path], capture_output=True, text=True, cwd=ROOT, check=True
    )

    assert ran.stdout.startswith("NotKept(")
    assert not [each.name for each in path.parent.iterdir() if "damaged" in each.name or ".new" in each.name]
    assert path.read_bytes() == spoilt
    came = use(path)
    assert isinstance(came, Opened)
    assert "Saved from it" in came.told
    came.book.close()


def test_two_copies_that_mend_at_once(whole: bytes, path: Path) -> None:
    """Of several copies that meet the damage together one mends, and all of them write to the new casebook."""
    put(path, whole[: len(whole) // 2])

    def begin(name: int) -> bool:
        came = open_casebook(path)
        assert isinstance(came, Opened), came
        kept = came.book.begin(replace(LAMB, id=f"new-{name}"), replace(CASE, id=f"new-{name}"))
        came.book.close()
        return isinstance(kept, Case)

    with ThreadPoolExecutor(4) as copies:
        assert all(copies.map(begin, range(4)))

    assert aside_of(path).read_bytes() == whole[: len(whole) // 2]
    book = opened_at(path).book
    assert all(isinstance(book.case(f"new-{name}"), Case) for name in range(4))
    book.close()


def test_a_disk_that_knows_no_second_name(whole: bytes, path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a file can't have two names at once it is renamed, and all else is the same."""

    def no_link(*names: object) -> None:
        raise PermissionError(errno.EPERM, os.strerror(errno.EPERM))

    monkeypatch.setattr(os, "link", no_link)
    put(path, bytes(100) + whole[100:])

    came = use(path)

    assert isinstance(came, Opened)
    assert "Saved from it: 5 lambs" in came.told
    assert aside_of(path).read_bytes() == bytes(100) + whole[100:]
    came.book.close()


def test_a_second_damage_in_the_same_second(whole: bytes, path: Path) -> None:
    """A casebook set aside never takes the place of one that was set aside before."""
    for spoilt in (whole[:9000], whole[:5000]):
        put(path, spoilt)
        came = open_casebook(path, lambda: NOW)
        assert isinstance(came, Opened)
        came.book.close()

    kept = {each.name: each.read_bytes() for each in path.parent.iterdir() if "damaged" in each.name}
    assert kept == {
        "casebook.sqlite.damaged-20260211-021000": whole[:9000],
        "casebook.sqlite.damaged-20260211-021000x": whole[:5000],
    }


def test_mending_that_fails_can_be_tried_again(
    whole: bytes, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """While a casebook can't be mended the reason is told; later, without another start, it is mended."""
    put(path, whole)
    came = open_casebook(path)
    assert isinstance(came, Opened)
    with monkeypatch.context() as patched:
        patched.setattr("triage.casebook.mending.salvage", full)
        assert mend(came.book, NOW) == NotKept("the disk is full")
    assert came.book.keep_lamb(LAMB) == NotKept("the casebook is closed", damaged=True)
    assert [each.name for each in path.parent.iterdir()] == [path.name]

    mended = mend(came.book, NOW)

    assert isinstance(mended, Opened)
    assert mended.book.count_open() == CASES
    mended.book.close()


def full(*_: object) -> None:
    raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))


def test_a_kill_while_mending_loses_nothing(whole: bytes, path: Path) -> None:
    """Killed at any moment of the mending, the next start mends what is left to mend: all rows are there, and
    the damaged file is kept."""
    spoilt = bytes(100) + whole[100:]
    code = "import sys; from pathlib import Path; from triage.casebook.opening import open_casebook\n"
    code += "import triage.casebook.mending; print('ready', flush=True); open_casebook(Path(sys.argv[1]))\n"
    code += "print('open', flush=True); sys.stdin.readline()"
    chance, killed = random.Random(5), 0
    for number in range(15):
        place = path.parent / str(number) / path.name
        put(place, spoilt)
        with subprocess.Popen(
            [sys.executable, "-c", code, place],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            cwd=ROOT,
        ) as mending:
            assert mending.stdout is not None
            assert mending.stdout.readline() == "ready\n"
            time.sleep(chance.random() * 0.03 if number else 0)
            mending.kill()
            killed += "open" not in mending.stdout.read()

        came = use(place)

        assert isinstance(came, Opened)
        assert (rows(came.book, "cases"), rows(came.book, "moves")) == (CASES, CASES * MOVES)
        asides = [
            each for each in place.parent.glob("*.damaged-*") if not each.name.endswith(("-wal", "-shm"))
        ]
        assert spoilt in [each.read_bytes() for each in asides]
        came.book.close()
    assert killed
