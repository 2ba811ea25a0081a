"""The plan of one lamb: everything that is worked out for it, as values that faces and papers only show."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from triage.clock import Now
from triage.guide.model import Guide
from triage.rearing.duties import Task, tasks_of
from triage.rearing.energy import Energy, Fed, energy_of
from triage.rearing.feeding import Milk, milk_at, milk_of
from triage.rearing.growth import Growth
from triage.rearing.reared import Bag, Basis, Reared
from triage.rearing.weaning import Weaning, weaning_of
from triage.units import System, show

UNLIKELY = (
    "The rate that is kept of the bag makes milk far too thick or too thin, so nothing is mixed by it. "
    "Read the bag again: triage setup."
)
DAY = timedelta(days=1)

OVER = 1.25
"""So many times the milk of a day, or of a feed, is too much: a bottle is never read to the drop."""

OVERFED = "That is too much. Feel its belly: tight or dull is the vet's, now."


@dataclass(frozen=True)
class Plan:
    """What is due for one lamb. `milk` begins at birth, `tasks` at the first duty; both hold what is past."""

    lamb: Reared
    made: datetime
    edition: str
    milk: tuple[Milk, ...]
    tasks: tuple[Task, ...]
    growth: Growth | None
    weaning: Weaning
    energy: Energy
    energy_outside: Energy
    """The same for a day out in cold wet wind."""
    milk_least: float
    """Hours for which it has milk at the least."""
    missing: tuple[str, ...]
    """What the plan lacks to be right, each as a sentence that says how to give it."""
    doubtful: str = ""
    """That the last weight can't be right, in a sentence; empty where it can."""

    @property
    def milk_now(self) -> Milk | None:
        """The milk of today, None once the lamb may be weaned."""
        return milk_at(self.milk, self.made)

    @property
    def overfed(self) -> bool:
        """Whether more was written down than a day or a feed has, in the last day."""
        since = self.made - DAY
        fed = [each for each in self.lamb.fed if each[0] > since]
        rows = [row for row in self.milk if row.begins <= self.made and row.ends > since]
        most = max((row.day_ml for row in rows), default=0.0)
        return sum(ml for _, ml in fed) > most * OVER or any(self._too_large(*each) for each in fed)

    def _too_large(self, at: datetime, ml: float) -> bool:
        row = milk_at(self.milk, at)
        return row is not None and ml > row.each_ml * OVER

    @property
    def weaning_near(self) -> bool:
        """Whether the lamb has had milk for as long as it must, so that weaning is to be thought of."""
        return self.lamb.hours(self.made) >= self.milk_least


def plan_of(guide: Guide, lamb: Reared, now: Now, system: System) -> Plan:
    """Return the plan of a lamb as it stands now. LookupError where the guide has no duties to plan by."""
    if not guide.duties:
        raise LookupError("this guide has no raising plan")
    lamb = lamb.until(now.moment).trusting(guide)
    missing = _missing(lamb, guide, system)
    lamb = replace(lamb, bag=trusted(lamb.bag, guide))
    basis = Basis(guide, lamb, now, system)
    milk = milk_of(basis)
    fed = _fed(basis, milk)
    energy = energy_of(guide, fed)
    return Plan(
        lamb,
        now.moment,
        guide.front.edition,
        milk,
        tasks_of(basis),
        _growth(basis, energy),
        weaning_of(basis),
        energy,
        energy_of(guide, fed, wet_wind=True),
        basis.number("milk-least", "h"),
        tuple(missing),
        _doubtful(lamb, system),
    )


def _growth(basis: Basis, energy: Energy) -> Growth | None:
    """Return its growth. While it lives on milk no more is asked than its own milk can build."""
    growth, lamb = basis.lamb.growth(basis.guide), basis.lamb
    if growth is None or lamb.hours(growth.until) > basis.number("week-five", "h"):
        return growth
    return replace(growth, expected=min(growth.expected, max(basis.number("gain-young"), energy.gain)))


def _fed(basis: Basis, milk: tuple[Milk, ...]) -> Fed:
    """Return what the lamb gets today by its plan, with the dry feed that was measured last."""
    lamb, moment = basis.lamb, basis.now.moment
    today = None if lamb.weaned else milk_at(milk, moment)
    kilos = basis.facts(max(moment, lamb.born)).measured("weight") or 0.0
    share = share_of(lamb.bag, basis.guide)
    return Fed(kilos, today.day_ml if today else 0.0, share, lamb.eaten[-1][1] if lamb.eaten else 0.0)


def share_of(bag: Bag | None, guide: Guide) -> float:
    """Return the percentage of powder in mixed milk by the bag's rate, or the weakest that is published."""
    if bag is None:
        return guide.numbers["mix-share"].value
    room = guide.numbers["powder-volume"].value
    made = bag.water + bag.powder * room if bag.way == "added-to" else bag.water
    return bag.powder / made * 100


def trusted(bag: Bag | None, guide: Guide) -> Bag | None:
    """Return a bag that makes milk as thick as some that is published: powder and water are soon swapped."""
    if bag is None or "mix-share" not in guide.numbers:
        return bag
    shares = guide.numbers["mix-share"].published.values()
    least, most = min(low for low, _ in shares), max(high for _, high in shares)
    return bag if bag.water > 0 and least <= share_of(bag, guide) <= most else None


def _doubtful(lamb: Reared, system: System) -> str:
    if not lamb.doubted:
        return ""
    told, before = (show(kilos, "kg", system) for _, kilos in (lamb.doubted, lamb.weighed[-1]))
    return f"After {before} a weight of {told} can't be right, so it does not count. Weigh it again."


def _missing(lamb: Reared, guide: Guide, system: System) -> list[str]:
    lines = []
    if doubtful := _doubtful(lamb, system):
        lines.append(doubtful)
    if lamb.bag and not trusted(lamb.bag, guide):
        lines.append(UNLIKELY)
    if not lamb.weighed:
        lines.append("It has not been weighed: all amounts go by a low guess. Weigh it, and write it down.")
    if lamb.born_guessed:
        lines.append("Its time of birth is a guess, so each date is a guess.")
    if lamb.bag is None:
        lines.append("The rate on the bag of milk powder is not kept: triage setup.")
    if not lamb.law:
        lines.append("Your country's law is not set, so the strictest dates are shown: triage setup.")
    return lines
