"""Milk week by week: never above a ceiling, never ahead of the lamb, mixed at the bag's own rate."""

from __future__ import annotations

from datetime import timedelta
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.rearing.lambs import BAG, at, basis, lamb, now, shipped, weighed
from triage.rearing import plan_of
from triage.rearing.blocks import milk_lines
from triage.rearing.feeding import Milk, milk_of
from triage.rearing.reared import Bag
from triage.rearing.weaning import WEANED
from triage.units import ML_PER_FLOZ, System


def milk(days: float = 0.5, **known: object) -> tuple[Milk, ...]:
    return milk_of(basis(lamb(**known), days))


def test_the_table_runs_from_birth_to_weaning_without_a_gap() -> None:
    """Each row begins where the one before it ended, from the first hour to the age of weaning."""
    rows = milk()

    assert rows[0].begins == at(0)
    assert all(row.ends == after.begins for row, after in pairwise(rows))
    assert rows[-2].ends == at(42)
    assert (rows[-1].ages, rows[-1].ends) == ("Days 43 to 90, if it still has milk", at(90))


def test_a_weaned_lamb_has_no_more_milk() -> None:
    """Once it is written down that it is weaned, no row goes on after that, and the page says so."""
    plan = plan_of(shipped(), lamb(weaned=at(45)), now(46), "metric")

    assert all(row.begins < at(45) for row in plan.milk)
    assert milk_lines(plan, "metric") == [WEANED]
    assert not plan.weaning.ready


def test_a_lamb_past_weaning_age_still_has_its_week() -> None:
    """A lamb that is not ready keeps its milk, to the week it is in, and never past three months."""
    assert milk(50)[-2].ends == at(56)
    assert milk(89)[-1].ends == at(90)
    assert plan_of(shipped(), lamb(), now(50), "metric").milk_now is not None


def test_the_first_day_is_first_milk() -> None:
    """Four kilos: four feeds of 200 ml, 800 ml in all, and no powder is mixed for it."""
    first = milk()[0]

    assert (first.ages, first.feeds, first.each, first.day, first.mix) == (
        "First day",
        4,
        "200 ml",
        "800 ml",
        "",
    )


def test_feeds_get_fewer_at_the_ages_of_the_guide() -> None:
    """Six a day in the first week, four to three weeks, three after it; a light lamb keeps one more."""
    heavy = milk(41, weighed=weighed(*((day, 5.0 + 0.25 * day) for day in range(0, 42, 7))))
    assert [row.feeds for row in heavy] == [4, 6, 4, 4, 3, 3, 3, 3]
    assert [row.feeds for row in milk()] == [4, 6, 4, 4, 4, 4, 4, 4]


def test_a_light_lamb_is_not_cut_at_three_weeks() -> None:
    """A slow lamb of 5 kg has no less milk at 22 days than at 21: three feeds could not hold it."""
    rows = milk(22, weighed=weighed((0, 4.0), (20.9, 5.0)))
    before, after = (next(row for row in rows if row.begins <= at(day) < row.ends) for day in (20.95, 21.5))

    assert (after.feeds, after.each, after.day) == (4, "220 ml", "880 ml")
    assert after.day_ml >= before.day_ml


@settings(max_examples=60, deadline=None)
@given(
    kilos=st.floats(0.8, 9.0),
    day=st.integers(0, 60),
    later=st.floats(0.8, 30.0),
    system=st.sampled_from(["metric", "us"]),
)
def test_no_feed_is_above_a_ceiling(kilos: float, day: int, later: float, system: System) -> None:
    """No feed is above 50 ml for each kg, nor above the most for any lamb; no day above 180 ml for each kg."""
    known = lamb(weighed=weighed((0, kilos), (day + 2, later)))
    for row in milk_of(basis(known, day + 2.0, system))[1:]:
        assert row.each_ml <= 50 * row.kg + 1e-6
        assert row.each_ml <= 473
        assert row.day_ml <= 180 * row.kg + 1e-6
        mark = row.each_ml / ML_PER_FLOZ * 4 if system == "us" else row.each_ml / 5
        assert mark == pytest.approx(round(mark))


def test_a_weighing_bends_the_plan() -> None:
    """A lamb that grew slowly is fed by what it weighs, and by its own slow growth from there on."""
    slow = milk(10, weighed=weighed((0, 4.0), (10, 4.5)))
    usual = milk(10)

    week = next(index for index, row in enumerate(slow) if row.begins > at(10))
    assert slow[week].kg < usual[week].kg
    assert slow[week].kg == pytest.approx(4.7, abs=0.05)  # 4.5 kg at day 10, and 0.05 kg a day to day 14


def test_a_fast_lamb_is_not_fed_ahead_of_its_weight() -> None:
    """Between weighings it is taken to grow at the least expected of its age, however fast it grew before."""
    fast = milk(10, weighed=weighed((0, 4.0), (10, 8.0)))

    week = next(row for row in fast if row.begins > at(10))
    assert week.kg == pytest.approx(8.0 + 4 * 0.1, abs=0.051)


def test_a_lamb_that_lost_weight_is_not_taken_to_lose_more() -> None:
    """The weight of its last weighing holds."""
    lost = milk(10, weighed=weighed((0, 4.0), (10, 3.6)))

    assert lost[-1].kg == pytest.approx(3.6)


def test_an_unweighed_lamb_is_a_low_guess() -> None:
    """Without a weight the low guess by birth type holds, and each row says that it is only expected."""
    rows = milk(weighed=(), known={"birth-type": "twin"})

    assert rows[1].kg == pytest.approx(3.3)
    assert all(row.guessed for row in rows)


@pytest.mark.parametrize(("bag", "words"), [
    (BAG, "144 g powder and 576 ml water"),
    (Bag(200, 1000, "made-up-to"), "144 g powder and 576 ml water"),
    (Bag(150, 850, "added-to"), "108 g powder and 612 ml water"),
    (None, ""),
])  # fmt: skip
def test_mixing_goes_by_the_bag(bag: Bag | None, words: str) -> None:
    """A day's milk of 720 ml is mixed at the rate on the bag, and without a bag no rate is made up."""
    assert milk(bag=bag)[1].mix == words


def test_published_tables_stand_side_by_side() -> None:
    """In week two the two tables do not even meet; both are told, and that the plan goes by weight."""
    week_two = milk()[2]

    assert "473 to 710 ml or 720 to 1000 ml a day" in week_two.published
    assert week_two.published.endswith("this goes by its weight.")


def test_more_or_less_than_both_tables_is_told() -> None:
    """A heavy lamb gets more than both tables give, a light one less, and the row says so."""
    assert "This is more, as it is heavy" in milk(weighed=weighed((0, 8.0)))[1].published
    assert "This is less, as it is light" in milk(weighed=weighed((0, 1.2)))[2].published


def test_birth_across_a_clock_change_counts_real_hours() -> None:
    """The rows are real days from birth, also in the night when the clock goes forward."""
    assert milk()[1].begins - milk()[0].begins == timedelta(hours=24)


def test_the_weeks_before_the_first_weighing_are_those_of_a_smaller_lamb() -> None:
    """Twelve kilos at six weeks: its first day was not that of a lamb of twelve kilos, but of about four."""
    rows = milk(42, weighed=weighed((42, 12.0)))

    assert rows[0].kg == pytest.approx(4.0, abs=0.05)
    assert rows[0].each == "200 ml"
    assert all(before.kg < after.kg <= 12.0 for before, after in pairwise(rows[:-1]))


@pytest.mark.parametrize(("day", "kilos"), [(42, 5.0), (10, 1.2), (0.5, 9.0)])
def test_a_light_lamb_is_not_taken_for_one_that_weighed_nothing(day: float, kilos: float) -> None:
    """Back to birth it is never lighter than the low guess, nor heavier than it was when it was weighed."""
    born = milk(day, weighed=weighed((day, kilos)))[0].kg

    assert min(kilos, 2.0) <= born <= kilos


def test_a_tiny_lamb_is_not_fed_as_if_it_grew_like_a_big_one() -> None:
    """A kilo and a half, weighed at birth: a week later its feed is one that a lamb of 1.85 kg can hold."""
    tiny = milk(0.5, weighed=weighed((0, 1.5)))
    week_two = next(row for row in tiny if row.begins == at(7))

    assert week_two.kg <= 2.1
    assert week_two.each_ml <= 1.85 * 50


def test_the_week_of_the_first_weighing_goes_by_it() -> None:
    """Weighed for the first time at three days: the feeds of that week are by what it weighs."""
    week_one = milk(3.0, weighed=weighed((3, 4.4)))[1]

    assert (week_one.kg, week_one.feeds, week_one.each) == (4.4, 6, "130 ml")
    assert not milk(6.0, weighed=weighed((6, 5.0)))[1].guessed


@pytest.mark.parametrize(
    ("day", "kilos"),
    [
        (10, ((0, 4.0), (5, 4.5), (9.5, 3.0))),
        (13, ((0, 4.0), (5, 10.0), (12.5, 4.5))),
        (0.8, ((0, 4.4), (0.5, 3.1))),
        (25, ((0, 4.0), (22, 9.0), (24, 6.0))),
    ],
)
def test_a_week_goes_by_what_the_scale_said_last_in_it(
    day: float, kilos: tuple[tuple[float, float], ...]
) -> None:
    """It lost weight within the week, or the scale was read wrong before: no feed is above 50 ml for each kg."""
    row = next(each for each in milk(day, weighed=weighed(*kilos)) if each.begins <= at(day) < each.ends)

    assert row.kg == kilos[-1][1]
    assert row.each_ml <= kilos[-1][1] * 50
    assert not row.guessed


def test_an_old_weight_does_not_run_ahead_of_a_slow_lamb() -> None:
    """Weighed at birth and never again: after two weeks it is taken to gain 100 g a day, as one never weighed."""
    rows = milk(0.5, weighed=weighed((0, 4.0)))
    third, sixth = (next(row for row in rows if row.begins == at(day)) for day in (14, 35))

    assert third.kg == pytest.approx(4.0 + 14 * 0.1, abs=0.05)
    assert sixth.kg == pytest.approx(4.0 + 35 * 0.1, abs=0.05)


@pytest.mark.parametrize(
    "bag", [Bag(1000, 200, "added-to"), Bag(1000, 200, "made-up-to"), Bag(20, 1000, "added-to")]
)
def test_a_bag_with_powder_and_water_swapped_mixes_nothing(bag: Bag) -> None:
    """Milk of 80 % powder kills, and less than no water is nonsense: the plan says so and reckons with no bag."""
    plan = plan_of(shipped(), lamb(bag=bag), now(3), "metric")

    assert plan.missing[0].startswith("The rate that is kept of the bag")
    assert not any(row.mix for row in plan.milk)
    assert plan.energy == plan_of(shipped(), lamb(bag=None), now(3), "metric").energy
