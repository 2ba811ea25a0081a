"""Answers for a made-up lamb: any that the guide tells apart, in figures as people read them off."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Mapping
from math import ceil, floor
from random import Random

from triage.entry import usual_span
from triage.facts import UNSURE, Value
from triage.guide.model import Finding, Guide
from triage.rules.telling import Telling

UNSURE_ONCE_IN = 12
"""How seldom a made-up lamb has something that nobody could tell."""

MOSTLY_WELL = 0.4
"""Of a sick lamb, too, most is as it should be: so often at least a choice is a normal one."""

_STEPS: Mapping[str, tuple[tuple[float, float], ...]] = {
    "degC": ((0, 0.1),),
    "kg": ((0, 0.1),),
    "h": ((24 * 56, 24 * 7), (60, 24), (6, 1), (0, 0.5)),
}
"""For each unit the steps in which people tell it, each from a value on, the coarsest first."""

_MIDDLING = (0.4, 0.85)
"""Shares of the usual top, where it grows with another measurement: most lambs are well within."""


class Likely:
    """Draws answers to the findings of a guide."""

    def __init__(self, guide: Guide, telling: Telling) -> None:
        self.guide = guide
        self.telling = telling

    def draw(self, finding: Finding, known: Mapping[str, Value], rng: Random) -> Value:
        """Return an answer: one choice as likely as another, or a measurement from any of its bands."""
        if not finding.never_unsure and rng.randrange(UNSURE_ONCE_IN) == 0:
            return UNSURE
        if finding.choices:
            normal = finding.normal.is_ if finding.normal else ()
            return rng.choice(normal if normal and rng.random() < MOSTLY_WELL else tuple(finding.choices))
        marks = self._marks(finding)
        low, high = self._span(finding, known)
        first = max(0, bisect_right(marks, low) - 1)
        last = min(len(marks) - 2, bisect_left(marks, high) - 1)
        at = rng.randint(first, max(first, last))
        return _figure(finding.measure, max(low, marks[at]), min(high, marks[at + 1]), rng)

    def _marks(self, finding: Finding) -> list[float]:
        """Return the values at which an answer begins to mean something else, and its ends."""
        measured = [value for value in self.telling.values[finding.name] if isinstance(value, float)]
        return measured[::2]

    def _span(self, finding: Finding, known: Mapping[str, Value]) -> tuple[float, float]:
        """Return what is plausible, or usual where the guide says so."""
        if finding.usual is None:
            return finding.plausible
        rises = finding.usual_rises
        other = known.get(rises.with_) if rises else None
        usual = usual_span(self.guide, finding, known) if isinstance(other, float) else finding.usual
        low, high = usual or finding.usual
        return (max(low, high * _MIDDLING[0]), high * _MIDDLING[1]) if rises else (low, high)


def _figure(unit: str, low: float, high: float, rng: Random) -> float:
    """Return a figure inside a band that people would say; the middle where it holds none.

    A wide band is drawn from near its start: past the last line that a guide draws, most are not far past.
    """
    value = low + (high - low) * rng.random() ** (2 if low and high > 2 * low else 1)
    for start, step in _STEPS.get(unit, ((0, 1),)):
        first, last = ceil(low / step + 1e-9), floor(high / step - 1e-9)
        if first <= last and value >= start:
            return float(round(min(max(round(value / step), first), last) * step, 6))
    return (low + high) / 2
