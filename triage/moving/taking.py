"""Taking a moved lamb into the casebook: all of it, or nothing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept
from triage.moving.reading import Moved


@dataclass(frozen=True)
class Taken:
    """What was new and what was there already; what is there is never written over."""

    new_lamb: bool
    cases: int
    observations: int
    there: int


def take_in(book: Casebook, moved: Moved) -> Taken | NotKept:
    """Take a moved lamb in. Cases and observations that are there, by their id, stay as they are."""
    lamb, cases, seen = book.lamb(moved.lamb.id), book.ids("cases"), book.ids("observations")
    for read in (lamb, cases, seen):
        if isinstance(read, NotKept):
            return read
    assert not isinstance(cases, NotKept)
    assert not isinstance(seen, NotKept)
    fresh = [case for case in moved.cases if case.id not in cases]
    steps: list[Callable[[], object]] = [] if lamb else [partial(book.keep_lamb, moved.lamb)]
    # An older card stays, so that a case taken in late undoes nothing that was written here.
    card = moved.lamb if lamb is None or isinstance(lamb, NotKept) else lamb
    steps += [partial(book.begin, card, case) for case in fresh]
    new = [each for each in moved.observations if each.id not in seen]
    steps += [partial(book.note, each) for each in new]
    failed = book.together(steps)
    if failed:
        return failed
    there = len(moved.cases) - len(fresh) + len(moved.observations) - len(new)
    return Taken(lamb is None, len(fresh), len(new), there)
