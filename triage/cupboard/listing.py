"""The list as values: what there should be, what there is, and what to buy first. Nothing is printed here."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from triage.cupboard.lots import Lot
from triage.cupboard.needs import Needed, needs_of
from triage.cupboard.shelf import Shelf
from triage.guide.fields import FIRST
from triage.guide.items import HowMany, Item
from triage.guide.model import Guide
from triage.multiplied import multiplied

SOON = timedelta(days=60)
"""A label that ends within this is told: about as long as a small flock's lambing and its first weeks."""


@dataclass(frozen=True)
class Entry:
    """One thing: what there should be of it and what there is, in its unit."""

    item: Item
    unit: str
    need: float | None
    """None where nothing is counted: a vet is asked, or any house has it."""
    for_one: float
    """What there should be for a single lamb."""
    lots: tuple[Lot, ...]
    today: date
    needed: Needed

    @property
    def usable(self) -> tuple[Lot, ...]:
        """What may be used today."""
        return tuple(lot for lot in self.lots if lot not in self.gone)

    @property
    def gone(self) -> tuple[Lot, ...]:
        """What is past its date."""
        return tuple(lot for lot in self.lots if lot.until and lot.until.day < self.today)

    @property
    def soon(self) -> tuple[Lot, ...]:
        """What may be used today and is near its date."""
        return tuple(lot for lot in self.usable if lot.until and lot.until.day - self.today <= SOON)

    @property
    def undated(self) -> tuple[Lot, ...]:
        """What has a date on its label that was not written down."""
        return tuple(lot for lot in self.lots if self.item.dated and lot.until is None)

    @property
    def have(self) -> float:
        """How much may be used today."""
        return round(sum(lot.value for lot in self.usable), 4)

    @property
    def short(self) -> float:
        """How much is to be bought."""
        return max(0.0, round((self.need or 0.0) - self.have, 4))

    @property
    def begun(self) -> bool:
        """Whether there is enough to begin with one lamb, though not enough for all."""
        return self.short > 0 and self.have >= self.for_one

    @property
    def when(self) -> str:
        """By when it is to be bought, a step later where one lamb has enough; empty where all is there."""
        if not self.short:
            return ""
        return FIRST[min(FIRST.index(self.item.first) + self.begun, len(FIRST) - 1)]


@dataclass(frozen=True)
class Cupboard:
    """The whole list, in the order in which things are to be bought."""

    lambs: int
    told: bool
    """Whether anybody said how many lambs are expected; else it is counted for one."""
    entries: tuple[Entry, ...]

    def to_buy(self, when: str) -> tuple[Entry, ...]:
        """Return what is to be bought by then: first what there is nothing of."""
        return tuple(
            sorted((each for each in self.entries if each.when == when), key=lambda each: each.have > 0)
        )

    @property
    def enough(self) -> tuple[Entry, ...]:
        """What is counted, and all there."""
        return tuple(each for each in self.entries if each.need is not None and not each.short)

    @property
    def vet(self) -> tuple[Entry, ...]:
        """What a vet is asked about."""
        return tuple(each for each in self.entries if each.item.ask_vet)

    @property
    def at_hand(self) -> tuple[Entry, ...]:
        """What any house has."""
        return tuple(each for each in self.entries if each.item.at_hand)

    @property
    def gone(self) -> tuple[Entry, ...]:
        """Things of which something is past its date."""
        return tuple(each for each in self.entries if each.gone)

    @property
    def soon(self) -> tuple[Entry, ...]:
        """Things of which something is near its date."""
        return tuple(each for each in self.entries if each.soon)

    @property
    def undated(self) -> tuple[Entry, ...]:
        """Things of which a date is not written down."""
        return tuple(each for each in self.entries if each.undated)


def cupboard_of(guide: Guide, shelf: Shelf, today: date, lambs: int | None = None) -> Cupboard:
    """Return what the guidance uses, counted for the lambs, against what is on the shelf."""
    counted = lambs or shelf.lambs
    needed = needs_of(guide)
    entries = tuple(
        Entry(
            item,
            unit_of(guide, item),
            how_much(guide, item.how_many, counted or 1) if item.how_many else None,
            how_much(guide, item.how_many, 1) if item.how_many else 0.0,
            shelf.lots.get(name, ()),
            today,
            needed[name],
        )
        for name, item in guide.cupboard.items()
    )
    return Cupboard(counted or 1, counted is not None, entries)


def units_of(guide: Guide) -> Mapping[str, str]:
    """Return the unit in which each thing is counted."""
    return {name: unit_of(guide, item) for name, item in guide.cupboard.items()}


def unit_of(guide: Guide, item: Item) -> str:
    """Return kg, ml or count."""
    each = _each(guide, item.how_many) if item.how_many else None
    return each[1] if each else "count"


def how_much(guide: Guide, how_many: HowMany, lambs: int) -> float:
    """Return how much there should be of a thing for so many lambs."""
    each = _each(guide, how_many)
    if each:
        return round(each[0] * lambs, 4)
    shared = math.ceil(lambs / how_many.one_for) if how_many.one_for else 0
    return float(max(how_many.least, shared))


def _each(guide: Guide, how_many: HowMany) -> tuple[float, str] | None:
    quantities = [guide.numbers[name].quantity for name in how_many.each_lamb]
    product = multiplied(quantities) if quantities else None
    return (product.value, product.unit) if product else None
