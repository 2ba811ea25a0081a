"""A plot of temperatures or weights that reads in plain text: a line for each reading, its words first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
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

GAPS = {"temperature": timedelta(hours=3), "weight": timedelta(hours=36)}
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

    On each line `*` is the reading and `|` are the guide's own lines. Where the guide has no lines, the scale
    goes from the lowest reading to the highest, and readings that are all the same have none.
    """
    drawn = readings[-MOST:]
    if not drawn:
        return []
    unit = guide.findings[finding].measure
    marks = [guide.numbers[name] for name in MARKED.get(finding, ()) if name in guide.numbers]
    lines = [mark.quantity.to(unit).value for mark in marks]
    legend = _legend([each.value for each in drawn], lines, unit, system)
    blocks = [Block("body", f"The last {MOST} of {len(readings)}.")] if len(readings) > MOST else []
    if legend:
        blocks.append(Block("body", f"* is the lamb, {legend}."))
    words = [f"{hhmm(each.at, now)}  {show(each.value, unit, system)}" for each in drawn]
    scales = _scales([each.value for each in drawn], lines, max(map(len, words)) + 2)
    for index, each in enumerate(drawn):
        if index and each.at - drawn[index - 1].at >= GAPS.get(finding, DAY):
            blocks.append(Block("body", f"({_span(drawn[index - 1], each, system)} without a reading)"))
        blocks.append(Block("body", words[index], scale=scales[index] if legend else None))
    if finding == "weight":
        blocks += [Block("body", text) for text in _gains(readings, unit, system)]
    return blocks


def _legend(values: Sequence[float], lines: Sequence[float], unit: str, system: System) -> str:
    """Return what the signs of a plot mean; nothing where there is nothing to compare a value to."""
    named = [show(value, unit, system) for value in lines]
    if named:
        return f"| are {', '.join(named[:-1])} and {named[-1]}" if len(named) > 1 else f"| is {named[0]}"
    low, high = show(min(values), unit, system), show(max(values), unit, system)
    return f"from {low} on the left to {high}" if low != high else ""


def _scales(values: Sequence[float], marks: Sequence[float], column: int) -> list[Scale]:
    """Return a scale for each value, all from the lowest to the highest of values and marks."""
    low, high = min(*values, *marks, values[0]), max(*values, *marks, values[0])
    spare = (high - low) * 0.05 or 0.5
    low, span = low - spare, high - low + 2 * spare
    placed = tuple((mark - low) / span for mark in marks)
    return [Scale((value - low) / span, placed, column) for value in values]


def _gains(readings: Sequence[Reading], unit: str, system: System) -> Iterator[str]:
    """Yield the gain a day to the last weighing: lately, and where that is another span, from the first.

    Two weighings less than a day apart tell more of the last feed than of growth.
    """
    last = readings[-1]
    earlier = [each for each in readings if last.at - each.at >= DAY]
    if not earlier:
        return
    lately, first = earlier[-1], earlier[0]
    yield f"{_gain(lately, last, unit, system)} over the last {_span(lately, last, system)}."
    if lately is not first:
        since = f"the {_span(first, last, system)} since the first weighing"
        yield f"{_gain(first, last, unit, system)} over {since}."


def _gain(first: Reading, last: Reading, unit: str, system: System) -> str:
    daily = (last.value - first.value) / ((last.at - first.at) / DAY)
    if not daily:
        return "It neither gained nor lost"
    return f"It {'gained' if daily > 0 else 'lost'} {show(abs(daily), f'{unit}/day', system)}"


def _span(first: Reading, last: Reading, system: System) -> str:
    hours = (last.at - first.at).total_seconds() / 3600
    return show(round(hours, 1), "h", system)
