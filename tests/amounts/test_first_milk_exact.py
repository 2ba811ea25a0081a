"""First milk, worked by hand line by line in both unit systems."""

from __future__ import annotations

import pytest

from tests.amounts.made import LB, OZ, summed
from triage.amounts.sums import Figure
from triage.facts import UNSURE, Value
from triage.units import System

ROUNDED = "Rounded down to what a bottle shows:"


@pytest.mark.parametrize(
    ("kg", "ml", "working"),
    [
        (4.25, 210, ("Weight 4.25 kg", "4.25 kg x 50 ml = 212.5 ml", f"{ROUNDED} 210 ml")),
        (9.0, 450, ("Weight 9 kg", "9 kg x 50 ml = 450 ml", f"{ROUNDED} 450 ml")),
        (
            9.2,
            450,
            (
                "Weight 9.2 kg",
                "9.2 kg x 50 ml = 460 ml",
                "The most in one feed: 450 ml (in any lamb)",
                f"{ROUNDED} 450 ml",
            ),
        ),
    ],
)
def test_a_feed_is_weight_times_rate_up_to_the_most(kg: float, ml: float, working: tuple[str, ...]) -> None:
    """50 ml for each kg, rounded down, and from 9 kg on the 450 ml of any lamb, which is then named."""
    result = summed("first-milk", {"weight": kg})

    assert result.figures == (Figure(ml, "ml"),)
    assert result.working == working


@pytest.mark.parametrize(
    ("pounds", "ounces", "working"),
    [
        (10, 7.5, ("Weight 10 lb", "10 lb x 0.767 oz = 7.67 oz", f"{ROUNDED} 7.5 oz")),
        (
            22,
            15.0,
            (
                "Weight 22 lb",
                "22 lb x 0.767 oz = 16.87 oz",
                "The most in one feed: 15.2 oz (in any lamb)",
                f"{ROUNDED} 15 oz",
            ),
        ),
    ],
)
def test_a_feed_in_ounces(pounds: float, ounces: float, working: tuple[str, ...]) -> None:
    """50 ml/kg are 0.767 oz a pound and 450 ml are 15.2 oz; a bottle shows quarters of an ounce."""
    result = summed("first-milk", {"weight": pounds * LB}, "us")

    assert result.figures == (Figure(ounces * OZ, "ml"),)
    assert result.working == working


def test_a_first_day_indoors() -> None:
    """200 ml for each kg: 866 ml at 4.33 kg, rounded down to 860, as four feeds of 50 ml/kg."""
    result = summed("first-milk-day", {"weight": 4.33})

    assert result.figures == (Figure(860, "ml"),)
    assert result.working == (
        "Weight 4.33 kg",
        "4.33 kg x 200 ml = 866 ml",
        f"{ROUNDED} 860 ml",
        "As 4 feeds, one about every 6 hours",
    )


def test_a_first_day_in_the_cold() -> None:
    """A fifth more is 240 ml for each kg: 1020 ml at 4.25 kg, which takes five feeds."""
    result = summed("first-milk-day-cold", {"weight": 4.25})

    assert result.figures == (Figure(1020, "ml"),)
    assert result.working == (
        "Weight 4.25 kg",
        "Out in cold wet wind: 20% more",
        "4.25 kg x 240 ml = 1020 ml",
        f"{ROUNDED} 1020 ml",
        "As 5 feeds, one about every 4.5 hours",
    )


@pytest.mark.parametrize(
    ("name", "ounces", "working"),
    [
        (
            "first-milk-day",
            30.5,
            (
                "Weight 10 lb",
                "10 lb x 3.068 oz = 30.68 oz",
                f"{ROUNDED} 30.5 oz",
                "As 4 feeds, one about every 6 hours",
            ),
        ),
        (
            "first-milk-day-cold",
            36.75,
            (
                "Weight 10 lb",
                "Out in cold wet wind: 20% more",
                "10 lb x 3.681 oz = 36.81 oz",
                f"{ROUNDED} 36.75 oz",
                "As 5 feeds, one about every 4.5 hours",
            ),
        ),
    ],
)
def test_a_first_day_in_ounces(name: str, ounces: float, working: tuple[str, ...]) -> None:
    """200 ml/kg are 3.068 oz a pound, and 240 are 3.681."""
    result = summed(name, {"weight": 10 * LB}, "us")

    assert result.figures == (Figure(ounces * OZ, "ml"),)
    assert result.working == working


@pytest.mark.parametrize(
    ("weather", "feeds", "every", "working"),
    [
        ("indoors", 4, "6 hours", ("The day is 200 ml for each kg, a feed is 50 ml for each kg", "That makes 4 feeds, one about every 6 hours")),
        (UNSURE, 4, "6 hours", ("The day is 200 ml for each kg, a feed is 50 ml for each kg", "That makes 4 feeds, one about every 6 hours")),
        ("cold-wet-wind", 5, "4.5 hours", ("The day is 240 ml for each kg, a feed is 50 ml for each kg", "That makes 5 feeds, one about every 4.5 hours")),
    ],
)  # fmt: skip
def test_the_feeds_of_a_first_day(weather: Value, feeds: int, every: str, working: tuple[str, str]) -> None:
    """200 ml/kg are four feeds of 50, and 240 are five, the last of them short; 24 h / 5 is 4.8 h, told as 4.5."""
    result = summed("first-milk-count", {"weather": weather})

    assert result.figures == (Figure(feeds, "count", f"feeds, one about every {every}"),)
    assert (result.working, result.guessed) == (working, "")


def test_the_feeds_of_a_first_day_in_ounces() -> None:
    """A rate for each kg is told for each pound: 240 ml/kg are 3.68 oz, 50 are 0.77."""
    result = summed("first-milk-count", {"weather": "cold-wet-wind"}, "us")

    assert result.working[0] == "The day is 3.68 oz for each lb, a feed is 0.77 oz for each lb"


def test_a_first_day_has_no_fewer_feeds_than_the_guide_asks() -> None:
    """Where the guide asks for six feeds there are six, four hours apart, though four would hold the milk."""
    result = summed("first-milk-count", {}, first_milk_feeds=6)

    assert result.figures == (Figure(6, "count", "feeds, one about every 4 hours"),)


def test_the_hundredth_of_cold_is_a_hundredth() -> None:
    """25 percent more of 200 ml/kg is 250, which is five feeds of 50 and no more."""
    result = summed("first-milk-count", {"weather": "cold-wet-wind"}, first_milk_cold_extra=25)

    assert result.working[0].startswith("The day is 250 ml for each kg")
    assert result.figures[0].value == 5


@pytest.mark.parametrize(
    ("name", "hours", "left"),
    [
        ("first-milk-good-time", 7.26, 4.7),
        ("first-milk-good-time", 11.5, 0.5),
        ("first-milk-good-time", 12.0, 0.0),
        ("first-milk-good-time", 13.0, 0.0),
        ("first-milk-window", 7.26, 16.7),
        ("first-milk-window", 23.5, 0.5),
        ("first-milk-window", 25.0, 0.0),
    ],
)
@pytest.mark.parametrize("system", ["metric", "us"])
def test_time_left_is_what_is_not_used_up(name: str, hours: float, left: float, system: System) -> None:
    """The time left is 12 or 24 hours less the age, to a tenth of an hour, and never below none."""
    result = summed(name, {"age": hours}, system)

    assert result.figures == (Figure(left, "h"),)
    assert result.guessed == ""


@pytest.mark.parametrize(
    ("name", "first"),
    [
        ("first-milk-good-time", "Much less gets in from 12 hours old, and less each hour before"),
        ("first-milk-window", "Hardly any gets in from 24 hours old, and less each hour before"),
    ],
)
def test_time_left_says_from_when_it_is_counted(name: str, first: str) -> None:
    """The working names the age at which the time is up, and the age of this lamb."""
    assert summed(name, {"age": 7.26}).working == (first, "It is 7.3 hours old")


@pytest.mark.parametrize("name", ["first-milk-good-time", "first-milk-window"])
def test_no_time_left_is_counted_for_an_unknown_age(name: str) -> None:
    """With no age no time is promised, and the page says why."""
    result = summed(name, {"age": UNSURE})

    why = "Age is not known, so no time left is counted."
    assert (result.figures, result.working, result.guessed) == ((Figure(0, "h"),), (why,), why)


@pytest.mark.parametrize(("kg", "ml", "worked"), [(3.5, 50, "3.5 kg x 15 ml = 52.5 ml"), (6.0, 60, "6 kg x 15 ml = 90 ml")])  # fmt: skip
def test_a_first_feed_after_warming_stops_at_what_a_weak_gut_takes(kg: float, ml: float, worked: str) -> None:
    """15 ml for each kg, and 60 ml at most, which is named either way."""
    result = summed("small-first-feed", {"weight": kg})

    assert result.figures == (Figure(ml, "ml"),)
    assert result.working == (
        f"Weight {kg:g} kg",
        worked,
        "A weak gut starts with no more than 60 ml",
        f"{ROUNDED} {ml} ml",
    )


def test_a_first_feed_after_warming_in_ounces() -> None:
    """15 ml/kg are 0.23 oz a pound: 1.84 oz at 8 lb, down to 1.75; 60 ml are 2.03 oz."""
    result = summed("small-first-feed", {"weight": 8 * LB}, "us")

    assert result.figures == (Figure(1.75 * OZ, "ml"),)
    assert result.working == (
        "Weight 8 lb",
        "8 lb x 0.23 oz = 1.84 oz",
        "A weak gut starts with no more than 2.03 oz",
        f"{ROUNDED} 1.75 oz",
    )
