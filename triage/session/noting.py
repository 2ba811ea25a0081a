"""The form of an observation: one short question after another, then it is kept."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from triage.casebook.rows import Observation, new_id
from triage.entry import AskAgain
from triage.observations import KINDS, Kept, Noting, words_of
from triage.page.page import Page

if TYPE_CHECKING:
    from triage.session.session import Session

WEIGHED = ("feed", "weight")
"""What is held against the plan as soon as it is written down."""


@dataclass
class NotingRoom:
    """Writes down one observation of the lamb in hand."""

    session: Session
    steps: list[Noting]
    """The questions so far; going back drops the last one."""

    @classmethod
    def begin(cls, session: Session, kind: str) -> NotingRoom:
        """Begin with the first question of a kind."""
        desk = session.desk
        now, lamb = desk.clock(), desk.keeping.lamb
        born = lamb.born if lamb else None
        age = {"age": (now.moment - born).total_seconds() / 3600} if born else {}
        return cls(session, [Noting(KINDS[kind], desk.guide, now, known=age)])

    def page(self) -> Page:
        """Return the question that is asked now."""
        return self.steps[-1].question(self.session.desk.system)

    def take(self, typed: str) -> None:
        """Take the answer; after the last one it is written down."""
        desk = self.session.desk
        came = self.steps[-1].take(typed, desk.reader())
        if isinstance(came, AskAgain):
            desk.told = came.why
        elif isinstance(came, Kept):
            self._keep(came)
        else:
            desk.told = came.told
            self.steps.append(came)

    def _keep(self, kept: Kept) -> None:
        desk, now = self.session.desk, self.session.desk.clock()
        lamb = desk.keeping.known(now)
        seen = Observation(new_id(), lamb.id, kept.kind, kept.at, now.moment, kept.parts)
        told = desk.keeping.note(seen, now)
        desk.close(self)
        where = "Written down" if desk.keeping.book and not desk.keeping.why_not else "Noted, but not kept"
        when = f". {kept.told}" if kept.told else ""
        said = f"{told} {where}: {words_of(seen, desk.guide, desk.system)}{when}".strip()
        desk.told = f"{said.rstrip('.')}. {worry}" if (worry := self._worry(kept.kind)) else said

    def _worry(self, kind: str) -> str:
        """Return what the plan says at once to a feed or a weight: too much, or that it can't be right."""
        if kind not in WEIGHED:
            return ""
        # Read only here: no other note needs the plan.
        from triage.rearing.plan import OVERFED
        from triage.session.plan import PlanRoom

        plan = PlanRoom(self.session).plan()
        if isinstance(plan, str):
            return ""
        if kind == "weight":
            return plan.doubtful
        return OVERFED if plan.overfed else ""

    def command(self, name: str) -> None:
        """A form has no keys of its own."""

    def back(self) -> None:
        """Go back a question, and out of the first one."""
        self.steps.pop()
        if not self.steps:
            self.session.desk.close(self)
