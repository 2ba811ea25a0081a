"""The weighings of a lamb, from its walks and from what was written down between them."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime

from triage.casebook.rows import Observation
from triage.walk import KEPT, Answer, Move

Weighing = tuple[datetime, float]
"""A moment (aware) and kilograms: of a lamb, or of what it ate in a day."""


def weighings(moves: Iterable[Move], observations: Iterable[Observation]) -> list[Weighing]:
    """Return every weight of a lamb with its time, the oldest first."""
    found = [
        (move.at, move.value)
        for move in moves
        if isinstance(move, Answer) and move.finding == "weight" and move.at and isinstance(move.value, float)
        if move.said != KEPT
    ]
    found += [
        (each.at, value)
        for each in observations
        if each.kind == "weight"
        for value in each.parts.values()
        if isinstance(value, float)
    ]
    return sorted(found)
