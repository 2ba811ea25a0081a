"""What the lamb itself weighs and how old it is, when they must be worked out."""

from __future__ import annotations

from triage.amounts.sums import Amount, Figure, Sum
from triage.amounts.weight import WEIGHT_NUMBERS, weight_line, weight_of
from triage.facts import UNSURE, Facts
from triage.units import System, show


def weight_guess(facts: Facts, system: System) -> Sum:
    """A low guess of the weight from how many were born together, and the age."""
    unweighed = Facts(facts.numbers, {**facts.known, "weight": UNSURE})
    heavy = weight_of(unweighed, system)
    working = (
        weight_line(heavy, system),
        "A small lamb of its kind at birth,",
        f"and {show(facts.number('guess-growth'), 'kg/day', system)} since",
    )
    return Sum((Figure(heavy.kg, "kg"),), working, heavy.guessed)


def lamb_age(facts: Facts, system: System) -> Sum:
    """The age, from the time of birth or as told."""
    hours = facts.measured("age")
    if hours is None:
        return Sum((Figure(0, "h"),), ("Age is not known",), "Age is not known.")
    return Sum((Figure(round(hours, 2), "h", "old"),), ("Counted in real hours, whatever the clocks did",))


AMOUNTS = (
    Amount(
        "weight-guess",
        "Weight guessed from birth type",
        ("birth-type",),
        WEIGHT_NUMBERS,
        weight_guess,
        ("age",),
    ),
    Amount("lamb-age", "Age from the time of birth", ("age",), (), lamb_age),
)
