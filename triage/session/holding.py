"""The form of this holding: one question after another, each of which may be passed over."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from triage.holding.fields import FIELDS, text_of, with_text
from triage.page.inert import inert
from triage.page.page import Block, Page

if TYPE_CHECKING:
    from triage.session.session import Session


@dataclass
class HoldingRoom:
    """Asks what is kept of this holding. Each answer is written down at once."""

    session: Session
    leaving: bool = False
    """Whether the guide is left when the form is."""
    _at: int = field(default=0, init=False)
    _typed: dict[str, str] = field(default_factory=dict, init=False)
    """What was answered and could not be written yet; it is written with the next answer."""

    def page(self) -> Page:
        """Return the question that is asked now, with what is kept for it."""
        desk, question = self.session.desk, FIELDS[self._at]
        kept = inert(text_of(desk.holding, question.name), 200)
        blocks = [Block("heading", question.ask), Block("body", question.why)]
        blocks.append(Block("label", f"Kept: {kept}" if kept else "Nothing is kept yet."))
        blocks.append(Block("quiet", f"{self._at + 1} of {len(FIELDS)}. Enter passes on, - empties it."))
        return Page("form", "This holding", tuple(blocks), example=question.example, words=True)

    def take(self, typed: str) -> None:
        """Take an answer; Enter alone passes on."""
        desk = self.session.desk
        if typed:
            came = with_text(desk.holding, FIELDS[self._at].name, typed, desk.system)
            if isinstance(came, str):
                desk.told = came
                return
            desk.house.holding = came
            desk.told = self._written(FIELDS[self._at].name, typed)
            if FIELDS[self._at].name == "units":
                desk.system = came.units or desk.system
        if self._at + 1 < len(FIELDS):
            self._at += 1
        else:
            self._close()

    def _close(self) -> None:
        self.session.desk.close(self)
        self.session.left = self.session.left or self.leaving

    def _written(self, name: str, typed: str) -> str:
        from triage.holding.file import change_holding

        desk = self.session.desk
        if desk.house.holding_file is None:
            return "Used for now; there is no place to keep it."
        # These fields alone: what was changed in the file by hand since it was read stays.
        self._typed[name] = typed
        came = change_holding(self._typed, desk.house.holding_file, desk.system)
        if isinstance(came, str):
            return came
        self._typed.clear()
        return f"Kept in {desk.house.holding_file}."

    def command(self, name: str) -> None:
        """A form has no keys of its own."""

    def back(self) -> None:
        """Go back a question, and out of the first one."""
        if self._at and not self.leaving:
            self._at -= 1
        else:
            self._close()
