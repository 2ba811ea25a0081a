"""A sum worked out for a few invented lambs, so that a reader sees what it comes to."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from triage.amounts import AMOUNTS, Amount
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Finding, Guide
from triage.units import KG_PER_LB, ML_PER_FLOZ, System, show

FEW = (0, 5, 3, 2, 2)
"""Values of each measurement, by how many findings a sum needs: nobody reads a long table here."""

USUAL: dict[str, tuple[float, ...]] = {
    "weight": (4.0, 2.5, 6.0, 3.0, 10.0),
    "age": (48.0, 240.0, 600.0, 6.0, 12.0),
    "batch": (1000.0, 500.0, 2000.0),
    "bag-powder": (200.0, 150.0),
    "bag-water": (1000.0,),
}
"""Lambs that one meets, the most usual first: kg, hours, ml and grams."""

USUAL_US: dict[str, tuple[float, ...]] = {
    "weight": tuple(KG_PER_LB * pounds for pounds in (9, 5, 13, 7, 22)),
    "batch": tuple(ML_PER_FLOZ * ounces for ounces in (32, 16, 64)),
}
"""The same, in round figures of the other unit system."""


def sample_lines(guide: Guide, name: str, system: System) -> tuple[str, ...]:
    """Return what a sum comes to for a few lambs, a line for each, the smallest first."""
    amount = AMOUNTS[name]
    each = [_values(guide.findings[need], system, len(amount.needs)) for need in amount.needs]
    return tuple(_lines(guide, amount, each, system))


def _lines(guide: Guide, amount: Amount, each: list[tuple[Value, ...]], system: System) -> Iterator[str]:
    for values in product(*(sorted(some, key=_rank) for some in each)):
        known = dict(zip(amount.needs, values, strict=True))
        result = amount.work_out(Facts(guide.values(), known), system)
        said = ", ".join(_said(guide.findings[need], value, system) for need, value in known.items())
        yield f"{said}: {result.words(system)}" if said else result.words(system)


def working_lines(guide: Guide, name: str, system: System) -> tuple[str, ...]:
    """Return how a sum is worked out for the most usual lamb, line by line."""
    amount = AMOUNTS[name]
    known = {need: _values(guide.findings[need], system, 1)[0] for need in amount.needs}  # the most usual
    result = amount.work_out(Facts(guide.values(), known), system)
    return (*result.working, *((result.guessed,) if result.guessed else ()))


def _values(finding: Finding, system: System, needs: int) -> tuple[Value, ...]:
    if finding.choices:
        return tuple(finding.choices)
    low, high = finding.plausible
    usual = {**USUAL, **(USUAL_US if system == "us" else {})}.get(finding.name, ((low + high) / 2,))
    fitting = tuple(value for value in usual if low <= value <= high) or (low,)
    return fitting[: FEW[min(needs, len(FEW) - 1)]]


def _rank(value: Value) -> float:
    return value if isinstance(value, float) else 0.0


def _said(finding: Finding, value: Value, system: System) -> str:
    if isinstance(value, float):
        old = " old" if finding.name == "age" else ""
        return f"{show(value, finding.measure, system)}{old}"
    return finding.choices[value] if value is not UNSURE and isinstance(value, str) else "not sure"
