"""Weaning: by age and weight and feed eaten, all three; and what to do when only two of them are met."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from triage.rearing.reared import Basis
from triage.weighings import Weighing

FRESH = timedelta(days=7)
"""A weight or a measure of feed older than this says nothing of today."""


@dataclass(frozen=True)
class Sign:
    """One of the three signs: what it is, whether it is met (None: not known), and the words for it."""

    name: str
    met: bool | None
    line: str


@dataclass(frozen=True)
class Weaning:
    """Whether a lamb is ready to be weaned."""

    signs: tuple[Sign, ...]
    line: str

    @property
    def ready(self) -> bool:
        """Whether all three signs are met, it is well, and it still has milk."""
        return self.line == READY


READY = "It is ready. Stop the milk at once, and keep its pen, its mates and its feed the same for that week."
NOT_WELL = (
    "All three signs are there, but it is not well. See to that first, and keep on with the milk till then."
)
NOT_YET = "Not yet. Keep on with the milk, and weigh it each week."
WEANED = "It is weaned. No more milk, unless a vet asks for it."
LATE = "It is late. Take it off milk, but ask the vet first why it does not grow or does not eat."
LACKS = {
    ("age", False): "Heavy and eating, but too young. Keep on with the milk until its day comes.",
    ("weight", False): (
        "Old enough and eating, but too light. Keep on with its milk until it is heavy enough. If it gains "
        "little in a week, ask the vet why."
    ),
    ("weight", None): "Weigh it. Without a weight nobody knows whether it is ready.",
    ("feed", False): (
        "Old and heavy enough, but it has not eaten that much on so many days running. Keep on with its "
        "milk, and never more of it. Give fresh lamb feed twice a day, with water always in reach, and "
        "measure each day."
    ),
    ("feed", None): (
        "Measure what it eats: weigh the feed in the trough, and again a day later. It must be the only one "
        "that eats there."
    ),
}
"""What to do when one sign is lacking: not met (False), or not known (None)."""


def weaning_of(basis: Basis) -> Weaning:
    """Return how a lamb stands to the three signs now, and what to do about the one that is missing."""
    if basis.lamb.weaned:
        return Weaning((), WEANED)
    signs = (_age(basis), _weight(basis), _feed(basis))
    lacking = [sign for sign in signs if not sign.met]
    if not lacking and not _poorly(basis):
        return Weaning(signs, READY)
    if basis.lamb.hours(basis.now.moment) >= basis.number("off-milk-latest", "h"):
        return Weaning(signs, LATE)
    if not lacking:
        return Weaning(signs, NOT_WELL)
    if len(lacking) == 1:
        return Weaning(signs, LACKS[lacking[0].name, lacking[0].met])
    return Weaning(signs, NOT_YET)


def _poorly(basis: Basis) -> bool:
    growth = basis.lamb.growth(basis.guide)
    return bool(basis.lamb.ill) or (growth is not None and growth.each_day <= 0)


def _age(basis: Basis) -> Sign:
    least, days = basis.number("wean-age", "day"), int(basis.lamb.hours(basis.now.moment) / 24)
    return Sign(
        "age",
        days >= least,
        f"Age: {basis.show(days, 'day')}, and {basis.show(least, 'day')} at least is asked.",
    )


def _weight(basis: Basis) -> Sign:
    least, weighed = basis.number("wean-weight"), basis.lamb.weighed
    asked = f"and {basis.show(least, 'kg')} at least is asked."
    growth = basis.lamb.growth(basis.guide)
    if basis.lamb.doubted or (growth and not growth.likely):
        return Sign("weight", None, f"Weight: it can't be right, {asked} Weigh it again.")
    if not weighed or basis.now.moment - weighed[-1][0] > FRESH:
        return Sign("weight", None, f"Weight: not known this week, {asked}")
    kilos = weighed[-1][1]
    return Sign("weight", kilos >= least, f"Weight: {basis.show(kilos, 'kg')}, {asked}")


def _feed(basis: Basis) -> Sign:
    least, days = basis.number("wean-feed"), int(basis.number("wean-feed-days"))
    asked = f"and {basis.show(least, 'kg/day')} on {days} days running is asked."
    recent = [each for each in basis.lamb.eaten if basis.now.moment - each[0] <= FRESH]
    if not recent:
        return Sign("feed", None, f"Dry feed: not measured this week, {asked}")
    told = basis.show(recent[-1][1], "kg/day")
    return Sign("feed", _running(basis, recent, least) >= days, f"Dry feed: {told} last, {asked}")


def _running(basis: Basis, eaten: Sequence[Weighing], least: float) -> int:
    """Count on how many days running, up to the last one measured, it ate enough."""
    days: dict[date, float] = {}
    for when, kilos in eaten:
        days[when.astimezone(basis.now.zone).date()] = kilos
    count, day = 0, max(days)
    while days.get(day, 0.0) >= least:
        count, day = count + 1, day - timedelta(days=1)
    return count
