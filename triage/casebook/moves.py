"""Moves, times and the parts of observations, as the casebook's columns hold them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import UTC, datetime, timedelta
from typing import Any

from triage.casebook.rows import Part
from triage.facts import UNSURE, Unsure
from triage.walk import Answer, Done, Move

_EPOCH = datetime(1970, 1, 1, tzinfo=UTC)
_TICK = timedelta(microseconds=1)

LARGEST = 1e9
"""No measurement of a lamb comes near it in any unit; pages and sums are made for less."""


def ticks(moment: datetime) -> int:
    """Return a moment (aware) as whole microseconds since 1970 in UTC."""
    return (moment - _EPOCH) // _TICK


def moment(count: int) -> datetime:
    """Return the moment of a count of microseconds, in UTC."""
    return _EPOCH + count * _TICK


def maybe_ticks(when: datetime | None) -> int | None:
    """Return a moment as a count; None stays None."""
    return None if when is None else ticks(when)


def maybe_moment(count: int | None) -> datetime | None:
    """Return a count as a moment; None stays None."""
    return None if count is None else moment(count)


def clean(text: str) -> str:
    """Return a text that can be stored: half characters from a broken terminal become visible signs."""
    return text.encode("utf-8", errors="backslashreplace").decode("utf-8")


def text(stored: object) -> str:
    """Return a stored text; TypeError where damage has made it something else."""
    if not isinstance(stored, str):
        raise TypeError("a text is kept as a text")
    return stored


def whole(stored: object) -> int:
    """Return a stored count; TypeError where damage has made it something else."""
    if not isinstance(stored, int):
        raise TypeError("a count is kept as a whole number")
    return stored


def number(given: float) -> float:
    """Return a measurement; ValueError for one that can't be, which is neither kept nor read."""
    if not abs(given) <= LARGEST:
        raise ValueError("no measurement is that large")
    return float(given)


def columns(move: Move) -> tuple[str, str, float | str | None, str, int | None]:
    """Return a move as kind, name, value, said, at. A choice is text, a measurement a number, unsure NULL."""
    if isinstance(move, Done):
        return "act", move.act, None, "", maybe_ticks(move.at)
    value = None if isinstance(move.value, Unsure) else _part(move.value)
    return "answer", move.finding, value, move.said, maybe_ticks(move.at)


def move_of(row: Sequence[Any]) -> Move:
    """Return the move that kind, name, value, said, at describe."""
    kind, name, value, said, at = row
    if kind == "act":
        return Done(text(name), maybe_moment(at))
    known = UNSURE if value is None else _part(value)
    return Answer(text(name), known, text(said), maybe_moment(at))


def parts_text(parts: Mapping[str, Part]) -> str:
    """Return the parts of an observation as JSON."""
    cleaned = {clean(name): _part(part) for name, part in parts.items()}
    import json  # the first question needs none of it

    return json.dumps(cleaned, ensure_ascii=False)


def parts_of(text: str) -> dict[str, Part]:
    """Return the parts that a JSON text holds; ValueError where it is no map of numbers and texts."""
    import json

    parts = json.loads(text)
    if not isinstance(parts, dict):
        raise ValueError("the parts of an observation are a map")
    if any(isinstance(part, bool) or not isinstance(part, float | int | str) for part in parts.values()):
        raise ValueError("a part of an observation is a number or a text")
    return {name: _part(part) for name, part in parts.items()}


def _part(given: Part) -> Part:
    return clean(given) if isinstance(given, str) else number(given)


def alike(moves: Sequence[Move], others: Sequence[Move]) -> int:
    """Return how many moves at the start of two walks are the same."""
    count = 0
    for one, other in zip(moves, others, strict=False):
        if one != other:
            break
        count += 1
    return count
