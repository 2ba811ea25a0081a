"""A second, naive opinion on two guides: every lamb, walked through each of them by the real walk, one by one.

Nothing is merged, nothing is left aside, and nothing is shared with the search but the guides and the walk. A
lamb is its readings: for each finding one answer, and another one for each time that an act made it forgotten.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, End, Finding, Guide
from triage.units import convert
from triage.walk import Answer, Done, NotNow, Walk, bound, branch_for, fits

Reading = tuple[str, int]
"""A finding, and how often it was forgotten before."""

Came = tuple[str, str]
"""The end that a walk came to, empty where it can't go on, and the urgency of the walk."""


class TooMany(Exception):
    """There are more lambs than are wanted here."""


def pairs(old: Guide, new: Guide, most: int = 20_000) -> set[tuple[Came, Came]]:
    """Return every pair of what some lamb comes to in the old guide and in the new one."""
    values = answers(old, new)
    found: set[tuple[Came, Came]] = set()
    left = [most]

    def lambs(readings: Mapping[Reading, Value]) -> None:
        left[0] -= 1
        if left[0] < 0:
            raise TooMany
        came: list[Came] = []
        for guide in (old, new):
            got = come_to(guide, readings)
            if len(got) == 3:
                reading = got[0], got[1]
                for value in values[got[0]]:
                    lambs({**readings, reading: value})
                return
            came.append(got)
        found.add((came[0], came[1]))

    lambs({})
    return found


def come_to(guide: Guide, readings: Mapping[Reading, Value]) -> Came | tuple[str, int, str]:
    """Return what a lamb comes to, or the reading that is still asked for, with something behind it."""
    began = _begun(guide, readings)
    if not isinstance(began, Walk):
        return began
    walk = began
    while True:
        try:
            node = walk.node
        except NotNow:
            return "", so_far(walk)
        if isinstance(node, End):
            return node.name, walk.state.urgency
        if isinstance(node, Act):
            walk = walk.done()
            continue
        rounds = sum(node.finding in _forgets(guide, move) for move in walk.moves)
        value = readings.get((node.finding, rounds))
        if value is None:
            return node.finding, rounds, "asked"
        if not fits(guide.findings[node.finding], value):
            return "", walk.state.urgency
        walk = walk.answer(value)


def _begun(guide: Guide, readings: Mapping[Reading, Value]) -> Walk | Came | tuple[str, int, str]:
    """Return the walk that is told what it is about, where the guide has that taken as known."""
    for matter, taken in guide.front.unless_told.items():
        told = readings.get((matter, 0))
        if told is None:
            return matter, 0, "asked"
        if not fits(guide.findings[matter], told):
            return "", ""
        if told != taken:
            return Walk(guide, (Answer(matter, told),))
    return Walk(guide)


def _forgets(guide: Guide, move: Answer | Done) -> tuple[str, ...]:
    act = guide.nodes[move.act] if isinstance(move, Done) else None
    return act.forget if isinstance(act, Act) else ()


def so_far(walk: Walk) -> str:
    """Return the urgency of a walk that has no way on, followed by hand to where it stops."""
    guide, known, urgency = walk.guide, dict(walk.guide.front.unless_told), ""
    node, moves, times = guide.nodes[guide.front.way_in], list(walk.moves), dict[str, int]()
    if moves and isinstance(moves[0], Answer) and moves[0].finding in known:
        del known[moves[0].finding]
    while True:
        if isinstance(node, Ask):
            if node.finding not in known:
                move = moves.pop(0)
                assert isinstance(move, Answer)
                known[node.finding] = move.value  # type: ignore[assignment]
            branch = branch_for(guide, node, known[node.finding])
            if branch is None:
                return urgency
            if guide.rank(branch.at_least) < guide.rank(urgency):
                urgency = branch.at_least
            node = guide.nodes[branch.go]
        else:
            assert isinstance(node, Act)
            if node.at_most and times.get(node.name, 0) >= node.at_most:
                node = guide.nodes[node.else_]
                continue
            moves.pop(0)
            times[node.name] = times.get(node.name, 0) + 1
            known = {name: value for name, value in known.items() if name not in node.forget}
            node = guide.nodes[node.then]


def answers(old: Guide, new: Guide) -> dict[str, list[Value]]:
    """Return for each finding of either guide one answer for each way in which it can matter to either."""
    names = dict.fromkeys((*old.findings, *new.findings))
    return {name: list(_answers(name, old, new)) for name in names}


def _answers(name: str, old: Guide, new: Guide) -> Iterator[Value]:
    both = [(guide, guide.findings[name]) for guide in (old, new) if name in guide.findings]
    yield from dict.fromkeys(choice for _, finding in both for choice in finding.choices)
    lines: set[float] = set()
    for guide, finding in both:
        if finding.measure:
            lines |= {*finding.plausible, *_lines(guide, finding)}
    edges = sorted(lines)
    yield from sorted({*edges, *((low + high) / 2 for low, high in pairwise(edges))})
    if any(not finding.never_unsure for _, finding in both):
        yield UNSURE


def _lines(guide: Guide, finding: Finding) -> Iterator[float]:
    for node in guide.nodes.values():
        if isinstance(node, Ask) and node.finding == finding.name:
            for branch in node.branches:
                if number := branch.below or branch.up_to:
                    yield convert(bound(guide, node, number), finding.measure, finding.measure)
