"""A lamb's story as blocks of a page: the plots, then the entries, the latest first.

The latest stands first, as a person at night asks what happened last; a day's name stands over its entries.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from triage.casebook.rows import Case, Observation
from triage.clock import Now, hhmm
from triage.guide.model import Guide
from triage.page.page import Block
from triage.timeline.entries import Entry, timeline
from triage.timeline.plot import plot, series
from triage.units import System

PLOTTED = ("temperature", "weight")


def blocks(
    cases: Iterable[Case],
    observations: Iterable[Observation],
    guide: Guide,
    system: System,
    now: Now,
) -> tuple[Block, ...]:
    """Return the whole story as blocks."""
    walks, seen = tuple(cases), tuple(observations)
    shown: list[Block] = []
    for finding in PLOTTED:
        if finding in guide.findings:
            drawn = plot(series(walks, seen, finding), finding, guide, system, now)
            if drawn:
                shown += [Block("label", guide.findings[finding].label), *drawn, Block("blank", "")]
    shown += _entries(timeline(walks, seen, guide, system), now)
    return tuple(shown)


def _entries(entries: tuple[Entry, ...], now: Now) -> Iterator[Block]:
    yield Block("label", "What happened, the latest first")
    if not entries:
        yield Block("body", "Nothing yet.")
    day = None
    for entry in reversed(entries):
        here = entry.at.astimezone(now.zone).date()
        if here != day and day is not None:
            yield Block("label", f"{here:%A %d %B}")
        day = here
        yield Block("body", f"{hhmm(entry.at, now)}  {entry.words}")
