"""Keeping the walk in hand: into the casebook at each change, and never lost when that fails."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import partial
from typing import TYPE_CHECKING, TypeVar

from triage.casebook.book import Behind, Casebook
from triage.casebook.failing import NotKept
from triage.casebook.moves import alike
from triage.casebook.opening import Opened, mend
from triage.casebook.rows import Case, Lamb, Look, Observation, new_id
from triage.clock import Now
from triage.looks import look_of
from triage.session.unkept import SetDown, Unkept, as_case, name_by
from triage.walk import Walk
from triage.ways_in import begun

if TYPE_CHECKING:
    from triage.weighings import Weighing

T = TypeVar("T")

UNTRIED = "it was not tried yet"
FORKED = "Another copy went on with this walk. Yours is kept beside it, as a walk of its own."


@dataclass
class Keeping:
    """The casebook, or why there is none, and the case in hand. A walk with no answer is not a case."""

    book: Casebook | None = None
    why_not: str = ""
    """Why nothing is kept, as half a sentence; empty while all is kept, or where nothing is to be."""
    lamb: Lamb | None = None
    case: Case | None = None
    called: str = ""  # what the walk in hand is about, where that is no lamb
    _looked_over: bool = field(default=False, init=False)
    _unwritten: list[tuple[Lamb, Observation]] = field(default_factory=list)
    unkept: Unkept = field(default_factory=Unkept)

    def take_up(self, lamb: Lamb | None, case: Case | None, instead_of: Walk, now: Now) -> None:
        """Take up a lamb and its case, or neither for a lamb that is not known yet.

        The walk that was in hand is remembered until it is kept, if it could not be kept so far.
        """
        if (self.why_not or self.book is None) and begun(instead_of):
            self.unkept.walks.append(SetDown(self.known(now), self.case, instead_of))
        self.lamb, self.case = lamb, case

    def take_up_again(self, place: int, instead_of: Walk, now: Now) -> Walk:
        """Take up a walk that was set down, by its place among them, and return it."""
        taken = self.unkept.walks.pop(place)
        self.take_up(taken.lamb, taken.case, instead_of, now)
        return taken.walk

    def known(self, now: Now) -> Lamb:
        """Return the lamb in hand; one that nothing is known of yet gets a name by the clock."""
        if self.lamb is None:
            self.lamb = Lamb(new_id(), self._free_name(name_by(now, self.called or "lamb")), now.moment)
        return self.lamb

    def fresh(self, now: Now) -> Lamb:
        """Return the lamb in hand with its card as it is in the file, where another copy may have written."""
        lamb = self.known(now)
        there = self.book.lamb(lamb.id) if self.book and not self.why_not else None
        return there if isinstance(there, Lamb) else lamb

    def _free_name(self, name: str) -> str:
        """Return a name that no lamb has yet: two may be begun in one minute."""
        lambs = self.book.lambs() if self.book else ()
        taken = set() if isinstance(lambs, NotKept) else {lamb.name for lamb in lambs}
        number = 1
        while (free := f"{name} ({number})" if number > 1 else name) in taken:
            number += 1
        return free

    def keep(self, walk: Walk, now: Now) -> str:
        """Keep the walk as it now is. Returns what the person must be told of it, mostly nothing.

        Whatever could not be kept before is part of the walk, and so is kept with it.
        """
        if self.book is None or (not begun(walk) and self.case is None):
            return ""
        if self.case is not None and self.case.moves == walk.moves and not self.why_not:
            return ""
        came = self._begin(walk, now) if self.case is None else self._go_on(self.case, walk, now)
        told = ""
        if isinstance(came, Behind):
            told, came = self._fork(walk, now)
        if isinstance(came, NotKept):
            return self._failed(came, lambda: self.keep(walk, now), now.moment)
        self.why_not, self.case = "", came
        failed = self._close_older(came, walk, now)
        if isinstance(failed, NotKept):
            return self._failed(failed, lambda: "", now.moment)
        return told

    def _begin(self, walk: Walk, now: Now) -> Case | NotKept:
        from triage.session.card import card_from  # the first question needs no card

        assert self.book is not None
        lamb = card_from(self.known(now), walk.moves)
        case = Case(new_id(), lamb.id, now.moment, now.moment, _edition(walk), walk.moves, look_of(walk))
        came = self.book.begin(lamb, case)
        if not isinstance(came, NotKept):
            self.lamb = lamb
        return came

    def _close_older(self, case: Case, walk: Walk, now: Now) -> NotKept | Behind | None:
        """Close the lamb's older walks once this one has come to an end, or sets a look of its own.

        Until then an older look still rings: whoever is called away in the middle is not forgotten.
        """
        if self.book is None or self.lamb is None or not (case.look or walk.finished):
            return None
        for each in self._open_of(self.lamb):
            if each.id != case.id and each.touched <= case.begun:
                came = self.book.keep(replace(each, look=None, closed=now.moment), now.moment)
                if not isinstance(came, Case):
                    return came
        return None

    def _open_of(self, lamb: Lamb) -> list[Case]:
        cases = self.book.cases_of(lamb.id) if self.book else ()
        return [] if isinstance(cases, NotKept) else [case for case in cases if case.closed is None]

    def unkept_looks(self, walk: Walk) -> list[tuple[str, Look]]:
        """Return the looks of the walk in hand and of those set down, each with the lamb's name."""
        look = self.unkept.look(walk)
        in_hand = [(self.lamb.name if self.lamb else "", look)] if look else []
        return [*self.unkept.looks(), *in_hand]

    def settle(self, walk: Walk, now: Now, closed: datetime | None) -> str:
        """Take the looks off all open cases of the lamb in hand, and close them where a time is given.

        Returns what went wrong, or an empty text.
        """
        look = look_of(walk)
        self.unkept.settled += [look] if look else []
        if self.book is None or self.lamb is None:
            return ""
        for case in self._open_of(self.lamb):
            came = self.book.keep(replace(case, look=None, closed=closed), now.moment)
            if isinstance(came, Behind):
                return "Another copy has just written to this lamb. Press it again."
            if isinstance(came, NotKept):
                self._failed(came, lambda: "", now.moment)
                return f"That could not be kept: {came.why}."
            if self.case and came.id == self.case.id:
                self.case = came
        return ""

    def keep_lamb(self, lamb: Lamb, now: Now) -> str:
        """Keep a lamb's card as it now is. Returns what went wrong, or an empty text."""
        self.lamb = lamb
        if self.book is None:
            return ""
        came = self.book.keep_lamb(lamb)
        return self._failed(came, lambda: "", now.moment) if isinstance(came, NotKept) else ""

    def _go_on(self, case: Case, walk: Walk, now: Now) -> Case | Behind | NotKept:
        from triage.session.card import card_from

        assert self.book is not None
        book, lamb = self.book, self.fresh(now)
        as_now = replace(case, edition=_edition(walk))
        if case.moves != walk.moves:
            as_now = replace(as_now, moves=walk.moves, look=look_of(walk), closed=None)
        # Only what is new tells of the lamb: what was mended on the card by hand is not put back.
        card = card_from(lamb, walk.moves[alike(case.moves, walk.moves) :])
        if card != lamb or self.why_not:
            kept = book.keep_lamb(card)
            if isinstance(kept, NotKept):
                return kept
        self.lamb = card
        return book.keep(as_now, now.moment)

    def _fork(self, walk: Walk, now: Now) -> tuple[str, Case | NotKept]:
        """Begin a case of its own for this walk; a case that is not in the file at all is written anew."""
        assert self.book is not None
        there = self.book.case(self.case.id) if self.case else None
        if isinstance(there, NotKept):
            return "", there
        return (FORKED if there else ""), self._begin(walk, now)

    def seen(self) -> tuple[Observation, ...]:
        """Return what was written down of the lamb in hand, the oldest first; what waits too."""
        seen = self.book.observations_of(self.lamb.id) if self.book and self.lamb else ()
        return self.waiting if isinstance(seen, NotKept) else (*seen, *self.waiting)

    def story(self, walk: Walk, now: Now) -> tuple[tuple[Case, ...], tuple[Observation, ...]]:
        """Return all cases and observations of the lamb in hand, the walk in hand as it now is."""
        cases = self.book.cases_of(self.lamb.id) if self.book and self.lamb else ()
        known = () if isinstance(cases, NotKept) else cases
        hand = as_case(self.lamb, self.case, walk, now)
        others = tuple(case for case in known if case.id != hand.id)
        return (*others, *((hand,) if begun(walk) else ())), self.seen()

    def weighed(self) -> list[Weighing]:
        """Return every weighing of the lamb in hand that is written down, the oldest first."""
        from triage.weighings import weighings

        cases = self.book.cases_of(self.lamb.id) if self.book and self.lamb else ()
        known = () if isinstance(cases, NotKept) else cases
        return weighings((move for case in known for move in case.moves), self.seen())

    def look_over(self, now: Now) -> str:
        """Read the whole file once for damage. Returns what the person must be told of it, mostly nothing."""
        if self.book is None or self._looked_over:
            return ""
        self._looked_over = True
        if self.book.sound():
            return ""
        return self._failed(NotKept("the casebook file is damaged", damaged=True), lambda: "", now.moment)

    def note(self, observation: Observation, now: Now) -> str:
        """Keep an observation; one that can't be kept now is tried again with the next writing."""
        self._unwritten.append((self.known(now), observation))
        return self._flush(now.moment)

    def retry(self, walk: Walk, now: Now) -> str:
        """Try again to keep what could not be kept; does nothing while all is kept."""
        if not self.why_not or self.book is None:
            return ""
        told = ""
        if begun(walk) or self.case:
            told = self.keep(walk, now)
        else:
            self.why_not = ""  # nothing is in hand; what waits below tells whether that is true
        told = told or self._flush(now.moment) or self._keep_set_down(now)
        return told or ("" if self.why_not else "Everything is kept again.")

    def _keep_set_down(self, now: Now) -> str:
        """Keep the walks that were set down while nothing could be kept, each as its own lamb's."""
        in_hand = self.lamb, self.case
        told = ""
        while self.unkept.walks and not self.why_not:
            first = self.unkept.walks[0]
            self.lamb, self.case, self.why_not = first.lamb, first.case, UNTRIED
            told = self.keep(first.walk, now) or told
            if not self.why_not:
                del self.unkept.walks[0]
        self.lamb, self.case = in_hand
        return told

    def _flush(self, now: datetime) -> str:
        if self.book is None:
            return ""
        while self._unwritten and not self.why_not:
            came = self._note_first(self.book)
            if isinstance(came, NotKept):
                return self._failed(came, lambda: self._flush(now), now)
            del self._unwritten[0]
        return ""

    def _note_first(self, book: Casebook) -> NotKept | None:
        """Keep the first observation, and its lamb if that is not in the file yet."""
        lamb, first = self._unwritten[0]
        there = book.lamb(lamb.id)
        if isinstance(there, NotKept):
            return there
        steps = [] if there else [partial(book.keep_lamb, lamb)]
        return book.together([*steps, partial(book.note, first)])

    def done(self, came: T | NotKept, now: datetime) -> T | None:
        """Take the result of another writing or reading: None, and a word why, where it failed."""
        if isinstance(came, NotKept):
            self._failed(came, lambda: "", now)
            return None
        return came

    @property
    def waiting(self) -> tuple[Observation, ...]:
        """Observations of the lamb in hand that are not in the file yet."""
        mine = self.lamb.id if self.lamb else ""
        return tuple(seen for lamb, seen in self._unwritten if lamb.id == mine)

    def _failed(self, why: NotKept, again: Callable[[], str], now: datetime) -> str:
        self.why_not = why.why
        if not why.damaged or self.book is None:
            return ""
        mended = mend(self.book, now)
        if isinstance(mended, Opened):
            self.book, self.why_not = mended.book, ""
            return f"{mended.told} {again()}".strip()
        self.why_not = mended.why
        return ""


def _edition(walk: Walk) -> str:
    return walk.guide.front.edition
