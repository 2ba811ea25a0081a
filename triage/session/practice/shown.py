"""What a helper has shown, as a page of the session."""

from __future__ import annotations

from dataclasses import dataclass

from triage.page.inert import inert
from triage.page.page import Block, Page
from triage.practice.readiness import Readiness
from triage.practice.shown import shown_blocks
from triage.session.practice.who import School


@dataclass
class ShownRoom:
    """One helper's page."""

    school: School

    def page(self) -> Page:
        """Return it as it stands now."""
        learner, desk = self.school.learner, self.school.desk
        assert learner is not None
        readiness = Readiness(desk.guide, learner.shown, self.school.mark)
        blocks = shown_blocks(desk.guide, learner, readiness, desk.clock())
        head = Block("heading", inert(learner.helper.name, 40))
        return Page("practice", "What was shown in practice", (head, *blocks))

    def take(self, typed: str) -> None:
        """Enter goes back."""
        self.school.desk.close(self)

    def command(self, name: str) -> None:
        """It has no keys of its own."""

    def back(self) -> None:
        """Go back."""
        self.school.desk.close(self)
