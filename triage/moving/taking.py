"""Taking a moved lamb into the casebook: all of it, or nothing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeVar

from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept
from triage.casebook.writing import Undo
from triage.moving.reading import Moved

T = TypeVar("T")


@dataclass(frozen=True)
class Taken:
    """What was new and what was there already; what is there is never written over."""

    new_lamb: bool
    cases: int
    observations: int
    there: int


def take_in(book: Casebook, moved: Moved) -> Taken | NotKept:
    """Take a moved lamb in. Its card, cases and observations that are there, by their id, stay as they are.

    What is there is read in the same transaction, so that no other copy writes in between.
    """
    taken: list[Taken] = []
    failed = book.together([lambda: taken.append(_take(book, moved))])
    return failed or taken[0]


def _take(book: Casebook, moved: Moved) -> Taken:
    card = _read(book.lamb(moved.lamb.id))
    cases, notes = _read(book.ids("cases")), _read(book.ids("observations"))
    if card is None:
        _read(book.keep_lamb(moved.lamb))
    fresh = [case for case in moved.cases if case.id not in cases]
    new = [each for each in moved.observations if each.id not in notes]
    for case in fresh:
        _read(book.begin(card or moved.lamb, case))
    for each in new:
        _read(book.note(each))
    there = len(moved.cases) - len(fresh) + len(moved.observations) - len(new)
    return Taken(card is None, len(fresh), len(new), there)


def _read(came: T | NotKept) -> T:
    if isinstance(came, NotKept):
        raise Undo(came)
    return came
