"""The page to phone the vet by: the numbers, what to say, and where the vet's words are written down."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from triage.handover import Handover, Situation, handover_of
from triage.handover.paper import paper_of
from triage.handover.text import listed_blocks, spoken_blocks, text_of
from triage.page.inert import inert
from triage.page.page import Block, Page
from triage.page.side import how_to_blocks
from triage.page.words import Reader
from triage.session.noting import NotingRoom
from triage.whole_file import write_whole

if TYPE_CHECKING:
    from triage.session.session import Session

NO_NUMBER = "No number is kept yet. On the list of lambs (o), h keeps it for the next time."


@dataclass
class VetRoom:
    """What the vet must hear, with the two things to do on this page."""

    session: Session

    def page(self) -> Page:
        """Return the handover as it is now."""
        desk, handover = self.session.desk, self.handover()
        blocks = [Block("heading", "Phone the vet"), Block("label", inert(desk.numbers, 200) or NO_NUMBER)]
        blocks += [Block("blank", ""), *spoken_blocks(handover), Block("blank", "")]
        blocks.append(Block("choice", "Write down what the vet said", "1"))
        blocks.append(Block("choice", "Save this as a page to print, and as text", "2"))
        blocks += [Block("blank", ""), *listed_blocks(handover)]
        how_to = desk.guide.how_tos.get("phone-the-vet-well")
        if how_to:
            reader = Reader(desk.guide, self.session.walk.facts, desk.system)
            blocks += [Block("blank", ""), *how_to_blocks(how_to, reader)]
        return Page("side", "Whom to phone", tuple(blocks))

    def handover(self) -> Handover:
        """Return what to tell of the lamb in hand."""
        session, desk = self.session, self.session.desk
        now, lamb = desk.clock(), desk.keeping.lamb
        cases, seen = desk.keeping.story(session.whole, now)
        hand = desk.keeping.case.id if desk.keeping.case else ""
        earlier = tuple(move for case in cases if case.id != hand for move in case.moves)
        situation = Situation(session.whole, now, desk.system, lamb, seen, earlier, desk.holding)
        return handover_of(situation)

    def take(self, typed: str) -> None:
        """Write down what the vet said, or save the page; Enter alone goes back."""
        if not typed:
            self.back()
        elif typed == "1":
            self.session.desk.open(NotingRoom.begin(self.session, "vet-said"))
        elif typed == "2":
            self.session.desk.told = self._save()
        else:
            self.session.desk.told = f"'{typed[:20]}' does nothing here. Press b to go back."

    def heads(self) -> tuple[str, str, str]:
        """Return the title of the page, the vet's numbers, and when it was made."""
        desk = self.session.desk
        now, lamb = desk.clock(), desk.keeping.lamb
        title = f"For the vet: {inert(lamb.name, 40)}" if lamb else "For the vet"
        return title, inert(desk.numbers, 200), f"{now.moment.astimezone(now.zone):%H:%M on %d %B %Y}"

    def _save(self) -> str:
        desk, handover = self.session.desk, self.handover()
        now = desk.clock()
        folder = desk.keeping.book.path.parent if desk.keeping.book else desk.house.papers
        if folder is None:
            return "There is no folder to save it in."
        name = folder / f"for-the-vet-{now.moment.astimezone(now.zone):%Y-%m-%d-%H%M%S}"
        try:
            write_whole(paper_of(handover, *self.heads()), name.with_suffix(".html"))
            write_whole(text_of(handover, self.heads()[0]), name.with_suffix(".txt"))
        except OSError as error:
            return f"It could not be saved in {folder}: {error.strerror or error}."
        return f"Saved: {name}.html to print, and {name.name}.txt."

    def command(self, name: str) -> None:
        """This page has no keys of its own."""

    def back(self) -> None:
        """Go back to what was open before."""
        self.session.desk.close(self)
