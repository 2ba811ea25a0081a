"""Opening what there is beside the guide: the casebook and the holding. Neither ever keeps the guide shut."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from triage.casebook.failing import NotKept
from triage.holding.found import Found, find_holding
from triage.page.inert import inert
from triage.session.desk import House
from triage.session.keeping import Keeping

if TYPE_CHECKING:
    import argparse

    from triage.casebook.book import Casebook
    from triage.casebook.opening import Opened
    from triage.casebook.practice import PracticeBook

UNKEPT = "Nothing of this walk is kept, as you asked."
OTHER_GUIDE = "Nothing of this walk is kept, as it goes by another guide; add --casebook FILE to keep it."


def open_house(parsed: argparse.Namespace, found: Found | None = None) -> House:
    """Open the casebook and take the holding, as the arguments ask for; `found` is what was read ahead."""
    house = House(papers=Path())
    _use_holding(house, found or find_holding())
    if parsed.unkept or (parsed.guide and not parsed.casebook):
        house.notes.append(UNKEPT if parsed.unkept else OTHER_GUIDE)
        return house
    _open_casebook(house, parsed.casebook)
    return house


def _use_holding(house: House, found: Found) -> None:
    if found.place is None or found.read is None:
        return
    house.holding, house.holding_file = found.read.holding, found.place
    house.ask = not found.there
    problems = found.read.problems
    if problems:
        more = f" and {len(problems) - 1} more" if len(problems) > 1 else ""
        house.notes.append(f"In your holding: {inert(str(problems[0]), 200)}{more}. The rest of it is used.")


def _open_casebook(house: House, asked: Path | None) -> None:
    opened = casebook_at(asked)
    if isinstance(opened, NotKept):
        house.keeping = Keeping(None, opened.why)
        return
    house.keeping = Keeping(opened.book)
    if opened.told:
        house.notes.append(opened.told)


def casebook_at(asked: Path | None) -> Opened[Casebook] | NotKept:
    """Open the casebook that was asked for, or the one in its usual place."""
    from triage.casebook.opening import open_casebook
    from triage.holding.place import Nowhere, casebook_file

    place = asked or casebook_file()
    return NotKept(place.why) if isinstance(place, Nowhere) else open_casebook(place)


def practice_book(parsed: argparse.Namespace) -> tuple[PracticeBook | None, str]:
    """Open the practice book, which lies beside the casebook; with it what has to be told of that."""
    from triage.casebook.opening import open_book
    from triage.casebook.practice import PracticeBook, beside
    from triage.holding.place import Nowhere, casebook_file

    if parsed.guide and not parsed.casebook:
        return None, "Nothing of this is kept, as it goes by another guide; add --casebook FILE to keep it."
    place = parsed.casebook or casebook_file()
    if isinstance(place, Nowhere):
        return None, f"Nothing of this is kept: {place.why}."
    try:
        opened = open_book(PracticeBook, beside(place))
    except ValueError:
        opened = NotKept("no file can have that name")
    if isinstance(opened, NotKept):
        return None, f"Nothing of this is kept: {opened.why.replace('casebook', 'practice book')}."
    return opened.book, opened.told


def anyone_in_care(house: House) -> bool:
    """Whether any case is open, so that the list of lambs comes first."""
    count = house.keeping.book.count_open() if house.keeping.book else 0
    return not isinstance(count, NotKept) and count > 0
