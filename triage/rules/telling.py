"""Which answers can make a difference: every choice, "not sure", and one value in every band."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise
from operator import ge, gt, le, lt

from triage.facts import UNSURE, Value
from triage.guide.model import Ask, Condition, Finding, Guide, Lamb
from triage.walk import fits


class Telling:
    """The telling answers of each finding, and which of them meet a condition.

    A measurement is cut at each number that any branch, rule or page holds it to. A number and the
    space between two of them are answers of their own, so that `below` and `up_to` are told apart.
    """

    def __init__(self, guide: Guide) -> None:
        self.guide = guide
        self._masks: dict[tuple[str, tuple[Condition, ...]], int] = {}
        self._lines: dict[tuple[str, str], float] = {}
        cuts: dict[str, set[float]] = {}
        for finding, number in _held_to(guide):
            cuts.setdefault(finding, set()).add(self.line(finding, number))
        self.values: dict[str, tuple[Value, ...]] = {
            name: _values(finding, cuts.get(name, set())) for name, finding in guide.findings.items()
        }

    def line(self, finding: str, number: str) -> float:
        """Return a number in the unit of a finding."""
        key = (finding, number)
        if key not in self._lines:
            unit = self.guide.findings[finding].measure
            self._lines[key] = self.guide.numbers[number].quantity.to(unit).value
        return self._lines[key]

    def mask(self, finding: str, conditions: tuple[Condition, ...]) -> int:
        """Return the answers that meet any of the conditions, as bits by their place in `values`."""
        key = (finding, conditions)
        if key not in self._masks:
            self._masks[key] = sum(
                1 << at
                for at, value in enumerate(self.values[finding])
                if self.meets(finding, conditions, value)
            )
        return self._masks[key]

    def meets(self, finding: str, conditions: tuple[Condition, ...], value: Value) -> bool:
        """Whether an answer, telling or not, meets any of the conditions."""
        return any(self._met(finding, each, value) for each in conditions)

    def describes(self, lamb: Lamb, known: Mapping[str, Value]) -> bool:
        """Whether what is known of a lamb makes it one of those that are meant."""
        return all(
            any(each.unasked for each in conditions)
            if (value := known.get(finding)) is None
            else self.meets(finding, conditions, value)
            for finding, conditions in lamb.items()
        )

    def _met(self, finding: str, condition: Condition, value: Value) -> bool:
        if isinstance(value, str):
            return value in condition.is_
        if not isinstance(value, float):
            return condition.unsure
        tests = (
            (condition.above, gt),
            (condition.from_, ge),
            (condition.below, lt),
            (condition.up_to, le),
        )
        named = [(number, holds) for number, holds in tests if number]
        return bool(named) and all(holds(value, self.line(finding, number)) for number, holds in named)


def _values(finding: Finding, cuts: set[float]) -> tuple[Value, ...]:
    values: list[Value] = list(finding.choices)
    if finding.measure:
        edges = sorted({*finding.plausible, *cuts})
        between = [(low + high) / 2 for low, high in pairwise(edges)]
        values += [value for value in sorted({*edges, *between}) if fits(finding, value)]
    if not finding.never_unsure:
        values.append(UNSURE)
    return tuple(values)


def _held_to(guide: Guide) -> Iterator[tuple[str, str]]:
    """Yield each (measured finding, number) that some branch, page or rule compares."""
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            for branch in node.branches:
                if branch.below or branch.up_to:
                    yield node.finding, branch.below or branch.up_to
        else:
            yield from _compared(node.for_)
    for rule in guide.rules.values():
        yield from _compared(rule.when)


def _compared(lamb: Lamb) -> Iterator[tuple[str, str]]:
    for finding, conditions in lamb.items():
        for condition in conditions:
            for number in (condition.above, condition.from_, condition.below, condition.up_to):
                if number:
                    yield finding, number
