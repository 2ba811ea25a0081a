"""Danger first: no way to an end goes round the danger signs, and a sign that is there rings loudest."""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from triage.guide.graph import graph_of
from triage.guide.model import Ask, End, Guide
from triage.problems import Problem
from triage.walk import branch_for


def in_front(guide: Guide) -> Iterator[Problem]:
    """Every way to an end asks each danger finding: without those asks no end can be reached."""
    way_in = guide.front.way_in
    for finding in guide.front.danger_signs:
        asking = {
            name for name, node in guide.nodes.items() if isinstance(node, Ask) and node.finding == finding
        }
        if way_in in asking:
            continue
        reached = nx.descendants(graph_of(guide, without=asking), way_in) | {way_in}
        for name in sorted(reached):
            node = guide.nodes[name]
            if isinstance(node, End):
                what = f"'{name}' can be reached without asking '{finding}'; ask the danger signs first"
                yield Problem(node.place, what, "danger-first")


def top_urgency(guide: Guide) -> Iterator[Problem]:
    """The first ask of a danger finding gives the top urgency to each of its signs."""
    top = guide.top
    for finding, signs in guide.front.danger_signs.items():
        for node in _first_asks(guide, finding):
            for sign in signs:
                branch = branch_for(guide, node, sign)
                if branch is None:
                    continue  # a gap, which is told as one
                target = guide.nodes[branch.go]
                sure = branch.at_least == top or (isinstance(target, End) and target.urgency == top)
                if not sure:
                    what = f"danger sign {sign} must give '{top}' at once; add at_least: {top}"
                    yield Problem(branch.place, what, "danger-top")


def _first_asks(guide: Guide, finding: str) -> list[Ask]:
    """Return the asks of a finding that can be met before any other ask of it."""
    asking = {
        name: node for name, node in guide.nodes.items() if isinstance(node, Ask) and node.finding == finding
    }
    graph = graph_of(guide)
    first: list[Ask] = []
    for name, node in asking.items():
        others = set(asking) - {name}
        seen = graph.subgraph(set(graph) - others)
        way_in = guide.front.way_in
        if name == way_in or (way_in in seen and nx.has_path(seen, way_in, name)):
            first.append(node)
    return first
