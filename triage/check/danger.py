"""Danger first: no way to anything that is done goes round the danger signs."""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from triage.guide.graph import graph_of
from triage.guide.model import Act, Ask, End, Guide
from triage.problems import Problem


def in_front(guide: Guide) -> Iterator[Problem]:
    """Every way to an end or an act asks each danger finding: without those asks none can be reached.

    A guide with several ways in has danger signs of its own for each: those that the way asks first.
    What is done on a way, up to the danger signs of another one, is done only after its own.
    """
    way_in = guide.front.way_in
    owned = _owned(guide)
    for finding in guide.front.danger_signs:
        asking = _asking(guide, finding)
        if way_in in asking:
            continue
        graph = graph_of(guide, without=asking)
        reached = nx.descendants(graph, way_in) | {way_in}
        for name in sorted(reached & _behind(guide, finding, owned)):
            node = guide.nodes[name]
            if isinstance(node, End | Act):
                what = f"'{name}' can be reached without asking '{finding}'; ask the danger signs first"
                yield Problem(node.place, what, "danger-first")


def _asking(guide: Guide, finding: str) -> set[str]:
    return {name for name, node in guide.nodes.items() if isinstance(node, Ask) and node.finding == finding}


def starts(guide: Guide) -> dict[str, str]:
    """Return the node at which each way in begins, by its choice; a sole way has none."""
    node = guide.nodes[guide.front.way_in]
    if not guide.front.unless_told or not isinstance(node, Ask):
        return {"": guide.front.way_in}
    return {choice: branch.go for branch in node.branches for choice in branch.is_}


def _owned(guide: Guide) -> dict[str, set[str]]:
    """Return for each danger finding the starts of the ways on which it is the first one asked."""
    owned: dict[str, set[str]] = {finding: set() for finding in guide.front.danger_signs}
    asking = {finding: _asking(guide, finding) for finding in owned}
    for start in starts(guide).values():
        first = _up_to(guide, start, set().union(*asking.values()))
        for finding, asks in asking.items():
            if asks & first:
                owned[finding].add(start)
    return owned


def _behind(guide: Guide, finding: str, owned: dict[str, set[str]]) -> set[str]:
    """Return the nodes for which a danger finding stands: those of its ways, and all when it has none."""
    if not guide.front.unless_told or not owned[finding]:
        return set(guide.nodes)
    others = {name for each, begins in owned.items() if begins for name in _asking(guide, each)}
    others -= _asking(guide, finding)
    return set[str]().union(*(_up_to(guide, start, others) for start in owned[finding]))


def _up_to(guide: Guide, start: str, stops: set[str]) -> set[str]:
    """Return what can be reached from a node, the stops among it, but nothing after those."""
    graph = graph_of(guide)
    graph.remove_edges_from(list(graph.out_edges(stops)))
    return nx.descendants(graph, start) | {start}


def unlisted(guide: Guide) -> Iterator[Problem]:
    """A choice of a danger finding that calls for the top urgency is listed as a danger sign."""
    for node in guide.nodes.values():
        if not isinstance(node, Ask) or node.finding not in guide.front.danger_signs:
            continue
        for branch in node.branches:
            for choice in branch.is_ if branch.at_least == guide.top else ():
                if choice not in guide.front.danger_signs[node.finding]:
                    what = f"'{choice}' of '{node.finding}' calls for '{guide.top}'; list it in danger_signs"
                    yield Problem(branch.place, what, "danger-unlisted")
