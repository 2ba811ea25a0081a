"""Casebooks spoilt in many ways, and used all the same."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened, mend, open_casebook
from triage.casebook.rows import Observation
from triage.walk import Answer

PAGE = 4096
CASES = 30
MOVES = 20
Damage = Callable[[bytearray, random.Random], None]


def filled(path: Path) -> None:
    """Make a casebook of several pages: five invented lambs, with walks and notes."""
    book = opened_at(path).book
    for number in range(CASES):
        moves = tuple(Answer(f"finding-{place}", "x" * 40, "said", NOW) for place in range(MOVES))
        book.begin(replace(LAMB, id=f"lamb-{number % 5}"), replace(CASE, id=f"case-{number}", moves=moves))
        book.note(Observation(f"note-{number}", f"lamb-{number % 5}", "note", NOW, NOW, {"note": "y" * 200}))
    book.close()


def sound_casebook(path: Path) -> bytes:
    """Return a sound casebook as bytes."""
    filled(path)
    return path.read_bytes()


def put(path: Path, spoilt: bytes, log: bytes = b"") -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(spoilt)
    if log:
        path.with_name(f"{path.name}-wal").write_bytes(log)


def read_all(book: Casebook) -> bool:
    """Read everything as the screens do; whether damage was met."""
    came: list[object] = [book.lambs(), book.open_cases(99), book.looks(99), book.count_open()]
    for lamb in came[0] if isinstance(came[0], tuple) else ():
        came += [book.lamb(lamb.id), book.cases_of(lamb.id), book.observations_of(lamb.id)]
    failed = [each for each in came if isinstance(each, NotKept)]
    assert all(each.damaged for each in failed), failed
    return bool(failed)


def use(path: Path) -> Opened[Casebook] | NotKept:
    """Open and read a casebook, mended where damage is met, as the session does it."""
    opened = open_casebook(path)
    if isinstance(opened, Opened) and not opened.told and (read_all(opened.book) or not opened.book.sound()):
        opened = mend(opened.book, NOW)
    return opened


def rows(book: Casebook, table: str) -> int:
    return int(book._database.execute(f"SELECT count(*) FROM {table}").fetchone()[0])


def aside_of(path: Path) -> Path:
    [aside] = (each for each in path.parent.glob("*.damaged-*") if each.name[-1] in "0123456789x")
    return aside


def flip_bytes(spoilt: bytearray, chance: random.Random) -> None:
    for _ in range(chance.choice([1, 3, 30])):
        spoilt[chance.randrange(len(spoilt))] ^= chance.randrange(1, 256)


def flip_in_header(spoilt: bytearray, chance: random.Random) -> None:
    spoilt[chance.randrange(100)] ^= chance.randrange(1, 256)


def noise(spoilt: bytearray, chance: random.Random) -> None:
    at, length = chance.randrange(len(spoilt)), chance.choice([8, 96, 5000])
    spoilt[at : at + length] = chance.randbytes(min(length, len(spoilt) - at))


def cut(spoilt: bytearray, chance: random.Random) -> None:
    del spoilt[chance.randrange(len(spoilt)) :]


def zero_page(spoilt: bytearray, chance: random.Random) -> None:
    at = chance.randrange(len(spoilt) // PAGE) * PAGE
    spoilt[at : at + PAGE] = bytes(PAGE)


def swap_pages(spoilt: bytearray, chance: random.Random) -> None:
    one, other = (chance.randrange(len(spoilt) // PAGE) * PAGE for _ in range(2))
    kept = spoilt[one : one + PAGE]
    spoilt[one : one + PAGE] = spoilt[other : other + PAGE]
    spoilt[other : other + PAGE] = kept


def zeros_at_the_end(spoilt: bytearray, chance: random.Random) -> None:
    length = chance.randrange(1, len(spoilt))
    spoilt[-length:] = bytes(length)


def more_at_the_end(spoilt: bytearray, chance: random.Random) -> None:
    spoilt += chance.randbytes(chance.randrange(1, 9000))


DAMAGES: tuple[Damage, ...] = (
    flip_bytes, flip_in_header, noise, cut, zero_page, swap_pages, zeros_at_the_end, more_at_the_end,
)  # fmt: skip
