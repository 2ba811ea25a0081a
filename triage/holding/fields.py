"""The fields of a holding: how each is called in its file, asked for, read and written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

from triage.holding.holding import Holding
from triage.problems import nearest
from triage.typed import Refused, read_measure
from triage.units import System, tidy

THEMES = ("night", "day", "stark", "terminal")
UNITS = ("metric", "us")
WAYS = ("added-to", "made-up-to")
LONGEST = 300

Read = Callable[[str, System], Any]
"""Reads a text into a value, or raises Wrong with a sentence."""


class Wrong(ValueError):
    """A value that can't be used, in a sentence."""


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


def _line(text: str, _: System) -> str:
    if "\n" in text or "\r" in text:
        raise Wrong("It must be one line.")
    if len(text) > LONGEST:
        raise Wrong(f"That is too long: at most {LONGEST} signs.")
    return text


def _one_of(words: tuple[str, ...]) -> Read:
    def read(text: str, _: System) -> str:
        word = text.strip().lower()
        if word not in words:
            raise Wrong(f"'{text[:30]}' is not one of {', '.join(words)}{nearest(word, words)}.")
        return word

    return read


def _measure(unit: str, plausible: tuple[float, float]) -> Read:
    def read(text: str, system: System) -> float:
        came = read_measure(text, unit, plausible, system)
        if isinstance(came, Refused):
            raise Wrong(came.why)
        return came.value

    return read


def _people(text: str, _: System) -> Mapping[str, str]:
    """Read `Ann: stomach tube; Ben: glucose into the belly`."""
    found: dict[str, str] = {}
    for pair in text.split(";"):
        who, colon, what = pair.partition(":")
        if not colon or not who.strip() or not what.strip():
            raise Wrong("Write each as name: what, like Ann: stomach tube; Ben: needle under the skin.")
        found[_line(who.strip(), "metric")] = _line(what.strip(), "metric")
    return found


def _said(value: Any) -> str:
    return str(value or "")


def _amount(unit: str) -> Callable[[Any], str]:
    return lambda value: f"{tidy(value, 3)} {unit}" if value is not None else ""


FIELDS = (
    HoldingField(
        "vet", "vet", "What is your vet's number?", "It stays in view at night.", "01632 960111", _line, _said
    ),
    HoldingField(
        "out-of-hours",
        "out_of_hours",
        "And at night, if that is another number?",
        "Many practices share the night with others.",
        "01632 960222",
        _line,
        _said,
    ),
    HoldingField(
        "caller",
        "caller",
        "Who phones from here?",
        "It is the first thing the vet hears.",
        "Ann Field",
        _line,
        _said,
    ),
    HoldingField(
        "place",
        "place",
        "What is the place called?",
        "The vet must know where the lamb is.",
        "Hill Farm, Upper Example",
        _line,
        _said,
    ),
    HoldingField(
        "found-by",
        "found_by",
        "What should the vet be told to find it?",
        "At night a farm is hard to find.",
        "second gate after the chapel",
        _line,
        _said,
    ),
    HoldingField(
        "units",
        "units",
        "Which units: metric or us?",
        "Both are always understood.",
        "metric",
        _one_of(UNITS),
        _said,
    ),
    HoldingField(
        "theme",
        "theme",
        f"Which light: {', '.join(THEMES)}?",
        "Night is dim and warm and spares the eyes.",
        "night",
        _one_of(THEMES),
        _said,
    ),
    HoldingField(
        "bag-powder",
        "bag_powder",
        "How much powder does your bag of milk replacer name?",
        "Each bag has its own rate. A wrong mix scours lambs, or starves them.",
        "200 g",
        _measure("g", (1.0, 25_000.0)),
        _amount("g"),
    ),
    HoldingField(
        "bag-water",
        "bag_water",
        "And for how much water, or milk?",
        "Read it off the bag.",
        "800 ml",
        _measure("ml", (10.0, 100_000.0)),
        _amount("ml"),
    ),
    HoldingField(
        "bag-way",
        "bag_way",
        "Is the powder added-to that water, or made-up-to that much milk?",
        "The two are not the same strength.",
        "added-to",
        _one_of(WAYS),
        _said,
    ),
    HoldingField(
        "taught",
        "taught",
        "Who here was taught by a vet, and to do what?",
        "Needle work is for a vet, or for someone a vet has taught.",
        "Ann: stomach tube; Ben: glucose by needle",
        _people,
        lambda value: "; ".join(f"{who}: {what}" for who, what in value.items()),
    ),
)
"""Every field, in the order in which they are asked."""

BY_NAME: Mapping[str, HoldingField] = {field.name: field for field in FIELDS}


def with_text(holding: Holding, name: str, text: str, system: System) -> Holding | str:
    """Return a holding with one field as typed, or a sentence on what is wrong. `-` empties it."""
    field = BY_NAME[name]
    if text.strip() == "-":
        return replace(holding, **{field.attribute: getattr(Holding(), field.attribute)})
    try:
        return replace(holding, **{field.attribute: field.read(text.strip(), system)})
    except Wrong as wrong:
        return str(wrong)


def text_of(holding: Holding, name: str) -> str:
    """Return what is kept in a field, as it would be typed; empty where nothing is."""
    field = BY_NAME[name]
    return field.write(getattr(holding, field.attribute))
