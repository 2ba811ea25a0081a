"""Invented numbers for the sums, so that what is held here does not move with the guide's own."""

from __future__ import annotations

from triage.amounts import AMOUNTS, Sum
from triage.facts import Facts, Value
from triage.units import System

NUMBERS: dict[str, float] = {
    "birth-single": 4.0,
    "birth-twin": 3.0,
    "birth-triplet": 2.0,
    "guess-growth": 0.1,
    "first-milk-rate": 50.0,
    "first-milk-day-rate": 200.0,
    "first-milk-cold-extra": 20.0,
    "first-milk-feeds": 4.0,
    "first-milk-fading": 12.0,
    "first-milk-poor": 24.0,
    "milk-day-rate": 180.0,
    "feed-ceiling": 50.0,
    "feed-most": 450.0,
    "recovery-feed": 60.0,
    "recovery-rate": 15.0,
    "week-one": 7.0,
    "week-three": 21.0,
    "week-five": 35.0,
    "feeds-first-week": 6.0,
    "feeds-to-three-weeks": 5.0,
    "feeds-to-five-weeks": 4.0,
    "feeds-later": 3.0,
    "powder-volume": 0.8,
    "electrolyte-rate": 50.0,
    "electrolyte-most": 250.0,
    "upkeep-rate": 53.0,
    "loss-rate": 40.0,
    "dryness-light": 5.0,
    "dryness-marked": 8.0,
    "dryness-severe": 10.0,
    "tent-quick": 2.0,
    "tent-stays": 6.0,
    "glucose-rate": 10.0,
    "glucose-strength": 20.0,
    "glucose-stock": 40.0,
}
"""Every number differs from its neighbours, so that one taken for another shows."""

LB = 0.45359237
"""Kilograms in a pound."""
OZ = 29.5735295625
"""Millilitres in a US fluid ounce."""


def made(known: dict[str, Value], **numbers: float) -> Facts:
    """Return what is known of a lamb with the invented numbers, some of them replaced."""
    named = {name.replace("_", "-"): value for name, value in numbers.items()}
    assert named.keys() <= NUMBERS.keys()
    return Facts({**NUMBERS, **named}, known)


def summed(amount: str, known: dict[str, Value], system: System = "metric", **numbers: float) -> Sum:
    """Return a sum by name over the invented numbers."""
    return AMOUNTS[amount].work_out(made(known, **numbers), system)
