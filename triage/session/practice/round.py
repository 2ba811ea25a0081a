"""A round: looking, deciding, and the talk afterwards."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import datetime

from triage.page.inert import inert
from triage.page.page import Block, Page
from triage.practice.debrief import debrief_page, side_page
from triage.practice.faults import Score
from triage.practice.looking import listed
from triage.practice.round import Round
from triage.practice.telling import TITLE, look_page, question_page
from triage.session.practice.who import School


@dataclass
class RoundRoom:
    """One case after another, until the helper has had enough."""

    school: School
    played: Round | None = field(default=None, init=False)
    came: Score | None = field(default=None, init=False)
    _marked: frozenset[str] = field(default=frozenset(), init=False)
    _side: str = field(default="", init=False)
    _picked: int = field(default=0, init=False)
    _began: datetime | None = field(default=None, init=False)

    def __post_init__(self) -> None:
        learner = self.school.learner
        if learner:
            self._began = self.school.desk.clock().moment
            self.played = learner.resume(self.school.dealer)
            if self.played is None:
                self._next()
            else:
                self.school.desk.told = "You were in the middle of this one."
                if self.played.finished:
                    self._give(self.played)

    def page(self) -> Page:
        """Return the page where the round stands."""
        system = self.school.desk.system
        if self.played is None:
            blocks = (
                Block("heading", "No case"),
                Block("body", "This guide has none, and none could be drawn."),
            )
            return Page("round", TITLE, blocks)
        if self.came is not None:
            return self._aside() or debrief_page(self.played, self.came, system)
        if self.played.question:
            return question_page(self.played, self.played.question, self._marked, system)
        return look_page(self.played, system)

    def _aside(self) -> Page | None:
        """Return the page beside the talk: the working, or how and why, as the guide itself shows them."""
        if not self._side or self.played is None:
            return None
        from triage.page import side, working

        walk, system = self.played.posed.case.walk, self.school.desk.system
        match self._side:
            case "how":
                return replace(side.how_page(walk, system, self._picked, "debrief"), kind="debrief")
            case "working":
                return replace(working.working_page(walk, system), kind="debrief")
            case _:
                assert self.came is not None
                return side_page(self.played, self.came, system)

    def take(self, typed: str) -> None:
        """Take a digit, or several for a question with more than one right line."""
        if self._side:
            self._beside(typed)
        elif self.came is not None:
            self._next()
        elif self.played and self.played.question:
            self._answer(typed)
        elif self.played:
            self._look(typed)

    def _beside(self, typed: str) -> None:
        """Pick a technique by its number; anything else closes the page beside the talk."""
        from triage.page.side import techniques

        listed_there = techniques(self.played.posed.case.walk) if self.played and self._side == "how" else ()
        picked = _number(typed)
        if 1 <= picked <= len(listed_there) and not self._picked:
            self._picked = picked
        else:
            self._side, self._picked = "", 0

    def _look(self, typed: str) -> None:
        """Look at one thing, or at several whose numbers are typed at once."""
        assert self.played is not None
        names = [finding.name for finding in listed(self.played.posed.case)]
        numbers = [_number(part) for part in typed.replace(",", " ").split()]
        if not numbers or not all(1 <= number <= len(names) for number in numbers):
            self._told(typed, "Type a number to look, or d to decide.")
            return
        chosen = [names[number - 1] for number in numbers]
        if all(name in self.played.looked for name in chosen):
            self.school.desk.told = "You have looked at that."
            return
        played = self.played
        for name in chosen:
            played = played.look(name)
        self._give(played)

    def _answer(self, typed: str) -> None:
        question = self.played.question if self.played else None
        assert self.played is not None
        assert question is not None
        signs = [sign for sign in typed if sign not in " ,"]
        numbers = [int(sign) if sign.isascii() and sign.isdecimal() else 0 for sign in signs]
        if not numbers or not all(1 <= number <= len(question.options) for number in numbers):
            self._told(typed, "Type a number.")
            return
        chosen = [question.options[number - 1].name for number in numbers]
        if question.many:
            for name in chosen:
                self._marked ^= {name}
        elif len(chosen) > 1:
            self.school.desk.told = "One of them only."
        else:
            self._give(self.played.answer(chosen[0]))

    def command(self, name: str) -> None:
        """Go on with `d`; the working and how-and-why open beside the talk."""
        if self.came is not None:
            self._side, self._picked = name if name in ("how", "working", "answers") else "", 0
        elif self.played is None or name != "done":
            return
        elif self.played.question is None:
            self._give(self.played.decide())
        elif self.played.question.many:
            order = [each.name for each in self.played.question.options if each.name in self._marked]
            self._give(self.played.answer(*order))
        else:
            self.school.desk.told = "Type the number of one of them."

    def _give(self, played: Round) -> None:
        """Keep what was given before the next page is shown; at the end, what came of it too."""
        learner, desk = self.school.learner, self.school.desk
        assert learner is not None
        self.played, self._marked = played, frozenset()
        if played.finished:
            self.came = learner.finish(played, desk.clock().moment)
        else:
            learner.give(played)
        desk.told = self.school.unkept()

    def _next(self) -> None:
        learner, desk = self.school.learner, self.school.desk
        assert learner is not None
        self.came, self._marked = None, frozenset()
        posed = self.school.dealer.deal(learner.past(desk.guide), desk.clock().moment, self.school.rng)
        self.played = learner.begin(posed, desk.clock().moment) if posed else None
        desk.told = self.school.unkept() or self._time_words()

    def _time_words(self) -> str:
        """Say, once the sitting is as long as it was meant to be, that it may end."""
        minutes = self.school.minutes
        if not minutes or self._began is None:
            return ""
        gone = (self.school.desk.clock().moment - self._began).total_seconds() / 60
        return f"Those were your {minutes:g} minutes. Stop here with b, or go on." if gone >= minutes else ""

    def _told(self, typed: str, what: str) -> None:
        self.school.desk.told = f"'{inert(typed, 20)}' does nothing here. {what}" if typed else what

    def back(self) -> None:
        """Take back the last answer; from the story go home. The case waits there."""
        if self._side:
            self._side, self._picked = "" if not self._picked else self._side, 0
            return
        if self.came is None and self.played is not None and self._marked:
            self._marked = frozenset()
            return
        before = self.played
        if self.came is None and before is not None and before.decided:
            self.played = before.back()
            if self.played is before:
                self.school.desk.told = "What is answered stands. Go on, or leave with q; the case waits."
            elif self.school.learner:
                self.school.learner.give(self.played)
            return
        self.school.desk.close(self)


def _number(typed: str) -> int:
    """Return a number that is typed, 0 for anything else."""
    return int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 3 else 0
