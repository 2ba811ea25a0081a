"""Energy: what a lamb gets in a day against what it needs to live and to grow."""

from __future__ import annotations

from dataclasses import dataclass

from triage.guide.model import Guide
from triage.units import System, show

MJ_PER_WATT_DAY = 0.0864
"""One watt for a day, in MJ: 86,400 seconds (exact)."""

BARELY = 0.25
"""Below this share of the least growth that is expected, a plan is said to do no more than keep it alive."""


MORE = "Ask the vet about more feeds, and never larger ones."

MEASURE = "To grow it needs dry feed by now: measure what it eats in a day, and write it down."


@dataclass(frozen=True)
class Fed:
    """What a lamb of a weight (kg) gets in a day: milk (ml), powder in it (%), and dry feed (kg)."""

    kg: float
    milk: float
    share: float
    eaten: float = 0.0


@dataclass(frozen=True)
class Energy:
    """Energy of a day in MJ: given, needed to live where it is, and what growth (kg a day) is left for."""

    given: float
    upkeep: float
    gain: float
    expected: float

    @property
    def only_alive(self) -> bool:
        """Whether it does no more than keep the lamb alive."""
        return self.gain < BARELY * self.expected

    def line(self, system: System, milk_alone: bool = False) -> str:
        """Return what it comes to in a sentence or two, or that its dry feed has to be known for it."""
        given, upkeep = show(self.given, "MJ", system), show(self.upkeep, "MJ", system)
        balance = f"It gets {given} a day, and {upkeep} of it is used to stay alive"
        if milk_alone and self.gain < self.expected:
            return f"Its milk gives {given} a day, and {upkeep} is used to stay alive. {MEASURE}"
        if self.gain <= 0:
            return (
                f"It gets {given} a day and needs {upkeep} to stay alive. It will lose weight on this. {MORE}"
            )
        if self.only_alive:
            return f"{balance}. This only keeps it alive: it can hardly grow on it. {MORE}"
        gain = f"{balance}. It can gain about {show(self.gain, 'kg/day', system)} on this."
        if self.gain >= self.expected:
            return gain
        least = show(self.expected, "kg/day", system)
        return f"{gain} {least} is the least expected over all its weeks: dry feed brings the rest later."


def energy_of(guide: Guide, fed: Fed, wet_wind: bool = False) -> Energy:
    """Return the energy of a day, also for a lamb that is out in cold wet wind all day long.

    Needs to live and to grow: Danso 2016. Heat lost when wet and in wind: McCutcheon 1983, added to the
    upkeep as it stands, since a lamb out in such weather is below the warmth at which it need not burn more.
    """
    numbers = guide.values()
    given = fed.milk / 1000 * fed.share / 100 * numbers["energy-powder"] + fed.eaten * numbers["energy-creep"]
    lost = numbers["wet-heat"] + numbers["wind-heat"] if wet_wind else 0.0
    upkeep = fed.kg * (numbers["energy-upkeep"] + lost * MJ_PER_WATT_DAY)
    return Energy(given, upkeep, (given - upkeep) / numbers["energy-gain"], numbers["gain-expected"])
