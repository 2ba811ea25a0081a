"""The call for a vet is told as early as it is certain, and an end never says less than its walks."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.search.searched import Searched
from triage.check.search.states import Edge
from triage.check.witness import walk_through, walk_to
from triage.guide.model import End
from triage.problems import Problem


def late(searched: Searched) -> Iterator[Problem]:
    """Where every way on from a branch comes to a call, the branch says so at once."""
    calls = [at for at, each in enumerate(searched.guide.front.urgencies) if each.opens]
    sure, arrive = searched.onward.sure, searched.onward.arrive
    for key, ways in searched.taken.items():
        least = max(sure[edge.to] for _, edge in ways)
        if least not in calls:
            continue
        untold = ((state, edge) for state, edge in ways if arrive[state] > least < edge.rank)
        first = next((each for each in untold if not _ends_next(searched, each[1])), None)
        if first:
            branch, name = searched.branch(key), searched.guide.front.urgencies[least].name
            what = f"every way on from here comes to '{name}'; say it at once with at_least: {name}"
            yield Problem(branch.place, what, "late-call", walk=walk_through(searched, *first))


def _ends_next(searched: Searched, edge: Edge) -> bool:
    return isinstance(searched.node(searched.onward.shown_next(edge)), End)


def understated(searched: Searched) -> Iterator[Problem]:
    """An end that every lamb comes to more urgently than it says says too little."""
    least: dict[int, int] = {}
    first: dict[int, int] = {}
    for state, rank in enumerate(searched.onward.arrive):
        at = searched.states.at[state]
        least[at] = max(rank, least.get(at, 0))
        first.setdefault(at, state)
    for at, rank in least.items():
        node = searched.nodes[at]
        if isinstance(node, End) and rank < searched.guide.rank(node.urgency):
            name = searched.guide.front.urgencies[rank].name
            what = f"every walk comes to '{node.name}' with '{name}' or more; write end: {name}"
            yield Problem(node.place, what, "understated", walk=walk_to(searched, first[at]))


def danger_signs(searched: Searched) -> Iterator[Problem]:
    """A danger sign gives the top urgency at once, wherever it is asked."""
    guide, told = searched.guide, set[tuple[str, int]]()
    for state, node in searched.asked():
        for sign in guide.front.danger_signs.get(node.finding, ()):
            edge = searched.way_of(state, node, sign)
            if edge is None or (node.name, edge.branch) in told:
                continue  # without a branch it is a gap, which is told as one
            there = searched.node(searched.onward.shown_next(edge))
            ends_so = isinstance(there, End) and there.urgency == guide.top
            if searched.onward.rank(state, edge) != 0 and not ends_so:
                told.add((node.name, edge.branch))
                what = f"danger sign {sign} must give '{guide.top}' at once; add at_least: {guide.top}"
                place = node.branches[edge.branch].place
                yield Problem(place, what, "danger-top", walk=walk_through(searched, state, edge))
