"""The steps that a state can take, worked out once for each node and urgency.

All that a step does to what is known is one addition, and keeping what still matters where it leads to is
one look-up for each finding of which some answers are alike there. So the search itself is sums and look-ups.
"""

from __future__ import annotations

from typing import NamedTuple

from triage.check.search.live import Firsts, Live
from triage.check.search.packing import Known
from triage.check.search.ways import NOWHERE, ActWays, AskWays, Ways

SILENT = -1
DONE = -2


class Step(NamedTuple):
    """One step: what it adds to what is known, what is kept where it leads to, and how it is told."""

    adds: int
    same: int
    moved: tuple[tuple[int, Firsts], ...]
    to: int
    answer: int
    branch: int
    among: int
    rank: int


class Steps:
    """The steps from each node, by the urgency so far."""

    def __init__(self, ways: Ways, live: Live) -> None:
        self.ways, self.live, self.packing = ways, live, live.packing
        self._asked: dict[tuple[int, int], tuple[Step, ...]] = {}
        self._silent: dict[tuple[int, int], Step | None] = {}

    def asked(self, at: int, ways: AskWays, known: Known) -> tuple[Step, ...]:
        """Return a step for each kind of answer to a question, those alike from there on together."""
        urgent = known & self.packing.urgent
        met = self.packing.bits(ways.met, 0) & ~known if ways.met else 0
        key = (at, urgent | met)
        if key not in self._asked:
            alike = self.live.among(ways.finding, at, rank_of(urgent))
            self._asked[key] = self._answers(ways, alike, urgent, met)
        return self._asked[key]

    def opening(self, ways: AskWays, known: Known) -> tuple[Step, ...]:
        """Return the steps in which a walk is told what it is about; what is taken as known goes in silence."""
        urgent, taken = known & self.packing.urgent, self.ways.taken
        each = {answer: 1 << answer for answer in range(len(ways.branch_at))}
        steps = self._answers(ways, each, urgent, 0)
        silent = [step._replace(answer=SILENT) for step in steps if step.answer == taken]
        return (*silent, *(step for step in steps if step.answer != taken))

    def silent(self, at: int, ways: AskWays, known: Known, held: int) -> Step | None:
        """Return the step from a question whose answer is known, None where that has no branch."""
        key = (at, held | known & self.packing.urgent)
        if key not in self._silent:
            answer = self.packing.answer(held, ways.finding)
            assert answer is not None
            branch = ways.branch_at[answer]
            self._silent[key] = (
                None
                if branch == NOWHERE
                else self._by_branch(ways, known & self.packing.urgent, 0, SILENT, branch, 1)
            )
        return self._silent[key]

    def act(self, ways: ActWays, known: Known) -> tuple[Known, Step]:
        """Return what is left known by an act, and the step on from it; its `else` once it is used up."""
        packing = self.packing
        times = (packing.answer(known, ways.counter) or 0) if ways.counter else 0
        rank = rank_of(known & packing.urgent)
        if ways.counter and times >= ways.at_most:
            to = ways.targets[1]
            return known, Step(0, *self.live.keep(to, rank), to, SILENT, NOWHERE, 1, self.ways.nobody)
        for finding in ways.forget:
            known &= ~packing.mask(finding)
        if ways.counter:
            known = known & ~packing.mask(ways.counter) | packing.bits(ways.counter, times + 1)
        if ways.met:
            known = known & ~packing.mask(ways.met) | packing.bits(ways.met, 0)
        to = ways.targets[0]
        return known, Step(0, *self.live.keep(to, rank), to, DONE, NOWHERE, 1, self.ways.nobody)

    def _answers(self, ways: AskWays, alike: dict[int, int], urgent: int, met: int) -> tuple[Step, ...]:
        return tuple(
            self._by_branch(
                ways,
                urgent,
                self.packing.bits(ways.finding, first) + met,
                first,
                ways.branch_at[first],
                among,
            )
            for first, among in alike.items()
            if ways.branch_at[first] != NOWHERE
        )

    def _by_branch(self, ways: AskWays, urgent: int, adds: int, answer: int, branch: int, among: int) -> Step:
        rank, to = ways.ranks[branch], ways.targets[branch]
        after = min(urgent, rank + 1)  # urgency never falls; where it is kept no more, it stays so
        keep = self.live.keep(to, rank_of(after))
        return Step(adds + after - urgent, *keep, to, answer, branch, among, rank)


def rank_of(urgent: int) -> int:
    """Return the rank in the bits of the urgency; where it is kept no more, one that nothing asks about."""
    return urgent - 1 if urgent else 0
