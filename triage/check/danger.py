"""Danger first: no way to anything that is done goes round the danger signs."""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from triage.guide.graph import graph_of
from triage.guide.model import Act, Ask, End, Guide
from triage.problems import Problem


def in_front(guide: Guide) -> Iterator[Problem]:
    """Every way to an end or an act asks each danger finding: without those asks none can be reached."""
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
            if isinstance(node, End | Act):
                what = f"'{name}' can be reached without asking '{finding}'; ask the danger signs first"
                yield Problem(node.place, what, "danger-first")


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
