"""Reading a quantity that a tired person typed: `39,2`, `102.5F`, `9 lb 4 oz`, `4.2kg`, `10 h`."""

from __future__ import annotations

import re
from dataclasses import dataclass

from triage.units import UNITS, System, convert, show

LONGEST = 40

_WORDS = {
    "c": "degC", "°c": "degC", "degc": "degC", "celsius": "degC",
    "f": "degF", "°f": "degF", "degf": "degF", "fahrenheit": "degF",
    "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg",
    "g": "g", "gram": "g", "grams": "g",
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb",
    "oz": "oz", "ounce": "oz", "ounces": "oz",
    "ml": "ml", "cc": "ml", "l": "l", "litre": "l", "litres": "l", "liter": "l", "liters": "l",
    "floz": "floz", "qt": "qt", "quart": "qt", "quarts": "qt",
    "s": "s", "sec": "s", "secs": "s", "second": "s", "seconds": "s",
    "min": "min", "mins": "min", "minute": "min", "minutes": "min",
    "h": "h", "hr": "h", "hrs": "h", "hour": "h", "hours": "h",
    "d": "day", "day": "day", "days": "day",
    "w": "week", "wk": "week", "week": "week", "weeks": "week",
    "%": "%", "percent": "%",
}  # fmt: skip

_UNTYPED: dict[str, dict[System, tuple[str, ...]]] = {
    "degC": {"metric": ("degC", "degF"), "us": ("degF", "degC")},
    "kg": {"metric": ("kg", "lb", "g"), "us": ("lb", "kg", "g")},
    "g": {"metric": ("g",), "us": ("oz", "g")},
    "ml": {"metric": ("ml", "floz"), "us": ("floz", "ml")},
}
"""The units a bare number may be in, likeliest first; the first that is possible is taken."""

_PART = re.compile(r"([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)\s*([a-z°%]*)")


@dataclass(frozen=True)
class Measured:
    """A measurement understood: its value in the finding's unit, and what was taken for granted."""

    value: float
    note: str = ""
    other_system: bool = False
    """Whether a bare number could only be of the unit system that the reader does not use."""


@dataclass(frozen=True)
class Refused:
    """What was typed cannot be used, in a sentence for the person who typed it."""

    why: str


def read_measure(
    text: str, unit: str, plausible: tuple[float, float], system: System = "metric"
) -> Measured | Refused:
    """Read a typed quantity into `unit`, or say why it cannot be one.

    A bare number is taken in the reader's own system first, and in the other one when only that
    gives a value inside `plausible`; `note` then says what was understood.
    """
    such_as = example(unit, system)
    cleaned = text.strip().lower()
    if not cleaned:
        return Refused(f"Nothing was typed. Type a number, like {such_as}.")
    if len(cleaned) > LONGEST:
        return Refused(f"That is too long for a number. Type it like {such_as}.")
    parts = _parts(cleaned)
    if parts is None:
        return Refused(f"'{text.strip()}' is not a number here. Type it like {such_as}.")
    if len(parts) == 1 and not parts[0][1]:
        return _bare(parts[0][0], unit, plausible, system)
    return _with_units(parts, unit, plausible, system)


def _parts(text: str) -> list[tuple[float, str]] | None:
    """Split `9 lb 4 oz` into numbers with their unit words; None when anything else is in it."""
    text = text.replace("fl oz", "floz").replace("fl. oz", "floz")
    parts: list[tuple[float, str]] = []
    at = 0
    while at < len(text):
        match = _PART.match(text, at)
        if match is None:
            return None
        word = match[2]
        if word and word not in _WORDS:
            return None
        parts.append((float(match[1].replace(",", ".")), _WORDS.get(word, "")))
        at = match.end()
        while at < len(text) and text[at] in " \t":
            at += 1
    return parts


def _bare(number: float, unit: str, plausible: tuple[float, float], system: System) -> Measured | Refused:
    if unit == "h":
        # "3" for a lamb of three days would be read as three hours, and warmed without glucose.
        return Refused(f"Hours or days? Type {number:g} h or {number:g} days.")
    candidates = _UNTYPED.get(unit, {}).get(system, (unit,))
    for index, candidate in enumerate(candidates):
        value = convert(number, candidate, unit)
        if _inside(value, plausible):
            return Measured(
                value,
                _took(number, candidate, value, unit, system)
                if index
                else _as(candidates, value, unit, system),
                other_system=index > 0,
            )
    return _out_of_range(number, candidates[0], unit, plausible, system)


def _with_units(
    parts: list[tuple[float, str]], unit: str, plausible: tuple[float, float], system: System
) -> Measured | Refused:
    dimension = UNITS[unit].dimension
    total = 0.0
    previous = ""
    for number, written in parts:
        # "oz" after no pound may be a volume: a bottle is marked in fluid ounces.
        named = "floz" if written == "oz" and dimension == "volume" else written
        if not named:
            return Refused(f"One of the numbers has no unit. Type it like {example(unit, system)}.")
        if UNITS[named].dimension != dimension:
            wanted = example(unit, system)
            return Refused(f"That is a {UNITS[named].dimension}. Here it takes a {dimension}, like {wanted}.")
        if previous and UNITS[named].factor >= UNITS[previous].factor:
            return Refused(f"Put the larger unit first, like {example(unit, system)}.")
        if previous and dimension == "temperature":
            return Refused(f"That is two temperatures. Type one, like {example(unit, system)}.")
        total += convert(number, named, unit)
        previous = named
    value = round(total, 4)
    if _inside(value, plausible):
        return Measured(value)
    return _out_of_range(parts[0][0], parts[0][1], unit, plausible, system)


def _inside(value: float, plausible: tuple[float, float]) -> bool:
    return plausible[0] <= value <= plausible[1]


def _as(candidates: tuple[str, ...], value: float, unit: str, system: System) -> str:
    """Say in which unit a bare number was taken, where it could have been another."""
    return f"Taken as {show(value, unit, system)}." if len(candidates) > 1 else ""


def _took(number: float, candidate: str, value: float, unit: str, system: System) -> str:
    typed = {"degF": "°F", "degC": "°C", "floz": "fl oz"}.get(candidate, candidate)
    return f"Taken as {number:g} {typed}, which is {show(value, unit, system)}."


def _out_of_range(
    number: float, written: str, unit: str, plausible: tuple[float, float], system: System
) -> Refused:
    low, high = (show(bound, unit, system) for bound in plausible)
    slip = _slip(number, written, unit, plausible, system)
    return Refused(f"{number:g} can't be right: it must be from {low} to {high}.{slip}")


def _slip(number: float, written: str, unit: str, plausible: tuple[float, float], system: System) -> str:
    """Guess a lost or doubled decimal point: 392 for 39.2, 3.9 for 39."""
    candidates = [written] if written else []
    candidates += [each for each in _UNTYPED.get(unit, {}).get(system, (unit,)) if each not in candidates]
    for candidate in candidates:
        for factor in (0.1, 10):
            if _inside(convert(number * factor, candidate, unit), plausible):
                return f" Did you mean {number * factor:g}?"
    return ""


def example(unit: str, system: System) -> str:
    """Return how a quantity in this unit may be typed."""
    us = {"degC": "102.5F", "kg": "9 lb 4 oz", "ml": "6 oz"}
    metric = {"degC": "39.2", "kg": "4.2 kg", "ml": "200 ml"}
    either = {"g": "200 g", "h": "10 h, 3 days, or born 23:30", "s": "2", "%": "8", "count": "40"}
    return (us if system == "us" else metric).get(unit) or either.get(unit, "1.5")
