"""The walk: a guide and a list of moves, folded into where we are and what is known.

A walk is its moves and nothing else. Going back is dropping the last one, and changing an earlier
answer is replaying the later ones as far as they still fit.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from types import MappingProxyType

from triage.facts import UNSURE, Facts, Unsure, Value
from triage.guide.model import Act, Ask, Branch, End, Finding, Guide, Node

KEPT = "kept"
"""What is `said` where an answer was taken from what is kept of the lamb, and not given anew."""


@dataclass(frozen=True)
class Answer:
    """An answer to a finding; `said` is how it was typed, where that tells more than the value.

    `at` (aware, UTC) is when it was given, where that is known. Neither decides anything in a walk.
    """

    finding: str
    value: Value
    said: str = field(default="", compare=False)
    at: datetime | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True)
class Done:
    """An act node carried out, and when (aware, UTC), where that is known."""

    act: str
    at: datetime | None = field(default=None, compare=False, repr=False)


Move = Answer | Done


class NotNow(ValueError):
    """A move that does not fit where the walk is."""


@dataclass(frozen=True)
class Rise:
    """The urgency rose to this, at an answer or (with no finding) at an end."""

    urgency: str
    finding: str
    value: Value


@dataclass(frozen=True)
class State:
    """Where a walk has come to: everything here follows from the guide and the moves."""

    node: Node
    known: Mapping[str, Value]
    urgency: str
    rises: tuple[Rise, ...]
    times: Mapping[str, int]
    met: tuple[str, ...]


@dataclass(frozen=True)
class Walk:
    """One lamb's way through a guide. Immutable: every change is a new walk."""

    guide: Guide
    moves: tuple[Move, ...] = ()

    @cached_property
    def state(self) -> State:
        """Where this walk is, computed once."""
        fold = _Fold(self.guide, self.moves)
        for index, move in enumerate(self.moves):
            fold.take(move, index)
        return fold.state()

    @property
    def node(self) -> Node:
        """The node that waits for an answer, or the end."""
        return self.state.node

    @property
    def finished(self) -> bool:
        """Whether an end is reached."""
        return isinstance(self.node, End)

    @property
    def facts(self) -> Facts:
        """What the sums need: the guide's numbers and what is known of the lamb."""
        return Facts(self.guide.values(), self.state.known)

    def answer(self, value: Value, said: str = "", at: datetime | None = None) -> Walk:
        """Answer the question asked now; NotNow when none is asked or the value does not fit it."""
        node = self.node
        if not isinstance(node, Ask):
            raise NotNow(f"no question is asked at '{node.name}'")
        move = Answer(node.finding, value, said, at)
        if not fits(self.guide.findings[node.finding], value):
            raise NotNow(f"{value!r} is not an answer to '{node.finding}'")
        return replace(self, moves=(*self.moves, move))

    def done(self, at: datetime | None = None) -> Walk:
        """Mark the act shown now as carried out; NotNow when no act is shown."""
        if not isinstance(self.node, Act):
            raise NotNow(f"there is nothing to carry out at '{self.node.name}'")
        return replace(self, moves=(*self.moves, Done(self.node.name, at)))

    def back(self) -> Walk:
        """Drop the last move; at the start, stay."""
        return replace(self, moves=self.moves[:-1])

    def change(self, index: int, value: Value, said: str = "", at: datetime | None = None) -> Changed:
        """Change an earlier answer, keep the later moves that still fit, and name those that don't."""
        old = self.moves[index]
        if not isinstance(old, Answer):
            raise NotNow("only an answer can be changed")
        if not fits(self.guide.findings[old.finding], value):
            raise NotNow(f"{value!r} is not an answer to '{old.finding}'")
        start = Walk(self.guide, (*self.moves[:index], Answer(old.finding, value, said, at)))
        return replay(start, self.moves[index + 1 :])


@dataclass(frozen=True)
class Changed:
    """A replayed walk, and the moves that no longer have a place in it."""

    walk: Walk
    dropped: tuple[Move, ...]


def replay(walk: Walk, moves: Iterable[Move]) -> Changed:
    """Go on from a walk with as many of these moves as still fit, each used at most once.

    An answer to a finding is kept for the first time the finding is asked, in the old order, so a
    temperature taken twice is used twice. A reading taken after an act that makes it asked again
    serves only after that act, and one from before only before it: a mouth felt after warming says
    nothing of the lamb as it was found. What the walk never asks for comes back as dropped.
    """
    later = list(moves)
    if not walk.moves and later and opens(walk.guide, later[0]):
        walk = replace(walk, moves=(later.pop(0),))
    left = [(move, _rounds(walk.guide, move, later[:index])) for index, move in enumerate(later)]
    done: list[Move] = []
    while not walk.finished:
        found = next(
            (
                (move, rounds)
                for move, rounds in left
                if _serves(walk, move) and rounds == _rounds(walk.guide, move, done)
            ),
            None,
        )
        if found is None:
            break
        left.remove(found)
        done.append(found[0])
        walk = replace(walk, moves=(*walk.moves, found[0]))
    return Changed(walk, tuple(move for move, _ in left))


def opens(guide: Guide, move: Move) -> bool:
    """Whether a move, made first of all, says what is otherwise taken as known."""
    if not isinstance(move, Answer) or move.finding not in guide.front.unless_told:
        return False
    return fits(guide.findings[move.finding], move.value)


def _rounds(guide: Guide, move: Move, before: Iterable[Move]) -> int:
    """Return how often, among the moves before an answer, an act had made its finding forgotten."""
    if isinstance(move, Done):
        return 0
    # A kept walk may hold an act that the present guide lacks; it forgets nothing here.
    acts = [guide.nodes.get(each.act) for each in before if isinstance(each, Done)]
    return sum(isinstance(act, Act) and move.finding in act.forget for act in acts)


def _serves(walk: Walk, move: Move) -> bool:
    node = walk.node
    if isinstance(move, Done):
        return isinstance(node, Act) and node.name == move.act
    if not isinstance(node, Ask) or node.finding != move.finding:
        return False
    return fits(walk.guide.findings[node.finding], move.value)


def fits(finding: Finding, value: Value) -> bool:
    """Whether a value can be an answer to a finding."""
    if isinstance(value, Unsure):
        return not finding.never_unsure
    if finding.choices:
        return isinstance(value, str) and value in finding.choices
    return isinstance(value, float) and finding.plausible[0] <= value <= finding.plausible[1]


def branch_for(guide: Guide, node: Ask, value: Value) -> Branch | None:
    """Return the branch an answer takes: bands are read in order, the first that holds it wins."""
    for branch in node.branches:
        if isinstance(value, Unsure):
            if branch.unsure:
                return branch
        elif branch.otherwise or _holds(guide, node, branch, value):
            return branch
    return None


def _holds(guide: Guide, node: Ask, branch: Branch, value: float | str) -> bool:
    if isinstance(value, str):
        return value in branch.is_
    if branch.below:
        return value < bound(guide, node, branch.below)
    return bool(branch.up_to) and value <= bound(guide, node, branch.up_to)


def bound(guide: Guide, node: Ask, number: str) -> float:
    """Return a number in the unit of the finding that a node asks."""
    return guide.numbers[number].quantity.to(guide.findings[node.finding].measure).value


class _Fold:
    """Folds moves over a guide, passing silently what is known, or taken as known from the start."""

    def __init__(self, guide: Guide, moves: tuple[Move, ...] = ()) -> None:
        self.guide = guide
        self.known: dict[str, Value] = dict(guide.front.unless_told)
        if moves and opens(guide, moves[0]) and isinstance(moves[0], Answer):
            del self.known[moves[0].finding]
        self.rises: list[Rise] = []
        self.urgency = ""
        self.times: dict[str, int] = {}
        self.met: list[str] = []
        self.node = guide.nodes[guide.front.way_in]
        self._settle()

    def take(self, move: Move, index: int) -> None:
        node = self.node
        if isinstance(move, Answer) and isinstance(node, Ask) and node.finding == move.finding:
            if index or not opens(self.guide, move):  # what a walk is about is said before its first page
                self.met.append(node.name)
            self.known[move.finding] = move.value
        elif isinstance(move, Done) and isinstance(node, Act) and node.name == move.act:
            self.met.append(node.name)
            self.times[node.name] = self.times.get(node.name, 0) + 1
            for finding in node.forget:
                self.known.pop(finding, None)
            self.node = self.guide.nodes[node.then]
        else:
            raise NotNow(f"move {index + 1} ({move}) does not fit at '{node.name}'")
        self._settle()

    def _settle(self) -> None:
        """Go on through questions whose answer is known, and acts done as often as they may be."""
        passed: set[str] = set()
        while True:
            node = self.node
            if node.name in passed:
                raise NotNow(f"the guide goes round in a circle at '{node.name}'")
            passed.add(node.name)
            if isinstance(node, Ask) and node.finding in self.known:
                self._follow(node)
            elif isinstance(node, Act) and node.at_most and self.times.get(node.name, 0) >= node.at_most:
                self.node = self.guide.nodes[node.else_]
            else:
                break
        if isinstance(self.node, End):
            self._raise_to(self.node.urgency, "", UNSURE)

    def _follow(self, node: Ask) -> None:
        value = self.known[node.finding]
        branch = branch_for(self.guide, node, value)
        if branch is None:
            raise NotNow(f"'{node.name}' has no branch for {value!r}")
        if branch.at_least:
            self._raise_to(branch.at_least, node.finding, value)
        self.node = self.guide.nodes[branch.go]

    def _raise_to(self, urgency: str, finding: str, value: Value) -> None:
        if self.guide.rank(urgency) < self.guide.rank(self.urgency):
            self.urgency = urgency
            self.rises.append(Rise(urgency, finding, value))

    def state(self) -> State:
        return State(
            self.node,
            MappingProxyType(dict(self.known)),
            self.urgency,
            tuple(self.rises),
            MappingProxyType(dict(self.times)),
            tuple(self.met),
        )
