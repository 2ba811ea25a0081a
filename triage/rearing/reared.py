"""What a plan goes by: one lamb, as far as it is known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from triage.amounts.weight import weight_of
from triage.clock import Now
from triage.facts import Facts, Value
from triage.guide.model import Guide
from triage.rearing.growth import Growth, growth_of
from triage.units import System, show
from triage.weighings import Weighing

TRUSTED = 14
"""Days after a weighing for which a lamb is taken to grow as expected; after them as one never weighed."""

FULL = 0.5
"""Kilograms that a full belly, wet wool and a poor scale may add. Common practice, no source."""


@dataclass(frozen=True)
class Bag:
    """How the bag of milk powder words its rate: powder in g, water in ml, and which way."""

    powder: float
    water: float
    way: str


@dataclass(frozen=True)
class Reared:
    """One lamb to be raised. Times are aware; weights are in kg, what it eats in kg a day."""

    id: str
    name: str
    born: datetime
    born_guessed: bool = False
    weighed: tuple[Weighing, ...] = ()
    """Each weighing with its time, the oldest first."""
    eaten: tuple[Weighing, ...] = ()
    """Dry feed eaten in a day (kg) and when that was seen, the oldest first."""
    known: Mapping[str, Value] = field(default_factory=dict)
    """Answers to the findings of the plan, and `birth-type`."""
    law: str = ""
    """The name of a law among the guide's, or empty: then the strictest holds."""
    bag: Bag | None = None
    fed: tuple[Weighing, ...] = ()
    """Each feed of milk that was written down (ml) with its time, the oldest first."""
    weaned: datetime | None = None
    """When it had its last milk, where that was written down."""
    ill: str = ""
    """Why the guide's own page comes before any plan, in a sentence; empty for a lamb that is well."""
    doubted: Weighing | None = None
    """A last weighing that can't be right after the one before, and so does not count."""

    def hours(self, at: datetime) -> float:
        """Return the age in real hours, whatever the clocks did."""
        return (at - self.born).total_seconds() / 3600

    def until(self, now: datetime) -> Reared:
        """Return the lamb without what a clock that ran ahead dated to a time still to come."""
        weighed, eaten, fed = (
            tuple(each for each in seen if each[0] <= now) for seen in (self.weighed, self.eaten, self.fed)
        )
        weaned = self.weaned if self.weaned and self.weaned <= now else None
        return replace(self, weighed=weighed, eaten=eaten, fed=fed, weaned=weaned)

    def trusting(self, guide: Guide) -> Reared:
        """Return the lamb without weighings that no lamb can have grown to, unless the next agrees."""
        weighed, doubted = believed(self.weighed, guide.numbers["growth-fast"].value)
        return replace(self, weighed=weighed, doubted=doubted)

    def growth(self, guide: Guide) -> Growth | None:
        """Return how it has grown between its weighings, None where there are not two far enough apart."""
        if not self.weighed:
            return None
        young = self.hours(self.weighed[-1][0]) <= guide.numbers["week-three"].quantity.to("h").value
        least = guide.numbers["gain-young" if young else "gain-expected"].value
        return growth_of(self.weighed, least, guide.numbers["growth-fast"].value)

    def facts(self, guide: Guide, at: datetime, system: System) -> Facts:
        """Return what the sums need for the lamb as it is, or is expected to be, at a time."""
        age = max(0.0, self.hours(at))
        unweighed = Facts(guide.values(), {**self.known, "age": age})
        if not self.weighed:
            return Facts(guide.values(), {**unweighed.known, "weight": weight_of(unweighed, system).kg})
        return Facts(guide.values(), {**unweighed.known, "weight": self.expected(guide, at)})

    def expected(self, guide: Guide, at: datetime) -> float:
        """Return the weight (kg) expected at a time from the last weighing before it: that, or steps of 0.05.

        It is taken to grow at the least that is expected, or as it has grown where that is less. So the
        milk never runs ahead of the lamb: too small a feed is put right at the next weighing. One that
        was lighter than a newborn twin is taken to gain as much less, as it can drink as much less.
        """
        before = [each for each in self.weighed if each[0] <= at]
        if not before:
            return self._back(guide, at)
        when, kilos = before[-1]
        growth = self.growth(guide)
        most = max(0.0, growth.each_day) if growth else guide.numbers["gain-expected"].value
        small = min(1.0, kilos / guide.numbers["birth-twin"].value)
        young, later, slow = (
            min(most, guide.numbers[name].value) * small
            for name in ("gain-young", "gain-expected", "guess-growth")
        )
        days = max(0.0, (at - when) / timedelta(days=1))
        until_three = guide.numbers["week-three"].quantity.to("day").value - self.hours(when) / 24
        first = min(days, max(0.0, until_three))
        trusted = max(0.0, min(days, TRUSTED) - first)
        grown = young * first + later * trusted + slow * (days - first - trusted)
        return _in_steps(kilos + grown) if days else kilos

    def _back(self, guide: Guide, at: datetime) -> float:
        """Return the weight (kg) that it had before its first weighing: lighter by what it is taken to gain.

        Without this the first feeds of a lamb weighed at six weeks would be those of a lamb of six weeks.
        It is never taken to have been lighter than the low guess by its birth type, nor heavier than it is.
        """
        when, kilos = self.weighed[0]
        if when - at < timedelta(days=1):
            return kilos
        guessed = Facts(guide.values(), {**self.known, "age": max(0.0, self.hours(at))})
        lighter = kilos - guide.numbers["gain-expected"].value * ((when - at) / timedelta(days=1))
        return _in_steps(min(kilos, max(lighter, weight_of(guessed, "metric").kg)))


def believed(weighed: Sequence[Weighing], fastest: float) -> tuple[tuple[Weighing, ...], Weighing | None]:
    """Return the weighings that can be right, and a last one that can't, at most `fastest` kg gained a day.

    A lower weight is always believed, as by it a lamb is fed less. One that is too high counts only once
    the next agrees with it, and then those before it were wrong.
    """
    trusted: tuple[Weighing, ...] = ()
    doubted: Weighing | None = None
    for each in weighed:
        if not trusted or _can_follow(trusted[-1], each, fastest):
            trusted, doubted = (*trusted, each), None
        elif doubted and _can_follow(doubted, each, fastest):
            trusted, doubted = (doubted, each), None
        else:
            doubted = each
    return trusted, doubted


def _can_follow(before: Weighing, after: Weighing, fastest: float) -> bool:
    return after[1] - before[1] <= FULL + fastest * ((after[0] - before[0]) / timedelta(days=1))


def _in_steps(kilos: float) -> float:
    return int(kilos * 20 + 1e-6) / 20


@dataclass(frozen=True)
class Basis:
    """All that a plan is worked out from: the guidance, the lamb, the moment, and the reader's units."""

    guide: Guide
    lamb: Reared
    now: Now
    system: System

    def number(self, name: str, unit: str = "") -> float:
        """Return a number of the guide, in its own unit or the one asked for."""
        number = self.guide.numbers[name]
        return number.quantity.to(unit).value if unit else number.value

    def facts(self, at: datetime) -> Facts:
        """Return what the sums need for the lamb as it is, or is expected to be, at a time."""
        return self.lamb.facts(self.guide, at, self.system)

    def show(self, value: float, unit: str) -> str:
        """Return a quantity in the reader's units."""
        return show(value, unit, self.system)

    def day(self, at: datetime) -> str:
        """Return a moment as a day where the person is, as `3 Dec`."""
        here = at.astimezone(self.now.zone)
        return f"{here.day} {here:%b}"
