"""The longest walk to each end, counted in screens, over every walk that real answers can take."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, End, Guide
from triage.walk import bound, branch_for, fits

Known = frozenset[tuple[str, Value]]


@dataclass(frozen=True)
class _Here:
    """A state of the search: where, what is known, and the acts already carried out."""

    node: str
    known: Known
    acts: frozenset[str]


def longest_walks(guide: Guide) -> dict[str, tuple[str, ...]]:
    """Return for each end that can be reached the longest list of screens to it.

    Each answer that can matter is tried: every choice, "not sure", and one value in each band
    that any node cuts a measurement into. An act that comes round again, and what it makes the
    keeper ask again, is a repeat: it is followed once and not counted twice.
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
        self.best: dict[_Here, dict[str, tuple[str, ...]]] = {}

    def run(self) -> dict[str, tuple[str, ...]]:
        return self._from(_Here(self.guide.front.way_in, frozenset(), frozenset()))

    def _from(self, here: _Here) -> dict[str, tuple[str, ...]]:
        """Return the longest rest of a walk to each end from here; memory keeps it cheap."""
        here = _Here(
            here.node, frozenset(pair for pair in here.known if pair[0] in self.live[here.node]), here.acts
        )
        if here in self.best:
            return self.best[here]
        node = self.guide.nodes[here.node]
        if isinstance(node, End):
            rest: dict[str, tuple[str, ...]] = {here.node: (here.node,)}
        elif isinstance(node, Act):
            rest = self._act(here, node)
        else:
            rest = self._ask(here, node)
        self.best[here] = rest
        return rest

    def _ask(self, here: _Here, node: Ask) -> dict[str, tuple[str, ...]]:
        known = dict(here.known)
        if node.finding in known:
            branch = branch_for(self.guide, node, known[node.finding])
            return self._from(_Here(branch.go, here.known, here.acts)) if branch else {}
        longest: dict[str, tuple[str, ...]] = {}
        for value in self.values[node.finding]:
            branch = branch_for(self.guide, node, value)
            if branch:
                after = here.known | {(node.finding, value)}
                _keep_longest(longest, self._from(_Here(branch.go, after, here.acts)))
        return {end: (here.node, *walk) for end, walk in longest.items()}

    def _act(self, here: _Here, node: Act) -> dict[str, tuple[str, ...]]:
        if here.node in here.acts:
            return self._from(_Here(node.else_, here.known, here.acts)) if node.else_ else {}
        after = frozenset(pair for pair in here.known if pair[0] not in node.forget)
        rest = self._from(_Here(node.then, after, here.acts | {here.node}))
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
