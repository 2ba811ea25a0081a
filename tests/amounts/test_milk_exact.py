"""Milk feeds, worked by hand line by line in both unit systems."""

from __future__ import annotations

import pytest

from tests.amounts.made import LB, OZ, summed
from triage.amounts.sums import Figure
from triage.facts import UNSURE, Value

ROUNDED = "Rounded down to what a bottle shows:"
DAY = 24.0


def test_a_feed_is_the_day_shared_out() -> None:
    """4.9 kg at 180 ml are 882 ml, in six feeds 147 ml, rounded down to 140."""
    result = summed("milk-feed", {"weight": 4.9, "age": 2 * DAY})

    assert result.figures == (Figure(140, "ml"),)
    assert result.working == (
        "Weight 4.9 kg",
        "4.9 kg x 180 ml = 882 ml a day",
        "Up to 7 days old: 6 feeds a day",
        "Shared out: 147 ml a feed",
        f"{ROUNDED} 140 ml",
    )


@pytest.mark.parametrize(
    ("kg", "ml", "ceiling"),
    [
        (9.0, 450, "The most in one feed: 450 ml (50 ml for each kg)"),
        (12.0, 450, "The most in one feed: 450 ml (in any lamb)"),
    ],
)
def test_a_feed_is_cut_at_the_most_for_any_lamb(kg: float, ml: float, ceiling: str) -> None:
    """In three feeds 180 ml/kg would be 60 in each: from 9 kg on 450 ml cuts it."""
    result = summed("milk-feed", {"weight": kg, "age": 40 * DAY})

    assert result.figures == (Figure(ml, "ml"),)
    assert result.working[3:] == (f"Shared out: {kg * 60:g} ml a feed", ceiling, f"{ROUNDED} {ml} ml")


@pytest.mark.parametrize(("kg", "feeds", "ml"), [(5.0, 4, 220), (7.5, 4, 330), (8.9, 4, 330), (9.0, 3, 450)])
def test_a_light_lamb_has_one_feed_more(kg: float, feeds: int, ml: float) -> None:
    """Below 9 kg three feeds of 50 ml/kg can't hold 180: four of 45 do. The count says so, if it is weighed.

    From 7.5 kg on four hold no more than the 1,350 ml of a lamb of 9 kg, so that it loses none by growing.
    """
    known: dict[str, Value] = {"weight": kg, "age": 40 * DAY}

    assert summed("milk-feed", known).figures == (Figure(ml, "ml"),)
    assert summed("milk-count", known).figures[0].value == feeds
    assert summed("milk-count", {"age": 40 * DAY}).figures[0].value == 3


def test_a_feed_at_its_ceiling_is_not_cut() -> None:
    """150 ml/kg in three feeds are the 50 of the ceiling, so the ceiling is not named."""
    result = summed("milk-feed", {"weight": 6.0, "age": 40 * DAY}, milk_day_rate=150)

    assert result.figures == (Figure(300, "ml"),)
    assert result.working[3:] == ("Shared out: 300 ml a feed", f"{ROUNDED} 300 ml")


def test_a_feed_in_ounces() -> None:
    """At 10 lb 180 ml/kg are 27.61 oz a day; three feeds can't hold them, and 6.9 in four is rounded to 6.75."""
    result = summed("milk-feed", {"weight": 10 * LB, "age": 40 * DAY}, "us")

    assert result.figures == (Figure(6.75 * OZ, "ml"),)
    assert result.working == (
        "Weight 10 lb",
        "10 lb x 2.761 oz = 27.61 oz a day",
        "Older than 35 days: 3 feeds a day, and one more while it is so light that they can't hold its day's milk",
        "Shared out: 6.9 oz a feed",
        f"{ROUNDED} 6.75 oz",
    )


def test_a_day_is_its_feeds() -> None:
    """Six feeds of 140 ml are 840 ml: what a bottle can't show is left out of the day as well."""
    result = summed("milk-day", {"weight": 4.9, "age": 2 * DAY})

    assert result.figures == (Figure(840, "ml", "a day"),)
    assert result.working == (
        "Weight 4.9 kg",
        "4.9 kg x 180 ml = 882 ml a day",
        "Up to 7 days old: 6 feeds a day",
        "Shared out: 147 ml a feed",
        "6 feeds of 140 ml",
    )


def test_a_day_in_ounces_names_the_ceiling_it_met() -> None:
    """At 24 lb three feeds of 15 oz are 45 oz, as the most for any lamb cut each of them."""
    result = summed("milk-day", {"weight": 24 * LB, "age": 40 * DAY}, "us")

    assert result.figures == (Figure(45 * OZ, "ml", "a day"),)
    assert result.working[4:] == (
        "The most in one feed: 15.2 oz (in any lamb)",
        "3 feeds of 15 oz",
    )


@pytest.mark.parametrize(
    ("age", "feeds", "every", "why"),
    [
        (0.0, 6, "4 hours", "Up to 7 days old: 6 feeds a day"),
        (7 * DAY, 6, "4 hours", "Up to 7 days old: 6 feeds a day"),
        (7 * DAY + 1, 5, "4.8 hours", "Up to 21 days old: 5 feeds a day"),
        (21 * DAY, 5, "4.8 hours", "Up to 21 days old: 5 feeds a day"),
        (21 * DAY + 1, 4, "6 hours", "Up to 35 days old: 4 feeds a day"),
        (35 * DAY, 4, "6 hours", "Up to 35 days old: 4 feeds a day"),
        (35 * DAY + 1, 3, "8 hours", "Older than 35 days: 3 feeds a day"),
        (UNSURE, 6, "4 hours", "Age is not known: 6 small feeds a day, as for the youngest"),
    ],
)
def test_feeds_a_day_fall_at_the_end_of_a_week(age: Value, feeds: int, every: str, why: str) -> None:
    """The last hour of day 7, 21 and 35 still has the feeds of the younger lamb; no age has the most."""
    result = summed("milk-count", {"age": age})

    assert result.figures == (Figure(feeds, "count", f"feeds a day, one about every {every}"),)
    assert (result.working, result.guessed) == ((why,), "")
