"""Who practises, and what that helper can do next."""

from __future__ import annotations

from dataclasses import dataclass, field
from random import Random
from typing import TYPE_CHECKING

from triage.casebook.failing import NotKept
from triage.casebook.practice import Helper, PracticeBook
from triage.casebook.rows import new_id
from triage.page.inert import inert
from triage.page.page import Block, Choice, Page
from triage.practice.learner import Learner
from triage.practice.memory import due
from triage.practice.names import LONGEST, plain_name, same
from triage.practice.readiness import PassMark
from triage.practice.school import mark_of

if TYPE_CHECKING:
    from triage.practice.dealing import Dealer
    from triage.session.desk import Desk
    from triage.session.session import Session

NOT_REAL = "Every animal here is invented. With a real one, leave with q and open the guide."
HABITS = "Two habits count in every case: danger signs first, and not sure counts as a worry."


@dataclass
class School:
    """What the rooms of practice share. The dealer is made when the first case is asked for."""

    session: Session
    book: PracticeBook | None = None
    minutes: float = 0.0
    """How long a sitting is meant to be; 0 where nobody said."""
    rng: Random = field(default_factory=Random)
    learner: Learner | None = None
    _dealer: Dealer | None = None

    @property
    def desk(self) -> Desk:
        """What all rooms of a session share."""
        return self.session.desk

    @property
    def dealer(self) -> Dealer:
        """What deals the cases of this guide."""
        if self._dealer is None:
            from triage.practice.dealing import Dealer

            self._dealer = Dealer(self.desk.guide)
        return self._dealer

    @property
    def mark(self) -> PassMark:
        """The holding's own pass mark, or the usual one."""
        return mark_of(self.desk.holding)

    def helpers(self) -> tuple[Helper, ...]:
        """Return who practises here. Where that can't be read, nothing is written over it."""
        found = self.book.helpers() if self.book else ()
        if isinstance(found, NotKept):
            self.book, self.desk.told = None, f"Nothing of this is kept: {found.why}."
            return ()
        return found

    def named(self, typed: str) -> str:
        """Take up the helper of a name, or begin with a new one; return what has to be told."""
        name = plain_name(typed)
        if not name:
            return "Type a name that can be seen."
        known = next((each for each in self.helpers() if same(each.name, name)), None)
        helper = known or Helper(new_id(), name, self.desk.clock().moment)
        if known is None and self.book:
            self.book.keep_helper(helper)  # where that fails, it is kept with the first answer
        self.learner = Learner.of(helper, self.book)
        return self.unkept()

    def unkept(self) -> str:
        """Return what has to be said where a writing failed."""
        why = self.learner.why_not if self.learner else ""
        # The same words serve both files; here it is not the lambs that are spoken of.
        return f"This is not kept: {why.replace('casebook', 'practice book')}." if why else ""


@dataclass
class WhoRoom:
    """Asks who practises, and then what next."""

    school: School
    _naming: bool = field(default=False, init=False)
    _shown: tuple[Helper, ...] = field(default=(), init=False)

    def page(self) -> Page:
        """Return the list of helpers, or what the helper can do."""
        if self.school.learner:
            return self._home(self.school.learner)
        self._shown = self.school.helpers()
        if self._naming or not self._shown:
            asked = (
                Block("heading", "Who practises?"),
                Block("body", "Type a name."),
                Block("quiet", NOT_REAL),
            )
            return Page("practice", "Practice", asked, words=True)
        choices = [
            Choice(str(at), each.id, inert(each.name, LONGEST)) for at, each in enumerate(self._shown, 1)
        ]
        choices.append(Choice(str(len(choices) + 1), "", "Somebody new"))
        blocks = (Block("heading", "Who practises?"), Block("quiet", NOT_REAL))
        return Page("practice", "Practice", blocks, tuple(choices))

    def _home(self, learner: Learner) -> Page:
        now = self.school.desk.clock().moment
        waiting = due(learner.kept.values(), now)
        weak = sum(not each.knew for each in waiting)
        lines = [Block("heading", f"Practice: {inert(learner.helper.name, LONGEST)}")]
        lines.append(Block("body", _done_words(len(learner.shown), len(waiting), weak)))
        lines.append(Block("body", HABITS))
        lines.append(Block("quiet", NOT_REAL))
        choices = (
            Choice("1", "round", "A case"),
            Choice("2", "drill", "Phone now, or not? Ten lines against the clock"),
            Choice("3", "ready", "What I have shown"),
        )
        return Page("practice", "Practice", tuple(lines), choices)

    def take(self, typed: str) -> None:
        """Take a name, a helper, or what to do."""
        desk = self.school.desk
        if self.school.learner:
            self._open(typed)
        elif self._naming or not self._shown:
            desk.told = self.school.named(typed)
        elif typed.isdecimal() and 1 <= int(typed) <= len(self._shown):
            self.school.learner = Learner.of(self._shown[int(typed) - 1], self.school.book)
            desk.told = self.school.unkept()
        elif typed == str(len(self._shown) + 1):
            self._naming = True
        else:
            desk.told = f"'{inert(typed, 20)}' does nothing here."

    def _open(self, typed: str) -> None:
        desk = self.school.desk
        match typed:
            case "1":
                from triage.session.practice.round import RoundRoom

                desk.open(RoundRoom(self.school))
            case "2":
                from triage.session.practice.drill import DrillRoom

                desk.open(DrillRoom(self.school))
            case "3":
                from triage.session.practice.shown import ShownRoom

                desk.open(ShownRoom(self.school))
            case _:
                desk.told = f"'{inert(typed, 20)}' does nothing here."

    def command(self, name: str) -> None:
        """No key but the digits does anything here."""
        self.school.desk.told = "Type one of the numbers."

    def back(self) -> None:
        """Go back to who practises; from there q leaves."""
        if self.school.learner and self.school.helpers():
            self.school.learner.flush()
            self.school.learner = None
        elif self._naming:
            self._naming = False
        else:
            self.school.desk.told = "Press q to leave practice."


def _done_words(rounds: int, waiting: int, weak: int) -> str:
    if not rounds:
        return "No case was done yet. One takes a few minutes."
    told = f"{rounds} {'case' if rounds == 1 else 'cases'} done."
    if waiting:
        things = "thing is" if waiting == 1 else "things are"
        told += f" {waiting} {things} due again" + (f"; {weak} not known last time." if weak else ".")
    return told
