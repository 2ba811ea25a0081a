"""A second, naive engine: every combination of answers, replayed through the real walk and kept whole.

Nothing is merged and nothing is remembered from one walk for another. What is certain from some point on
is what all the walks from there on come to, looked up one after the other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Branch, End, Finding, Guide, Lamb, Node
from triage.walk import Answer, Move, NotNow, Walk, branch_for

NO_BRANCH = -1
"""Where a branch is told by its place in its node: this way is not a branch, but an act's `then` or `else`."""


Pick = Callable[[Walk, Ask], Sequence[Value]]
"""The answers that are tried where a walk is asked something."""


class TooManyWalks(Exception):
    """The guide has more walks than are wanted here."""


@dataclass(slots=True)
class Point:
    """Where one walk is between two steps; questions and acts passed in silence are points too."""

    node: Node
    known: Mapping[str, Value]
    told: int
    """The most urgent rank told by branches before this point."""
    moves: int
    shown: bool
    """Whether the person sees this node, and it is not passed in silence."""
    ways: list[Way] = field(default_factory=list)
    sure: int = 0
    """The least urgent rank that some walk from here on comes to, what was told before left aside."""


@dataclass(slots=True)
class Way:
    """One step on from a point; without a value it is an act, or was gone in silence."""

    branch: int
    value: Value | None
    raises: int
    to: Point


def least_sure(way: Way) -> int:
    """Return the least urgent rank that some walk by a way comes to, counted from that way on."""
    return min(way.raises, way.to.sure)


def next_shown(point: Point) -> Point:
    """Return the node that the person sees next: this one, or that behind what is passed in silence."""
    while not point.shown and point.ways:
        point = point.ways[0].to
    return point


def telling_answers(guide: Guide) -> dict[str, list[Value]]:
    """Return for each finding one answer for each way in which it can matter to any part of a guide."""
    lines: dict[str, set[float]] = {name: set() for name in guide.findings}
    for finding, number in _compared(guide):
        lines[finding].add(guide.numbers[number].quantity.to(guide.findings[finding].measure).value)
    return {name: _answers(each, lines[name]) for name, each in guide.findings.items()}


def _answers(finding: Finding, lines: set[float]) -> list[Value]:
    told: list[Value] = list(finding.choices)
    if finding.measure:
        low, high = finding.plausible
        edges = sorted({low, high, *(line for line in lines if low < line < high)})
        told += sorted([*edges, *((under + over) / 2 for under, over in pairwise(edges))])
    return told if finding.never_unsure else [*told, UNSURE]


def _compared(guide: Guide) -> Iterator[tuple[str, str]]:
    lambs: list[Lamb] = [rule.when for rule in guide.rules.values()]
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            for branch in node.branches:
                yield from ((node.finding, name) for name in (branch.below, branch.up_to) if name)
        else:
            lambs.append(node.for_)
    for lamb in lambs:
        for finding, conditions in lamb.items():
            for each in conditions:
                numbers = (each.above, each.from_, each.below, each.up_to)
                yield from ((finding, name) for name in numbers if name)


def along(moves: Sequence[Move]) -> Pick:
    """Return what picks the answers of one walk, and none when they are used up."""

    def pick(walk: Walk, node: Ask) -> Sequence[Value]:
        at = len(walk.moves)
        move = moves[at] if at < len(moves) else None
        if (
            not at
            and node.finding in walk.guide.front.unless_told
            and getattr(move, "finding", "") != node.finding
        ):
            return []
        return [move.value] if isinstance(move, Answer) else []

    return pick


class Replay:
    """Every walk through a guide, or those with the answers picked, as one tree of points without a join."""

    def __init__(self, guide: Guide, pick: Pick | None = None, most: int = 100_000) -> None:
        self.guide = guide
        self.nobody = len(guide.front.urgencies)
        values = {} if pick else telling_answers(guide)
        self._pick: Pick = pick or (lambda walk, node: values[node.finding])
        self.points: list[Point] = []
        self.finished: list[Walk] = []
        self.stuck: list[tuple[Point, Value]] = []
        """Where an answer has no branch, so that the walk can't go on."""
        self._most = most
        self.start = (
            self._open(Walk(guide)) if guide.front.unless_told else self._rest(Walk(guide), self.nobody)
        )

    def _open(self, unsaid: Walk) -> Point:
        """Return the point before any page, from which a walk goes in silence, or is told what it is about."""
        [(finding, taken)] = self.guide.front.unless_told.items()
        node = self.guide.nodes[self.guide.front.way_in]
        assert isinstance(node, Ask)
        point = Point(node, {}, self.nobody, 0, False)
        self._add(point)
        for value in self._pick(unsaid, node) or [taken]:
            after = unsaid if value == taken else Walk(self.guide, (Answer(finding, value),))
            branch = branch_for(self.guide, node, value)
            if branch is None:
                self._is_stuck(point, value, after)
            else:
                said = None if value == taken else value
                point.ways.append(self._by(node, branch, said, after, {finding: value}, self.nobody))
        self._settle(point)
        return point

    def _rest(self, walk: Walk, told: int) -> Point:
        """Return the point of a walk that waits for a move or is at an end, with everything behind it."""
        node = walk.node
        point = Point(node, walk.state.known, told, len(walk.moves), True)
        self._add(point)
        if isinstance(node, Ask):
            for value in self._pick(walk, node):
                self._answer(walk, node, point, value)
        elif isinstance(node, Act):
            done = walk.done()
            known = {name: value for name, value in point.known.items() if name not in node.forget}
            point.ways.append(Way(NO_BRANCH, None, self.nobody, self._onward(node.then, done, known, told)))
        else:
            self.finished.append(walk)
        self._settle(point)
        return point

    def _add(self, point: Point) -> None:
        self.points.append(point)
        if len(self.points) > self._most:
            raise TooManyWalks

    def _answer(self, walk: Walk, node: Ask, point: Point, value: Value) -> None:
        branch, after = branch_for(self.guide, node, value), walk.answer(value)
        if branch is None:
            self._is_stuck(point, value, after)
            return
        known = {**point.known, node.finding: value}
        point.ways.append(self._by(node, branch, value, after, known, point.told))

    def _by(
        self,
        node: Ask,
        branch: Branch,
        value: Value | None,
        after: Walk,
        known: Mapping[str, Value],
        told: int,
    ) -> Way:
        """Return the way by a branch; `after` is the walk at the next node that is shown."""
        raises = self.guide.rank(branch.at_least)
        to = self._onward(branch.go, after, known, min(told, raises))
        at = next(at for at, each in enumerate(node.branches) if each is branch)
        return Way(at, value, raises, to)

    def _onward(self, name: str, after: Walk, known: Mapping[str, Value], told: int) -> Point:
        """Return the point of a node that a step leads to, passed in silence or not."""
        node = self.guide.nodes[name]
        silent_ask = isinstance(node, Ask) and node.finding in known
        used_up = isinstance(node, Act) and node.at_most and self._times(after, node) >= node.at_most
        if not silent_ask and not used_up:
            return self._arrived(node, after, known, told)
        point = Point(node, known, told, len(after.moves), False)
        self._add(point)
        if isinstance(node, Act):
            to = self._onward(node.else_, after, known, told)
            point.ways.append(Way(NO_BRANCH, None, self.nobody, to))
        elif isinstance(node, Ask):
            branch = branch_for(self.guide, node, known[node.finding])
            if branch is None:
                self._is_stuck(point, known[node.finding], after)
            else:
                point.ways.append(self._by(node, branch, None, after, known, told))
        self._settle(point)
        return point

    @staticmethod
    def _times(after: Walk, act: Act) -> int:
        return sum(getattr(move, "act", "") == act.name for move in after.moves)

    def _arrived(self, node: Node, after: Walk, known: Mapping[str, Value], told: int) -> Point:
        """Go on from the node where the real walk is, which must be where the steps led to."""
        rank = min(told, self.guide.rank(node.urgency)) if isinstance(node, End) else told
        state = after.state
        assert (state.node.name, state.known, self.guide.rank(state.urgency)) == (node.name, known, rank)
        return self._rest(after, told)

    def _is_stuck(self, point: Point, value: Value, after: Walk) -> None:
        """Keep a point where the real walk can't go on either."""
        self.stuck.append((point, value))
        try:
            at = after.node.name
        except NotNow:
            return
        raise AssertionError(f"the walk goes on to '{at}', though '{point.node.name}' has no branch")

    def _settle(self, point: Point) -> None:
        if isinstance(point.node, End):
            point.sure = self.guide.rank(point.node.urgency)
        else:
            point.sure = max(map(least_sure, point.ways), default=self.nobody)
