"""Reading the guidance to sign it: one statement after another, each with what it rests on."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from triage.page.inert import inert
from triage.page.page import Block, Choice, Page
from triage.review.queue import RISKS, Due
from triage.review.signing import NOT_A_NAME, Signer, Signing, plain
from triage.review.sittings import ROLES

if TYPE_CHECKING:
    from triage.session.session import Session

TITLE = "Review"
WHAT_IT_IS = "You sign only what you have before you. A later change of it voids your signature."
CHOICES = (
    Choice("1", "signed", "It is right as it stands: sign it"),
    Choice("2", "noted", "Sign it, with a note"),
    Choice("3", "objected", "Object to it, and do not sign"),
    Choice("4", "later", "Not now"),
)
SIGNS = "12"
"""The keys that sign."""

ASKED = {"noted": "What is to be noted?", "objected": "What is wrong with it?"}

Begin = Callable[[Signer], Signing]
Telling = Callable[[str, "Session"], tuple[Block, ...]]


@dataclass
class SigningRoom:
    """Asks who signs, and then shows one statement after another."""

    session: Session
    begin: Begin
    tell: Telling
    """What a statement says, by its key."""
    by: str = ""
    role: str = ""
    licence: str | None = None
    signing: Signing | None = field(default=None, init=False)
    _writing: Literal["", "noted", "objected"] = field(default="", init=False)

    def __post_init__(self) -> None:
        self._begin()

    def page(self) -> Page:
        """Return what is asked or shown now."""
        if self.signing is None:
            return self._who()
        due = self.signing.now
        if self._writing:
            return _asked(ASKED[self._writing], "One or two sentences. They stay beside the statement.")
        return self._through(self.signing) if due is None else self._statement(self.signing, due)

    def _who(self) -> Page:
        if not self.by:
            return _asked("Who signs?", "Type the name as it is to be shown.", WHAT_IT_IS)
        if not self.role:
            choices = tuple(Choice(str(at), role, role.capitalize()) for at, role in enumerate(ROLES, 1))
            return Page("sitting", TITLE, (Block("heading", f"{self.by} signs as what?"),), choices)
        return _asked("Which licence or registration number?", "Enter alone, if there is none.")

    def _statement(self, signing: Signing, due: Due) -> Page:
        where = f"{signing.at + 1} of {len(signing.queue)}: {due.why}. It {RISKS[due.risk]}."
        blocks = (*self.tell(due.key, self.session), Block("blank", ""), Block("quiet", where))
        return Page("sitting", TITLE, blocks, CHOICES, read_first=SIGNS)

    def _through(self, signing: Signing) -> Page:
        said = [
            Block("heading", "That is all for now"),
            Block("body", told(signing)),
            Block("body", f"It is in {inert(str(signing.folder), 200)}, in the folder reviews."),
            Block("quiet", "Press b to go back to the last one, q to leave."),
        ]
        return Page("sitting", TITLE, tuple(said))

    def take(self, typed: str) -> None:
        """Take an answer to what is asked."""
        if self.signing is None:
            self._take_who(typed)
        elif self._writing:
            self._take_word(self.signing, typed)
        else:
            chosen = next((each.value for each in CHOICES if each.key == typed), None)
            if chosen is None or self.signing.now is None:
                self.session.desk.told = f"'{inert(typed, 20)}' does nothing here."
            elif chosen in ("noted", "objected"):
                self._writing = "noted" if chosen == "noted" else "objected"
            else:
                self.signing.decide("signed" if chosen == "signed" else "later")
                self._tell_failure(self.signing)

    def _take_who(self, typed: str) -> None:
        if not self.by:
            self.by = plain(typed)
            self.session.desk.told = "" if self.by else NOT_A_NAME
        elif not self.role:
            number = int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 3 else 0
            self.role = ROLES[number - 1] if 1 <= number <= len(ROLES) else ""
        else:
            self.licence = plain(typed)
        self._begin()

    def _begin(self) -> None:
        if self.by and self.role and self.licence is not None:
            self.signing = self.begin(Signer(self.by, self.role, self.licence))

    def _take_word(self, signing: Signing, typed: str) -> None:
        if not plain(typed):
            self.session.desk.told = "Type it, or go back with Esc, or with b on a line of its own."
            return
        signing.decide("objected" if self._writing == "objected" else "noted", typed)
        self._writing = ""
        self._tell_failure(signing)

    def _tell_failure(self, signing: Signing) -> None:
        if signing.why_not:
            self.session.desk.told = f"It could not be written, and is tried again: {signing.why_not}."

    def command(self, name: str) -> None:
        """This page has no keys of its own."""

    def back(self) -> None:
        """Go back: out of a note, or to the statement before, whose signature is taken back."""
        if self._writing:
            self._writing = ""
        elif self.signing is None:
            self.by, self.role = ("", "") if not self.role else (self.by, "")
        elif self.signing.back():
            self.session.desk.told = "What you decided on this one is taken back."
            self._tell_failure(self.signing)
        else:
            self.session.desk.told = "This is the first one."


def _asked(heading: str, *said: str) -> Page:
    blocks = (Block("heading", heading), *(Block("body", text) for text in said))
    return Page("sitting", TITLE, blocks, words=True)


def told(signing: Signing) -> str:
    """Return what a sitting came to, in a sentence."""
    signed, objected = signing.count("signed", "noted"), signing.count("objected")
    passed = len(signing.queue) - signed - objected
    parts = [f"{signed} signed"]
    parts += [f"{objected} objected to"] if objected else []
    parts += [f"{passed} not decided"] if passed else []
    who = signing.signer
    return f"{inert(who.by, 80)}, {who.role}: {'; '.join(parts)}."
