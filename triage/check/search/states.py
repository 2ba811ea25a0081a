"""Every state that real answers can lead to: a node, and what is known that still matters there.

The search goes breadth first over answers and acts; a question passed in silence costs nothing. So the
way kept to each state is a shortest walk to it.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import NamedTuple

from triage.check.search.claims import Claim
from triage.check.search.held import Held
from triage.check.search.live import Live
from triage.check.search.packing import Known
from triage.check.search.steps import DONE, SILENT, Step, Steps, rank_of
from triage.check.search.ways import NOWHERE, ActWays, Ways

__all__ = ["DONE", "SILENT", "Edge", "States", "explore", "most_states"]


def most_states(nodes: int) -> int:
    """Return how many states are searched at most: beyond it the search stops and says so.

    The shipped guide has about fifty for each node. A guide at the limit takes some seconds.
    """
    return 100_000 + 200 * nodes


class Edge(NamedTuple):
    """A way from a state: `answer` by index, or SILENT, or DONE for an act carried out."""

    to: int
    answer: int
    branch: int
    among: int
    """The telling answers that this one stands for, as bits."""
    rank: int
    """The rank that the way itself raises the urgency to."""


@dataclass
class States:
    """What the search found. States are numbered in the order they were first met."""

    ways: Ways
    live: Live
    at: list[int] = field(default_factory=list)
    known: list[Known] = field(default_factory=list)
    edges: list[list[Edge]] = field(default_factory=list)
    before: list[int] = field(default_factory=list)
    """The state before each one on a shortest walk; -1 for the first."""
    broken: dict[Claim, int] = field(default_factory=dict)
    """The first state in which each broken claim was met."""
    spoilt: set[int] = field(default_factory=set)
    """Every state whose page breaks some claim."""
    complete: bool = True

    def value(self, state: int, finding: int) -> int | None:
        """Return the answer that a state holds for a finding, None when there is none."""
        return self.live.packing.answer(self.known[state], finding)

    def among(self, state: int, finding: int) -> int:
        """Return as bits the answers to a finding that a state stands for, none when it is not kept."""
        known = self.known[state]
        answer = self.live.packing.answer(known, finding)
        if answer is None:
            return 0
        rank = rank_of(known & self.live.packing.urgent)
        return self.live.among(finding, self.at[state], rank).get(answer, 0)

    def way_to(self, state: int) -> Iterator[tuple[int, Edge]]:
        """Yield each state and the edge taken from it, along a shortest walk to a state."""
        chain = [state]
        while self.before[chain[-1]] >= 0:
            chain.append(self.before[chain[-1]])
        chain.reverse()
        for earlier, later in pairwise(chain):
            yield earlier, next(edge for edge in self.edges[earlier] if edge.to == later)


def explore(ways: Ways, live: Live, claims: Collection[Claim], most: int = 0, enough: bool = False) -> States:
    """Search every state from the way in, holding each page to its claims; `most` is for tests.

    With `enough` the search ends once each rule among the claims is broken somewhere.
    """
    rules = {claim.rule for claim in claims} if enough else None
    return _Search(ways, live, claims, most or most_states(len(ways.nodes)), rules).run()


# A named tuple made as its own class makes it, without the call between: over a hundred thousand are made.
_as_is = tuple.__new__


class _Search:
    def __init__(
        self, ways: Ways, live: Live, claims: Iterable[Claim], most: int, until: set[str] | None
    ) -> None:
        self.ways, self.live, self.most, self.until = ways, live, most, until
        self.states = States(ways, live)
        self.steps = Steps(ways, live)
        self.held = Held(ways, live.packing, claims)
        self.numbers: list[dict[Known, int]] = [{} for _ in ways.nodes]
        self.cost: list[int] = []
        self.open: list[bool] = []
        self.waiting: deque[int] = deque()

    def run(self) -> States:
        states, waiting, plans = self.states, self.waiting, self.steps.plans
        self._meet(-1, self.ways.start, self.live.packing.bits(0, self.ways.nobody), 0)
        while waiting:
            state = waiting.popleft()
            if not self.open[state]:
                continue
            self.open[state] = False
            if len(self.cost) > self.most:
                states.complete = False
                break
            at, known = states.at[state], states.known[state]
            plan = plans[at]
            if plan is None:
                self._page(state, at, known)
            elif state or self.ways.taken == NOWHERE:
                self._go(state, known, plan[known & plan.key])
            else:
                self._go(state, known, plan.opening(known))
            if self.until is not None and not self.until:
                break
        return states

    def _page(self, state: int, at: int, known: Known) -> None:
        """Go on from an act, and hold an act or an end to its claims, unless it is passed in silence."""
        ways = self.ways.nodes[at]
        if isinstance(ways, ActWays):
            left, step = self.steps.act(ways, known)
            self._go(state, left, (step,))
            if step.answer == SILENT:
                return
        for claim in self.held.broken(at, known):
            self.states.spoilt.add(state)
            self.states.broken.setdefault(claim, state)
            if self.until is not None:
                self.until.discard(claim.rule)

    def _go(self, state: int, known: Known, steps: Iterable[Step]) -> None:
        edges, cost = self.states.edges[state], self.cost[state]
        for adds, same, moved, to, answer, branch, among, rank in steps:
            after = known + adds
            kept = after & same
            for mask, firsts in moved:
                kept |= firsts[after & mask]
            there = self.numbers[to].get(kept)
            if there is None or cost < self.cost[there]:
                there = self._meet(state, to, kept, cost + (answer != SILENT))
            edges.append(_as_is(Edge, (there, answer, branch, among, rank)))

    def _meet(self, before: int, at: int, known: Known, cost: int) -> int:
        there = self.numbers[at].setdefault(known, len(self.cost))
        if there == len(self.cost):
            self.states.at.append(at)
            self.states.known.append(known)
            self.states.edges.append([])
            self.states.before.append(before)
            self.cost.append(cost)
            self.open.append(True)
        elif cost < self.cost[there]:
            self.cost[there], self.states.before[there] = cost, before
        else:
            return there
        if before >= 0 and cost == self.cost[before]:
            self.waiting.appendleft(there)
        else:
            self.waiting.append(there)
        return there
