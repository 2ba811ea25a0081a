"""A casebook damaged in every way that chance makes: never a traceback, the old file kept, its rows saved."""

from __future__ import annotations

import random
import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

from tests.casebook.conftest import CASE, LAMB, opened_at
from tests.casebook.damaging import (
    CASES,
    DAMAGES,
    MOVES,
    PAGE,
    Damage,
    aside_of,
    filled,
    put,
    read_all,
    rows,
    use,
)
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened
from triage.casebook.rows import Case


@pytest.mark.parametrize("damage", DAMAGES)
def test_chance_damage(damage: Damage, whole: bytes, tmp_path: Path) -> None:
    """Some 200 in all: opening and reading raise nothing. A file that is set aside is kept byte for byte,
    the new one is sound and can be written to, and nothing is told as saved that is not in it."""
    chance = random.Random(damage.__name__)
    for number in range(26):
        spoilt = bytearray(whole)
        damage(spoilt, chance)
        path = tmp_path / str(number) / "casebook.sqlite"
        put(path, bytes(spoilt))

        came = use(path)

        if isinstance(came, NotKept):  # what is left of its first bytes says that it is not ours to touch
            assert "newer edition" in came.why or "another program" in came.why
            assert path.read_bytes() == spoilt
            continue
        if came.told:
            assert aside_of(path).read_bytes() == spoilt
            saved = f"{rows(came.book, 'cases')} walks, {rows(came.book, 'moves')} answers"
            assert saved in came.told or came.told.endswith("Nothing in it could be read.")
        assert came.book.sound()
        assert not read_all(came.book)
        assert isinstance(came.book.begin(replace(LAMB, id="new"), replace(CASE, id="new")), Case)
        came.book.close()
        again = use(path)
        assert isinstance(again, Opened)
        assert again.told == "", "once mended, it stays mended"
        again.book.close()


@pytest.mark.parametrize(
    "spoilt", [b"", b"S\n", b"SQLite format 3\0", b"A shopping list\n" * 300, bytes(9000)]
)
def test_what_never_was_a_casebook(spoilt: bytes, path: Path) -> None:
    """An empty file becomes a casebook. Any other that is no database is kept aside, and a new one begun."""
    put(path, spoilt)

    came = use(path)

    assert isinstance(came, Opened)
    assert came.book.sound()
    assert bool(came.told) == bool(spoilt)
    if spoilt:
        assert aside_of(path).read_bytes() == spoilt
        assert "Nothing in it could be read." in came.told
    came.book.close()


@pytest.mark.parametrize("zeroed", [16, 100, PAGE])
def test_a_lost_beginning_loses_no_answer(zeroed: int, whole: bytes, path: Path) -> None:
    """With the first bytes or the whole first page gone, every row is saved all the same."""
    put(path, bytes(zeroed) + whole[zeroed:])

    came = use(path)

    assert isinstance(came, Opened)
    assert (
        f"Saved from it: 5 lambs, {CASES} walks, {CASES * MOVES} answers and acts, {CASES} notes."
        in came.told
    )
    assert came.book.count_open() == CASES
    came.book.close()


def test_the_front_of_a_file_cut_short_is_saved(whole: bytes, path: Path) -> None:
    """Half a file gives the rows of its half."""
    put(path, whole[: len(whole) // 2])

    came = use(path)

    assert isinstance(came, Opened)
    assert rows(came.book, "cases") > CASES // 3
    assert rows(came.book, "moves") > MOVES
    came.book.close()


@pytest.mark.parametrize("number", range(1, 60, 3))
def test_one_lost_page(number: int, whole: bytes, path: Path) -> None:
    """Any one page of a table but its root costs what was on it, and no answer that lay elsewhere."""
    pages = len(whole) // PAGE
    at = (number % (pages - 1) + 1) * PAGE
    put(path, whole[:at] + bytes(PAGE) + whole[at + PAGE :])

    came = use(path)

    assert isinstance(came, Opened)
    roots = root_pages(whole)
    if at // PAGE + 1 not in roots:
        assert rows(came.book, "moves") >= CASES * MOVES - PAGE // 40
        assert rows(came.book, "cases") == CASES
    assert not read_all(came.book)
    came.book.close()


def root_pages(whole: bytes) -> set[int]:
    database = sqlite3.connect(":memory:")
    database.deserialize(whole[:18] + b"\1\1" + whole[20:])  # 1 is no log (SQLite file format, 1.3.3)
    return {row[0] for row in database.execute("SELECT rootpage FROM sqlite_master")}


def test_a_damaged_log_gives_what_was_flushed(path: Path) -> None:
    """However the log beside the file is damaged, what the file itself holds is read, and nothing is raised."""
    filled(path)
    book = opened_at(path).book
    for number in range(10):
        book.begin(LAMB, replace(CASE, id=f"late-{number}"))
    whole = path.read_bytes()
    log = path.with_name(f"{path.name}-wal").read_bytes()
    book.close()
    chance = random.Random(9)
    spoilt = [log[: chance.randrange(len(log))] for _ in range(10)] + [
        bytes(len(log)),
        chance.randbytes(len(log)),
    ]
    for _ in range(20):
        at = chance.randrange(len(log))
        spoilt.append(log[:at] + chance.randbytes(8) + log[at + 8 :])
    for number, each in enumerate(spoilt):
        place = path.parent / str(number) / "casebook.sqlite"
        put(place, whole, each)

        came = use(place)

        assert isinstance(came, Opened)
        assert came.told == ""
        assert rows(came.book, "cases") >= CASES
        assert isinstance(came.book.begin(LAMB, replace(CASE, id="new")), Case)
        came.book.close()
