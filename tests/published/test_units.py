"""Units against the `pint` library, thresholds in both units, and what is typed and shown back.

`pint` is an independent library of physical units. The factors are those of NIST Handbook 44, appendix C,
and of the international yard and pound agreement, 1959.
"""

from __future__ import annotations

import re
from itertools import permutations

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.published.walks import shipped
from triage.typed import Measured, Refused, read_measure
from triage.units import UNITS, Quantity, System, bottle_mark, convert, show

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()

PINT = {
    "degC": "degree_Celsius",
    "degF": "degree_Fahrenheit",
    "kg": "kilogram",
    "g": "gram",
    "lb": "pound",
    "oz": "ounce",
    "ml": "milliliter",
    "l": "liter",
    "floz": "fluid_ounce",
    "qt": "quart",
    "s": "second",
    "min": "minute",
    "h": "hour",
    "day": "day",
    "week": "week",
    "cm": "centimeter",
    "mm": "millimeter",
    "in": "inch",
}
"""Our names and pint's. Its `ounce` is a mass, its `fluid_ounce` and `quart` are the US liquid ones."""

SINGLE = {"%", "ml/kg", "ml/kg/day", "kg/day", "W", "count", "MJ", "MJ/kg", "MJ/kg/day", "W/kg"}
"""Units that are alone in their dimension, so that nothing is converted."""

PAIRS = [
    (one, other) for one, other in permutations(UNITS, 2) if UNITS[one].dimension == UNITS[other].dimension
]
VALUES = (0.0, 0.01, 0.5, 1.0, 2.205, 9.25, 16.0, 37.0, 98.6, 104.0, 473.0, 1000.0, 86_400.0, 2_500_000.0)

TEMPERATURE = (25.0, 43.0)
WEIGHT = (0.8, 60.0)


def test_every_unit_is_compared() -> None:
    """Each unit is either in the table for pint or alone in its dimension."""
    assert set(UNITS) == set(PINT) | SINGLE
    paired = {name for pair in PAIRS for name in pair}
    assert not paired & SINGLE
    assert paired == set(PINT)


@pytest.mark.parametrize(("unit", "to"), PAIRS)
def test_conversion_agrees_with_pint(unit: str, to: str) -> None:
    """Each conversion between two units of a dimension is pint's, to the four decimals that are kept."""
    # pint (H Grecco and others), the version installed for the tests.
    for value in VALUES:
        theirs = REGISTRY.Quantity(value, PINT[unit]).to(PINT[to]).magnitude
        assert convert(value, unit, to) == pytest.approx(theirs, rel=1e-9, abs=0.51e-4), value
        assert Quantity(value, unit).to(to).value == convert(value, unit, to)


@pytest.mark.parametrize(("unit", "to"), [pair for pair in PAIRS if "degF" not in pair])
def test_factors_agree_with_pint(unit: str, to: str) -> None:
    """The bare factors are pint's to eleven digits, so that rounding hides nothing."""
    theirs = REGISTRY.Quantity(1.0, PINT[unit]).to(PINT[to]).magnitude
    assert UNITS[unit].factor / UNITS[to].factor == pytest.approx(theirs, rel=1e-11)


@pytest.mark.parametrize("unit", sorted(UNITS))
def test_other_dimensions_are_refused(unit: str) -> None:
    """A quantity is never turned into one of another kind, as pint refuses it too."""
    for other in UNITS:
        if UNITS[other].dimension != UNITS[unit].dimension:
            with pytest.raises(ValueError, match=re.escape(other)):
                convert(1.0, unit, other)
            if unit in PINT and other in PINT:
                theirs = REGISTRY.Quantity(1.0, PINT[unit])
                with pytest.raises(pint.DimensionalityError):
                    theirs.to(PINT[other])


@pytest.mark.parametrize(
    ("celsius", "fahrenheit"),
    [
        (35.0, 95.0),
        (37.0, 98.6),
        (38.0, 100.4),
        (39.0, 102.2),
        (40.0, 104.0),
        (40.5, 104.9),
        (41.0, 105.8),
        (-40.0, -40.0),
    ],
)
def test_thresholds_are_the_same_in_both_units(celsius: float, fahrenheit: float) -> None:
    """The temperatures that decide are exact in both units, so no lamb falls between two scales."""
    # Arithmetic: F = C x 9 / 5 + 32.
    assert convert(fahrenheit, "degF", "degC") == celsius
    assert convert(celsius, "degC", "degF") == fahrenheit
    assert show(celsius, "degC", "us") == f"{fahrenheit:g} °F"
    assert show(celsius, "degC", "metric") == f"{celsius:g} °C"


@pytest.mark.parametrize(
    ("name", "metric", "us"),
    [
        ("severe-chill", "37 °C", "98.6 °F"),
        ("normal-low", "39 °C", "102.2 °F"),
        ("normal-high", "40 °C", "104 °F"),
        ("fever-today", "40.5 °C", "104.9 °F"),
    ],
)
def test_shipped_thresholds_are_shown_in_both_units(name: str, metric: str, us: str) -> None:
    """The guide's own lines read 37, 39, 40 and 40.5 degrees, or 98.6, 102.2, 104 and 104.9."""
    # Eales and others, Vet Rec 1984; a vet practice handout, Treating hypothermia in lambs.
    line = shipped().numbers[name]
    assert show(line.value, line.unit, "metric") == metric
    assert show(line.value, line.unit, "us") == us


@pytest.mark.parametrize(
    ("typed", "unit", "plausible", "system", "value", "shown"),
    [
        ("102.5F", "degC", TEMPERATURE, "metric", 39.1667, "39.2 °C"),
        ("102.5F", "degC", TEMPERATURE, "us", 39.1667, "102.5 °F"),
        ("102.5 °f", "degC", TEMPERATURE, "us", 39.1667, "102.5 °F"),
        ("102.5", "degC", TEMPERATURE, "us", 39.1667, "102.5 °F"),
        ("98.6", "degC", TEMPERATURE, "us", 37.0, "98.6 °F"),
        ("39,2", "degC", TEMPERATURE, "metric", 39.2, "39.2 °C"),
        ("39.2C", "degC", TEMPERATURE, "us", 39.2, "102.6 °F"),
        ("9 lb 4 oz", "kg", WEIGHT, "us", 4.1957, "9 lb 4 oz"),
        ("9lb4oz", "kg", WEIGHT, "metric", 4.1957, "4.2 kg"),
        ("10 lb", "kg", WEIGHT, "us", 4.5359, "10 lb"),
        ("4,2 kg", "kg", WEIGHT, "metric", 4.2, "4.2 kg"),
        ("4200 g", "kg", WEIGHT, "metric", 4.2, "4.2 kg"),
        ("6 fl oz", "ml", (0.0, 5000.0), "us", 177.4412, "6 oz"),
        ("3 days", "h", (0.0, 4320.0), "metric", 72.0, "3 days"),
    ],
)
def test_typed_quantities(
    typed: str, unit: str, plausible: tuple[float, float], system: System, value: float, shown: str
) -> None:
    """What is typed is understood to a ten-thousandth, and shown back as it was meant."""
    # 102.5 F is 39.1667 C, 9 lb 4 oz is 4.1957 kg and 6 US fluid ounces are 177.4412 ml: NIST Handbook 44.
    read = read_measure(typed, unit, plausible, system)
    assert isinstance(read, Measured)
    assert read.value == pytest.approx(value, abs=1.01e-4)
    assert show(read.value, unit, system) == shown


@settings(deadline=None)
@given(st.integers(770, 1094))
def test_fahrenheit_tenths_come_back(tenths: int) -> None:
    """Each tenth of a degree Fahrenheit that a thermometer can show is shown back as it was typed."""
    # Arithmetic; 77 to 109.4 F are 25 to 43 C.
    typed = f"{tenths // 10}.{tenths % 10}"
    read = read_measure(f"{typed}F", "degC", TEMPERATURE, "us")
    assert isinstance(read, Measured)
    assert show(read.value, "degC", "us") == f"{tenths / 10:g} °F"


@settings(deadline=None)
@given(st.integers(2, 131), st.integers(0, 15))
def test_pounds_and_ounces_come_back(pounds: int, ounces: int) -> None:
    """Each weight in pounds and ounces is shown back as it was typed."""
    # International yard and pound agreement, 1959: sixteen ounces to a pound.
    read = read_measure(f"{pounds} lb {ounces} oz", "kg", WEIGHT, "us")
    assert isinstance(read, Measured)
    assert show(read.value, "kg", "us") == (f"{pounds} lb {ounces} oz" if ounces else f"{pounds} lb")


@settings(deadline=None)
@given(st.integers(250, 430), st.sampled_from([".", ","]))
def test_celsius_tenths_come_back(tenths: int, point: str) -> None:
    """Each tenth of a degree Celsius is understood with a point and with a comma."""
    read = read_measure(f"{tenths // 10}{point}{tenths % 10}", "degC", TEMPERATURE, "metric")
    assert isinstance(read, Measured)
    assert read.value == pytest.approx(tenths / 10)


@pytest.mark.parametrize("typed", ["9 lb 40 C", "39 kg", "102.5 oz", "1 floz"])
def test_another_kind_of_quantity_is_refused(typed: str) -> None:
    """A weight or a volume typed for a temperature is refused and never converted."""
    assert isinstance(read_measure(typed, "degC", TEMPERATURE, "us"), Refused)


@settings(deadline=None)
@given(st.floats(5, 5000), st.sampled_from(["metric", "us"]))
def test_bottle_mark_never_rises(millilitres: float, system: System) -> None:
    """Rounding to a bottle's marks never adds, and never takes more than one mark away."""
    # Bottles are marked by 10 ml, or finer below 100; in US units by a quarter ounce, 7.4 ml: common practice,
    # no source.
    mark = bottle_mark(millilitres, system)
    assert mark <= millilitres + 0.001
    assert mark > millilitres - 10.001
