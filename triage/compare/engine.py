"""Two guides, compared: every lamb that ends otherwise, and everything else that differs."""

from __future__ import annotations

from collections.abc import Iterator
from collections.abc import Set as AbstractSet
from difflib import SequenceMatcher

from triage.compare.compared import ActDifference, Comparison, Difference, LostCaution
from triage.compare.lambs import Lambs, Said
from triage.compare.leaning import Leaning
from triage.compare.numbers import numbers_moved
from triage.compare.rules import rules_lost
from triage.compare.sides import NONE, Sides
from triage.compare.statements import Statements, compared_statements
from triage.compare.states import STUCK, Last, Outcome
from triage.compare.words import words_changed
from triage.guide.model import Guide
from triage.walk import Move

ALIKE = 0.5
"""How alike a caution is, from 0 to 1, that stands beside a lost one as what may have become of it."""


def compare(old: Guide, new: Guide, apart: AbstractSet[str] = frozenset(), most: int = 0) -> Comparison:
    """Compare two guides in which every walk comes to an end; `most` states are searched, for tests.

    `apart` are keys of changed statements that somebody answers for. Lambs that meet any other changed
    statement are then told apart from those that meet no other, each kind with a lamb of its own.
    """
    sides = Sides.of(old, new)
    return _Comparing(sides, compared_statements(sides), frozenset(apart), most).run()


class _Comparing:
    def __init__(self, sides: Sides, statements: Statements, apart: frozenset[str], most: int) -> None:
        self.sides, self.statements = sides, statements
        self.paths, self.pages, self.scale = sides.paths, sides.pages, sides.scale
        self.lambs = Lambs(sides.paths)
        changed = statements.changed
        self.leaning = Leaning(statements.old, changed), Leaning(statements.new, changed)
        others = NONE
        if apart:
            others = self._meeting(0, changed - apart), self._meeting(1, changed - apart)
        self.found = sides.search(most, others)

    def _meeting(self, side: int, keys: frozenset[str]) -> frozenset[str]:
        """Return the nodes of a guide that are, or lean on, one of these statements."""
        nodes = self.sides.guides[side].nodes
        return frozenset(
            name for name in nodes if not keys.isdisjoint(self.leaning[side].under(f"node/{name}"))
        )

    def run(self) -> Comparison:
        """Return all that differs."""
        told = [
            self._difference(outcome, *found)
            for outcome, found in self.found.outcomes.items()
            if self._differs(outcome)
        ]
        less = [each for each in told if self._rank(0, each) < self._rank(1, each)]
        more = [each for each in told if self._rank(0, each) > self._rank(1, each)]
        elsewhere = [each for each in told if self._rank(0, each) == self._rank(1, each)]
        old, new = self.sides.guides
        numbers = numbers_moved(old, new)
        words = words_changed(old, new, self.statements)
        return Comparison(
            less_urgent=tuple(sorted(less, key=self._worst_first)),
            lost_cautions=tuple(self._lost()),
            rules_lost=rules_lost(old, new),
            more_urgent=tuple(sorted(more, key=self._worst_first)),
            elsewhere=tuple(elsewhere),
            on_the_way=tuple(self._on_the_way()),
            numbers=numbers,
            added=self.statements.added,
            removed=self.statements.removed,
            renamed=self.statements.renamed,
            words=words,
            otherwise=self._otherwise(
                {f"number/{each.number}" for each in numbers}, {each.key for each in words}
            ),
            changed=self.statements.changed,
            complete=self.found.complete,
            states=self.found.states,
        )

    def _otherwise(self, *told: set[str]) -> tuple[str, ...]:
        known = set[str]().union(*told)
        return tuple(key for key in self.statements.both if key not in known)

    def _rank(self, side: int, each: Difference) -> int:
        return self.scale.rank(side, (each.old_urgency, each.new_urgency)[side])

    def _worst_first(self, each: Difference) -> tuple[int, int]:
        """Sort by how urgent the more urgent guide calls it, then by how far the other one is from that."""
        ranks = self._rank(0, each), self._rank(1, each)
        return min(ranks), -max(ranks)

    def _differs(self, outcome: Outcome) -> bool:
        if outcome.old_rank != outcome.new_rank:
            return True
        if STUCK in (outcome.old, outcome.new):
            return outcome.old != outcome.new
        before, after = self._ends(outcome)
        return not self.pages.same(before, after) or self.pages.other_steps(before, after)

    def _ends(self, outcome: Outcome) -> tuple[str, str]:
        ends = (outcome.old, outcome.new)
        before, after = ("" if at == STUCK else self.paths[side].names[at] for side, at in enumerate(ends))
        return before, after

    def _difference(self, outcome: Outcome, states: int, last: Last | None) -> Difference:
        before, after = self._ends(outcome)
        return Difference(
            before,
            after,
            self.scale.name(0, outcome.old_rank),
            self.scale.name(1, outcome.new_rank),
            *self._lamb(last),
            states,
            not before or not after or not self.pages.same(before, after),
        )

    def _lamb(
        self, last: Last | None
    ) -> tuple[tuple[Said, ...], tuple[Move, ...], tuple[Move, ...], frozenset[str]]:
        moves = self.found.moves_to(last)
        walks = [self.lambs.walk(side, moves) for side in (0, 1)]
        met = (key for side, walk in enumerate(walks) for key in self.leaning[side].met(walk.met))
        return self.lambs.said(moves), walks[0].moves, walks[1].moves, frozenset(met)

    def _lost(self) -> Iterator[LostCaution]:
        """Yield each caution that is lost between two pages, ends first, once with a shortest lamb."""
        told: set[tuple[str, str, str]] = set()
        for before, after, last in (*self._ends_met(), *self._acts_met()):
            for text in self.pages.lost(before, after):
                if (text, before, after) not in told:
                    told.add((text, before, after))
                    yield LostCaution(
                        text, before, after, self._nearest(text, before, after), *self._lamb(last)
                    )

    def _ends_met(self) -> Iterator[tuple[str, str, Last | None]]:
        for outcome, (_, last) in self.found.outcomes.items():
            before, after = self._ends(outcome)
            if before and after:
                yield before, after, last

    def _acts_met(self) -> Iterator[tuple[str, str, Last | None]]:
        for twin, (_, last) in self.found.both_did.items():
            yield self.sides.act(0, twin), self.sides.act(1, twin), last

    def _nearest(self, text: str, before: str, after: str) -> str:
        had = set(self.pages.shown(0, before).cautions)
        fresh = [each for each in self.pages.shown(1, after).cautions if each not in had]
        best = max(fresh, key=lambda each: _alike(text, each), default="")
        return best if best and _alike(text, best) >= ALIKE else ""

    def _on_the_way(self) -> Iterator[ActDifference]:
        for (twin, only_old), (states, last) in self.found.acts.items():
            name = self.sides.act(0 if only_old else 1, twin)
            yield ActDifference(name if only_old else "", "" if only_old else name, *self._lamb(last), states)
        for twin, (states, last) in self.found.both_did.items():
            before, after = self.sides.act(0, twin), self.sides.act(1, twin)
            if self.pages.other_steps(before, after):
                yield ActDifference(before, after, *self._lamb(last), states)


def _alike(text: str, other: str) -> float:
    return SequenceMatcher(None, text.split(), other.split(), autojunk=False).ratio()
