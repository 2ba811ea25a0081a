"""The decisive questions of a case: only those on which a lamb's life hangs, with the guide's answers."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from random import Random
from typing import Literal

from triage.amounts import AMOUNTS
from triage.facts import UNSURE, Facts
from triage.guide.model import PLACEHOLDER, Act, End, Guide
from triage.guide.model_rules import Rule
from triage.guide.texts import steps_of
from triage.page.wall import SAID, Wall
from triage.page.words import Reader
from triage.practice.case import Case
from triage.practice.options import Option, idle, own_lines, page_at, stands_alone, tempting
from triage.rules.bearing import Bearing
from triage.units import System
from triage.walk import Answer, Walk

Kind = Literal["vet", "first", "amount", "right", "vet-if", "right-if"]
"""How soon a vet; what comes first; how much; which lines are right; and two of them supposed otherwise."""

MOST_LINES = 7
MOST_WRONG, MOST_RIGHT = 5, 3
MOST_OWN = 3
"""Deeds that break one rule which no other deed does; they would lose against those that break many."""
LEAST_RIGHT = 2
"""Right lines without which the cautions of the page are taken too."""
MOST_FIRST = 4
AMOUNTS_ASKED = 3


@dataclass(frozen=True)
class Question:
    """One decisive question. `many` is whether several of its options are right."""

    kind: Kind
    walk: Walk
    """The walk to the page that answers it."""
    options: tuple[Option, ...]
    many: bool = False

    @property
    def right(self) -> tuple[str, ...]:
        """The names of the right options."""
        return tuple(option.name for option in self.options if option.right)

    def option(self, name: str) -> Option | None:
        """Return an option by its name."""
        return next((option for option in self.options if option.name == name), None)


class Questions:
    """Makes the questions of a case. The same case has the same questions each time, in the same order."""

    def __init__(self, guide: Guide, bearing: Bearing) -> None:
        self.guide = guide
        self.bearing = bearing

    def of(self, case: Case) -> tuple[Question, ...]:
        """Return the questions of a case, in the order in which they are asked."""
        rules = self.bearing.on(case.walk)

        def rng(kind: Kind) -> Random:
            """Each question by itself the same each time."""
            return Random(f"{case.name}-{kind}")

        made = [self._vet("vet", case.walk, rules)]
        made += self._first(case.walk, rules, rng("first"))
        made += _amount(case, rng("amount"))
        made.append(self._right("right", case.walk, rules, rng("right"), "first" in {q.kind for q in made}))
        if case.vet_if and (walk := supposed_walk(case, case.vet_if)):
            made.append(self._vet("vet-if", walk, self.bearing.on(walk)))
        if case.right_if and (walk := supposed_walk(case, case.right_if)):
            made.append(self._right("right-if", walk, self.bearing.on(walk), rng("right-if")))
        return tuple(made)

    def _vet(self, kind: Kind, walk: Walk, rules: Iterable[Rule]) -> Question:
        """Ask how soon; what is less than a rule asks for has that rule against it."""
        rank = self.guide.rank
        least = {
            rule.name: rank(rule.always.urgency) for rule in rules if rule.always and rule.always.urgency
        }
        options = [
            Option(
                each.name,
                "call",
                each.say,
                tuple(name for name, asked in least.items() if asked < rank(each.name)),
                right=each.name == walk.state.urgency,
            )
            for each in self.guide.front.urgencies
        ]
        return Question(kind, walk, tuple(options))

    def _first(self, walk: Walk, rules: Sequence[Rule], rng: Random) -> list[Question]:
        """Ask for the first step: of the page's own, with something that is wrong there."""
        page = page_at(walk)
        first, *others = [line for line in own_lines(walk) if line.kind == "step"]
        later = [replace(line, right=False) for line in others if stands_alone(line)]
        wrong = [*tempting(self.guide, rules)] or [*idle(self.guide, page, rules)]
        if not later and not wrong:
            return []
        chosen = [first, *rng.sample(later, min(len(later), 2)), *rng.sample(wrong, min(len(wrong), 1))]
        return [Question("first", walk, _shuffled(chosen[:MOST_FIRST], rng))]

    def _right(
        self, kind: Kind, walk: Walk, rules: Sequence[Rule], rng: Random, without_first: bool = False
    ) -> Question:
        """Ask which lines are right; the wrong ones break as many as can be of the rules that bear."""
        page = page_at(walk)
        wrong = self._wrong([*tempting(self.guide, rules)], rng)
        if not wrong:
            others = [*idle(self.guide, page, rules)]
            wrong = rng.sample(others, min(len(others), 1))
        lines = [line for line in own_lines(walk)[without_first:] if stands_alone(line)]
        steps = [line for line in lines if line.kind == "step"]
        right = rng.sample(steps, min(len(steps), MOST_RIGHT, MOST_LINES - len(wrong)))
        cautions = [line for line in lines if line.kind == "caution"]
        right += cautions[: max(0, LEAST_RIGHT - len(right))]
        right = right or [own_lines(walk)[0]]
        return Question(kind, walk, _shuffled([*right, *wrong], rng), many=True)

    def _wrong(self, deeds: list[Option], rng: Random) -> list[Option]:
        """Return deeds to leave: some that break a rule of their own, and a few that break all others."""
        own = [deed for deed in deeds if self.guide.deeds[deed.name].against]
        chosen = rng.sample(own, min(len(own), MOST_OWN))
        others = [deed for deed in deeds if deed not in own]
        return [*chosen, *_covering(others, MOST_WRONG - len(chosen), rng)]


def supposed_walk(case: Case, otherwise: Answer) -> Walk | None:
    """Return where a case would lead with one answer otherwise, None where that is not to be asked.

    It has to come to a page by the answers there are. One that is not needed any more may be left out only
    where the call could be no more urgent: else it might be just what a careful helper calls for.
    """
    moves = case.walk.moves
    found = [
        at for at, each in enumerate(moves) if isinstance(each, Answer) and each.finding == otherwise.finding
    ]
    if not found:
        return None
    changed = case.walk.change(found[-1], otherwise.value)
    walk = changed.walk
    if not isinstance(walk.node, Act | End):
        return None
    if changed.dropped and walk.state.urgency != case.walk.guide.top:
        return None
    return walk if _all_else_is_the_same(case, otherwise, walk) else None


def _all_else_is_the_same(case: Case, otherwise: Answer, walk: Walk) -> bool:
    """Whether nothing but the one answer is otherwise: before an act much may have been."""
    return all(
        name == otherwise.finding or case.now.get(name, value) == value
        for name, value in walk.state.known.items()
    )


def _amount(case: Case, rng: Random) -> list[Question]:
    """Ask how much, where the page tells an amount that a wrong weight would make wrong."""
    name = amount_of(case)
    if not name:
        return []
    right = amount_words(case, name, "metric")
    others: dict[str, Option] = {}
    for at, walk_facts in enumerate(_otherwise(case)):
        words = AMOUNTS[name].work_out(walk_facts, "metric").words("metric")
        if words != right:
            others.setdefault(words, Option(f"other-{at}", "step", words, right=False))
    if len(others) < AMOUNTS_ASKED - 1:
        return []
    wrong = rng.sample(list(others.values()), AMOUNTS_ASKED - 1)
    return [Question("amount", case.walk, _shuffled([Option("right", "step", right), *wrong], rng))]


def amount_of(case: Case) -> str:
    """Return the first sum by weight that is given at once on the page of a case, or an empty text."""
    names = [name for step in steps_of(case.page) for name in PLACEHOLDER.findall(step.do)]
    sums = (AMOUNTS[name] for name in names if name in AMOUNTS and name not in SAID)
    return next((each.name for each in sums if "weight" in each.needs), "")


def amount_words(case: Case, name: str, system: System) -> str:
    """Return an amount for the lamb of a case, in words."""
    return AMOUNTS[name].work_out(case.walk.facts, system).words(system)


_WRONG_WEIGHTS = (0.25, 0.5, 1.5, 2.0, 3.0)
"""What a slip makes of a weight: pounds for kilos and back, half, double, and a figure too many."""


def _otherwise(case: Case) -> list[Facts]:
    """Return what would be known of lambs of other weights."""
    facts = case.walk.facts
    weight = facts.known.get("weight", UNSURE)
    guessed = {"single": 5.0, "twin": 4.0, "triplet": 3.0}.get(str(facts.known.get("birth-type")), 4.0)
    kilos = weight if isinstance(weight, float) else guessed
    return [Facts(facts.numbers, {**facts.known, "weight": kilos * share}) for share in _WRONG_WEIGHTS]


def _covering(options: list[Option], most: int, rng: Random) -> list[Option]:
    """Return as few of the options as speak for all their rules, at most so many."""
    chosen: list[Option] = []
    left = {rule for option in options for rule in option.rules}
    rng.shuffle(options)
    while left and len(chosen) < most:
        best = max(options, key=lambda option: len(left.intersection(option.rules)))
        chosen.append(best)
        left.difference_update(best.rules)
    return chosen


def _shuffled(options: list[Option], rng: Random) -> tuple[Option, ...]:
    mixed = list(options)
    rng.shuffle(mixed)
    return tuple(mixed)


def line_words(question: Question, option: Option, system: System) -> str:
    """Return an option as it is read; what comes first tells no amount, as that may be asked next."""
    if question.kind == "first":
        return Wall(question.walk.guide, system).fill(option.text)
    return Reader(question.walk.guide, question.walk.facts, system).fill(option.text)


def amount_line(case: Case, system: System) -> str:
    """Return the line of a page whose amount is asked for, without the amount."""
    text = next(step.do for step in steps_of(case.page) if amount_of(case) in PLACEHOLDER.findall(step.do))
    return Wall(case.walk.guide, system).fill(text)


@dataclass(frozen=True)
class Posed:
    """A case with its questions."""

    case: Case
    questions: tuple[Question, ...]

    @cached_property
    def rules(self) -> frozenset[str]:
        """The rules that its questions put to the test: a wrong belief about one gives a wrong answer."""
        return frozenset(rule for question in self.questions for rule in tested(question))


def tested(question: Question) -> frozenset[str]:
    """Return the rules that a question puts to the test."""
    return frozenset(rule for option in question.options for rule in option.rules)
