"""Units: conversion, and the words a quantity is shown in.

Factors are exact by definition: the pound is 0.45359237 kg and the inch 2.54 cm
(international yard and pound agreement, 1959); the US gallon is 231 cubic inches
(NIST Handbook 44, appendix C), so its 128th part, the fluid ounce, is 29.5735295625 ml.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

System = Literal["metric", "us"]

ML_PER_FLOZ = 29.5735295625
KG_PER_LB = 0.45359237
ENOUGH_DIGITS = 4
"""Decimals kept after a conversion: finer than any thermometer, coarse enough for 98.6 F to be 37 C."""


@dataclass(frozen=True)
class Unit:
    """A unit as `base = value * factor + offset` within its dimension."""

    dimension: str
    factor: float
    offset: float = 0.0


UNITS: dict[str, Unit] = {
    "degC": Unit("temperature", 1.0),
    "degF": Unit("temperature", 5 / 9, -160 / 9),
    "kg": Unit("mass", 1.0),
    "g": Unit("mass", 0.001),
    "lb": Unit("mass", KG_PER_LB),
    "oz": Unit("mass", KG_PER_LB / 16),
    "ml": Unit("volume", 1.0),
    "l": Unit("volume", 1000.0),
    "floz": Unit("volume", ML_PER_FLOZ),
    "qt": Unit("volume", ML_PER_FLOZ * 32),
    "s": Unit("time", 1 / 3600),
    "min": Unit("time", 1 / 60),
    "h": Unit("time", 1.0),
    "day": Unit("time", 24.0),
    "week": Unit("time", 168.0),
    "cm": Unit("length", 1.0),
    "mm": Unit("length", 0.1),
    "in": Unit("length", 2.54),
    "%": Unit("share", 1.0),
    "ml/kg": Unit("dose", 1.0),
    "ml/kg/day": Unit("dose a day", 1.0),
    "kg/day": Unit("gain", 1.0),
    "W": Unit("power", 1.0),
    "MJ": Unit("energy", 1.0),
    "MJ/kg": Unit("energy in feed", 1.0),
    "MJ/kg/day": Unit("energy a day", 1.0),
    "W/kg": Unit("heat", 1.0),
    "count": Unit("count", 1.0),
}


@dataclass(frozen=True)
class Quantity:
    """A value with its unit."""

    value: float
    unit: str

    def to(self, unit: str) -> Quantity:
        """Return the same quantity in another unit; ValueError when the dimensions differ."""
        return Quantity(convert(self.value, self.unit, unit), unit)


def convert(value: float, unit: str, to: str) -> float:
    """Convert a value between units of one dimension; ValueError when they differ."""
    here, there = UNITS[unit], UNITS[to]
    if here.dimension != there.dimension:
        raise ValueError(f"{unit} is a {here.dimension}, {to} is a {there.dimension}")
    if unit == to:
        return value
    base = value * here.factor + here.offset
    return round((base - there.offset) / there.factor, ENOUGH_DIGITS)


def same_dimension(unit: str, other: str) -> bool:
    """Whether two units measure the same kind of thing."""
    return UNITS[unit].dimension == UNITS[other].dimension


def show(value: float, unit: str, system: System = "metric") -> str:
    """Return a quantity in words for the reader's unit system, as `37 °C` or `9 lb 4 oz`."""
    if system == "us" and unit in _US:
        return _US[unit](value)
    if unit in _METRIC:
        return _METRIC[unit](value)
    if unit == "count":
        return tidy(value, 1)
    return f"{tidy(value, 2)} {unit}"


def tidy(value: float, digits: int) -> str:
    """Return a number with at most this many decimals and no trailing zeros."""
    text = f"{value:.{digits}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def down_to(value: float, step: float) -> float:
    """Round down to a multiple of step, forgiving the last bits of a float."""
    return math.floor(value / step + 1e-6) * step


def bottle_mark(ml: float, system: System) -> float:
    """Return the volume in ml rounded down to what a bottle shows; never up, so a ceiling holds.

    Marks: 5 ml under 100 ml and 10 ml above it, or a quarter of a fluid ounce.
    """
    if system == "us":
        return down_to(ml / ML_PER_FLOZ, 0.25) * ML_PER_FLOZ
    return down_to(ml, 5 if ml < 100 else 10)


def _plural(value: float, word: str, digits: int = 1) -> str:
    text = tidy(value, digits)
    return f"{text} {word}" if text == "1" else f"{text} {word}s"


def _hours(value: float) -> str:
    if value >= 48:
        return _plural(value / 24, "day")
    if 0 < value < 1:
        return _plural(value * 60, "minute", 0)
    return _plural(value, "hour")


def _pounds(kg: float) -> str:
    ounces = round(kg / KG_PER_LB * 16)
    pounds, rest = divmod(ounces, 16)
    if not pounds:
        return f"{rest} oz"
    return f"{pounds} lb {rest} oz" if rest else f"{pounds} lb"


def _ounces(value: float) -> str:
    """Return fluid ounces: two decimals for small volumes and quarter marks, else one."""
    on_a_mark = abs(value * 4 - round(value * 4)) < 1e-6
    return tidy(value, 2 if value < 10 or on_a_mark else 1)


def _per_pound(ml_per_kg: float) -> str:
    return f"{tidy(ml_per_kg * KG_PER_LB / ML_PER_FLOZ, 2)} oz for each lb"


_METRIC: dict[str, Callable[[float], str]] = {
    "degC": lambda v: f"{tidy(v, 1)} °C",
    "kg": lambda v: f"{tidy(v, 2)} kg",
    "g": lambda v: f"{tidy(v, 0)} g",
    "ml": lambda v: f"{tidy(v, 0)} ml" if v < 5000 else f"{tidy(v / 1000, 2)} litres",
    "h": _hours,
    "min": lambda v: _plural(v, "minute"),
    "day": lambda v: _plural(v, "day"),
    "s": lambda v: _plural(v, "second"),
    "%": lambda v: f"{tidy(v, 1)}%",
    "W": lambda v: f"{tidy(v, 0)} watts",
    "MJ": lambda v: f"{tidy(v, 1)} MJ",
    "MJ/kg": lambda v: f"{tidy(v, 1)} MJ in each kg",
    "MJ/kg/day": lambda v: f"{tidy(v, 2)} MJ for each kg a day",
    "W/kg": lambda v: f"{tidy(v, 1)} watts for each kg",
    "ml/kg": lambda v: f"{tidy(v, 1)} ml for each kg",
    "ml/kg/day": lambda v: f"{tidy(v, 1)} ml for each kg a day",
    "kg/day": lambda v: f"{tidy(v * 1000, 0)} g a day",
}

_US: dict[str, Callable[[float], str]] = {
    "degC": lambda v: f"{tidy(convert(v, 'degC', 'degF'), 1)} °F",
    "kg": _pounds,
    "g": lambda v: f"{tidy(convert(v, 'g', 'oz'), 1)} oz by weight",
    "ml": lambda v: f"{_ounces(v / ML_PER_FLOZ)} oz",
    "cm": lambda v: f"{tidy(convert(v, 'cm', 'in'), 0)} in",
    "mm": lambda v: f"{tidy(convert(v, 'mm', 'in'), 1)} in",
    "ml/kg": _per_pound,
    "ml/kg/day": lambda v: f"{_per_pound(v)} a day",
    "kg/day": lambda v: f"{tidy(convert(v, 'kg', 'oz'), 1)} oz by weight a day",
}
