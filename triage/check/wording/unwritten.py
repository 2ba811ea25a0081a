"""Texts that an author has not written yet, wherever they stand: no edition is cut with one in it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from triage.guide.model import Guide
from triage.guide.texts import UNWRITTEN
from triage.problems import Place, Problem

SHOWN = 60
"""Signs of such a text that are told with it."""


def left(guide: Guide) -> Iterator[Problem]:
    """No text is left to be written: on a page, in a rule's reason, a source or a practice story."""
    for each in fields(guide):
        for place, text in _texts(getattr(guide, each.name), Place("guide.yaml")):
            if UNWRITTEN in text:
                yield Problem(place, f"still to be written: '{text[:SHOWN]}'", "unwritten")


def _texts(value: Any, place: Place) -> Iterator[tuple[Place, str]]:
    """Yield every text that a value holds, with the nearest place that is known."""
    if isinstance(value, str):
        yield place, value
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from _texts(each, place)
    elif isinstance(value, tuple) and not isinstance(value, Place):
        for each in value:
            yield from _texts(each, place)
    elif is_dataclass(value):
        place = getattr(value, "place", place)
        for each in fields(value):
            yield from _texts(getattr(value, each.name), place)
