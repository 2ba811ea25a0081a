"""A round: a case, and what a helper gave to it in order. Where it stands follows from those alone."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import NamedTuple

from triage.practice.looking import listed
from triage.practice.questions import Posed, Question

LOOK = "look"
DECIDE = "decide"
NOTHING = ""
"""What is given where no line was marked as right."""


class Given(NamedTuple):
    """One thing given: a look at a finding, the word that enough was seen, or the answer to a question."""

    what: str
    value: str = ""


class NotGiven(ValueError):
    """Something that does not fit where the round stands."""


@dataclass(frozen=True)
class Round:
    """One helper at one case. Immutable: each thing given is a new round."""

    posed: Posed
    given: tuple[Given, ...] = ()

    @property
    def looked(self) -> tuple[str, ...]:
        """The findings looked at, in order, each once."""
        return tuple(dict.fromkeys(each.value for each in self.given if each.what == LOOK))

    @property
    def decided(self) -> bool:
        """Whether the helper has seen enough."""
        return any(each.what == DECIDE for each in self.given)

    @cached_property
    def answers(self) -> dict[str, tuple[str, ...]]:
        """The options chosen for each kind of question."""
        answered = (each for each in self.given if each.what not in (LOOK, DECIDE))
        return {each.what: tuple(name for name in each.value.split() if name) for each in answered}

    @property
    def question(self) -> Question | None:
        """The question that waits for an answer; None while things are looked at, and at the end."""
        if not self.decided:
            return None
        return next((each for each in self.posed.questions if each.kind not in self.answers), None)

    @property
    def finished(self) -> bool:
        """Whether every question is answered."""
        return self.decided and self.question is None

    def look(self, finding: str) -> Round:
        """Look at something; NotGiven where it can't be looked at."""
        if self.decided or finding not in {each.name for each in listed(self.posed.case)}:
            raise NotGiven(f"{finding} can't be looked at here")
        return self._with(Given(LOOK, finding))

    def decide(self) -> Round:
        """Say that enough was seen."""
        if self.decided:
            raise NotGiven("that was said already")
        return self._with(Given(DECIDE))

    def answer(self, *names: str) -> Round:
        """Answer the question that waits: one option, or for several right ones as many as seem right."""
        question = self.question
        if question is None:
            raise NotGiven("no question waits")
        if any(question.option(name) is None for name in names) or not (question.many or len(names) == 1):
            raise NotGiven(f"{names} is no answer to '{question.kind}'")
        return self._with(Given(question.kind, " ".join(names)))

    def back(self) -> Round:
        """Take the decision back, as long as no question is answered. What was seen or answered stands."""
        if self.given and self.given[-1].what == DECIDE:
            return replace(self, given=self.given[:-1])
        return self

    def _with(self, given: Given) -> Round:
        return replace(self, given=(*self.given, given))


def replay(posed: Posed, given: tuple[Given, ...]) -> Round:
    """Return a round with as much of what was given as still fits."""
    played = Round(posed)
    for each in given:
        try:
            if each.what == LOOK:
                played = played.look(each.value)
            elif each.what == DECIDE:
                played = played.decide()
            elif played.question and played.question.kind == each.what:
                played = played.answer(*each.value.split())
        except NotGiven:
            continue
    return played
