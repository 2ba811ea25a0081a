"""The answer "not sure" is never the easy way out: it is as urgent as the most worrying one could be."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.search.searched import Searched
from triage.check.search.states import SILENT, Edge
from triage.check.witness import walk_through, walk_to
from triage.facts import Unsure
from triage.guide.model import Ask
from triage.problems import Problem


def missing(searched: Searched) -> Iterator[Problem]:
    """Every answer that can come to a question, "not sure" among them, has a branch there."""
    told: set[str] = set()
    states = searched.states
    without = {
        at: node
        for at, node in enumerate(searched.nodes)
        if isinstance(node, Ask) and not any(branch.unsure for branch in node.branches)
    }
    for state, (at, edges) in enumerate(zip(states.at, states.edges, strict=True)):
        node = without.get(at)
        if node is None or node.name in told:
            continue
        finding = searched.guide.findings[node.finding]
        known = states.value(state, states.ways.finding_at[node.finding])
        asked = known is None and not finding.never_unsure
        passed = known is not None and isinstance(searched.value(node.finding, known), Unsure)
        if asked or (passed and not edges):
            told.add(node.name)
            what = f"'{node.name}' has no way out for \"not sure\"; add a branch with 'unsure: true'"
            yield Problem(node.place, what, "no-unsure", walk=walk_to(searched, state))


def too_easy(searched: Searched) -> Iterator[Problem]:
    """The answer "not sure" leads to a stand-in, or is sure to be as urgent as the most urgent known answer.


    Where a stand-in is asked instead, "not sure" to that one as well must be as urgent as either's worst.
    """
    named: set[str] = set()
    for state, node in searched.asked():
        if node.name in named:
            continue
        edge = searched.unsure(state, node)
        if edge is None:
            continue
        worst = _worst(searched, state, edge)
        if searched.onward.by(state, edge) <= worst:
            continue  # then every way on from it is, a stand-in's too
        for at, ways, told in _answering(searched, state, node, edge):
            way = ways[-1]
            mine = min(told, searched.onward.by(at, way))
            here = searched.node(at)
            if isinstance(here, Ask) and mine > worst:
                named.add(node.name)
                branch = here.branches[way.branch]
                names = [*(each.name for each in searched.guide.front.urgencies), "nothing"]
                what = (
                    f"\"not sure\" at '{here.name}' is sure only of '{names[mine]}', but a known answer at "
                    f"'{node.name}' of '{names[worst]}'; raise it with at_least, or ask a stand-in"
                )
                yield Problem(
                    branch.place, what, "unsure-too-easy", walk=walk_through(searched, state, *ways)
                )


def _worst(searched: Searched, state: int, unsure: Edge) -> int:
    sure, worst = searched.onward.sure, searched.onward.nobody
    for edge in searched.states.edges[state]:
        if edge is not unsure:
            worst = min(worst, edge.rank, sure[edge.to])
    return worst


def _answering(
    searched: Searched, state: int, node: Ask, edge: Edge
) -> Iterator[tuple[int, list[Edge], int]]:
    """Yield the ways that settle "not sure" here: this one, and those to the last stand-in not sure either.

    A stand-in whose answer is known settles it by itself, and nothing is yielded. The rank yielded with
    it is the urgency that has been told by then.
    """
    stand_ins = searched.guide.findings[node.finding].stand_ins
    at, way, told = state, edge, searched.onward.arrive[state]
    ways = [way]
    while True:
        there = searched.node(way.to)
        if not isinstance(there, Ask) or there.finding not in stand_ins:
            yield at, ways, told
            return
        told = min(told, searched.onward.rank(at, way))
        edges = searched.states.edges[way.to]
        unsure = searched.unsure(way.to, there)
        if unsure is None:
            known = searched.states.value(way.to, searched.states.ways.finding_at[there.finding])
            silent = bool(edges) and edges[0].answer == SILENT
            if not silent or known is None or not isinstance(searched.value(there.finding, known), Unsure):
                return
            unsure = edges[0]
        at, way = way.to, unsure
        ways.append(way)
