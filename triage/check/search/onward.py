"""What is certain from each state on, and what may be: urgency, number of walks, and their length."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from triage.check.search.states import DONE, SILENT, Edge, States
from triage.check.search.ways import EndWays


class Onward:
    """Folds over the states. They have no circles: each round of a loop is a state of its own."""

    def __init__(self, states: States) -> None:
        self.states = states
        self.nobody = states.ways.nobody

    @cached_property
    def order(self) -> list[int]:
        """The states, each after every state that leads to it."""
        edges = self.states.edges
        left = [0] * len(edges)
        for ways in edges:
            for to, *_ in ways:
                left[to] += 1
        order = [0]
        for state in order:
            for edge in edges[state]:
                left[edge.to] -= 1
                if left[edge.to] == 0:
                    order.append(edge.to)
        return order

    @cached_property
    def sure(self) -> list[int]:
        """For each state the rank of urgency that every walk from it on is sure to reach."""
        sure = [self.nobody] * len(self.states.edges)
        ends = [ways.rank if isinstance(ways, EndWays) else self.nobody for ways in self.states.ways.nodes]
        for state in reversed(self.order):
            least = -1
            for to, _, _, _, rank in self.states.edges[state]:
                there = sure[to]
                there = min(there, rank)
                least = max(least, there)
            sure[state] = least if least >= 0 else ends[self.states.at[state]]
        return sure

    @cached_property
    def arrive(self) -> list[int]:
        """For each state the least urgent rank that any walk has when it comes there."""
        return self._calmest[0]

    @cached_property
    def _calmest(self) -> tuple[list[int], list[tuple[int, Edge] | None]]:
        """For each state that rank, and the last step of such a walk."""
        arrive = [-1] * len(self.states.edges)
        arrive[0] = self.nobody
        by: list[tuple[int, Edge] | None] = [None] * len(arrive)
        for state in self.order:
            mine = arrive[state]
            for edge in self.states.edges[state]:
                to, _, _, _, rank = edge
                rank = min(rank, mine)
                if rank > arrive[to]:
                    arrive[to], by[to] = rank, (state, edge)
        return arrive, by

    def calm_way_to(self, state: int) -> list[tuple[int, Edge]]:
        """Return each state and the edge taken from it, along a walk that comes to a state least urgently."""
        chain: list[tuple[int, Edge]] = []
        while (step := self._calmest[1][state]) is not None:
            chain.append(step)
            state = step[0]
        return chain[::-1]

    @cached_property
    def spoilt(self) -> list[float]:
        """For each state the share of the walks from it on that break some claim."""
        broken = [0] * len(self.states.edges)
        for state in reversed(self.order):
            if state in self.states.spoilt:
                broken[state] = self._walks[state]
            else:
                broken[state] = sum(
                    edge.among.bit_count() * broken[edge.to] for edge in self.states.edges[state]
                )
        return [broken[state] / max(self._walks[state], 1) for state in range(len(broken))]

    def by(self, state: int, edge: Edge, sure: list[int] | None = None) -> int:
        """Return the rank that is sure when this way is taken: its own, or one that comes anyway."""
        return min(self.rank(state, edge), (sure or self.sure)[edge.to])

    def rank(self, state: int, edge: Edge) -> int:
        """Return the rank that a way itself raises the urgency to."""
        return edge.rank

    @property
    def walks(self) -> int:
        """How many walks there are, each telling answer to a question counting as one way to go."""
        return self._walks[0]

    @cached_property
    def _walks(self) -> list[int]:
        walks = [0] * len(self.states.edges)
        for state in reversed(self.order):
            edges = self.states.edges[state]
            walks[state] = sum(edge.among.bit_count() * walks[edge.to] for edge in edges) if edges else 1
        return walks

    @cached_property
    def longest(self) -> dict[int, tuple[int, list[int]]]:
        """For each end's node the most screens to it, and the nodes shown on such a walk.

        A screen of a loop that comes round again is a repeat, and is not counted twice.
        """
        most = [-1] * len(self.states.edges)
        before = [-1] * len(most)
        most[0] = 0
        for state in self.order:
            mine = most[state] + self._shows(state)
            for edge in self.states.edges[state]:
                if mine > most[edge.to]:
                    most[edge.to], before[edge.to] = mine, state
        found: dict[int, int] = {}
        for state in self.order:
            at = self.states.at[state]
            if not self.states.ways.nodes[at].targets:
                best = found.get(at, -1)
                if best < 0 or most[state] > most[best]:
                    found[at] = state
        return {at: (most[state] + 1, self._shown(state, before)) for at, state in found.items()}

    def _shown(self, state: int, before: list[int]) -> list[int]:
        chain = [self.states.at[state]]
        while before[state] >= 0:
            state = before[state]
            if self._shows(state):
                chain.append(self.states.at[state])
        return chain[::-1]

    def _shows(self, state: int) -> bool:
        """Whether a state shows a screen that has not been shown before on its walk."""
        edges = self.states.edges[state]
        if not edges or edges[0].answer == SILENT:
            return False
        met = self.states.ways.nodes[self.states.at[state]].met
        return not met or self.states.value(state, met) is None

    def shown_next(self, edge: Edge) -> int:
        """Return the next state that shows a page, after any passed in silence."""
        state = edge.to
        while self.states.edges[state] and self.states.edges[state][0].answer == SILENT:
            state = self.states.edges[state][0].to
        return state

    def asked(self) -> Iterator[int]:
        """Yield each state that asks a question; what a walk is about is no page, and is not asked on one."""
        for state, edges in enumerate(self.states.edges):
            if edges and edges[0].answer not in (SILENT, DONE):
                yield state
