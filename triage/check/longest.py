"""The longest walk to each end, counted in screens, over every walk that real answers can take."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

import networkx as nx

from triage.facts import UNSURE, Value
from triage.guide.graph import graph_of
from triage.guide.model import Act, Ask, End, Guide
from triage.walk import bound, branch_for, fits

Known = frozenset[tuple[str, Value]]


@dataclass(frozen=True)
class _Here:
    """A state of the search: where, what is known, how often each counted act was done.

    `met` holds the screens already met among those that can come round again.
    """

    node: str
    known: Known
    times: frozenset[tuple[str, int]]
    met: frozenset[str]


def longest_walks(guide: Guide) -> dict[str, tuple[str, ...]]:
    """Return for each end that can be reached the longest list of different screens to it.

    Each answer that can matter is tried: every choice, "not sure", and one value in each band
    that any node cuts a measurement into. Loops are followed as often as their act allows; a
    screen that comes round again is a repeat, and is not counted twice.
    """
    return _Search(guide).run()


def telling_values(guide: Guide, finding: str) -> list[Value]:
    """Return one answer for each way a finding can matter anywhere in the guide."""
    what = guide.findings[finding]
    values: list[Value] = list(what.choices)
    if what.measure:
        edges: set[float] = set(what.plausible)
        for node in guide.nodes.values():
            if isinstance(node, Ask) and node.finding == finding:
                edges |= {
                    bound(guide, node, branch.below or branch.up_to)
                    for branch in node.branches
                    if branch.below or branch.up_to
                }
        ordered = sorted(edges)
        between = [(low + high) / 2 for low, high in pairwise(ordered)]
        values += [value for value in (*ordered, *between) if fits(what, value)]
    if not what.never_unsure:
        values.append(UNSURE)
    return values


class _Search:
    def __init__(self, guide: Guide) -> None:
        self.guide = guide
        self.values = {name: telling_values(guide, name) for name in guide.findings}
        self.live = live_findings(guide)
        self.coming_round = coming_round(guide)
        self.best: dict[_Here, dict[str, tuple[str, ...]]] = {}

    def run(self) -> dict[str, tuple[str, ...]]:
        return self._from(_Here(self.guide.front.way_in, frozenset(), frozenset(), frozenset()))

    def _from(self, here: _Here) -> dict[str, tuple[str, ...]]:
        """Return the longest rest of a walk to each end from here; memory keeps it cheap."""
        live = self.live[here.node]
        here = replace(here, known=frozenset(pair for pair in here.known if pair[0] in live))
        if here not in self.best:
            node = self.guide.nodes[here.node]
            if isinstance(node, End):
                self.best[here] = {here.node: (here.node,)}
            elif isinstance(node, Act):
                self.best[here] = self._act(here, node)
            else:
                self.best[here] = self._ask(here, node)
        return self.best[here]

    def _ask(self, here: _Here, node: Ask) -> dict[str, tuple[str, ...]]:
        known = dict(here.known)
        if node.finding in known:
            branch = branch_for(self.guide, node, known[node.finding])
            return self._from(replace(here, node=branch.go)) if branch else {}
        longest: dict[str, tuple[str, ...]] = {}
        for value in self.values[node.finding]:
            branch = branch_for(self.guide, node, value)
            if branch:
                after = here.known | {(node.finding, value)}
                going = replace(here, node=branch.go, known=after, met=self._met(here))
                _keep_longest(longest, self._from(going))
        return self._shown(here, longest)

    def _act(self, here: _Here, node: Act) -> dict[str, tuple[str, ...]]:
        done = dict(here.times).get(here.node, 0)
        if node.at_most and done >= node.at_most:
            return self._from(replace(here, node=node.else_))
        after = frozenset(pair for pair in here.known if pair[0] not in node.forget)
        times = here.times
        if node.at_most:
            times = frozenset({**dict(times), here.node: done + 1}.items())
        going = replace(here, node=node.then, known=after, times=times, met=self._met(here))
        return self._shown(here, self._from(going))

    def _met(self, here: _Here) -> frozenset[str]:
        return here.met | {here.node} if here.node in self.coming_round else here.met

    def _shown(self, here: _Here, rest: dict[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
        if here.node in here.met:
            return rest
        return {end: (here.node, *walk) for end, walk in rest.items()}


def _keep_longest(longest: dict[str, tuple[str, ...]], more: dict[str, tuple[str, ...]]) -> None:
    for end, walk in more.items():
        if len(walk) > len(longest.get(end, ())):
            longest[end] = walk


def live_findings(guide: Guide) -> dict[str, frozenset[str]]:
    """Return for each node the findings that can still be asked about from there on."""
    live: dict[str, frozenset[str]] = {name: frozenset() for name in guide.nodes}
    changed = True
    while changed:
        changed = False
        for name, node in guide.nodes.items():
            if isinstance(node, Ask):
                more = frozenset({node.finding}).union(*(live[branch.go] for branch in node.branches))
            elif isinstance(node, Act):
                more = live[node.then] | (live[node.else_] if node.else_ else frozenset())
            else:
                more = frozenset()
            if more != live[name]:
                live[name] = more
                changed = True
    return live


def coming_round(guide: Guide) -> frozenset[str]:
    """Return the nodes that a walk can meet more than once: those on a loop."""
    graph = graph_of(guide)
    loops = (group for group in nx.strongly_connected_components(graph) if len(group) > 1)
    alone = {name for name in graph if graph.has_edge(name, name)}
    return frozenset(alone.union(*loops))
