"""What tired people type for a quantity, and what is made of it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.typed import Measured, Refused, read_measure
from triage.units import System

TEMPERATURE = (25.0, 43.0)
WEIGHT = (0.8, 60.0)


@pytest.mark.parametrize(
    ("text", "system", "value"),
    [
        ("39.2", "metric", 39.2),
        ("39,2", "metric", 39.2),
        (" 39.2 C ", "metric", 39.2),
        ("39.2°C", "us", 39.2),
        ("102.5F", "metric", 39.1667),
        ("98.6f", "metric", 37.0),
        ("102.5", "us", 39.1667),
    ],
)
def test_temperatures_are_understood(text: str, system: System, value: float) -> None:
    """Point or comma, either unit, with or without it written."""
    read = read_measure(text, "degC", TEMPERATURE, system)

    assert isinstance(read, Measured)
    assert read.value == value


def test_a_bare_number_is_told_back_with_its_unit() -> None:
    """A number that could have been another unit is said back in the unit it was taken in."""
    assert read_measure("8", "kg", WEIGHT) == Measured(8.0, "Taken as 8 kg.")
    assert read_measure("8", "kg", WEIGHT, "us") == Measured(3.6287, "Taken as 8 lb.")


def test_an_age_needs_its_unit() -> None:
    """A bare 3 for a lamb of three days would be read as three hours, so it is asked back."""
    assert read_measure("3", "h", (0, 4320)) == Refused("Hours or days? Type 3 h or 3 days.")


def test_102_is_taken_as_fahrenheit_and_said_so() -> None:
    """102 can only be Fahrenheit; it is taken so, and the person is told."""
    read = read_measure("102", "degC", TEMPERATURE)

    assert read == Measured(38.8889, "Taken as 102 °F, which is 38.9 °C.", other_system=True)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("3.9", "3.9 can't be right: it must be from 25 °C to 43 °C. Did you mean 39?"),
        ("392", "392 can't be right: it must be from 25 °C to 43 °C. Did you mean 39.2?"),
        ("warm", "'warm' is not a number here. Type it like 39.2."),
        ("", "Nothing was typed. Type a number, like 39.2."),
        ("   ", "Nothing was typed. Type a number, like 39.2."),
        ("4 kg", "That is a mass. Here it takes a temperature, like 39.2."),
        ("39 C 2 C", "Put the larger unit first, like 39.2."),
        ("38 C 102 F", "That is two temperatures. Type one, like 39.2."),
        ("nan", "'nan' is not a number here. Type it like 39.2."),
        ("1e2", "'1e2' is not a number here. Type it like 39.2."),
        ("-39", "'-39' is not a number here. Type it like 39.2."),
        ("٣٩", "'٣٩' is not a number here. Type it like 39.2."),
        ("9" * 500, "That is too long for a number. Type it like 39.2."),
    ],
)
def test_what_is_no_temperature_is_refused_kindly(text: str, said: str) -> None:
    """Each refusal is one sentence that says what to type instead."""
    assert read_measure(text, "degC", TEMPERATURE) == Refused(said)


@pytest.mark.parametrize(
    ("text", "system", "value"),
    [
        ("4.2kg", "us", 4.2),
        ("9 lb 4 oz", "metric", 4.1957),
        ("9lb4oz", "metric", 4.1957),
        ("9 lbs", "metric", 4.0823),
        ("4200 g", "metric", 4.2),
        ("9.25", "us", 4.1957),
        ("4200", "metric", 4.2),
    ],
)
def test_weights_are_understood(text: str, system: System, value: float) -> None:
    """Kilograms, grams, pounds, and pounds with ounces."""
    read = read_measure(text, "kg", WEIGHT, system)

    assert isinstance(read, Measured)
    assert read.value == pytest.approx(value, abs=1e-4)


def test_ounces_of_a_volume_are_fluid_ounces() -> None:
    """A bottle's ounce is a fluid ounce, a scale's is not."""
    volume = read_measure("6 oz", "ml", (1, 5000))
    mass = read_measure("200 oz", "kg", WEIGHT)

    assert volume == Measured(177.4412)
    assert mass == Measured(5.6699)


@pytest.mark.parametrize("typed", ["", "some", "9" * 500])
def test_a_count_is_asked_for_by_a_whole_example(typed: str) -> None:
    """Nobody counts half a breath, so no half one is shown as how to type it."""
    read = read_measure(typed, "count", (5, 250))

    assert isinstance(read, Refused)
    assert read.why.endswith("like 40.")


@given(st.text(max_size=60))
def test_no_text_at_all_gives_anything_else(text: str) -> None:
    """Whatever is typed comes back as a measurement in range or as a sentence."""
    read = read_measure(text, "degC", TEMPERATURE)

    assert isinstance(read, Refused) or TEMPERATURE[0] <= read.value <= TEMPERATURE[1]
