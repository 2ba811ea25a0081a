"""Reading each kind of value of a holding from what was typed, or saying in a sentence why it can't be."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping
from typing import Any

from triage.page.inert import inert
from triage.problems import nearest
from triage.typed import Refused, read_measure
from triage.units import System

LONGEST = 300
LONGEST_NAME = 60
FEWEST_DIGITS = 3
"""Fewer than these dial nobody: letters typed by mistake are not taken for a number."""
LONGEST_LIST = 2000
"""Signs in one line, in a person's name, and in the whole list of people: the file stays one to read."""

LIKE_PEOPLE = "like Ann: stomach tube; Ben: needle under the skin"

Read = Callable[[str, System], Any]
"""Reads a text into a value, or raises Wrong with a sentence."""


class Wrong(ValueError):
    """A value that can't be used, in a sentence."""


def line(text: str, _: System = "metric") -> str:
    """Read one line of anything that can be seen."""
    if len(text.splitlines()) > 1:
        raise Wrong("It must be one line.")
    if len(text) > LONGEST:
        raise Wrong(f"That is too long: at most {LONGEST} signs.")
    if any(unicodedata.category(sign) in ("Cc", "Cs") for sign in text):
        raise Wrong("There is a sign in it that can't be kept. Type it again.")
    return text


def number_to_phone(text: str, system: System) -> str:
    """Read a number to phone, or words on where to find it; `yes` is neither."""
    if len(text.split()) < 2 and sum(sign.isdigit() for sign in text) < FEWEST_DIGITS:
        raise Wrong(f"There is no number in '{inert(text, 30)}'. Type it like 01632 960111.")
    return line(text, system)


def one_of(words: tuple[str, ...]) -> Read:
    """Return what reads one of a few words."""

    def read(text: str, _: System) -> str:
        word = text.strip().lower()
        if word not in words:
            raise Wrong(f"'{inert(text, 30)}' is not one of {', '.join(words)}{nearest(word, words)}.")
        return word

    return read


def measure(unit: str, plausible: tuple[float, float], example: str) -> Read:
    """Return what reads a measurement. It must name its unit: 200 of an unknown one is a wrong mix."""

    def read(text: str, system: System) -> float:
        if text and not any(sign.isalpha() for sign in text):
            raise Wrong(f"'{inert(text, 30)}' of what? Type the unit too, like {example}.")
        came = read_measure(text, unit, plausible, system)
        if isinstance(came, Refused):
            raise Wrong(inert(came.why))
        return came.value

    return read


FEWEST_DANGER, MOST_DANGER = 20, 1000
"""Danger cases in a row: fewer say nothing of a helper, and more nobody finishes."""


def pass_mark(text: str, _: System) -> tuple[int, float, float] | None:
    """Read `60, 1 %, 35 %`: danger cases in a row, and the shares called less and more urgent at most."""
    if not text.strip():
        return None
    found = re.fullmatch(r"\s*(\d{1,4})\s*,\s*([\d.]{1,6})\s*%\s*,\s*([\d.]{1,6})\s*%\s*", text)
    try:
        danger, under, over = int(found[1]), float(found[2]), float(found[3])  # type: ignore[index]
    except (TypeError, ValueError):
        raise Wrong("Write it like 60, 1 %, 35 %.") from None
    if not FEWEST_DANGER <= danger <= MOST_DANGER or under > MOST_UNDER or over > 100:
        raise Wrong(
            f"From {FEWEST_DANGER} to {MOST_DANGER} danger cases, at most {MOST_UNDER} % called less urgent, "
            "and at most 100 % more."
        )
    return danger, under / 100, over / 100


MOST_UNDER = 10
"""Per cent called less urgent: above that a mark is none."""


def people(text: str, _: System) -> Mapping[str, str]:
    """Read `Ann: stomach tube; Ben: glucose into the belly`."""
    found: dict[str, str] = {}
    for pair in filter(str.strip, text.split(";")):
        who, colon, what = (part.strip() for part in pair.partition(":"))
        if not colon:
            raise Wrong(f"Write each as name: what, {LIKE_PEOPLE}.")
        add_person(found, who, what)
    return found


def add_person(found: dict[str, str], who: str, what: str) -> None:
    """Add one person with what they were taught, or raise Wrong."""
    if not any(sign.isalnum() for sign in who) or not what:
        raise Wrong(f"Write each as name: what, {LIKE_PEOPLE}.")
    if len(who) > LONGEST_NAME:
        raise Wrong(f"A name has at most {LONGEST_NAME} signs.")
    if who in found:
        raise Wrong(f"'{inert(who, 30)}' is there twice. Put all that they were taught behind one name.")
    if sum(len(name) + len(taught) for name, taught in found.items()) + len(who) + len(what) > LONGEST_LIST:
        raise Wrong(f"The list is too long: at most {LONGEST_LIST} signs.")
    found[line(who)] = line(what)
