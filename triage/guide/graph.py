"""The guide as a graph, for the checks. networkx is loaded here and nowhere on the way to a question."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import networkx as nx

from triage.guide.model import Act, Ask, Guide, Node


def ways_out(node: Node) -> Iterator[tuple[str, str]]:
    """Yield each way out of a node as (target, key); the key tells two ways to one target apart."""
    if isinstance(node, Ask):
        for index, branch in enumerate(node.branches):
            yield branch.go, f"branch {index}"
    elif isinstance(node, Act):
        yield node.then, "then"
        if node.else_:
            yield node.else_, "else"


def graph_of(guide: Guide, without: Iterable[str] = ()) -> nx.MultiDiGraph[str]:
    """Return the guide's nodes and ways out, leaving out the nodes named.

    Every target exists, as reading has looked up all names: networkx would invent a missing one.
    """
    left_out = set(without)
    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph()
    graph.add_nodes_from(name for name in guide.nodes if name not in left_out)
    for name, node in guide.nodes.items():
        for target, key in ways_out(node):
            if name not in left_out and target not in left_out:
                graph.add_edge(name, target, key=key)
    return graph


def unbounded(guide: Guide) -> nx.MultiDiGraph[str]:
    """Return the graph with the bounded loops opened: acts with `at_most` keep only their `else`."""
    graph = graph_of(guide)
    for name, node in guide.nodes.items():
        if isinstance(node, Act) and node.at_most:
            graph.remove_edge(name, node.then, key="then")
    return graph


def coming_round(guide: Guide) -> frozenset[str]:
    """Return the nodes that a walk can meet more than once: those on a loop."""
    graph = graph_of(guide)
    loops = (group for group in nx.strongly_connected_components(graph) if len(group) > 1)
    alone = {name for name in graph if graph.has_edge(name, name)}
    return frozenset(alone.union(*loops))
