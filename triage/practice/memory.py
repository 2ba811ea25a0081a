"""What a helper remembers and when to ask it again: each card's state, kept by the `fsrs` library.

The spacing is that library's own, with its defaults: what was not known comes back within minutes, what
was known each time after days and then months.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

from triage.practice.faults import Score

if TYPE_CHECKING:
    from fsrs import Card, Scheduler


@dataclass(frozen=True)
class Remembered:
    """One card as it is kept: when it is due, whether it was known last, and the library's own state."""

    card: str
    due: datetime
    last: datetime
    knew: bool
    state: Mapping[str, float | str]
    """The library's card, field by field."""


def reviewed(
    before: Remembered | None, card: str, knew: bool, at: datetime, scheduler: Scheduler
) -> Remembered:
    """Return a card after it was put to the test once more."""
    from fsrs import Card, Rating

    rating, anew = Rating.Good if knew else Rating.Again, Card(card_id=0, due=at)
    try:
        kept = _unpacked(before.state) if before else anew
        # A clock that was set back must not make the time since the last review negative.
        moment = max(at, kept.last_review) if kept.last_review else at
        after, _ = scheduler.review_card(kept, rating, moment)
    except (ValueError, TypeError, KeyError, OverflowError, ArithmeticError):
        # Damage has made it a card that there can't be: it begins anew.
        moment = at
        after, _ = scheduler.review_card(anew, rating, moment)
    return Remembered(card, after.due, moment, knew, _packed(after.to_dict()))


def after_round(
    kept: Mapping[str, Remembered], came: Score, at: datetime, scheduler: Scheduler | None = None
) -> dict[str, Remembered]:
    """Return the cards of a round as they are after it; those that it did not ask stay as they are."""
    plan = scheduler or scheduler_of()
    return {
        card: reviewed(kept.get(card), card, card not in came.missed, at, plan) for card in sorted(came.asked)
    }


def scheduler_of() -> Scheduler:
    """Return the library's scheduler with its defaults."""
    from fsrs import Scheduler

    return Scheduler()


def due(kept: Iterable[Remembered], at: datetime) -> list[Remembered]:
    """Return what is due, what was not known last before the rest, the longest due first."""
    return sorted((each for each in kept if each.due <= at), key=lambda each: (each.knew, each.due))


def _packed(state: Mapping[str, object]) -> dict[str, float | str]:
    return {name: value for name, value in state.items() if isinstance(value, float | int | str)}


def _unpacked(state: Mapping[str, float | str]) -> Card:
    from fsrs import Card, State

    step, stability, difficulty = (state.get(name) for name in ("step", "stability", "difficulty"))
    last = state.get("last_review")
    return Card(
        0,
        State(int(state["state"])),
        None if step is None else int(step),
        None if stability is None else float(stability),
        None if difficulty is None else float(difficulty),
        datetime.fromisoformat(str(state["due"])),
        None if last is None else datetime.fromisoformat(str(last)),
    )
