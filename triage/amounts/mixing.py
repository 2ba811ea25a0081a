"""Powder and water for a batch of milk, at the rate on the bag."""

from __future__ import annotations

from triage.amounts.sums import Amount, Figure, Sum
from triage.facts import Facts
from triage.units import System, show, tidy


def milk_batch(facts: Facts, system: System) -> Sum:
    """Powder (g) and water (ml) for a batch, at the bag's own rate, which is asked and never assumed.

    Bags word it in two ways, which differ: so much powder made up TO a volume, or ADDED to it.
    A gram of powder takes up about a millilitre (200 g and 800 ml make a litre; published example).
    """
    batch = _given(facts, "batch")
    powder, water = _given(facts, "bag-powder"), _given(facts, "bag-water")
    room = facts.number("powder-volume")
    added = facts.chosen("bag-way") != "made-up-to"
    made = water + powder * room if added else water
    grams = batch * powder / made
    pour = batch - grams * room
    way = "added to" if added else "made up to"
    working = (
        f"The bag: {show(powder, 'g', system)} powder {way} {show(water, 'ml', system)}",
        f"That makes {show(made, 'ml', system)} of milk, {tidy(powder / made * 100, 1)}% powder",
        f"For {show(batch, 'ml', system)} of milk: {show(grams, 'g', system)} powder",
        f"and {show(pour, 'ml', system)} water, as powder takes up room too",
    )
    guessed = "" if facts.chosen("bag-way") else "Taken as powder added to the water. Read the bag."
    return Sum((Figure(round(grams), "g", "powder"), Figure(round(pour), "ml", "water")), working, guessed)


def _given(facts: Facts, finding: str) -> float:
    value = facts.measured(finding)
    if value is None:
        raise LookupError(finding)
    return value


AMOUNTS = (
    Amount(
        "milk-batch",
        "Powder and water for a batch of milk",
        ("batch", "bag-powder", "bag-water", "bag-way"),
        ("powder-volume",),
        milk_batch,
    ),
)
