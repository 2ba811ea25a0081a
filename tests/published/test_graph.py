"""What the checks find in a graph, against networkx's own answers.

networkx (Hagberg, Schult, Swart, Proceedings of SciPy 2008) is asked by ways that the checks do not go:
ancestors of the ends, all simple cycles (Johnson 1975), and dominators (Cooper, Harvey, Kennedy 2001). The
edges are read off the model here, not through the project's own view of the graph. Years are from memory.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import networkx as nx
from hypothesis import given

from tests.conftest import small_guide
from tests.published.guides import MANY, act, any_guides, ask, end, guide_of, names_at
from tests.published.walks import shipped
from tests.ways import WAYS_IN
from triage.check.danger import in_front
from triage.check.structure import dead_ends, endless_loops, unreachable
from triage.guide.model import Act, Ask, End, Guide


def edges(guide: Guide, bounded: bool = True) -> nx.DiGraph[str]:
    """Return the guide as a plain graph; without `bounded`, acts that are counted lead only to their else."""
    graph: nx.DiGraph[str] = nx.DiGraph()
    graph.add_nodes_from(guide.nodes)
    for name, node in guide.nodes.items():
        if isinstance(node, Ask):
            graph.add_edges_from((name, branch.go) for branch in node.branches)
        elif isinstance(node, Act):
            if bounded or not node.at_most:
                graph.add_edge(name, node.then)
            if node.else_:
                graph.add_edge(name, node.else_)
    return graph


def ends(guide: Guide) -> set[str]:
    """Return the names of the ends."""
    return {name for name, node in guide.nodes.items() if isinstance(node, End)}


def pages(guide: Guide) -> set[str]:
    """Return the names of the ends and acts."""
    return {name for name, node in guide.nodes.items() if isinstance(node, End | Act)}


def undominated(guide: Guide, finding: str) -> set[str]:
    """Return the ends and acts that can be reached with no ask of a finding before them, by dominators.

    All asks of the finding are made one node, which then dominates an end if no way goes round them.
    """
    asking = {name for name, node in guide.nodes.items() if isinstance(node, Ask) and node.finding == finding}
    merged = nx.relabel_nodes(edges(guide), dict.fromkeys(asking, "asked"))
    start = "asked" if guide.front.way_in in asking else guide.front.way_in
    above = nx.immediate_dominators(merged, start)
    found: set[str] = set()
    for name in pages(guide):
        if name not in above and name != start:
            continue
        over, chain = name, [name]
        while over != start:
            over = above[over]
            chain.append(over)
        if "asked" not in chain:
            found.add(name)
    return found


def asks_of(guide: Guide, *findings: str) -> set[str]:
    """Return the nodes that ask one of these findings."""
    return {name for name, node in guide.nodes.items() if isinstance(node, Ask) and node.finding in findings}


def cut_after(guide: Guide, nodes: set[str], start: str) -> set[str]:
    """Return a node and all behind it, going no further at any of these nodes."""
    graph = edges(guide)
    graph.remove_edges_from([(at, to) for at, to in graph.edges if at in nodes])
    return {start} | nx.descendants(graph, start)


def belonging(guide: Guide, finding: str) -> set[str]:
    """Return the nodes that a danger finding stands before: all, or those of the ways that ask it first."""
    start = guide.nodes[guide.front.way_in]
    if not guide.front.unless_told or not isinstance(start, Ask):
        return set(guide.nodes)
    signs = guide.front.danger_signs
    first = {
        branch.go: {
            sign
            for sign in signs
            if asks_of(guide, sign) & cut_after(guide, asks_of(guide, *signs), branch.go)
        }
        for branch in start.branches
    }
    mine = {to for to, asked in first.items() if finding in asked}
    if not mine:
        return set(guide.nodes)
    others = {sign for asked in first.values() for sign in asked} - {finding}
    return {name for to in mine for name in cut_after(guide, asks_of(guide, *others), to)}


def check_reaching(guide: Guide) -> None:
    """Compare what can be reached, and what reaches an end, with networkx."""
    graph, way_in = edges(guide), guide.front.way_in
    reached = {way_in} | nx.descendants(graph, way_in)
    saved = ends(guide).union(*(nx.ancestors(graph, name) for name in ends(guide)))
    assert sorted(names_at(guide, [*unreachable(guide)])) == sorted(set(guide.nodes) - reached)
    assert sorted(names_at(guide, [*dead_ends(guide)])) == sorted(set(guide.nodes) - saved)


def check_danger(guide: Guide) -> None:
    """Compare the ends reached round the danger signs with dominators."""
    round_them = {
        name
        for finding in guide.front.danger_signs
        for name in undominated(guide, finding) & belonging(guide, finding)
    }
    assert set(names_at(guide, [*in_front(guide)])) == round_them


def check_loops(guide: Guide) -> None:
    """Compare the endless loops found with all simple cycles."""
    cycles = {tuple(cycle) for cycle in nx.simple_cycles(edges(guide, bounded=False))}
    problems = [*endless_loops(guide)]
    together: nx.Graph[str] = nx.Graph()
    for cycle in cycles:
        nx.add_cycle(together, cycle)
    assert len(problems) == nx.number_connected_components(together)
    for problem, at in zip(problems, names_at(guide, problems), strict=True):
        told = problem.what.split(": ", 1)[1].split(";", 1)[0].split(" > ")
        assert told[0] == told[-1] == at
        turns = {tuple(told[:-1][turn:] + told[:-1][:turn]) for turn in range(len(told) - 1)}
        assert turns & cycles, f"{told} is no simple cycle"


@MANY
@given(any_guides())
def test_reaching_agrees_on_made_up_guides(guide: Guide) -> None:
    """On any small guide the unreachable nodes and dead ends are those that networkx finds."""
    check_reaching(guide)


@MANY
@given(any_guides(most=7))
def test_loops_agree_on_made_up_guides(guide: Guide) -> None:
    """On any small guide there is one endless loop told for each knot of simple cycles, and it is one of them."""
    check_loops(guide)


@MANY
@given(any_guides())
def test_danger_agrees_on_made_up_guides(guide: Guide) -> None:
    """On any small guide the ends reached round the danger signs are those that no danger ask dominates."""
    check_danger(guide)


def test_shipped_guide_agrees_and_is_sound() -> None:
    """In the shipped guide networkx too finds all nodes reached, all with an end before them, and no loop."""
    guide = shipped()
    check_reaching(guide)
    check_danger(guide)
    assert not [*unreachable(guide), *dead_ends(guide), *endless_loops(guide), *in_front(guide)]
    assert nx.is_directed_acyclic_graph(edges(guide, bounded=False))


def test_shipped_guide_with_its_counts_taken_off_agrees() -> None:
    """With `at_most` taken off its acts the shipped guide loops, and each loop told is a simple cycle."""
    guide = shipped()
    uncounted = {
        name: replace(node, at_most=0) if isinstance(node, Act) else node
        for name, node in guide.nodes.items()
    }
    loose = replace(guide, nodes=uncounted)
    assert not nx.is_directed_acyclic_graph(edges(loose, bounded=False))
    assert [*endless_loops(loose)]
    check_loops(loose)


def test_each_finding_of_the_shipped_guide_agrees() -> None:
    """For each finding taken as the danger sign, the ends reached without it are the undominated ones."""
    guide = shipped()
    compared = 0
    for finding, what in guide.findings.items():
        front = replace(guide.front, danger_signs={finding: tuple(what.choices)[:1]})
        other = replace(guide, front=front)
        check_danger(other)
        compared += 0 < len(undominated(other, finding)) < len(ends(guide))
    assert compared >= 3, "too few findings part the ends for this to tell anything"


def test_shipped_guide_entered_elsewhere_agrees() -> None:
    """With any other node as the way in, what can be reached and what goes round the danger signs agree."""
    guide = shipped()
    for name in guide.nodes:
        moved = replace(guide, front=replace(guide.front, way_in=name, unless_told={}))
        check_reaching(moved)
        check_danger(moved)


def test_known_small_guides() -> None:
    """Three guides small enough to see through are found as they are."""
    lost = guide_of({"n0": ask("n0", "danger", ["n1"]), "n1": end("n1"), "n2": ask("n2", "side", ["n2"])})
    assert names_at(lost, [*unreachable(lost)]) == ["n2"]
    assert names_at(lost, [*dead_ends(lost)]) == ["n2"]
    assert names_at(lost, [*endless_loops(lost)]) == ["n2"]
    round_it = guide_of(
        {
            "n0": ask("n0", "side", ["n1", "n2"]),
            "n1": ask("n1", "danger", ["n3"]),
            "n2": end("n2"),
            "n3": end("n3"),
        }
    )
    assert names_at(round_it, [*in_front(round_it)]) == ["n2"]
    counted = guide_of({"n0": act("n0", "n0", "n1", at_most=2), "n1": end("n1")})
    assert not [*endless_loops(counted)]


def test_a_guide_with_several_ways_in_agrees(tmp_path: Path) -> None:
    """What goes round the danger signs of its own way is found, whichever branch is led elsewhere."""
    guide = small_guide(tmp_path, *WAYS_IN)
    told = 0
    for name, node in guide.nodes.items():
        if not isinstance(node, Ask):
            continue
        for at, branch in enumerate(node.branches):
            for to in guide.nodes:
                branches = (*node.branches[:at], replace(branch, go=to), *node.branches[at + 1 :])
                led = replace(guide, nodes={**guide.nodes, name: replace(node, branches=branches)})
                expected = {
                    led.nodes[page].place
                    for finding in led.front.danger_signs
                    for page in undominated(led, finding) & belonging(led, finding)
                }
                assert {problem.place for problem in in_front(led)} == expected
                told += bool(expected)
    assert told > 20
