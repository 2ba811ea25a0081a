"""First milk and milk: how much in a feed, how much in a day, how many feeds."""

from __future__ import annotations

import math

from triage.amounts.sums import Amount, Figure, Sum
from triage.amounts.weight import WEIGHT_NUMBERS, Heavy, days_old, times, weight_line, weight_of
from triage.facts import Facts
from triage.units import System, bottle_mark, down_to, show

FEED_COUNTS = (
    ("week-one", "feeds-first-week"),
    ("week-three", "feeds-to-three-weeks"),
    ("week-five", "feeds-to-five-weeks"),
)


def first_milk(facts: Facts, system: System) -> Sum:
    """One feed of first milk: weight x rate, rounded down, so never above the ceiling of a feed."""
    heavy = weight_of(facts, system)
    rate = facts.number("first-milk-rate")
    exact, most = heavy.kg * rate, facts.number("feed-most")
    given = bottle_mark(min(exact, most), system)
    over = (f"The most in one feed: {show(most, 'ml', system)} (in any lamb)",) if exact > most else ()
    working = (weight_line(heavy, system), times(heavy, rate, exact, system), *over, _rounded(given, system))
    return Sum((Figure(given, "ml"),), working, heavy.guessed)


def first_milk_day(facts: Facts, system: System) -> Sum:
    """First milk for the first day, indoors."""
    return _first_day(facts, system, 1.0)


def first_milk_day_cold(facts: Facts, system: System) -> Sum:
    """First milk for the first day out in cold, wet wind: the indoor day and its extra."""
    return _first_day(facts, system, 1 + facts.number("first-milk-cold-extra") / 100)


def _first_day(facts: Facts, system: System, factor: float) -> Sum:
    heavy = weight_of(facts, system)
    rate = facts.number("first-milk-day-rate") * factor
    exact = heavy.kg * rate
    day = bottle_mark(exact, system)
    feeds, gap = _first_day_feeds(facts, factor)
    extra = (
        ()
        if factor == 1
        else (f"Out in cold wet wind: {show(facts.number('first-milk-cold-extra'), '%')} more",)
    )
    working = (
        weight_line(heavy, system),
        *extra,
        times(heavy, rate, exact, system),
        _rounded(day, system),
        f"As {feeds} feeds, one about every {show(gap, 'h')}",
    )
    return Sum((Figure(day, "ml"),), working, heavy.guessed)


def _first_day_feeds(facts: Facts, factor: float) -> tuple[int, float]:
    """Return how many feeds hold a first day's milk with none above the rate of one feed."""
    day_rate = facts.number("first-milk-day-rate") * factor
    feeds = max(
        math.ceil(day_rate / facts.number("first-milk-rate") - 1e-9),
        int(facts.number("first-milk-feeds")),
    )
    return feeds, down_to(24 / feeds, 0.5)


def first_milk_count(facts: Facts, system: System) -> Sum:
    """How many feeds make the first day, and how far apart."""
    factor = 1.0
    if facts.chosen("weather") == "cold-wet-wind":
        factor += facts.number("first-milk-cold-extra") / 100
    feeds, gap = _first_day_feeds(facts, factor)
    day, one = facts.number("first-milk-day-rate") * factor, facts.number("first-milk-rate")
    working = (
        f"The day is {show(day, 'ml/kg', system)}, a feed is {show(one, 'ml/kg', system)}",
        f"That makes {feeds} feeds, one about every {show(gap, 'h')}",
    )
    return Sum((Figure(feeds, "count", f"feeds, one about every {show(gap, 'h')}"),), working)


def first_milk_good_time(facts: Facts, system: System) -> Sum:
    """Hours left in which first milk gives good cover; it falls all the while."""
    return _time_left(facts, "first-milk-fading", "Much less gets in from")


def first_milk_window(facts: Facts, system: System) -> Sum:
    """Hours left until hardly any cover gets in; none of them are promised."""
    return _time_left(facts, "first-milk-poor", "Hardly any gets in from")


def _time_left(facts: Facts, until: str, what: str) -> Sum:
    hours, close = facts.measured("age"), facts.number(until)
    if hours is None:
        unknown = "Age is not known, so no time left is counted."
        return Sum((Figure(0, "h"),), (unknown,), unknown)
    left = max(0.0, round(close - hours, 1))
    working = (f"{what} {show(close, 'h')} old, and less each hour before", f"It is {show(hours, 'h')} old")
    return Sum((Figure(left, "h"),), working)


def milk_feed(facts: Facts, system: System) -> Sum:
    """One feed of milk replacer by age and weight, under both ceilings of a feed."""
    heavy, _, exact, working = _share(facts, system)
    given, ceiling = _under_ceiling(facts, heavy, exact, system)
    return Sum((Figure(given, "ml"),), (*working, *ceiling, _rounded(given, system)), heavy.guessed)


def milk_day(facts: Facts, system: System) -> Sum:
    """Milk replacer for a day: as many feeds as the age asks, each under its ceiling."""
    heavy, feeds, exact, working = _share(facts, system)
    given, ceiling = _under_ceiling(facts, heavy, exact, system)
    total = given * feeds
    working = (*working, *ceiling, f"{feeds} feeds of {show(given, 'ml', system)}")
    return Sum((Figure(total, "ml", "a day"),), working, heavy.guessed)


def milk_count(facts: Facts, system: System) -> Sum:
    """How many milk feeds a day at this age, and how far apart."""
    feeds, why = _feeds_a_day(facts)
    gap = show(24 / feeds, "h")
    return Sum((Figure(feeds, "count", f"feeds a day, one about every {gap}"),), (why,))


def _share(facts: Facts, system: System) -> tuple[Heavy, int, float, tuple[str, ...]]:
    heavy = weight_of(facts, system)
    rate = facts.number("milk-day-rate")
    feeds, why = _feeds_a_day(facts)
    usual = _by_age(facts)[0]
    day, most = heavy.kg * rate, facts.number("feed-most") * usual
    # The feed more lets a light lamb have its day's milk, and never more of it than a heavier lamb has.
    capped = feeds > usual and day > most
    cap = (f"The most in a day at this age: {show(most, 'ml', system)}",) if capped else ()
    share = (most if capped else day) / feeds
    working = (
        weight_line(heavy, system),
        f"{times(heavy, rate, day, system)} a day",
        why,
        *cap,
        f"Shared out: {show(share, 'ml', system)} a feed",
    )
    return heavy, feeds, share, working


def _feeds_a_day(facts: Facts) -> tuple[int, str]:
    """Add a feed where a light lamb could not have its day's milk in so few, as none may be larger.

    A heavy lamb is held by the most for any lamb instead, and that is milk enough for its age.
    """
    feeds, why = _by_age(facts)
    kilos = facts.measured("weight")
    rate, ceiling = facts.number("milk-day-rate"), facts.number("feed-ceiling")
    light = kilos is not None and kilos * ceiling < facts.number("feed-most")
    if light and feeds * ceiling < rate:
        return feeds + 1, f"{why}, and one more while it is so light that they can't hold its day's milk"
    return feeds, why


def _by_age(facts: Facts) -> tuple[int, str]:
    days = days_old(facts)
    if days is None:
        feeds = int(facts.number("feeds-first-week"))
        return feeds, f"Age is not known: {feeds} small feeds a day, as for the youngest"
    for age, count in FEED_COUNTS:
        if days <= facts.number(age):
            feeds = int(facts.number(count))
            return feeds, f"Up to {show(facts.number(age), 'day')} old: {feeds} feeds a day"
    feeds = int(facts.number("feeds-later"))
    return feeds, f"Older than {show(facts.number('week-five'), 'day')}: {feeds} feeds a day"


def _under_ceiling(facts: Facts, heavy: Heavy, exact: float, system: System) -> tuple[float, tuple[str, ...]]:
    by_weight, most = heavy.kg * facts.number("feed-ceiling"), facts.number("feed-most")
    ceiling = min(by_weight, most)
    given = bottle_mark(min(exact, ceiling), system)
    if exact <= ceiling:
        return given, ()
    why = f"{show(facts.number('feed-ceiling'), 'ml/kg', system)}" if by_weight <= most else "in any lamb"
    return given, (f"The most in one feed: {show(ceiling, 'ml', system)} ({why})",)


def recovery_feed(facts: Facts, system: System) -> Sum:
    """The first feed of a weak lamb just warmed: small, and never above the rate of a feed."""
    heavy = weight_of(facts, system)
    rate, most = facts.number("recovery-rate"), facts.number("recovery-feed")
    exact = heavy.kg * rate
    given = bottle_mark(min(exact, most), system)
    working = (
        weight_line(heavy, system),
        times(heavy, rate, exact, system),
        f"A weak gut starts with no more than {show(most, 'ml', system)}",
    )
    return Sum((Figure(given, "ml"),), (*working, _rounded(given, system)), heavy.guessed)


def _rounded(ml: float, system: System) -> str:
    return f"Rounded down to what a bottle shows: {show(ml, 'ml', system)}"


_FIRST_DAY = ("first-milk-day-rate", "first-milk-rate", "first-milk-feeds")
_MILK = (
    "milk-day-rate",
    *(number for pair in FEED_COUNTS for number in pair),
    "feeds-later",
)

AMOUNTS = (
    Amount(
        "first-milk",
        "One feed of first milk",
        ("weight",),
        ("first-milk-rate", "feed-most", *WEIGHT_NUMBERS),
        first_milk,
        ("age", "birth-type"),
    ),
    Amount(
        "first-milk-day",
        "First milk for the first day, indoors",
        ("weight",),
        (*_FIRST_DAY, *WEIGHT_NUMBERS),
        first_milk_day,
        ("age", "birth-type"),
    ),
    Amount(
        "first-milk-day-cold",
        "First milk for the first day, out in cold wet wind",
        ("weight",),
        (*_FIRST_DAY, "first-milk-cold-extra", *WEIGHT_NUMBERS),
        first_milk_day_cold,
        ("age", "birth-type"),
    ),
    Amount(
        "first-milk-count",
        "Feeds of first milk in the first day",
        (),
        (*_FIRST_DAY, "first-milk-cold-extra"),
        first_milk_count,
        ("weather",),
    ),
    Amount(
        "first-milk-good-time",
        "Good time left for first milk",
        ("age",),
        ("first-milk-fading",),
        first_milk_good_time,
    ),
    Amount(
        "first-milk-window",
        "Time left until hardly any first milk works",
        ("age",),
        ("first-milk-poor",),
        first_milk_window,
    ),
    Amount(
        "milk-feed",
        "One feed of milk",
        ("weight", "age"),
        (*_MILK, "feed-ceiling", "feed-most", *WEIGHT_NUMBERS),
        milk_feed,
        ("birth-type",),
    ),
    Amount(
        "milk-day",
        "Milk for a day",
        ("weight", "age"),
        (*_MILK, "feed-ceiling", "feed-most", *WEIGHT_NUMBERS),
        milk_day,
        ("birth-type",),
    ),
    Amount(
        "milk-count",
        "Milk feeds a day",
        ("age",),
        (*_MILK, "feed-ceiling", "feed-most"),
        milk_count,
        ("weight",),
    ),
    Amount(
        "small-first-feed",
        "First feed of a weak lamb just warmed",
        ("weight",),
        ("recovery-rate", "recovery-feed", *WEIGHT_NUMBERS),
        recovery_feed,
        ("age", "birth-type"),
    ),
)
