"""One lamb's page: its card, what to write down, and its whole story."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from triage.casebook.rows import Lamb
from triage.clock import Now, hhmm
from triage.guide.model import Guide
from triage.looks import look_of
from triage.page.inert import inert
from triage.page.page import Block, Page
from triage.units import System, show
from triage.ways_in import again

if TYPE_CHECKING:
    from triage.session.session import Session

SEXES = {"ewe": "Ewe lamb", "ram": "Ram lamb", "wether": "Wether"}
CLOSING = "Press x once more, when it needs no more care. Its story stays in the casebook."


@dataclass
class LambRoom:
    """The lamb in hand."""

    session: Session

    def page(self) -> Page:
        """Return the lamb's page: digits write down, letters act."""
        from triage.observations import DIGITS
        from triage.timeline import blocks

        desk = self.session.desk
        now, lamb = desk.clock(), desk.keeping.known(desk.clock())
        cases, seen = desk.keeping.story(self.session.whole, now)
        shown = [
            Block("heading", inert(lamb.name, 60)),
            Block("body", card_line(lamb, desk.guide, now, desk.system)),
        ]
        case = desk.keeping.case
        look = case.look if case else look_of(self.session.whole)
        if look:
            shown.append(Block("body", f"Look again at {hhmm(look.due, now)}."))
        shown.append(Block("label", "Write down"))
        shown += [Block("choice", kind.label, digit) for digit, kind in DIGITS.items()]
        told = blocks(cases, seen, desk.guide, desk.system, now)
        return Page("lamb", "This lamb", (*shown, Block("blank", ""), *told))

    def take(self, typed: str) -> None:
        """Open the form of a digit; Enter alone goes back."""
        from triage.observations import DIGITS
        from triage.session.noting import NotingRoom

        if not typed:
            self.back()
        elif typed in DIGITS:
            self.session.desk.open(NotingRoom.begin(self.session, DIGITS[typed].name))
        else:
            self.session.desk.told = f"'{typed[:20]}' does nothing here."

    def command(self, name: str) -> None:
        """Go on with its walk, look afresh, say that the look is done, open its card, or close it."""
        session, desk = self.session, self.session.desk
        match name:
            case "go-on":
                desk.rooms.clear()
            case "afresh":
                now = desk.clock()
                desk.keeping.take_up(desk.keeping.known(now), None, session.whole, now)
                session.take_up(again(session.whole))
                desk.told = "A new look at this lamb, from the first question."
            case "looked":
                desk.told = self._settle(None) or "The look is done. The next walk sets the next one."
            case "card" | "plan":
                session.open(name)
            case "close" if desk.pressed != "close":
                desk.told = CLOSING
            case "close":
                desk.told = self._settle(desk.clock().moment) or "It is no longer listed as in care."
                session.open("lambs")

    def _settle(self, closed: datetime | None) -> str:
        """Take the looks off the lamb's open cases, and close them where a time is given."""
        desk = self.session.desk
        return desk.keeping.settle(self.session.whole, desk.clock(), closed)

    def back(self) -> None:
        """Go back to what was open before."""
        self.session.desk.close(self)


def card_line(lamb: Lamb, guide: Guide, now: Now, system: System) -> str:
    """Return what is known of a lamb for good, as a line."""
    parts = []
    if lamb.born:
        hours = round((now.moment - lamb.born).total_seconds() / 3600, 1)
        about = "about " if lamb.born_guessed else ""
        if hours >= 0:
            parts.append(f"{show(hours, 'h', system)} old, born {about}{hhmm(lamb.born, now)}")
    if lamb.sex:
        parts.append(SEXES.get(lamb.sex, inert(lamb.sex, 20)))
    finding = guide.findings.get("birth-type")
    if lamb.birth_type and finding:
        known = finding.choices.get(lamb.birth_type, inert(lamb.birth_type, 20))
        parts.append(f"{finding.label}: {known}")
    return f"{'. '.join(parts)}." if parts else "Nothing is on its card yet: c."
