"""Which case comes next: weak spots first, then what was never met, then what is due again.

A new helper meets the farm's first cases, which put every rule to the test: so a wrong belief about any one
of them is found out before the sixtieth.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from itertools import islice
from math import sqrt
from random import Random

from triage.guide.model import Guide
from triage.practice.cards import RULE, SIGN, cards_of, kind_of, rule_card
from triage.practice.case import Case
from triage.practice.drawing import Drawing
from triage.practice.drawn import draw_case
from triage.practice.memory import Remembered
from triage.practice.questions import Posed, Questions
from triage.practice.supposing import suppositions
from triage.practice.written import case_of
from triage.problems import Problem
from triage.rules.bearing import Bearing
from triage.walk import Answer, Walk

SINCE = 60
"""Cases without a rule after which it counts as never met."""

WEAK = 3.0
"""What a card weighs that was not known when it was last asked, and is due."""

SIGNS_FIRST = 8
"""How much more a danger sign never met weighs than a rule."""

DUE, DUE_AT_FIRST = 0.1, 0.8
"""What any other due card weighs; and all of them together while rules are unmet, less than one such rule."""

LESS = 20
"""After a case for now the next one is hardly ever for now as well, and after several without any that is
cared for at home, hardly ever one that is not."""

NO_CALL = 5
"""Cases after which there is to be one for which nobody is phoned, as long as there are any."""

NEIGHBOURS = 8
"""Neighbours of a drawn lamb looked at, to find the two that are worth most."""

NOT_AGAIN = 10
"""Cases within which a page does not come twice, unless what is weak asks for it."""


@dataclass(frozen=True)
class Played:
    """One round as dealing sees it."""

    case: str
    page: str
    cards: frozenset[str]
    danger: bool = False
    """Whether it was for now."""
    called: bool = True
    """Whether a vet was called at all."""


@dataclass(frozen=True)
class Past:
    """What a helper has done: the rounds, the first one first, and the cards by name."""

    rounds: Sequence[Played] = ()
    kept: Mapping[str, Remembered] = field(default_factory=dict)


def calls(guide: Guide, urgency: str) -> bool:
    """Whether a vet is called at an urgency."""
    return bool(guide.urgency(urgency).opens)


class Dealer:
    """Deals the cases of one guide."""

    def __init__(self, guide: Guide) -> None:
        self.guide = guide
        self.drawing = Drawing(guide)
        self.bearing = Bearing(guide, self.drawing.telling)
        self.questions = Questions(guide, self.bearing)

    @cached_property
    def written(self) -> tuple[tuple[Posed, frozenset[str]], ...]:
        """Every written case with its questions and its cards. Mistakes are told by the check."""
        cases = (case_of(self.guide, each) for each in self.guide.cases.values())
        posed = [self.pose(case) for case in cases if not isinstance(case, Problem)]
        return tuple((each, cards_of(each)) for each in posed)

    @cached_property
    def rarity(self) -> Mapping[str, float]:
        """For each card how rare it is among the written cases: 1 where a single one has it."""
        found = Counter(card for _, cards in self.written for card in cards)
        return {card: 1 / sqrt(count) for card, count in found.items()}

    def pose(self, case: Case) -> Posed:
        """Return a case with its questions."""
        return Posed(case, self.questions.of(case))

    def deal(self, past: Past, now: datetime, rng: Random) -> Posed | None:
        """Return the next case; None where the guide has none and none can be drawn."""
        worth = self.worth(past, now)
        lately = {each.page for each in past.rounds[-NOT_AGAIN:]}
        best: tuple[float, Posed, frozenset[str]] | None = None
        grave = bool(past.rounds) and past.rounds[-1].danger
        called = len(past.rounds) >= NO_CALL and all(each.called for each in past.rounds[-NO_CALL:])
        for posed, cards in self._open(past, worth):
            value = worth.of(cards, posed.case.page.name in lately)
            # Who always says "now" is to be wrong often.
            value /= LESS if grave and posed.case.urgency == self.guide.top else 1
            value *= LESS if called and not calls(self.guide, posed.case.urgency) else 1
            if best is None or value > best[0]:
                best = (value, posed, cards)
        if best is None:
            return self.draw(rng, worth=worth)
        return self._afresh(best[1], past, worth, rng)

    def _afresh(self, posed: Posed, past: Past, worth: Worth, rng: Random) -> Posed:
        """Return a case played before as another lamb of the same kind, under the rules that matter."""
        case = posed.case
        played = [at for at, each in enumerate(past.rounds) if each.case == case.name]
        if not played:
            return posed
        bearing = (rule.name for rule in self.bearing.on(case.walk))
        wanted = [rule for rule in bearing if worth.cards.get(rule_card(rule), 0) > 0]
        other = self.draw(rng, case.page.name, wanted, worth)
        if other is None and len(past.rounds) - played[-1] < SINCE:
            other = self.draw(rng, case.page.name, (), worth)
        return other or posed

    def _open(self, past: Past, worth: Worth) -> Sequence[tuple[Posed, frozenset[str]]]:
        """Return the cases to choose from: all of them where something is weak, else the first ones first."""
        played = {each.case for each in past.rounds}
        first = [name for name in (self.guide.farm.first if self.guide.farm else ()) if name not in played]
        if worth.weak or not first:
            return self.written
        return [each for each in self.written if each[0].case.name in first]

    def draw(
        self, rng: Random, page: str = "", rules: Iterable[str] = (), worth: Worth | None = None
    ) -> Posed | None:
        """Return a case drawn from the graph, for a page and under rules, if one is found in time."""
        wanted = frozenset(rules)

        def serves(walk: Walk) -> bool:
            return wanted <= {rule.name for rule in self.bearing.on(walk)}

        case = draw_case(self.drawing, rng, page, serves if wanted else None)
        return self.pose(self._supposing(case, rng, worth)) if case else None

    def _supposing(self, case: Case, rng: Random, worth: Worth | None) -> Case:
        """Add the two neighbours that are worth most, or any two."""
        found = list(islice(suppositions(case, self.drawing, rng), NEIGHBOURS))

        def value(each: tuple[Answer, Walk]) -> float:
            cards = frozenset(rule_card(rule.name) for rule in self.bearing.on(each[1]))
            return worth.of(cards, False) if worth else 0.0

        ranked = [answer for answer, _ in sorted(found, key=value, reverse=True)[:2]]
        answers: list[Answer | None] = [*ranked, None, None]
        return replace(case, vet_if=answers[1], right_if=answers[0])

    def worth(self, past: Past, now: datetime) -> Worth:
        """Return what each card is worth now."""
        last = {card: at for at, played in enumerate(past.rounds) for card in played.cards}
        unmet = {
            card: rare * (SIGNS_FIRST if kind_of(card) == SIGN else 1)
            for card, rare in self.rarity.items()
            if kind_of(card) in (RULE, SIGN) and len(past.rounds) - last.get(card, -SINCE) >= SINCE
        }
        rules = any(kind_of(card) == RULE for card in unmet)
        weak = {card for card, kept in past.kept.items() if not kept.knew and kept.due <= now}
        due = {card for card, kept in past.kept.items() if kept.knew and kept.due <= now}
        return Worth({**unmet, **dict.fromkeys(weak, WEAK)}, frozenset(weak), frozenset(due), rules)


@dataclass(frozen=True)
class Worth:
    """What cards are worth at a moment."""

    cards: Mapping[str, float]
    weak: frozenset[str]
    due: frozenset[str]
    unmet: bool

    def of(self, cards: frozenset[str], lately: bool) -> float:
        """Return what a case with these cards is worth; less where its page was dealt lately."""
        value = sum(self.cards.get(card, 0.0) for card in cards)
        known = DUE * len(cards & self.due)
        value += min(known, DUE_AT_FIRST) if self.unmet else known
        return value / 4 if lately and not cards & self.weak else value
