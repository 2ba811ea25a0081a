"""Follows walks through the shipped guide and writes down, in order, what each one asks and does."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from triage.amounts import AMOUNTS, Sum
from triage.facts import UNSURE, Facts, Value
from triage.guide.find import knowledge_root
from triage.guide.model import Act, Ask, End, Guide
from triage.guide.read import read_guide
from triage.units import System
from triage.walk import Answer, Walk

FEEDS = ("feed-by-mouth", "tube-feed")
"""Tags of the steps that put a drink into a lamb."""

OTHERWISE: dict[str, tuple[Value, ...]] = {
    "temperature": (37.0, 38.0, 39.5, 41.5, UNSURE),
    "weight": (4.0, UNSURE),
    "age": (4.0, 10.0, 60.0, 240.0, UNSURE),
    "skin": (0.0, 3.0, 8.0, UNSURE),
    "breaths": (40.0, 90.0, UNSURE),
}
"""What is tried for a measurement that a check does not fix."""


@cache
def shipped() -> Guide:
    """Return the shipped guide."""
    read = read_guide(knowledge_root())
    assert read.guide is not None, read.unreadable or read.problems
    return read.guide


def lamb(known: Mapping[str, Value], numbers: Mapping[str, float] | None = None) -> Facts:
    """Return what is known of a lamb, with the shipped numbers, some of them replaced."""
    return Facts({**shipped().values(), **(numbers or {})}, known)


def worked_out(amount: str, facts: Facts, system: System = "metric") -> Sum:
    """Return a sum by name."""
    return AMOUNTS[amount].work_out(facts, system)


def first_figure(amount: str, facts: Facts, system: System = "metric") -> float:
    """Return the main figure of a sum, in its own unit."""
    return worked_out(amount, facts, system).figures[0].value


def breaking(trails: Iterable[Trail], holds: Callable[[Trail], bool]) -> list[str]:
    """Return up to three walks that break a rule, each in one line."""
    return [trail.told() for trail in trails if not holds(trail)][:3]


@dataclass(frozen=True)
class Trail:
    """One finished walk: everything asked and every tag of every step, in the order met."""

    walk: Walk
    events: tuple[tuple[str, str], ...]

    @property
    def end(self) -> End:
        """The end it came to."""
        assert isinstance(self.walk.node, End)
        return self.walk.node

    @property
    def urgency(self) -> str:
        """The urgency it came to."""
        return self.walk.state.urgency

    @property
    def tags(self) -> tuple[str, ...]:
        """The tags of all steps, acts and end together, in order."""
        return tuple(name for kind, name in self.events if kind == "tag")

    def feeds(self) -> bool:
        """Whether any step puts a drink into the lamb."""
        return any(tag in FEEDS for tag in self.tags)

    def when(self, kind: str, *names: str) -> int:
        """Return where the first of these events stands, or the number of events when none is there."""
        found = (at for at, event in enumerate(self.events) if event[0] == kind and event[1] in names)
        return next(found, len(self.events))

    def told(self) -> str:
        """Return the walk in one line, for the message of a check that fails."""
        answers = [f"{move.finding}={move.value}" for move in self.walk.moves if isinstance(move, Answer)]
        return f"{', '.join(answers)} -> {self.end.name}: {', '.join(self.tags)}"


def every_trail(
    first: Mapping[str, Value], tried: Mapping[str, Sequence[Value]] | None = None, guide: Guide | None = None
) -> Iterator[Trail]:
    """Yield every finished walk on which a finding in `first` is answered so when first asked.

    Any other asking gets each answer in `tried` or, if it is not there, each choice, a few
    measurements, and "not sure".
    """
    yield from _onward(Walk(guide or shipped()), (), first, tried or {})


def _onward(
    walk: Walk,
    events: tuple[tuple[str, str], ...],
    first: Mapping[str, Value],
    tried: Mapping[str, Sequence[Value]],
) -> Iterator[Trail]:
    node = walk.node
    if isinstance(node, End):
        yield Trail(walk, (*events, *_tags(node)))
    elif isinstance(node, Act):
        yield from _onward(walk.done(), (*events, *_tags(node)), first, tried)
    else:
        asked = ("ask", node.finding)
        before = asked in events
        for value in _answers(walk.guide, node, first, tried, before):
            yield from _onward(walk.answer(value), (*events, asked), first, tried)


def _answers(
    guide: Guide, node: Ask, first: Mapping[str, Value], tried: Mapping[str, Sequence[Value]], before: bool
) -> Sequence[Value]:
    if node.finding in first and not before:
        return (first[node.finding],)
    if node.finding in tried:
        return tried[node.finding]
    finding = guide.findings[node.finding]
    if finding.choices:
        return (*finding.choices, *(() if finding.never_unsure else (UNSURE,)))
    return OTHERWISE[node.finding]


def _tags(node: Act | End) -> tuple[tuple[str, str], ...]:
    steps = node.steps if isinstance(node, Act) else node.do
    return tuple(("tag", tag) for step in steps for tag in step.tag)
