"""Milk week by week: how many feeds, how much in each, how it is mixed, and what published tables give."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from triage.amounts import AMOUNTS
from triage.facts import Facts, Value
from triage.guide.model import Number
from triage.rearing.reared import Basis
from triage.units import bottle_mark

DAY = timedelta(days=1)
WEEKS = ("milk-week-one", "milk-week-two", "milk-week-three", "milk-week-four", "milk-week-five")
"""The numbers that hold what published tables give in a day, week by week from birth."""


@dataclass(frozen=True)
class Milk:
    """The milk of some days, in words and as figures (kg, and ml of mixed milk)."""

    begins: datetime
    ends: datetime
    ages: str
    dates: str
    weight: str
    guessed: bool
    """Whether the weight is only expected, as it was not weighed at that age."""
    feeds: int
    each: str
    """One feed, as a bottle shows it."""
    day: str
    mix: str
    """Powder and water for a day, at the rate on the bag; empty where no bag is kept."""
    published: str
    """What the published tables give for this age, in words; empty in the first day and after week five."""
    kg: float
    each_ml: float
    day_ml: float


def milk_of(basis: Basis) -> tuple[Milk, ...]:
    """Return the milk of a lamb week by week until it may be weaned, and then in one row until it must be."""
    last = _last_day(basis)
    rows = [_first_day(basis)]
    begin = 1
    while begin < last:
        end = min((begin // 7 + 1) * 7, last)
        rows.append(_week(basis, (begin, end)))
        begin = end
    latest = int(basis.number("off-milk-latest", "day"))
    if begin < latest:
        rows.append(_week(basis, (begin, latest), "if it still has milk"))
    weaned = basis.lamb.weaned
    return tuple(row for row in rows if weaned is None or row.begins < weaned)


def milk_at(rows: Sequence[Milk], moment: datetime) -> Milk | None:
    """Return the milk of the days that a moment is in, None before the first and after the last."""
    return next((row for row in rows if row.begins <= moment < row.ends), None)


def _last_day(basis: Basis) -> int:
    """Return the day of age up to which each week has a row: that of weaning, or of this week."""
    wean, latest = (int(basis.number(name, "day")) for name in ("wean-age", "off-milk-latest"))
    this_week = (int(basis.lamb.hours(basis.now.moment) / 24) // 7 + 1) * 7
    return min(latest, max(wean, this_week))


def _first_day(basis: Basis) -> Milk:
    facts = basis.facts(_goes_by(basis, (0, 1)))
    feeds, one, day = (
        AMOUNTS[name].work_out(facts, basis.system).figures[0].value
        for name in ("first-milk-count", "first-milk", "first-milk-day")
    )
    return _row(basis, (0, 1), facts, (int(feeds), one, day))


def _week(basis: Basis, days: tuple[int, int], where: str = "") -> Milk:
    """Return the milk of some days by the weight at their beginning, so that no feed is too large."""
    facts = basis.facts(_goes_by(basis, days))
    # The feeds of a day are those of its end: a day of age counts until the next one begins.
    aged = Facts(facts.numbers, {**facts.known, "age": days[1] * 24.0})
    feeds = int(AMOUNTS["milk-count"].work_out(aged, basis.system).figures[0].value)
    one = AMOUNTS["milk-feed"].work_out(aged, basis.system).figures[0].value
    row = _row(basis, days, facts, (feeds, one, one * feeds))
    return replace(row, ages=f"{row.ages}, {where}") if where else row


def _goes_by(basis: Basis, days: tuple[int, int]) -> datetime:
    """Return the moment whose weight the milk of some days goes by: their beginning, or a weighing in them.

    What the scale last said counts: by the weight it had before a lamb that has lost some is fed too much.
    """
    begins, ends = (basis.lamb.born + day * DAY for day in days)
    return max((when for when, _ in basis.lamb.weighed if begins < when < ends), default=begins)


def _row(basis: Basis, days: tuple[int, int], facts: Facts, milk: tuple[int, float, float]) -> Milk:
    lamb = basis.lamb
    begins, ends = lamb.born + days[0] * DAY, lamb.born + days[1] * DAY
    feeds, one, day = milk
    kilos = facts.measured("weight") or 0.0
    return Milk(
        begins,
        ends,
        "First day" if days[1] == 1 else f"Days {days[0] + 1} to {days[1]}",
        f"{basis.day(begins)} to {basis.day(ends)}",
        basis.show(kilos, "kg"),
        not any(begins - 2 * DAY <= when < ends for when, _ in lamb.weighed),
        feeds,
        basis.show(one, "ml"),
        basis.show(day, "ml"),
        _mix(basis, facts, day) if days[0] else "",
        _published(basis, days, milk, kilos),
        kilos,
        one,
        day,
    )


def _mix(basis: Basis, facts: Facts, day: float) -> str:
    bag = basis.lamb.bag
    if bag is None or not day:
        return ""
    rate: dict[str, Value] = {
        "bag-powder": float(bag.powder),
        "bag-water": float(bag.water),
        "bag-way": bag.way,
        "batch": float(day),
    }
    return AMOUNTS["milk-batch"].work_out(Facts(facts.numbers, rate), basis.system).words(basis.system)


def _published(basis: Basis, days: tuple[int, int], milk: tuple[int, float, float], kilos: float) -> str:
    """Return what the published tables give for a week, side by side, and where the plan stands to them."""
    week, (feeds, _, day) = (days[1] - 1) // 7, milk
    if not days[0] or week >= len(WEEKS):
        return ""
    number = basis.guide.numbers[WEEKS[week]]
    spans = sorted(number.published.values())
    told = f"Published tables give {' or '.join(_span(basis, span, number) for span in spans)} a day"
    if day > max(high for _, high in spans):
        return f"{told}. This is more, as it is heavy: weigh it again first."
    if day < min(low for low, _ in spans):
        return f"{told}. This is less, {_why_less(basis, day, feeds, kilos)}."
    return f"{told}; this goes by its weight."


def _why_less(basis: Basis, day: float, feeds: int, kilos: float) -> str:
    most = bottle_mark(basis.number("feed-most"), basis.system)
    if day >= most * feeds - 1:
        return "as no lamb has more in one feed"
    # A bottle shows each feed to 10 ml or a quarter ounce at the best.
    by_weight = kilos * basis.number("milk-day-rate") - 10 * feeds
    return "as it is light" if day >= by_weight else "as no lamb so light has more in a day"


def _span(basis: Basis, span: tuple[float, float], number: Number) -> str:
    low, high = (basis.show(each, number.unit) for each in span)
    unit = high.rpartition(" ")[2]
    return high if low == high else f"{low.removesuffix(f' {unit}')} to {high}"
