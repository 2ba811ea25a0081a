"""A plot of temperatures or weights that reads in plain text: a line for each reading, its words first."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from triage.casebook.rows import Case, Observation
from triage.clock import Now, hhmm
from triage.guide.model import Guide
from triage.page.page import Block, Scale
from triage.timeline.entries import Rests
from triage.units import System, show
from triage.walk import KEPT, Answer

MOST = 12
"""Readings drawn; more are told by their number."""

GAP = timedelta(hours=3)
"""A pause between two readings that is told, as the lines stand as close as if there were none."""

DAY = timedelta(days=1)

MARKED = {"temperature": ("severe-chill", "normal-low", "fever-today")}
"""The numbers of the guide that are drawn into a plot, where the guide has them."""


@dataclass(frozen=True)
class Reading:
    """One measurement: when (aware, UTC), its value in the finding's unit, and what it rests on."""

    at: datetime
    value: float
    rests_on: Rests


def series(cases: Iterable[Case], observations: Iterable[Observation], finding: str) -> tuple[Reading, ...]:
    """Return every reading of a finding, from answers and from observations, the oldest first."""
    found: list[Reading] = []
    for case in cases:
        for move in case.moves:
            if not isinstance(move, Answer) or move.finding != finding or move.at is None:
                continue
            # An answer taken from what was kept is the same reading again.
            if isinstance(move.value, float) and move.said != KEPT:
                found.append(Reading(move.at, move.value, move))
    for seen in observations:
        value = seen.parts.get(finding)
        if seen.kind == finding and isinstance(value, float):
            found.append(Reading(seen.at, value, seen))
    return tuple(sorted(found, key=lambda reading: reading.at))


def plot(readings: Sequence[Reading], finding: str, guide: Guide, system: System, now: Now) -> list[Block]:
    """Return the plot as blocks: what its signs mean, a line for each reading, and gaps told in words.

    On each line `*` is the reading and `|` are the guide's own lines.
    """
    drawn = readings[-MOST:]
    if not drawn:
        return []
    unit = guide.findings[finding].measure
    words = [f"{hhmm(each.at, now)}  {show(each.value, unit, system)}" for each in drawn]
    marks = [guide.numbers[name] for name in MARKED.get(finding, ()) if name in guide.numbers]
    lines = [mark.quantity.to(unit).value for mark in marks]
    scales = _scales([each.value for each in drawn], lines, max(map(len, words)) + 2)
    blocks = []
    if len(readings) > MOST:
        blocks.append(Block("body", f"The last {MOST} of {len(readings)}."))
    if lines:
        named = [show(value, unit, system) for value in lines]
        blocks.append(Block("body", f"* is the lamb, | are {', '.join(named[:-1])} and {named[-1]}."))
    for index, (each, said, scale) in enumerate(zip(drawn, words, scales, strict=True)):
        if index and each.at - drawn[index - 1].at >= GAP:
            hours = (each.at - drawn[index - 1].at).total_seconds() / 3600
            blocks.append(Block("body", f"({show(round(hours, 1), 'h', system)} without a reading)"))
        blocks.append(Block("body", said, scale=scale))
    return [*blocks, *_gain(readings, finding, unit, system)]


def _scales(values: Sequence[float], marks: Sequence[float], column: int) -> list[Scale]:
    """Return a scale for each value, all from the lowest to the highest of values and marks."""
    low, high = min(*values, *marks, values[0]), max(*values, *marks, values[0])
    spare = (high - low) * 0.05 or 0.5
    low, span = low - spare, high - low + 2 * spare
    placed = tuple((mark - low) / span for mark in marks)
    return [Scale((value - low) / span, placed, column) for value in values]


def _gain(readings: Sequence[Reading], finding: str, unit: str, system: System) -> list[Block]:
    """Return the daily gain between the first and the last weighing, where a day or more lies between."""
    if finding != "weight" or len(readings) < 2 or readings[-1].at - readings[0].at < DAY:
        return []
    days = (readings[-1].at - readings[0].at) / DAY
    daily = (readings[-1].value - readings[0].value) / days
    verb = "It gained" if daily >= 0 else "It lost"
    gain = show(abs(daily), f"{unit}/day", system)
    return [Block("body", f"{verb} {gain}, from the first weighing to the last.")]
