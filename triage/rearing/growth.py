"""Growth: what a lamb has gained in a day, against what is expected of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from triage.clock import Now
from triage.units import System, show
from triage.weighings import Weighing

APART = timedelta(hours=36)
"""Weighings nearer than this tell more of a full belly than of growth."""

WEEK = timedelta(days=7)


@dataclass(frozen=True)
class Growth:
    """What it gained between two weighings, in kg a day, and the least that is expected."""

    since: datetime
    until: datetime
    each_day: float
    expected: float
    most: float = float("inf")
    """More than the fastest lambs gain: the scale, or the note of it, is wrong."""

    @property
    def likely(self) -> bool:
        """Whether a lamb can have gained so much."""
        return self.each_day <= self.most

    @property
    def word(self) -> str:
        """A plain word for it."""
        if self.each_day <= 0:
            return "not growing"
        return "on course" if self.each_day >= self.expected else "slow"

    def line(self, now: Now, system: System) -> str:
        """Return the growth as a sentence, with the word and the numbers."""
        since, again = f"since {_day(self.since, now)}", ""
        if now.moment - self.until > WEEK:
            since = f"from {_day(self.since, now)} to {_day(self.until, now)}"
            again = " What it does since nobody knows: weigh it."
        least = show(self.expected, "kg/day", system)
        if self.each_day <= 0:
            lost = show(-self.each_day, "kg/day", system)
            how = f"It has lost {lost} {since}" if self.each_day < 0 else f"It has gained nothing {since}"
            return f"{how}: not growing. Open the guide for it today, at Pale, thin or not growing."
        if not self.likely:
            gained = show(self.each_day, "kg/day", system)
            return f"By these weights it gained {gained} {since}, more than any lamb does. Weigh it again."
        gained = f"It has gained {show(self.each_day, 'kg/day', system)} {since}"
        if self.each_day < self.expected / 2:
            return f"{gained}: far too slow, as {least} is the least expected. {FAR_TOO_SLOW}"
        if self.word == "slow":
            return f"{gained}: slow, as {least} is the least expected. {SLOW}"
        return f"{gained}: on course. {least} is the least expected.{again}"


def _day(moment: datetime, now: Now) -> str:
    here = moment.astimezone(now.zone)
    return f"{here.day} {here:%b}"


FAR_TOO_SLOW = "Open the guide for it today, at Pale, thin or not growing."
SLOW = "Check the mix, the teat, its dung and its chest, and weigh again in a few days."


def growth_of(weighed: Sequence[Weighing], expected: float, most: float = float("inf")) -> Growth | None:
    """Return the growth to the last weighing, from the one about a week before it.

    The first weighing that is at most a week older serves, so that an old gain does not hide a new check;
    it must be far enough from the last. None where no two are.
    """
    if not weighed:
        return None
    until, kilos = weighed[-1]
    older = [each for each in weighed[:-1] if until - each[0] >= APART]
    if not older:
        return None
    recent = [each for each in older if until - each[0] <= WEEK + APART]
    since, before = recent[0] if recent else older[-1]
    days = (until - since) / timedelta(days=1)
    return Growth(since, until, (kilos - before) / days, expected, most)
