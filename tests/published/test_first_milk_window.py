"""The time in which first milk works, and what the guide may promise as it runs out.

Dominguez and others, Research in Veterinary Science 70:275 (2001): of a dose of antibody lambs took up
16.9 % at half an hour old, 9.8 % at 12 hours and none at 24. Bond, a review in a vet journal: what a lamb
takes up from its own ewe falls by a steady step an hour to about nothing at 23 hours.

"First milk within 24 to 36 hours" is a rule of the trade: common practice, no source.
"""

from __future__ import annotations

from itertools import pairwise

import pytest

from tests.published.walks import Trail, every_trail, first_figure, lamb, shipped
from triage.facts import UNSURE
from triage.guide.texts import said_on
from triage.page.words import Reader

AGES = (6.0, 12.0, 13.0, 24.0, 25.0, 36.0, 37.0)


def ends_at(hours: float) -> list[Trail]:
    """Return the walks of a warm lamb that sucks, is well otherwise, and has had no first milk."""
    found = list(
        every_trail(
            {
                "danger": "none",
                "temperature": 39.5,
                "swallows": "sucks",
                "reason": "no-first-milk",
                "age": hours,
                "before-feed": "none",
            },
            {"weight": (4.5, UNSURE), "belly": ("hollow",)},
        )
    )
    assert found
    return found


def amounts_shown(trail: Trail) -> set[str]:
    """Return the names of the sums that an end shows."""
    texts = said_on(trail.end)
    return set(Reader(shipped(), trail.walk.facts).sums(texts))


def rank(trail: Trail) -> int:
    """Return how urgent a walk came to be: 0 is the most."""
    return shipped().rank(trail.urgency)


@pytest.mark.parametrize("hours", [6.0, 12.0, 13.0, 24.0, 25.0, 36.0])
def test_first_milk_is_still_given_inside_the_rule_of_the_trade(hours: float) -> None:
    """Up to 36 hours old a lamb with no first milk is given some."""
    # Common practice, no source; Vet Times, 2018, and Harper Adams, 2024, also name 36 hours.
    for trail in ends_at(hours):
        assert "first-milk" in amounts_shown(trail), trail.told()
        assert trail.feeds(), trail.told()


def test_past_the_rule_of_the_trade_it_gets_milk_and_no_promise() -> None:
    """At 37 hours first milk is no longer the feed, and no time left is shown."""
    # Common practice, no source; Dominguez and others, 2001.
    for trail in ends_at(37.0):
        assert "first-milk" not in amounts_shown(trail), trail.told()
        assert "milk-feed" in amounts_shown(trail), trail.told()
        assert not {"first-milk-window", "first-milk-good-time"} & amounts_shown(trail), trail.told()


@pytest.mark.parametrize("hours", [25.0, 36.0])
def test_after_a_day_no_time_left_is_shown(hours: float) -> None:
    """Past 24 hours the end shows no time left, as nothing is taken up by then."""
    # Dominguez and others, 2001.
    for trail in ends_at(hours):
        assert not {"first-milk-window", "first-milk-good-time"} & amounts_shown(trail), trail.told()


def test_past_twelve_hours_no_good_time_is_shown() -> None:
    """At 13 hours no good time is shown any more, and a vet is phoned the same day; at 6 hours not yet."""
    # Kerr, Washington and Oregon State, 2008, and Marches Farm Vets, 2025: poor past 12 hours.
    for trail in ends_at(13.0):
        assert "first-milk-good-time" not in amounts_shown(trail), trail.told()
        assert rank(trail) <= shipped().rank("vet-today"), trail.told()
    assert all(rank(trail) > shipped().rank("vet-today") for trail in ends_at(6.0))


def test_it_never_grows_less_urgent_with_age() -> None:
    """The older the lamb with no first milk, the sooner a vet is phoned, never the later."""
    # Dominguez and others, 2001; Sawyer and others, JAVMA 171 (1977), on lambs that died for want of it.
    worst = [max(rank(trail) for trail in ends_at(hours)) for hours in AGES]
    assert all(later <= earlier for earlier, later in pairwise(worst))


@pytest.mark.parametrize("hours", [13.0, 24.0, 25.0, 36.0, 37.0])
def test_late_ends_send_to_the_vet_the_same_day(hours: float) -> None:
    """From 13 hours on the vet is phoned today, and one of the steps says so."""
    # Storey's Guide to Raising Sheep (Simmons, Ekarius): a vet may give it antisera.
    for trail in ends_at(hours):
        assert rank(trail) <= shipped().rank("vet-today"), trail.told()
        assert "phone" in trail.tags, trail.told()


@pytest.mark.parametrize(
    ("hours", "left"),
    [
        (0.5, 23.5),
        (6.0, 18.0),
        (12.0, 12.0),
        (13.0, 11.0),
        (23.0, 1.0),
        (24.0, 0.0),
        (25.0, 0.0),
        (37.0, 0.0),
    ],
)
def test_time_left_ends_with_uptake(hours: float, left: float) -> None:
    """The time left runs out at 24 hours, when a trial found no uptake."""
    # Dominguez and others, 2001. Bond has 23 hours, one hour less: at most that hour is promised past it.
    shown = first_figure("first-milk-window", lamb({"age": float(hours)}))
    assert shown == pytest.approx(left)
    assert shown <= max(0.0, 23.0 - hours) + 1.0


def test_time_left_falls_all_the_while() -> None:
    """Inside the window an older lamb always has less time left, as uptake falls from the first hour."""
    # Bond: a steady fall by the hour. Dominguez and others, 2001: 16.9 %, 9.8 %, 0.
    shown = [first_figure("first-milk-window", lamb({"age": half / 2})) for half in range(49)]
    assert all(later < earlier for earlier, later in pairwise(shown))
    assert shown[-1] == 0


def test_share_of_time_left_at_twelve_hours_is_no_more_than_the_uptake_left() -> None:
    """At 12 hours the share of time left is no larger than the share of uptake left in the trial."""
    # Dominguez and others, 2001: 9.8 / 16.9 = 0.58 of the uptake at half an hour old.
    at_half, at_twelve = (first_figure("first-milk-window", lamb({"age": hours})) for hours in (0.5, 12.0))
    assert at_twelve / at_half <= 0.58


@pytest.mark.parametrize(("hours", "left"), [(6.0, 6.0), (11.0, 1.0), (12.0, 0.0), (13.0, 0.0)])
def test_good_time_ends_at_twelve_hours(hours: float, left: float) -> None:
    """Good time is counted to 12 hours only, the earliest closing that is published."""
    # Kerr, 2008, and Marches Farm Vets, 2025, put closing there; Storey's Guide has 16 to 18 hours.
    assert first_figure("first-milk-good-time", lamb({"age": hours})) == pytest.approx(left)


def test_unknown_age_promises_nothing() -> None:
    """With no known age no hours are promised."""
    # Common practice, no source: what is not known is taken as the worse.
    for amount in ("first-milk-window", "first-milk-good-time"):
        assert first_figure(amount, lamb({"age": UNSURE})) == 0
