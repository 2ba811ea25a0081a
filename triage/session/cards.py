"""The form of a lamb's card: its name or tag, when it was born, its sex, and born as what."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import TYPE_CHECKING

from triage.clock import read_birth
from triage.entry import AskAgain
from triage.page.inert import inert
from triage.page.page import Block, Page
from triage.session.lamb import SEXES, card_line
from triage.typed import Refused, read_measure

if TYPE_CHECKING:
    from triage.session.session import Session

PARTS = {"1": "name", "2": "born", "3": "sex", "4": "birth-type"}
ASKED = {
    "name": "What is it called, or what is its tag?",
    "born": "When was it born?",
    "sex": "Which is it?",
}


@dataclass
class CardRoom:
    """The card of the lamb in hand. Nothing on it has to be filled in."""

    session: Session
    _part: str = field(default="", init=False)
    _doubted: str = field(default="", init=False)

    def page(self) -> Page:
        """Return the card, or the question for the part that was picked."""
        desk = self.session.desk
        lamb = desk.keeping.known(desk.clock())
        if self._part:
            return self._question()
        labels = ("Name or tag", "Born", "Sex", "Born as one, two or three")
        blocks = [Block("heading", inert(lamb.name, 60))]
        blocks.append(Block("body", card_line(lamb, desk.guide, desk.clock(), desk.system)))
        blocks += [Block("choice", label, key) for key, label in zip(PARTS, labels, strict=True)]
        blocks.append(Block("quiet", "Nothing here has to be filled in. Enter goes back."))
        return Page("form", "Its card", tuple(blocks))

    def _question(self) -> Page:
        if self._part in ("name", "born"):
            example = "" if self._part == "name" else "born 23:30, or 10 h"
            shown = (Block("heading", ASKED[self._part]), Block("quiet", "Enter alone leaves it as it is."))
            return Page("form", "Its card", shown, example=example, words=True)
        finding = self.session.desk.guide.findings.get("birth-type")
        asked = ASKED.get(self._part) or (finding.ask if finding else "")
        blocks = (
            Block("heading", asked),
            *(Block("choice", text, key) for key, (_, text) in self._choices().items()),
        )
        return Page("form", "Its card", blocks)

    def _choices(self) -> dict[str, tuple[str, str]]:
        finding = self.session.desk.guide.findings.get("birth-type")
        texts = SEXES if self._part == "sex" else dict(finding.choices) if finding else {}
        return {str(number): pair for number, pair in enumerate(texts.items(), 1)}

    def take(self, typed: str) -> None:
        """Pick a part, or take the answer to it."""
        if not self._part:
            self._part = PARTS.get(typed, "")
            if not typed:
                self.back()
            elif not self._part:
                self.session.desk.told = f"'{typed[:20]}' does nothing here."
            return
        if typed:
            self._answer(typed)
        else:
            self._part = ""

    def _answer(self, typed: str) -> None:
        desk = self.session.desk
        lamb = desk.keeping.fresh(desk.clock())
        match self._part:
            case "name" if not inert(typed):
                desk.told = "That can't be seen. Type a name or a tag."
                return
            case "name":
                lamb = replace(lamb, name=typed)
            case "born":
                born = self._born(typed)
                if isinstance(born, str):
                    desk.told = born
                    return
                lamb = replace(lamb, born=born[0], born_guessed=born[1])
            case part:
                chosen = self._choices().get(typed)
                if chosen is None:
                    desk.told = f"'{typed[:20]}' is not one of them."
                    return
                sexed = part == "sex"
                lamb = replace(lamb, sex=chosen[0]) if sexed else replace(lamb, birth_type=chosen[0])
        self._part = ""
        desk.told = desk.keeping.keep_lamb(lamb, desk.clock()) or (
            "Noted, but not kept." if desk.keeping.why_not else "Written on its card."
        )

    def _born(self, typed: str) -> tuple[datetime, bool] | str:
        """Read a time of birth, or an age; whether it is a guess."""
        now, age = self.session.desk.clock(), self.session.desk.guide.findings.get("age")
        doubt = self.session.desk.reader().read(age, typed, {}) if age else None
        if isinstance(doubt, AskAgain) and typed != self._doubted:
            self._doubted = typed
            return doubt.why
        read = read_measure(typed, "h", (0.0, 24.0 * 366), self.session.desk.system)
        if not isinstance(read, Refused):
            from triage.session.card import hours_before

            return hours_before(now.moment, read.value), True
        born = read_birth(typed, now.moment, now.zone)
        return born.why if isinstance(born, Refused) else (born.moment, False)

    def command(self, name: str) -> None:
        """The card has no keys of its own."""

    def back(self) -> None:
        """Leave the question, or the card."""
        if self._part:
            self._part = ""
        else:
            self.session.desk.close(self)
