"""The lamb's weight and age, measured or guessed, for the other sums."""

from __future__ import annotations

from dataclasses import dataclass

from triage.facts import Facts
from triage.units import KG_PER_LB, ML_PER_FLOZ, System, show, tidy

SMALLEST = "birth-triplet"
BIRTH_WEIGHTS = {"single": "birth-single", "twin": "birth-twin", "triplet": SMALLEST}
WEIGHT_NUMBERS = (*BIRTH_WEIGHTS.values(), "guess-growth")


@dataclass(frozen=True)
class Heavy:
    """A weight in kg, and the sentence that says how it was guessed (empty when it was weighed)."""

    kg: float
    guessed: str = ""


def weight_of(facts: Facts, system: System) -> Heavy:
    """Return the measured weight, or a low guess from birth type and age, marked as a guess.

    Low on purpose: too small a feed is put right at the next one, too large a feed may not be.
    """
    measured = facts.measured("weight")
    if measured is not None:
        return Heavy(measured)
    born_as = facts.chosen("birth-type")
    at_birth = facts.number(BIRTH_WEIGHTS.get(born_as or "", SMALLEST))
    days = days_old(facts) or 0.0
    kg = round(at_birth + facts.number("guess-growth") * days, 2)
    why = f"a {born_as}" if born_as in BIRTH_WEIGHTS else "a small lamb, as its birth type is not known"
    age = f", {show(round(days, 1), 'day', system)} old" if days >= 1 else ""
    return Heavy(
        kg, f"Weight is a guess: {show(kg, 'kg', system)}, as for {why}{age}. Weigh it when you can."
    )


def days_old(facts: Facts) -> float | None:
    """Return the age in days, or None when it is not known."""
    hours = facts.measured("age")
    return None if hours is None else hours / 24


def weight_line(heavy: Heavy, system: System) -> str:
    """Return the line of working that names the weight."""
    return f"Weight {'guessed as ' if heavy.guessed else ''}{show(heavy.kg, 'kg', system)}"


def times(heavy: Heavy, ml_per_kg: float, ml: float, system: System) -> str:
    """Return the multiplication in the reader's units, as `4.2 kg x 50 ml = 210 ml`."""
    if system == "us":
        pounds, each = heavy.kg / KG_PER_LB, ml_per_kg * KG_PER_LB / ML_PER_FLOZ
        return f"{tidy(pounds, 2)} lb x {tidy(each, 3)} oz = {tidy(ml / ML_PER_FLOZ, 2)} oz"
    return f"{tidy(heavy.kg, 2)} kg x {tidy(ml_per_kg, 1)} ml = {tidy(ml, 1)} ml"
