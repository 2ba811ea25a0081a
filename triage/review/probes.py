"""Lambs by which the meaning of a sum is told: what it gives for each, whatever its code looks like."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from functools import lru_cache
from itertools import islice, product

from triage.amounts import Amount
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Guide

Lambs = tuple[tuple[str, tuple[Value, ...]], ...]
"""By the name of each finding that a sum asks for: the answers that are tried, each with each."""

MOST = 400
"""Lambs for one sum, or a few more."""

STAND_INS: Mapping[str, float] = {
    "ml/kg": 30.0,
    "ml/kg/day": 90.0,
    "ml": 400.0,
    "kg": 3.0,
    "kg/day": 0.1,
    "count": 4.0,
    "%": 12.0,
    "h": 15.0,
    "day": 12.0,
}
"""What a number of each unit is stood in for by: from half of it to twice as much, other in each turn."""

TURNS = 4
"""Times that other numbers stand in: a cap that is never reached in one turn may be in another."""

PROBED: dict[str, tuple[float, ...]] = {
    "age": (2.0, 10.0, 30.0, 24.0 * 10, 24.0 * 28, 24.0 * 60),
    "weight": (1.0, 2.3, 4.0, 6.1, 11.0, 19.0),
}
"""Ages in hours and weights in kg; another measurement is taken at five points of its plausible range."""


def formula(amount: Amount, guide: Guide) -> tuple[str, ...]:
    """Return what a sum's formula gives for many lambs, whatever the guide's numbers are.

    Every number is stood in for by one that hangs on its unit alone. So a formula can hardly change unseen
    behind a number that moved with it, and a number that moved is no other formula.
    """
    if not set(amount.numbers) <= guide.numbers.keys():
        return ()
    units = tuple((name, guide.numbers[name].unit) for name in amount.numbers)
    return _formula(amount, units, _lambs(amount, guide))


@lru_cache(maxsize=64)
def _formula(amount: Amount, units: tuple[tuple[str, str], ...], lambs: Lambs) -> tuple[str, ...]:
    turns = (
        {name: _stand_in(unit, at, turn) for at, (name, unit) in enumerate(units)} for turn in range(TURNS)
    )
    return tuple(given for numbers in turns for given in _gives(amount, numbers, lambs, MOST // TURNS))


def _stand_in(unit: str, at: int, turn: int) -> float:
    return STAND_INS.get(unit, 5.0) * (2 + (at * 3 + turn * 5) % 7) / 4


def worked(amount: Amount, guide: Guide) -> Iterator[str]:
    """Yield what a sum gives for many lambs in words, which are the same on every machine."""
    numbers = guide.values()
    if set(amount.numbers) <= numbers.keys():
        yield from _gives(amount, numbers, _lambs(amount, guide), MOST)


def _gives(amount: Amount, numbers: Mapping[str, float], lambs: Lambs, most: int) -> Iterator[str]:
    names = [name for name, _ in lambs]
    step = max(1, math.prod(len(values) for _, values in lambs) // most)
    # No step of a regular comb: each measurement and each choice is to meet all others.
    step += step > 1 and step % 2 == 0
    for values in islice(product(*(values for _, values in lambs)), 0, None, step):
        facts = Facts(numbers, dict(zip(names, values, strict=True)))
        try:
            yield amount.work_out(facts, "metric").words("metric")
        except LookupError:  # without this measurement there is no sum, and none is ever shown
            yield ""


def _lambs(amount: Amount, guide: Guide) -> Lambs:
    names = (name for name in (*amount.needs, *amount.uses) if name in guide.findings)
    return tuple((name, _values(guide, name)) for name in names)


def _values(guide: Guide, name: str) -> tuple[Value, ...]:
    finding = guide.findings[name]
    if finding.choices:
        return (*finding.choices, UNSURE)
    low, high = finding.plausible
    spread = tuple(low + (high - low) * part / 6 for part in range(1, 6))
    return (*PROBED.get(name, spread), UNSURE)
