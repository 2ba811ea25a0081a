"""Lambs by which the meaning of a sum is told: what it gives for each, whatever its code looks like."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from itertools import islice, product

from triage.amounts import Amount
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Guide

MOST = 400
"""Lambs for one sum, or a few more."""

PROBED: dict[str, tuple[float, ...]] = {
    "age": (2.0, 10.0, 30.0, 24.0 * 10, 24.0 * 28, 24.0 * 60),
    "weight": (1.0, 2.3, 4.0, 6.1, 11.0, 19.0),
}
"""Ages in hours and weights in kg; another measurement is taken at five points of its plausible range."""


def formula(amount: Amount, guide: Guide) -> Iterator[str]:
    """Yield what a sum's formula gives for many lambs, whatever the guide's numbers are.

    Every number is stood in for by one of about its size, so that a formula can't change unseen behind a
    number that moved with it.
    """
    numbers = guide.values()
    known = [name for name in amount.numbers if name in numbers]
    return worked(amount, guide, {name: _stand_in(numbers[name], at) for at, name in enumerate(known)})


def _stand_in(value: float, at: int) -> float:
    """Return a number of the size of a value: the same for all from about a third to three times it."""
    size = 10.0 ** round(math.log10(abs(value))) if value else 1.0
    return size * (1 + at / 8)


def worked(amount: Amount, guide: Guide, numbers: Mapping[str, float] | None = None) -> Iterator[str]:
    """Yield what a sum gives for many lambs in words, which are the same on every machine."""
    names = [name for name in (*amount.needs, *amount.uses) if name in guide.findings]
    numbers = guide.values() if numbers is None else numbers
    if not set(amount.numbers) <= numbers.keys():
        return
    each = [_values(guide, name) for name in names]
    step = max(1, math.prod(map(len, each)) // MOST)
    # No step of a regular comb: each measurement and each choice is to meet all others.
    step += step > 1 and step % 2 == 0
    for values in islice(product(*each), 0, None, step):
        facts = Facts(numbers, dict(zip(names, values, strict=True)))
        try:
            yield amount.work_out(facts, "metric").words("metric")
        except LookupError:  # without this measurement there is no sum, and none is ever shown
            yield ""


def _values(guide: Guide, name: str) -> tuple[Value, ...]:
    finding = guide.findings[name]
    if finding.choices:
        return (*finding.choices, UNSURE)
    low, high = finding.plausible
    spread = tuple(low + (high - low) * part / 6 for part in range(1, 6))
    return (*PROBED.get(name, spread), UNSURE)
