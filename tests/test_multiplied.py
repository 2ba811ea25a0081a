"""Quantities multiplied, against the `pint` library, which shares nothing with it."""

from __future__ import annotations

import pint
import pytest

from triage.multiplied import multiplied
from triage.units import Quantity

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
PINT = {"count": "dimensionless"}

PRODUCTS = [
    (((200, "ml/kg"), (5, "kg")), "ml"),
    (((50, "ml/kg"), (11, "lb")), "ml"),
    (((180, "ml/kg/day"), (5, "kg"), (7, "day")), "ml"),
    (((180, "ml/kg/day"), (5, "kg"), (1, "week")), "ml"),
    (((0.25, "kg/day"), (48, "h")), "kg"),
    (((250, "ml"), (2, "count")), "ml"),
    (((13, "kg"),), "kg"),
    (((15, "lb"),), "kg"),
    (((1, "qt"), (3, "count")), "ml"),
    (((4, "count"), (2, "count")), "count"),
]


@pytest.mark.parametrize(("parts", "unit"), PRODUCTS)
def test_a_product_is_what_pint_makes_of_it(parts: tuple[tuple[float, str], ...], unit: str) -> None:
    """Each product is in the unit that stands on a shelf, and as large as pint has it."""
    came = multiplied(Quantity(value, name) for value, name in parts)
    known = REGISTRY.Quantity(1.0, "dimensionless")
    for value, name in parts:
        known = known * REGISTRY.Quantity(value, REGISTRY.Unit(PINT.get(name, name)))

    assert came is not None
    assert came.unit == unit
    assert came.value == pytest.approx(known.to(PINT.get(unit, unit)).magnitude, rel=1e-5)


@pytest.mark.parametrize(
    "parts",
    [((37, "degC"),), ((5, "kg"), (5, "kg")), ((200, "ml/kg"),), ((3, "day"),), ((20, "%"), (5, "kg")), ((180, "ml/kg/day"), (5, "kg"))],
)  # fmt: skip
def test_what_is_no_amount_is_none(parts: tuple[tuple[float, str], ...]) -> None:
    """What is neither a weight, a volume nor a count can't stand on a shelf."""
    assert multiplied(Quantity(value, name) for value, name in parts) is None
