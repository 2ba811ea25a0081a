"""What a search of two guides is made of: where both walks are, what a lamb came to, what was found."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple, TypeVar

from triage.check.search.packing import Known
from triage.compare.ahead import Ahead
from triage.compare.drift import Drift
from triage.compare.paths import Paths

STUCK = -1
"""In place of a node: the guide has no such answer as this lamb gives, so its walk can't go on."""

ACT = -1
"""In place of a finding: something was done, and nothing asked."""

BOTH = 2
"""In place of a side: both walks did the same."""


class Move(NamedTuple):
    """One step of a lamb: which walk took it, the finding and answer by index, or ACT."""

    side: int
    finding: int
    answer: int


class Joint(NamedTuple):
    """Where both walks of a lamb are."""

    old: int
    new: int
    old_known: Known
    new_known: Known
    old_rank: int
    new_rank: int
    drift: Drift
    met: bool = False
    """Whether either walk met a node that is looked out for."""

    def at(self, side: int) -> int:
        """Return where one of the walks is."""
        return self.new if side else self.old


class Outcome(NamedTuple):
    """What a lamb came to in either guide: its node, or STUCK, and the rank of urgency."""

    old: int
    new: int
    old_rank: int
    new_rank: int
    met: bool
    """Whether either walk met a node that was looked out for: such lambs are told apart from others."""


Key = TypeVar("Key")

Last = tuple[int, Move]
"""A state, by its number, and the move made there."""


@dataclass
class Found:
    """What the search found; each with the first, and so the shortest, way to it."""

    outcomes: dict[Outcome, tuple[int, Last | None]] = field(default_factory=dict)
    """Each pair of ends that some lamb comes to, from how many states, and by which move first."""
    acts: dict[tuple[int, bool], tuple[int, Last | None]] = field(default_factory=dict)
    """Acts that one walk of some lamb does more often: by twin, and whether it is the old one."""
    both_did: dict[int, tuple[int, Last | None]] = field(default_factory=dict)
    """Acts that both walks of some lamb did."""
    before: list[Last | None] = field(default_factory=list)
    complete: bool = True
    states: int = 0

    def moves_to(self, last: Last | None) -> tuple[Move, ...]:
        """Return all moves of a shortest walk, the last one among them; none where nothing is asked."""
        moves: list[Move] = []
        here = last
        while here is not None:
            moves.append(here[1])
            here = self.before[here[0]]
        return tuple(reversed(moves))


def most_states(nodes: int) -> int:
    """Return how many states are looked at, at most: two guides that share little may have too many."""
    return 100_000 + 100 * nodes


Silent = tuple[int, Known, int, bool]
"""What is passed in silence: where a walk waits then, what is kept there, how urgent that made it, whether
it met a node that is looked out for."""


@dataclass(frozen=True)
class Task:
    """What a search goes over, and what it looks out for."""

    paths: tuple[Paths, Paths]
    ahead: tuple[Ahead, Ahead]
    colours: tuple[list[int], list[int]]
    watched: frozenset[int]
    """Acts, by their twins' numbers, of which it is asked whether both walks of a lamb do them."""
    looked_for: tuple[frozenset[int], frozenset[int]]
    """The nodes of each guide by which lambs are told apart: whether they meet any of them."""
    most: int


def note(found: dict[Key, tuple[int, Last | None]], key: Key, last: Last | None) -> None:
    """Count one more way to something, and keep the first one."""
    count, first = found.get(key, (0, last))
    found[key] = count + 1, first
