"""A lamb's story as blocks of a page: the plots, then the entries, the latest first.

The latest stands first, as a person at night asks what happened last. Over the entries of an earlier day
stands its name; those of today need none.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from triage.casebook.rows import Case, Observation
from triage.clock import Now, at_clock
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
    day = now.moment.astimezone(now.zone).date()
    for entry in reversed(entries):
        here = entry.at.astimezone(now.zone).date()
        if here != day:
            yield Block("label", f"{here:%A} {here.day} {here:%B}")
        day = here
        about = "" if entry.sure else "about "
        yield Block("body", f"{about}{at_clock(entry.at, now.zone)}  {entry.words}")
