"""Spacing against the published vectors of the `fsrs` library (its own tests, tests/test_basic.py, version 6).

Scheduler for Free Spaced Repetition, open-spaced-repetition/py-fsrs. The intervals are typed from there.
"""

from __future__ import annotations

import random
from datetime import UTC, datetime, timedelta

import pytest
from fsrs import Scheduler

from triage.practice.faults import Score
from triage.practice.memory import Remembered, after_round, due, reviewed, scheduler_of
from triage.practice.stored import card_from, card_row

NOON = datetime(2022, 11, 29, 12, 30, tzinfo=UTC)

KNEW = (True, True, True, True, True, True, False, False, True, True, True, True, True)
DAYS = [0, 2, 11, 46, 163, 498, 0, 0, 2, 4, 7, 12, 21]
"""Days to the next review after each of these, each taken when it is due, without the random spread."""


@pytest.mark.parametrize("kept", [False, True], ids=["in-memory", "through-the-practice-book"])
def test_the_intervals_are_the_published_ones(kept: bool) -> None:
    """Also where the card is written down and read back between two reviews."""
    plan, now, card = Scheduler(enable_fuzzing=False), NOON, None
    days = []
    for knew in KNEW:
        card = reviewed(card, "sign:danger/limp", knew, now, plan)
        days.append((card.due - card.last).days)
        if kept:
            card = card_from(card_row(card))
            assert card is not None
        now = card.due

    assert days == DAYS


AGAIN_THEN_GOOD = (False, True, True, True, True, True)
AFTER_DAYS = (0, 0, 1, 3, 8, 21)
STABILITY, DIFFICULTY = 53.62691, 6.3574867
"""The library's published state of memory after these, the last one reviewed so many days later."""


def test_the_state_of_memory_is_the_published_one() -> None:
    """Not known once, then known each time: how long it will last, and how hard it is."""
    plan, now, card = Scheduler(enable_fuzzing=False), NOON, None
    for knew, days in zip(AGAIN_THEN_GOOD, AFTER_DAYS, strict=True):
        now += timedelta(days=days)
        card = reviewed(card, "sign:danger/limp", knew, now, plan)

    assert card is not None
    assert card.state["stability"] == pytest.approx(STABILITY, abs=1e-4)
    assert card.state["difficulty"] == pytest.approx(DIFFICULTY, abs=1e-4)


def test_the_scheduler_has_the_library_s_defaults() -> None:
    """Nine in ten are to be remembered; the first steps are a minute and ten minutes."""
    assert scheduler_of().to_dict() == Scheduler().to_dict()
    assert scheduler_of().desired_retention == 0.9
    assert scheduler_of().learning_steps == (timedelta(minutes=1), timedelta(minutes=10))


def score_of(*asked: str, missed: tuple[str, ...] = ()) -> Score:
    """Return what came of a round that put these cards to the test."""
    return Score((), "vet-now", "vet-now", True, frozenset(asked), frozenset(missed))


def test_what_was_not_known_comes_back_first() -> None:
    """Within minutes, before what is due and was known."""
    random.seed(4)
    kept = after_round({}, score_of("a", "b", missed=("b",)), NOON)
    later = NOON + timedelta(minutes=30)

    assert {card: each.knew for card, each in kept.items()} == {"a": True, "b": False}
    assert kept["b"].due <= NOON + timedelta(minutes=1)
    assert [each.card for each in due(kept.values(), later)] == ["b", "a"]
    assert due(kept.values(), NOON) == []


def test_five_minutes_a_day_are_enough_to_go_on() -> None:
    """Known again each evening, a card comes back ever more seldom; one miss brings it back at once."""
    random.seed(4)
    now, kept, gaps = NOON, dict[str, Remembered](), []
    for _ in range(6):
        kept |= after_round(kept, score_of("a"), now)
        gaps.append(kept["a"].due - now)
        now = max(now + timedelta(days=1), kept["a"].due)
    assert gaps[1:] == sorted(gaps[1:])
    assert gaps[-1] > timedelta(days=60)

    kept |= after_round(kept, score_of("a", missed=("a",)), now)
    assert kept["a"].due - now <= timedelta(minutes=10)


def test_a_clock_that_was_set_back_harms_nothing() -> None:
    """A review seemingly before the last one counts as made with it."""
    first = reviewed(None, "a", True, NOON, scheduler_of())
    again = reviewed(first, "a", True, NOON - timedelta(days=400), scheduler_of())
    assert again.last == NOON
    assert again.due > NOON
