"""Fluids: electrolyte by mouth, the day's whole need, and the glucose dose a vet may ask for."""

from __future__ import annotations

from triage.amounts.sums import Amount, Figure, Sum
from triage.amounts.weight import WEIGHT_NUMBERS, times, weight_line, weight_of
from triage.facts import Facts
from triage.units import System, bottle_mark, down_to, show, tidy


def electrolyte_dose(facts: Facts, system: System) -> Sum:
    """One dose of electrolyte: weight x rate, never above the most a dose may be."""
    heavy = weight_of(facts, system)
    rate, most = facts.number("electrolyte-rate"), facts.number("electrolyte-most")
    exact = heavy.kg * rate
    given = bottle_mark(min(exact, most), system)
    over = (f"The most in one dose: {show(most, 'ml', system)}",) if exact > most else ()
    working = (
        weight_line(heavy, system),
        times(heavy, rate, exact, system),
        *over,
        f"Rounded down to what a bottle shows: {show(given, 'ml', system)}",
    )
    return Sum((Figure(given, "ml"),), working, heavy.guessed)


def fluid_day(facts: Facts, system: System) -> Sum:
    """All fluid for a day, milk included: what is missing, upkeep, and what goes on being lost."""
    heavy = weight_of(facts, system)
    percent, why = _dryness(facts)
    deficit = heavy.kg * percent * 10
    upkeep = heavy.kg * facts.number("upkeep-rate")
    losses = heavy.kg * facts.number("loss-rate")
    total = deficit + upkeep + losses
    working = (
        weight_line(heavy, system),
        f"{why}: {tidy(percent, 1)}% of its weight is missing, {show(deficit, 'ml', system)}",
        f"Upkeep: {show(upkeep, 'ml', system)}",
        f"Still being lost: {show(losses, 'ml', system)}",
        f"Together {show(total, 'ml', system)} in a day, milk included",
    )
    return Sum((Figure(round(total), "ml", "in a day"),), working, heavy.guessed)


def _dryness(facts: Facts) -> tuple[float, str]:
    """Return the share of weight missing, from the worst sign seen: never an average."""
    told = facts.measured("dryness")
    if told is not None:
        return told, "As told"
    share = {level: facts.number(f"dryness-{level}") for level in ("light", "marked", "severe")}
    seen = [(share["light"], "No sign of drying shows, but this much can hide")]
    fold = facts.measured("skin")
    if fold is not None and fold >= facts.number("tent-stays"):
        seen.append((share["severe"], "Skin fold stays up"))
    elif fold is not None and fold >= facts.number("tent-quick"):
        seen.append((share["marked"], "Skin fold is slow"))
    for finding, choices in _SIGNS.items():
        sign = choices.get(facts.chosen(finding) or "")
        if sign:
            seen.append((share[sign[0]], sign[1]))
    return max(seen)


_SIGNS = {
    "dry-signs": {"some": ("marked", "Some sign of drying"), "bad": ("severe", "A bad sign of drying")},
    "eyes": {"sunken": ("marked", "Eyes a little sunken"), "gap": ("severe", "A gap at the eye")},
    "gums": {"tacky": ("marked", "Gums tacky"), "dry": ("severe", "Gums dry")},
}


def glucose_dose(facts: Facts, system: System) -> Sum:
    """Glucose for the belly as strength, rate and total; only for a vet or a vet-taught hand."""
    heavy = weight_of(facts, system)
    rate, strength = facts.number("glucose-rate"), facts.number("glucose-strength")
    total = down_to(heavy.kg * rate, 1)
    stock = facts.number("glucose-stock")
    part = total * strength / stock
    working = (
        weight_line(heavy, system),
        f"{tidy(strength, 1)}% glucose at {tidy(rate, 1)} ml for each kg",
        f"{tidy(heavy.kg, 2)} kg x {tidy(rate, 1)} ml = {tidy(heavy.kg * rate, 1)} ml",
        f"Given as {tidy(total, 0)} ml",
        f"That is {tidy(total * strength / 100, 1)} g of glucose",
        f"From {tidy(stock, 1)}% stock: {tidy(part, 1)} ml, and {tidy(total - part, 1)} ml sterile water",
    )
    what = f"of {tidy(strength, 1)}% glucose ({tidy(rate, 1)} ml for each kg)"
    return Sum((Figure(total, "ml", what),), working, heavy.guessed)


AMOUNTS = (
    Amount(
        "electrolyte-dose",
        "One dose of electrolyte",
        ("weight",),
        ("electrolyte-rate", "electrolyte-most", *WEIGHT_NUMBERS),
        electrolyte_dose,
        ("age", "birth-type"),
    ),
    Amount(
        "fluid-day",
        "All fluid for a day",
        ("weight",),
        (
            "upkeep-rate",
            "loss-rate",
            "dryness-light",
            "dryness-marked",
            "dryness-severe",
            "tent-quick",
            "tent-stays",
            *WEIGHT_NUMBERS,
        ),
        fluid_day,
        ("dryness", "dry-signs", "skin", "eyes", "gums", "age", "birth-type"),
    ),
    Amount(
        "glucose-dose",
        "Glucose dose, for a vet or a vet-taught hand only",
        ("weight",),
        ("glucose-rate", "glucose-strength", "glucose-stock", *WEIGHT_NUMBERS),
        glucose_dose,
        ("age", "birth-type"),
    ),
)
