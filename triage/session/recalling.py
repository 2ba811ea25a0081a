"""What was written down that a page must not be read without: the vet's words, and the last feed."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from triage.casebook.rows import Observation
from triage.clock import Now, hhmm
from triage.guide.model import Guide
from triage.observations import words_of
from triage.page.page import Block
from triage.units import System

LONG_AGO = {"vet-said": timedelta(hours=24), "feed": timedelta(hours=6)}
"""After this a note is history; until then it changes what is to be done."""

SIGNS = 160


def recalled(seen: Sequence[Observation], feeds: bool, guide: Guide, now: Now, system: System) -> list[Block]:
    """Return the last words of the vet, and on a page that feeds the last feed, as blocks."""
    blocks = []
    for kind, after in (("vet-said", "It comes before this page."), ("feed", "Count it in.")):
        last = [
            each
            for each in seen
            if each.kind == kind and timedelta(0) <= now.moment - each.at <= LONG_AGO[kind]
        ]
        if last and (feeds or kind != "feed"):
            words = words_of(last[-1], guide, system, SIGNS)
            blocks.append(Block("label", f"{words}, at {hhmm(last[-1].at, now)}. {after}"))
    return blocks
