"""Where in an own folder a value was changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from triage.guide.files import OWN
from triage.problems import Place


def place_in(value: Any) -> Place:
    """Return the first place in an own folder from which something of a value came, or the value's own."""
    written = getattr(value, "place", Place("own"))
    return next(places_in(value), written if written.file.startswith(OWN) else Place(f"{OWN}/{written.file}"))


def places_in(value: Any) -> Iterator[Place]:
    """Yield the places in an own folder from which something of a value came."""
    yield from (place for place in _places(value) if place.file.startswith(f"{OWN}/"))


def _places(value: Any) -> Iterator[Place]:
    if isinstance(value, Place):
        yield value
    elif is_dataclass(value):
        for each in fields(value):
            yield from _places(getattr(value, each.name))
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from _places(each)
    elif isinstance(value, tuple):
        for each in value:
            yield from _places(each)
