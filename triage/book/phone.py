"""The vet's numbers: where they stand, a touch dials."""

from __future__ import annotations

import re

from triage.book.making import Making
from triage.page.inert import inert
from triage.paper.html import safe

_FIRST = re.compile(r"[+(]?[0-9][-0-9 ().\u00a0]*")

STANDS = "Told to phone? That still stands"


def stands(making: Making) -> str:
    """Return that a call stands from where it was met on, with the numbers where they are known."""
    dial = numbers(making, "")
    return f"{STANDS}: {dial}" if dial else f"{STANDS}."


def numbers(making: Making, whose: str = "Your vet: ") -> str:
    """Return the vet's numbers as links that dial, or nothing where none is known."""
    day, night = making.phone
    said = [f"{whose}{_dial(day)}"] if day else []
    said += [f"at night: {_dial(night)}"] if night and night != day else []
    return ", ".join(said)


def _dial(number: str) -> str:
    """Return a number as a link: the first of several, without an extension or a bracketed trunk 0."""
    shown = inert(number, 80)
    first = _FIRST.search(shown)
    abroad = first and first[0].startswith("+")
    digits = re.sub(r"[^+0-9]", "", first[0].replace("(0)", "") if abroad else first[0]) if first else ""
    return f'<a href="tel:{digits}">{safe(shown)}</a>' if len(digits) > 2 else safe(shown)
