"""Lambs by which the meaning of a sum is told: what it gives for each, whatever its code looks like."""

from __future__ import annotations

import math
from collections.abc import Iterator
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


def worked(amount: Amount, guide: Guide) -> Iterator[str]:
    """Yield what a sum gives for many lambs in words, which are the same on every machine."""
    names = [name for name in (*amount.needs, *amount.uses) if name in guide.findings]
    numbers = guide.values()
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
