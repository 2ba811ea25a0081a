"""The fields of a holding: how each is called in its file, asked for, read and written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from triage.holding.holding import Holding
from triage.holding.values import Read, Wrong, line, measure, number_to_phone, one_of, pass_mark, people
from triage.units import ENOUGH_DIGITS, System, show, tidy

THEMES = ("night", "day", "stark", "terminal")
UNITS = ("metric", "us")
WAYS = ("added-to", "made-up-to")
LAWS = (
    "england-wales",
    "northern-ireland",
    "scotland",
    "ireland",
    "netherlands",
    "united-states",
    "canada",
    "new-zealand",
    "australia",
)
"""The laws that the shipped guide tells of; `tests/rearing/test_laws.py` holds the two together."""
EMPTY = "-"
"""Typed to empty a field; what is typed as nothing leaves it as it is."""


@dataclass(frozen=True)
class HoldingField:
    """One field: its name in the file, and the question and the reason it is asked with."""

    name: str
    attribute: str
    ask: str
    why: str
    example: str
    read: Read
    write: Callable[[Any], str]


def _said(value: Any) -> str:
    return str(value or "")


def _amount(unit: str) -> Callable[[Any], str]:
    return lambda value: f"{tidy(value, ENOUGH_DIGITS)} {unit}" if value is not None else ""


def _pass_mark(value: Any) -> str:
    return f"{value[0]}, {value[1] * 100:g} %, {value[2] * 100:g} %" if value else ""


FIELDS = (
    HoldingField(
        "vet",
        "vet",
        "What is your vet's number?",
        "It stays in view at night.",
        "01632 960111",
        number_to_phone,
        _said,
    ),
    HoldingField(
        "out-of-hours",
        "out_of_hours",
        "And at night, if that is another number?",
        "Many practices share the night with others.",
        "01632 960222",
        number_to_phone,
        _said,
    ),
    HoldingField(
        "caller",
        "caller",
        "Who phones from here?",
        "It is the first thing the vet hears.",
        "Ann Field",
        line,
        _said,
    ),
    HoldingField(
        "place",
        "place",
        "What is the place called?",
        "The vet must know where the lamb is.",
        "Hill Farm, Upper Example",
        line,
        _said,
    ),
    HoldingField(
        "found-by",
        "found_by",
        "What should the vet be told to find it?",
        "At night a farm is hard to find.",
        "second gate after the chapel",
        line,
        _said,
    ),
    HoldingField(
        "units",
        "units",
        "Which units: metric or us?",
        "Both are always understood.",
        "metric",
        one_of(UNITS),
        _said,
    ),
    HoldingField(
        "theme",
        "theme",
        f"Which light: {', '.join(THEMES)}?",
        "Night is dim and warm and spares the eyes.",
        "night",
        one_of(THEMES),
        _said,
    ),
    HoldingField(
        "bag-powder",
        "bag_powder",
        "How much powder does your bag of milk replacer name?",
        "Each bag has its own rate. A wrong mix scours lambs, or starves them.",
        "200 g",
        measure("g", (1.0, 25_000.0), "200 g"),
        _amount("g"),
    ),
    HoldingField(
        "bag-water",
        "bag_water",
        "And for how much water, or milk?",
        "Read it off the bag.",
        "800 ml",
        measure("ml", (10.0, 100_000.0), "800 ml"),
        _amount("ml"),
    ),
    HoldingField(
        "bag-way",
        "bag_way",
        "Is the powder added-to that water, or made-up-to that much milk?",
        "The two are not the same strength.",
        "added-to",
        one_of(WAYS),
        _said,
    ),
    HoldingField(
        "law",
        "law",
        "Whose law holds here on castration and docking?",
        f"It sets dates in a raising plan. There are {', '.join(LAWS)}. For any other, pass on.",
        "scotland",
        one_of(LAWS),
        _said,
    ),
    HoldingField(
        "pass-mark",
        "pass_mark",
        "What must a helper show in practice before a night alone?",
        "Danger cases in a row with no safety miss; then at most so many called less urgent, and more.",
        "60, 1 %, 35 %",
        pass_mark,
        _pass_mark,
    ),
    HoldingField(
        "taught",
        "taught",
        "Who here was taught by a vet, and to do what?",
        "Needle work is for a vet, or for someone a vet has taught.",
        "Ann: stomach tube; Ben: glucose by needle",
        people,
        lambda value: "; ".join(f"{who}: {what}" for who, what in value.items()),
    ),
)
"""Every field, in the order in which they are asked."""

MEASURED = {"bag-powder": "g", "bag-water": "ml"}
"""The fields that are measurements, with the unit they are kept in."""

BY_NAME: Mapping[str, HoldingField] = {field.name: field for field in FIELDS}


def with_text(holding: Holding, name: str, text: str, system: System) -> Holding | str:
    """Return a holding with one field as typed, or a sentence on what is wrong.

    Nothing typed leaves it as it is; `-` empties it.
    """
    field, typed = BY_NAME[name], text.strip()
    if not typed:
        return holding
    if typed == EMPTY:
        return replace(holding, **{field.attribute: getattr(Holding(), field.attribute)})
    try:
        return replace(holding, **{field.attribute: field.read(typed, system)})
    except Wrong as wrong:
        return str(wrong)


def text_of(holding: Holding, name: str) -> str:
    """Return what is kept in a field, as it would be typed; empty where nothing is."""
    field = BY_NAME[name]
    return field.write(getattr(holding, field.attribute))


def words_of(holding: Holding, name: str) -> str:
    """Return what is kept in a field for people: a weight or volume in their own units too."""
    text, unit = text_of(holding, name), MEASURED.get(name)
    if not text or unit is None or holding.units != "us":
        return text
    return f"{text} ({show(getattr(holding, BY_NAME[name].attribute), unit, 'us')})"
