"""The opening list: the lambs in care, the longest due first, and the way to a new one."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from triage.casebook.failing import NotKept
from triage.casebook.rows import Case, Lamb
from triage.clock import Now, hhmm
from triage.looks import is_due, look_words
from triage.page.inert import inert
from triage.page.keys import keys_for
from triage.page.page import Block, Page
from triage.session.resuming import resume, where
from triage.ways_in import begin, letters, other_ways

if TYPE_CHECKING:
    from triage.session.session import Session

EVERY = 1_000_000
MOST = 20
"""Lambs listed at once; more are told by their number."""


@dataclass
class LambsRoom:
    """The list of open cases."""

    session: Session
    _known: dict[tuple[object, ...], str] = field(default_factory=dict, init=False)
    _urgencies: dict[str, int] = field(default_factory=dict, init=False)
    _waiting: tuple[tuple[Lamb, Case], ...] = field(default=(), init=False)
    _shown: tuple[tuple[Lamb, Case], ...] = field(default=(), init=False)

    def page(self) -> Page:
        """Return the list as it is in the casebook now, so that another copy's lambs show too."""
        desk = self.session.desk
        blocks = [Block("heading", "Lambs in care")]
        blocks.append(Block("choice", "Another lamb: begin with the danger signs", "1"))
        ways = other_ways(desk.guide)
        blocks += [Block("choice", ways[way], letter) for letter, way in self._letters().items()]
        now = desk.clock()
        # A number means what it meant when it was shown, also if a look has come due meanwhile.
        self._waiting = desk.keeping.unkept.cases(now)
        elsewhere = {case.id for _, case in self._waiting}
        self._shown = tuple(each for each in self.listed() if each[1].id not in elsewhere)
        blocks += [
            Block("choice", self.line(lamb, case, now), str(number))
            for number, (lamb, case) in enumerate((*self._waiting, *self._shown), 2)
        ]
        if not desk.keeping.book:
            blocks.append(Block("body", "There is no casebook. These stay only while the guide is open."))
        elif not self._shown and not self._waiting:
            blocks.append(Block("body", "No lamb is in care."))
        blocks += self._more(len(self._shown))
        return Page("lambs", "", tuple(blocks))

    def _letters(self) -> dict[str, str]:
        """Return the letter for each matter that is not one lamb; numbers stay those of the lambs."""
        return letters(other_ways(self.session.desk.guide), (key.key for key in keys_for("lambs")))

    def listed(self, most: int = MOST) -> tuple[tuple[Lamb, Case], ...]:
        """Return the open cases with their lambs, at most so many."""
        keeping = self.session.desk.keeping
        if keeping.book is None:
            return ()
        now = self.session.desk.clock()
        cases = keeping.done(keeping.book.open_cases(most), now.moment) or ()
        return tuple(sorted(cases, key=lambda each: self._rank(each[1], now)))

    def _rank(self, case: Case, now: Now) -> tuple[bool, int]:
        """Rank what is due before all else, then how urgent it is; equals stay as they are."""
        due = case.look is not None and is_due(case.look, now.moment)
        self._stands(case, now)
        return not due, 0 if due else self._urgencies[case.id]

    def _more(self, listed: int) -> list[Block]:
        book = self.session.desk.keeping.book
        count = book.count_open() if book and listed == MOST else 0
        if isinstance(count, NotKept) or count <= listed:
            return []
        return [Block("quiet", f"And {count - listed} more. `triage lambs` lists them all.")]

    def line(self, lamb: Lamb, case: Case, now: Now) -> str:
        """Return a case as a line: whose, what is due when, how urgent, and where it is."""
        return f"{inert(lamb.name, 40)}: {_when(case, now)} {self._stands(case, now)}"

    def _stands(self, case: Case, now: Now) -> str:
        """Return how urgent a case is and where it has come to; worked out once for each of its versions."""
        desk = self.session.desk
        key = (case.id, case.version, desk.system, case.moves)
        if key not in self._known:
            walk = resume(desk.guide, case, now, desk.system).walk
            self._urgencies[case.id] = desk.guide.rank(walk.state.urgency)
            urgency = f"{desk.guide.urgency(walk.state.urgency).say}. " if walk.state.urgency else ""
            self._known[key] = f"{urgency}{where(walk, desk.system)}"
        return self._known[key]

    def take(self, typed: str) -> None:
        """Open the lamb of a number; Enter alone goes to the walk in hand."""
        session = self.session
        if not typed:
            session.desk.close(self)
            return
        keeping, now = session.desk.keeping, session.desk.clock()
        number = int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 4 else 0
        place = number - 2 - len(self._waiting)
        way = self._letters().get(typed.lower(), "")
        if number == 1 or way:
            keeping.take_up(None, None, session.whole, now)
            session.take_up(begin(session.desk.guide, way, now.moment))
        elif 2 <= number < len(self._waiting) + 2:
            session.take_up(keeping.take_up_again(number - 2, session.whole, now))
        elif 0 <= place < len(self._shown):
            self._open(*self._shown[place])
        else:
            sign = "number or letter" if self._letters() else "number"
            session.desk.told = f"'{typed[:20]}' does nothing here. Type a {sign} of the list."

    def _open(self, lamb: Lamb, case: Case) -> None:
        session, desk = self.session, self.session.desk
        resumed = resume(desk.guide, case, desk.clock(), desk.system)
        desk.keeping.take_up(lamb, case, session.whole, desk.clock())
        session.take_up(resumed.walk)
        told = (desk.told, resumed.told, _not_yet(case, desk.clock()))
        desk.told = " ".join(part for part in told if part)
        if resumed.walk.finished:
            session.open("lamb")

    def command(self, name: str) -> None:
        """This page has no keys of its own."""

    def back(self) -> None:
        """Go back to the walk in hand."""
        self.session.desk.close(self)


def lines_in_care(session: Session) -> list[str]:
    """Return the lambs in care as lines of text."""
    room = LambsRoom(session)
    now = session.desk.clock()
    lines = [room.line(lamb, case, now) for lamb, case in room.listed(EVERY)]
    return lines or ["No lamb is in care."]


def every_line(session: Session) -> list[str]:
    """Return every lamb as a line of text, the latest first."""
    book, now = session.desk.keeping.book, session.desk.clock()
    lambs = book.lambs() if book else ()
    if isinstance(lambs, NotKept):
        return [f"The casebook can't be read: {lambs.why}."]
    return [f"{inert(lamb.name, 40)}, since {hhmm(lamb.added, now)}" for lamb in lambs] or [
        "No lamb is kept."
    ]


def _not_yet(case: Case, now: Now) -> str:
    """Say that a look is still to come, so that nobody looks too early by mistake."""
    if case.look is None or is_due(case.look, now.moment):
        return ""
    return f"Not due yet: {look_words(case.look, now)}"


def _when(case: Case, now: Now) -> str:
    look = case.look
    if look is None:
        return f"left at {hhmm(case.touched, now)}."
    return look_words(look, now)
