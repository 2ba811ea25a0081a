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


Moves = tuple[Step, ...]


class Plan(dict[Known, Moves]):
    """The steps from a question, by what is known of the urgency, its finding, and whether it was met before.

    Each is worked out when it is first needed. A question whose finding is known is passed in silence.
    """

    def __init__(self, ways: Ways, live: Live, at: int, ask: AskWays) -> None:
        super().__init__()
        self.taken, self.live, self.packing = ways.taken, live, live.packing
        self.at, self.ask = at, ask
        met = self.packing.mask(ask.met) if ask.met else 0
        self.key = self.packing.urgent | self.packing.mask(ask.finding) | met

    def __missing__(self, known: Known) -> Moves:
        ask, urgent = self.ask, known & self.packing.urgent
        answer = self.packing.answer(known, ask.finding)
        if answer is not None:
            branch = ask.branch_at[answer]
            self[known] = () if branch == NOWHERE else (self._step(urgent, 0, SILENT, branch, 1),)
        else:
            met = self.packing.bits(ask.met, 0) & ~known if ask.met else 0
            self[known] = self._answers(self.live.among(ask.finding, self.at, rank_of(urgent)), urgent, met)
        return self[known]

    def opening(self, known: Known) -> Moves:
        """Return the steps in which a walk is told what it is about; what is taken as known is silent."""
        each = {answer: 1 << answer for answer in range(len(self.ask.branch_at))}
        steps = self._answers(each, known & self.packing.urgent, 0)
        silent = [step._replace(answer=SILENT) for step in steps if step.answer == self.taken]
        return (*silent, *(step for step in steps if step.answer != self.taken))

    def _answers(self, alike: dict[int, int], urgent: int, met: int) -> Moves:
        """Return a step for each kind of answer, those alike from there on together."""
        ask = self.ask
        return tuple(
            self._step(
                urgent, self.packing.bits(ask.finding, first) + met, first, ask.branch_at[first], among
            )
            for first, among in alike.items()
            if ask.branch_at[first] != NOWHERE
        )

    def _step(self, urgent: int, adds: int, answer: int, branch: int, among: int) -> Step:
        rank, to = self.ask.ranks[branch], self.ask.targets[branch]
        after = min(urgent, rank + 1)  # urgency never falls; where it is kept no more, it stays so
        keep = self.live.keep(to, rank_of(after))
        return Step(adds + after - urgent, *keep, to, answer, branch, among, rank)


class Steps:
    """The steps from each node."""

    def __init__(self, ways: Ways, live: Live) -> None:
        self.ways, self.live, self.packing = ways, live, live.packing
        self.plans = [
            Plan(ways, live, at, node) if isinstance(node, AskWays) else None
            for at, node in enumerate(ways.nodes)
        ]

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


def rank_of(urgent: int) -> int:
    """Return the rank in the bits of the urgency; where it is kept no more, one that nothing asks about."""
    return urgent - 1 if urgent else 0
