"""One search of a guide, with everything that the checks ask of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from triage.check.search.claims import Claim, claims_of
from triage.check.search.live import Live
from triage.check.search.onward import Onward
from triage.check.search.states import DONE, SILENT, Edge, States, explore
from triage.check.search.ways import NOWHERE, Ways
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Branch, Guide, Node
from triage.rules.pages import Page, pages_of
from triage.rules.telling import Telling


@dataclass(frozen=True)
class Searched:
    """A guide and all states that real answers lead to."""

    guide: Guide
    telling: Telling
    pages: Mapping[str, Page]
    claims: tuple[Claim, ...]
    states: States

    @cached_property
    def onward(self) -> Onward:
        """What is certain from each state on."""
        return Onward(self.states)

    @cached_property
    def nodes(self) -> list[Node]:
        """The nodes by index."""
        return list(self.guide.nodes.values())

    def node(self, state: int) -> Node:
        """Return the node of a state."""
        return self.nodes[self.states.at[state]]

    def asked(self) -> Iterator[tuple[int, Ask]]:
        """Yield each state that asks a question, with its node."""
        for state in self.onward.asked():
            node = self.node(state)
            if isinstance(node, Ask):
                yield state, node

    @cached_property
    def _answers(self) -> dict[str, dict[Value, int]]:
        """The place of each answer to each finding."""
        return {
            name: {each: at for at, each in enumerate(told)} for name, told in self.telling.values.items()
        }

    def opening(self) -> Iterator[tuple[int, Ask]]:
        """Yield the state in which a walk is told what it is about, where there is one, with its node."""
        node = self.node(0)
        if self.states.ways.taken != NOWHERE and isinstance(node, Ask):
            yield 0, node

    def value(self, finding: str, answer: int) -> Value:
        """Return an answer by its index."""
        return self.telling.values[finding][answer]

    def way_of(self, state: int, node: Ask, value: Value) -> Edge | None:
        """Return the way that an answer takes from a state that asks a question, None without a branch."""
        answer = self._answers[node.finding][value]
        for edge in self.states.edges[state]:
            if edge.among >> answer & 1:
                return edge if edge.answer == answer else edge._replace(answer=answer)
        return None

    def unsure(self, state: int, node: Ask) -> Edge | None:
        """Return the way that "not sure" takes from a state that asks a question, None without one."""
        if self.guide.findings[node.finding].never_unsure:
            return None
        return self.way_of(state, node, UNSURE)

    @cached_property
    def taken(self) -> dict[tuple[int, int], list[tuple[int, Edge]]]:
        """Each branch taken anywhere, asked or in silence, with every state and way in which it is taken.

        A branch is told by its node and its place in it, both by index.
        """
        taken: dict[tuple[int, int], list[tuple[int, Edge]]] = {}
        lists: list[list[list[tuple[int, Edge]]]] = [[[] for _ in _branches(node)] for node in self.nodes]
        for state, (at, edges) in enumerate(zip(self.states.at, self.states.edges, strict=True)):
            for edge in edges:
                if edge.branch != NOWHERE:
                    ways = lists[at][edge.branch]
                    if not ways:
                        taken[at, edge.branch] = ways
                    ways.append((state, edge))
        return taken

    def branch(self, key: tuple[int, int]) -> Branch:
        """Return a branch by its node and its place in it."""
        node = self.nodes[key[0]]
        assert isinstance(node, Ask)
        return node.branches[key[1]]

    def longest(self) -> dict[str, tuple[str, ...]]:
        """Return for each end that a lamb can come to the longest list of different screens to it."""
        names = self.states.ways.names
        return {
            names[at]: tuple(names[each] for each in shown) for at, (_, shown) in self.onward.longest.items()
        }

    def known(self, ways: Iterable[tuple[int, Edge]]) -> dict[str, int]:
        """Return what is known at the end of a walk: findings, each with the place of its answer."""
        known: dict[str, int] = {}
        for state, edge in ways:
            node = self.node(state)
            if isinstance(node, Ask) and edge.answer != SILENT:
                known[node.finding] = edge.answer
            elif isinstance(node, Ask) and state == 0:
                known[node.finding] = self.states.ways.taken
            elif isinstance(node, Act) and edge.answer == DONE:
                known = {name: answer for name, answer in known.items() if name not in node.forget}
        return known

    def answers(self, ways: Iterable[tuple[int, Edge]]) -> list[tuple[str, Value]]:
        """Return the answers given on the ways of a walk, each of which is told with the state it leaves."""
        given: list[tuple[str, Value]] = []
        for state, edge in ways:
            node = self.node(state)
            if isinstance(node, Ask) and edge.answer != SILENT:
                given.append((node.finding, self.value(node.finding, edge.answer)))
        return given


def _branches(node: Node) -> tuple[Branch, ...]:
    return node.branches if isinstance(node, Ask) else ()


def search(guide: Guide, most: int = 0) -> Searched:
    """Search a guide whose every walk ends. Stopped at its limit it is not complete; `most` is for tests."""
    telling = Telling(guide)
    pages = pages_of(guide)
    claims = tuple(claims_of(guide, telling, pages))
    ways = Ways(guide, telling)
    return Searched(guide, telling, pages, claims, explore(ways, Live(ways, claims), claims, most))
