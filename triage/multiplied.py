"""Named quantities multiplied: 200 ml for each kg, times 5 kg, is a litre."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from triage.units import UNITS, Quantity

_MADE_OF: dict[str, tuple[float, dict[str, int]]] = {
    "mass": (1.0, {"mass": 1}),
    "volume": (1.0, {"volume": 1}),
    "time": (1.0, {"time": 1}),
    "count": (1.0, {}),
    "dose": (1.0, {"volume": 1, "mass": -1}),
    "dose a day": (1 / 24, {"volume": 1, "mass": -1, "time": -1}),
    "gain": (1 / 24, {"mass": 1, "time": -1}),
}
"""What each dimension is made of, and its base unit in kg, ml and hours."""

_WHOLE = {(("mass", 1),): "kg", (("volume", 1),): "ml", (): "count"}
"""What can stand on a shelf: a weight, a volume, or a number of things."""


def multiplied(quantities: Iterable[Quantity]) -> Quantity | None:
    """Return the product as a weight, a volume or a count; None where it is none of these."""
    value, powers = 1.0, Counter[str]()
    for quantity in quantities:
        unit = UNITS[quantity.unit]
        if unit.dimension not in _MADE_OF:
            return None
        factor, made_of = _MADE_OF[unit.dimension]
        value *= quantity.value * unit.factor * factor
        powers.update(made_of)
    whole = _WHOLE.get(tuple(sorted((name, power) for name, power in powers.items() if power)))
    return Quantity(round(value, 6), whole) if whole else None
