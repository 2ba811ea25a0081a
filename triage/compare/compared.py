"""What came of comparing two guides, as values."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from triage.compare.lambs import Said
from triage.walk import Move

NO_END = ""
"""The end of a walk that can't go on: its guide has no such answer as this lamb gives."""

Off = Literal["safer", "less safe", ""]
"""Which side a number was moved to; empty where neither side is the safer one."""


@dataclass(frozen=True)
class Difference:
    """Lambs that end otherwise: their ends and urgencies, and one such lamb with the fewest answers."""

    old_end: str
    new_end: str
    old_urgency: str
    """The urgency of the whole walk, empty where none was come to."""
    new_urgency: str
    lamb: tuple[Said, ...]
    """What it answers, in the order in which it is asked."""
    old_walk: tuple[Move, ...]
    """Its moves in the old guide, as `triage.walk.Walk` takes them, as far as the walk goes."""
    new_walk: tuple[Move, ...]
    met: frozenset[str]
    """The changed statements on the way of this lamb, in either guide."""
    states: int
    """In how many states of the search such lambs took their last step; not how common they are."""
    new_page: bool = True
    """Whether the new end is another page; where it is not, its urgency or its steps differ."""


@dataclass(frozen=True)
class ActDifference:
    """Something done on the way in one guide, and for the same lamb in the other not, or less often."""

    old_act: str
    """Empty where only the new guide has the lamb do it."""
    new_act: str
    lamb: tuple[Said, ...]
    old_walk: tuple[Move, ...]
    new_walk: tuple[Move, ...]
    met: frozenset[str]
    states: int


@dataclass(frozen=True)
class LostCaution:
    """A caution of an old page that the page which the same lamb comes to now does not have."""

    caution: str
    """As it is written, with the names of numbers in braces."""
    old_page: str
    new_page: str
    nearest: str
    """The caution of the new page that is worded most like it, where one is and the old page lacked it."""
    lamb: tuple[Said, ...]
    old_walk: tuple[Move, ...]
    new_walk: tuple[Move, ...]
    met: frozenset[str]


@dataclass(frozen=True)
class LostRule:
    """A rule that is gone, or that some lamb or page is free of now."""

    rule: str
    never: bool
    """Whether it said what must never be."""
    because: str
    how: tuple[str, ...]
    """In which ways it asks less than before; empty where it is gone."""


@dataclass(frozen=True)
class NumberMoved:
    """A number with another value, both in the unit of the old guide."""

    number: str
    title: str
    old: float
    new: float
    unit: str
    off: Off
    used: tuple[str, ...]
    """The statements that go by it in the new guide, by their keys."""

    @property
    def by(self) -> float:
        """How far it was moved; below nought where it is less than before."""
        return self.new - self.old


@dataclass(frozen=True)
class Reworded:
    """A text that says something else, or otherwise."""

    key: str
    """The statement that it belongs to."""
    kind: str
    old: str
    new: str


@dataclass(frozen=True)
class Comparison:
    """Everything that differs between two guides, what matters most first."""

    less_urgent: tuple[Difference, ...] = ()
    lost_cautions: tuple[LostCaution, ...] = ()
    rules_lost: tuple[LostRule, ...] = ()
    more_urgent: tuple[Difference, ...] = ()
    elsewhere: tuple[Difference, ...] = ()
    """On another page, or with other steps, as urgent as before."""
    on_the_way: tuple[ActDifference, ...] = ()
    numbers: tuple[NumberMoved, ...] = ()
    added: tuple[str, ...] = ()
    """Statements that only the new guide has, by their keys."""
    removed: tuple[str, ...] = ()
    renamed: tuple[tuple[str, str], ...] = ()
    """Statements that are the same by another name: the old key and the new one."""
    words: tuple[Reworded, ...] = ()
    otherwise: tuple[str, ...] = ()
    """Statements that changed in a way that nothing above tells, such as their sources, by their keys."""
    changed: frozenset[str] = field(default=frozenset())
    """Every statement that was added, removed or changed in any way."""
    complete: bool = True
    """Whether every lamb was followed. Where not, there may be differences that are not told."""
    states: int = 0

    @property
    def same(self) -> bool:
        """Whether nothing differs at all."""
        return self.complete and not (self.changed or self.less_urgent or self.more_urgent or self.elsewhere)
