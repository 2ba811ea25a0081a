"""Quantities in words: both unit systems, and rounding that never goes above a ceiling."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.units import ML_PER_FLOZ, System, bottle_mark, convert, down_to, show


@pytest.mark.parametrize(
    ("value", "unit", "metric", "us"),
    [
        (37.0, "degC", "37 °C", "98.6 °F"),
        (40.5, "degC", "40.5 °C", "104.9 °F"),
        (4.2, "kg", "4.2 kg", "9 lb 4 oz"),
        (0.3, "kg", "0.3 kg", "11 oz"),
        (4.535924, "kg", "4.54 kg", "10 lb"),
        (200, "ml", "200 ml", "6.76 oz"),
        (6000, "ml", "6 litres", "202.9 oz"),
        (50, "ml/kg", "50 ml for each kg", "0.77 oz for each lb"),
        (1, "h", "1 hour", "1 hour"),
        (0.5, "h", "30 minutes", "30 minutes"),
        (36, "h", "36 hours", "36 hours"),
        (72, "h", "3 days", "3 days"),
        (20, "min", "20 minutes", "20 minutes"),
        (51, "cm", "51 cm", "20 in"),
        (50, "mm", "50 mm", "2 in"),
        (20, "%", "20%", "20%"),
        (6, "count", "6", "6"),
        (0.15, "kg/day", "150 g a day", "5.3 oz by weight a day"),
    ],
)
def test_quantities_read_as_people_say_them(value: float, unit: str, metric: str, us: str) -> None:
    """A quantity is shown in plain words in either system."""
    assert (show(value, unit, "metric"), show(value, unit, "us")) == (metric, us)


def test_units_of_two_dimensions_do_not_mix() -> None:
    """A temperature is never turned into a weight."""
    with pytest.raises(ValueError, match="degC is a temperature, kg is a mass"):
        convert(37, "degC", "kg")


@given(st.floats(0, 5000, allow_nan=False), st.sampled_from(["metric", "us"]))
def test_a_bottle_mark_is_never_above_the_sum(ml: float, system: System) -> None:
    """Rounding goes down, by less than one mark."""
    mark = bottle_mark(ml, system)

    step = 0.25 * ML_PER_FLOZ if system == "us" else (5 if ml < 100 else 10)
    assert mark <= ml + 1e-4
    assert ml - mark < step


def test_rounding_down_forgives_a_float() -> None:
    """4.2 kg at 50 ml is 210 ml, though the float product is a hair below it."""
    assert down_to(4.2 * 50 - 1e-9, 10) == 210


def test_bottle_marks_are_five_and_ten_millilitres() -> None:
    """Small volumes go by five millilitres, and those of a hundred and more by ten."""
    assert [bottle_mark(ml, "metric") for ml in (97, 99.9, 100, 118)] == [95, 95, 100, 110]
