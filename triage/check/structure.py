"""Structure: everything can be reached, an end can be reached from everywhere, every loop ends."""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from triage.guide.graph import graph_of, unbounded
from triage.guide.model import Act, End, Guide
from triage.guide.texts import steps_of
from triage.problems import Problem

MOST_ROUNDS = 12
_ANY_END = ""


def unreachable(guide: Guide) -> Iterator[Problem]:
    """Every node can be reached from the way in."""
    way_in = guide.front.way_in
    reached = nx.descendants(graph_of(guide), way_in) | {way_in}
    for name, node in guide.nodes.items():
        if name not in reached:
            yield Problem(
                node.place, f"no answer leads to '{name}'; lead one here, or delete it", "unreachable"
            )


def dead_ends(guide: Guide) -> Iterator[Problem]:
    """From every node an end can be reached."""
    graph = graph_of(guide)
    ends = [name for name, node in guide.nodes.items() if isinstance(node, End)]
    graph.add_edges_from((end, _ANY_END) for end in ends)
    saved = nx.ancestors(graph, _ANY_END) if ends else set()
    for name, node in guide.nodes.items():
        if name not in saved:
            yield Problem(node.place, f"no end can be reached from '{name}'; lead it to one", "dead-end")


def endless_loops(guide: Guide) -> Iterator[Problem]:
    """Every loop passes an act with `at_most`, so every walk ends."""
    graph = unbounded(guide)
    for group in nx.strongly_connected_components(graph):
        if len(group) > 1 or any(graph.has_edge(name, name) for name in group):
            loop = [edge[0] for edge in nx.find_cycle(graph.subgraph(group))]
            first = min(range(len(loop)), key=lambda index: guide.nodes[loop[index]].place)
            names = " > ".join([*loop[first:], *loop[:first], loop[first]])
            what = f"this goes round without an end: {names}; put an act with 'at_most' on the way"
            yield Problem(guide.nodes[loop[first]].place, what, "endless-loop")


def rounds(guide: Guide) -> Iterator[Problem]:
    """An act is done a few times at most: no lamb is warmed all night in the same way."""
    for node in guide.nodes.values():
        if isinstance(node, Act) and node.at_most > MOST_ROUNDS:
            what = f"'{node.name}' may come {node.at_most} times; {MOST_ROUNDS} at most, then lead it on"
            yield Problem(node.place, what, "too-many-rounds")


def unused(guide: Guide) -> Iterator[Problem]:
    """Every how-to and every topic is used. Findings may also serve the sums alone."""
    steps = [step for node in guide.nodes.values() for step in steps_of(node)]
    used = {step.how for step in steps} | {finding.how for finding in guide.findings.values()}
    for name, how_to in guide.how_tos.items():
        if name not in used:
            what = f"no finding or step names the how-to '{name}'; name it, or delete the file"
            yield Problem(how_to.place, what, "unused")
    listed = set(guide.topics)
    for node in guide.nodes.values():
        if node.topic not in listed:
            what = f"topic '{node.topic}' is not in the list of topics in guide.yaml; add it"
            yield Problem(node.place, what, "unused")
