"""Several copies of the program at one casebook, as processes of their own."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.killing import ROOT
from triage.casebook import opening
from triage.casebook.book import Behind, Casebook
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened, mend
from triage.casebook.rows import Case
from triage.casebook.writing import HASTE
from triage.walk import Answer


def run_copies(path: Path, names: Sequence[str], count: int) -> list[str]:
    """Let copies begin at the same moment, and return what each of them printed."""
    copies = [
        subprocess.Popen(
            [sys.executable, "-m", "tests.casebook.copies", path, name, str(count)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            cwd=ROOT,
        )
        for name in names
    ]
    for copy in copies:
        assert copy.stdout is not None
        assert copy.stdout.readline() == "ready\n"
    for copy in copies:
        assert copy.stdin is not None
        copy.stdin.write("\n")
        copy.stdin.flush()
    return [copy.communicate(timeout=60)[0].strip() for copy in copies]


def test_copies_that_begin_at_once(path: Path) -> None:
    """Six copies that open a casebook which is not there yet all keep all of their walks in it."""
    assert run_copies(path, "abcdef", 15) == ["15"] * 6

    book = opened_at(path).book
    assert book.count_open() == 90
    assert book.sound()
    book.close()


def test_copies_by_turns(book: Casebook, path: Path) -> None:
    """Each copy reads at once what the other has written, and goes on with it."""
    other = opened_at(path).book
    case = book.begin(LAMB, replace(CASE, moves=()))
    for number in range(20):
        assert isinstance(case, Case)
        writer, reader = (book, other) if number % 2 else (other, book)
        more = Answer("temperature", 36.0 + number / 10, at=NOW + timedelta(minutes=number))
        kept = writer.keep(replace(case, moves=(*case.moves, more)), NOW)
        case = reader.case(CASE.id)  # type: ignore[assignment]
        assert kept == case
        assert isinstance(case, Case)
        assert len(case.moves) == number + 1
    other.close()


def test_behind_in_one_of_several_writings_undoes_them_all(book: Casebook, path: Path) -> None:
    """When one case of several was written by another copy meanwhile, none of the writings is kept."""
    case = book.begin(LAMB, CASE)
    other = opened_at(path).book
    assert isinstance(case, Case)
    assert isinstance(other.keep(case, NOW), Case)

    came = book.together([lambda: book.keep_lamb(replace(LAMB, name="New")), lambda: book.keep(case, NOW)])

    assert came == NotKept("another copy of this guide has just written to this lamb")
    assert book.lamb(LAMB.id) == LAMB
    assert isinstance(book.keep(case, NOW), Behind)
    other.close()


def test_a_casebook_that_was_deleted_while_open(book: Casebook, path: Path) -> None:
    """Nothing is written where nobody would find it: the loss is noticed, and a new casebook begun."""
    case = book.begin(LAMB, CASE)
    assert isinstance(case, Case)
    for each in path.parent.iterdir():
        each.unlink()
    path.parent.rmdir()

    came = book.keep(case, NOW)

    assert came == NotKept("the casebook was moved or deleted while it was open", damaged=True)
    mended = mend(book, NOW)
    assert isinstance(mended, Opened)
    assert "moved or deleted" in mended.told
    assert isinstance(mended.book.keep(case, NOW), Behind)  # it is not in the new one yet
    assert isinstance(mended.book.begin(LAMB, case), Case)
    mended.book.close()
    assert opened_at(path).book.case(case.id) == replace(case, version=1)


def test_a_casebook_that_another_took_the_place_of(book: Casebook, path: Path) -> None:
    """A casebook brought in from a copy while this one is open is the one that is written to from then on."""
    brought = path.parent / "brought" / "casebook.sqlite"
    there = opened_at(brought).book
    there.begin(replace(LAMB, id="brought"), replace(CASE, id="brought"))
    there.close()
    brought.replace(path)

    assert isinstance(book.begin(LAMB, CASE), NotKept)
    mended = mend(book, NOW)

    assert isinstance(mended, Opened)
    assert isinstance(mended.book.begin(LAMB, CASE), Case)
    assert isinstance(mended.book.case("brought"), Case)
    assert mended.book.sound()
    mended.book.close()


def test_a_closed_casebook_says_so(book: Casebook) -> None:
    """Writing to and reading from a casebook that was closed raises nothing, and can be mended."""
    book.begin(LAMB, CASE)
    book.close()

    assert book.keep_lamb(LAMB) == NotKept("the casebook is closed", damaged=True)
    assert book.lambs() == NotKept("the casebook is closed", damaged=True)
    assert not book.sound()
    mended = mend(book, NOW)
    assert isinstance(mended, Opened)
    assert mended.book.lamb(LAMB.id) == LAMB
    mended.book.close()


def test_a_wait_in_vain_is_short_the_next_time(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """While another copy holds the casebook, only the first try keeps a person waiting; then all is as before."""
    monkeypatch.setattr(opening, "PATIENCE", 0.2)
    book, other = opened_at(path).book, sqlite3.connect(path, isolation_level=None)

    def patience() -> int:
        return int(book._database.execute("PRAGMA busy_timeout").fetchone()[0])

    assert patience() == 200
    other.execute("BEGIN IMMEDIATE")
    for _ in range(2):
        assert book.keep_lamb(LAMB) == NotKept("another copy of this guide is writing just now")
        assert patience() == round(HASTE * 1000)
    other.execute("COMMIT")
    assert book.keep_lamb(LAMB) == LAMB
    assert patience() == 200
    other.close()
    book.close()
