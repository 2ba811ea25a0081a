"""Every state that real answers can lead to: a node, and what is known that still matters there.

The search goes breadth first over answers and acts; a question passed in silence costs nothing. So the
way kept to each state is a shortest walk to it.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import NamedTuple

from triage.check.search.claims import Claim
from triage.check.search.live import Known, Live, rank_in
from triage.check.search.ways import NOWHERE, ActWays, AskWays, Ways


def most_states(nodes: int) -> int:
    """Return how many states are searched at most: beyond it the search stops and says so.

    The shipped guide has about fifty for each node. A guide at the limit takes some seconds.
    """
    return 100_000 + 200 * nodes


SILENT = -1
DONE = -2


class Edge(NamedTuple):
    """A way from a state: `answer` by index, or SILENT, or DONE for an act carried out."""

    to: int
    answer: int
    branch: int
    among: int = 1
    """The telling answers that this one stands for, as bits."""


Way = tuple[int, int, int]
"""An edge whose end is not known yet: answer, branch, and the answers that are alike."""


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
        return answer_in(self.known[state], finding)

    def among(self, state: int, finding: int) -> int:
        """Return as bits the answers to a finding that a state stands for, none when it is not kept."""
        known = self.known[state]
        answer = answer_in(known, finding)
        alike = self.live.apart(finding, self.at[state], rank_in(known))
        return sum(1 << each for each, first in alike.items() if first == answer)

    def way_to(self, state: int) -> Iterator[tuple[int, Edge]]:
        """Yield each state and the edge taken from it, along a shortest walk to a state."""
        chain = [state]
        while self.before[chain[-1]] >= 0:
            chain.append(self.before[chain[-1]])
        chain.reverse()
        for earlier, later in pairwise(chain):
            yield earlier, next(edge for edge in self.edges[earlier] if edge.to == later)


def answer_in(known: Known, finding: int) -> int | None:
    """Return the answer to a finding among what is known, or None."""
    for of, answer in known:
        if of == finding:
            return answer
    return None


def with_answer(known: Known, finding: int, answer: int) -> Known:
    """Return what is known with one more answer, or another one."""
    return tuple(sorted([*(item for item in known if item[0] != finding), (finding, answer)]))


def explore(ways: Ways, live: Live, claims: Iterable[Claim], most: int = 0) -> States:
    """Search every state from the way in, holding each page to its claims; `most` is for tests."""
    return _Search(ways, live, claims, most or most_states(len(ways.nodes))).run()


class _Search:
    def __init__(self, ways: Ways, live: Live, claims: Iterable[Claim], most: int) -> None:
        self.ways, self.live, self.most = ways, live, most
        self.states = States(ways, live)
        self.number: dict[tuple[int, Known], int] = {}
        self.cost: list[int] = []
        self.open: list[bool] = []
        self.waiting: deque[int] = deque()
        self.claims: dict[int, list[tuple[Claim, list[tuple[int, int, bool]]]]] = {}
        for claim in claims:
            parts = [(ways.finding_at[each.finding], each.among, each.unasked) for each in claim.parts]
            self.claims.setdefault(ways.node_at[claim.node], []).append((claim, parts))

    def run(self) -> States:
        self._meet(-1, self.ways.start, ((0, self.ways.nobody),), 0)
        while self.waiting:
            state = self.waiting.popleft()
            if not self.open[state]:
                continue
            self.open[state] = False
            if len(self.number) > self.most:
                self.states.complete = False
                break
            self._expand(state)
        return self.states

    def _expand(self, state: int) -> None:
        ways = self.ways.nodes[self.states.at[state]]
        if isinstance(ways, AskWays):
            self._ask(state, ways)
            return
        if isinstance(ways, ActWays) and self._act(state, ways):
            return
        if self.states.at[state] in self.claims:
            self._hold(state)

    def _ask(self, state: int, ways: AskWays) -> None:
        at, known = self.states.at[state], self.states.known[state]
        answer = answer_in(known, ways.finding)
        if answer is not None:
            self._take(state, ways, known, (SILENT, ways.branch_at[answer], 1))
            return
        if state == 0 and self.ways.taken != NOWHERE:
            self._open(ways, known)
            return
        met = with_answer(known, ways.met, 0) if ways.met else known
        alike: dict[int, int] = {}
        for each, first in self.live.apart(ways.finding, at, rank_in(known)).items():
            alike[first] = alike.get(first, 0) | 1 << each
        for first, among in alike.items():
            after = with_answer(met, ways.finding, first)
            self._take(state, ways, after, (first, ways.branch_at[first], among))

    def _open(self, ways: AskWays, known: Known) -> None:
        """Begin with what is taken as known, in silence, and with each other answer that says otherwise."""
        taken = self.ways.taken
        self._take(
            0, ways, with_answer(known, ways.finding, taken), (SILENT, ways.branch_at[taken], 1 << taken)
        )
        for answer, branch in enumerate(ways.branch_at):
            if answer != taken:
                self._take(0, ways, with_answer(known, ways.finding, answer), (answer, branch, 1 << answer))

    def _take(self, state: int, ways: AskWays, known: Known, way: Way) -> None:
        branch = way[1]
        if branch == NOWHERE:
            return
        if known and known[0][0] == 0 and ways.ranks[branch] < known[0][1]:
            known = ((0, ways.ranks[branch]), *known[1:])
        self._go(state, ways.targets[branch], known, way)

    def _act(self, state: int, ways: ActWays) -> bool:
        """Go on from an act; return whether it was passed in silence, done as often as it may be."""
        known = self.states.known[state]
        times = (answer_in(known, ways.counter) or 0) if ways.counter else 0
        if ways.counter and times >= ways.at_most:
            self._go(state, ways.targets[1], known, (SILENT, NOWHERE, 1))
            return True
        known = tuple(item for item in known if item[0] not in ways.forget)
        if ways.counter:
            known = with_answer(known, ways.counter, times + 1)
        if ways.met:
            known = with_answer(known, ways.met, 0)
        self._go(state, ways.targets[0], known, (DONE, NOWHERE, 1))
        return False

    def _go(self, state: int, to: int, known: Known, way: Way) -> None:
        cost = self.cost[state] + (way[0] != SILENT)
        there = self._meet(state, to, self.live.keep(known, to), cost)
        self.states.edges[state].append(Edge(there, *way))

    def _meet(self, before: int, at: int, known: Known, cost: int) -> int:
        there = self.number.setdefault((at, known), len(self.number))
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

    def _hold(self, state: int) -> None:
        known = dict(self.states.known[state])
        for claim, parts in self.claims[self.states.at[state]]:
            for finding, among, unasked in parts:
                answer = known.get(finding)
                if not (unasked if answer is None else among >> answer & 1):
                    break
            else:
                self.states.spoilt.add(state)
                self.states.broken.setdefault(claim, state)
