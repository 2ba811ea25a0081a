"""The small shapes: one text, one word, one number, or a pair of them."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from triage.guide.model import PLACEHOLDER
from triage.guide.model_practice import Typed
from triage.guide.shapes import Mention, Reading, kind_of
from triage.guide.text import Items, Text, Written
from triage.problems import nearest


def _as_text(value: Written, reading: Reading, wanted: str) -> str | None:
    if not isinstance(value, Text):
        reading.wrong(value.place, f"this is {kind_of(value)}; it should be {wanted}")
        return None
    if not value.text.strip():
        reading.wrong(value.place, f"nothing is written here; it should be {wanted}")
        return None
    return value.text


@dataclass(frozen=True)
class Prose:
    """A text for people; each `{name}` in it must be a number or an amount."""

    fills: tuple[str, ...] = ("number", "amount")

    def read(self, value: Written, reading: Reading) -> str | None:
        """Return the text on one line, its placeholders noted."""
        text = _as_text(value, reading, "a text")
        if text is None:
            return None
        if "{" in text or "}" in text:
            for name in PLACEHOLDER.findall(text):
                reading.mentions.append(Mention(self.fills, name, value.place))
            if re.search("[{}]", PLACEHOLDER.sub("", text)):
                reading.wrong(value.place, "a brace without its partner; write a number as {its-name}")
        return " ".join(text.split())


@dataclass(frozen=True)
class Ref:
    """The name of something defined elsewhere in the guide."""

    kinds: tuple[str, ...]

    @cached_property
    def _wanted(self) -> str:
        return f"the name of a {' or '.join(self.kinds)}"

    def read(self, value: Written, reading: Reading) -> str | None:
        """Return the name, noted for looking up."""
        name = _as_text(value, reading, self._wanted)
        if name is not None:
            reading.mentions.append(Mention(self.kinds, name, value.place))
        return name


@dataclass(frozen=True)
class Plain:
    """A short text that is not a sentence: an edition, a date, a title."""

    def read(self, value: Written, reading: Reading) -> str | None:
        """Return the text on one line."""
        text = _as_text(value, reading, "a text")
        return None if text is None else " ".join(text.split())


@dataclass(frozen=True)
class Day:
    """A day of the calendar, year first."""

    def read(self, value: Written, reading: Reading) -> str | None:
        """Return the day as it was written."""
        text = _as_text(value, reading, "a day, like 2027-01-31")
        if text is None:
            return None
        try:
            if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
                return date.fromisoformat(text).isoformat()
        except ValueError:
            pass
        reading.wrong(value.place, f"'{text}' is not a day; write it year first, like 2027-01-31")
        return None


@dataclass(frozen=True)
class AsTyped:
    """An answer as it is typed to a question; only the question can tell whether it is one."""

    def read(self, value: Written, reading: Reading) -> Typed | None:
        """Return the text with its place."""
        text = _as_text(value, reading, "an answer as it is typed")
        return None if text is None else Typed(text.strip(), value.place)


@dataclass(frozen=True)
class OneOf:
    """One word of a closed list."""

    words: tuple[str, ...]

    def read(self, value: Written, reading: Reading) -> str | None:
        """Return the word."""
        word = _as_text(value, reading, f"one of {', '.join(self.words)}")
        if word is None or word in self.words:
            return word
        what = f"'{word}' is not one of {', '.join(self.words)}{nearest(word, self.words)}"
        reading.wrong(value.place, what, "no-such-name")
        return None


@dataclass(frozen=True)
class Decimal:
    """A plain number, with a point and no unit."""

    def read(self, value: Written, reading: Reading) -> float | None:
        """Return the number."""
        text = _as_text(value, reading, "a number")
        if text is None:
            return None
        try:
            number = float(text)
        except ValueError:
            number = math.nan
        if math.isfinite(number) and re.fullmatch(r"-?[0-9.]+", text):
            return number
        reading.wrong(value.place, f"'{text}' is not a plain number; write it like 37.0")
        return None


@dataclass(frozen=True)
class Whole:
    """A whole number of at least 1."""

    def read(self, value: Written, reading: Reading) -> int | None:
        """Return the number."""
        text = _as_text(value, reading, "a whole number")
        if text is None:
            return None
        if re.fullmatch(r"[1-9][0-9]{0,5}", text):
            return int(text)
        reading.wrong(value.place, f"'{text}' is not a whole number of 1 or more")
        return None


@dataclass(frozen=True)
class Yes:
    """The word `true`; leaving the line out is the only other way to write it."""

    def read(self, value: Written, reading: Reading) -> bool | None:
        """Return True."""
        if isinstance(value, Text) and value.text == "true":
            return True
        reading.wrong(value.place, "write 'true' here, or leave the line out")
        return None


@dataclass(frozen=True)
class Span:
    """A pair of numbers, low then high; with `or_one`, a single number serves as both."""

    or_one: bool = False

    def read(self, value: Written, reading: Reading) -> tuple[float, float] | None:
        """Return (low, high)."""
        if self.or_one and isinstance(value, Text):
            one = Decimal().read(value, reading)
            return None if one is None else (one, one)
        if not isinstance(value, Items) or len(value.items) != 2:
            reading.wrong(value.place, "this should be two numbers, like [25, 43]")
            return None
        low, high = (Decimal().read(each, reading) for each in value.items)
        if low is None or high is None:
            return None
        if low > high:
            reading.wrong(value.place, f"{low:g} is above {high:g}; write the lower number first")
            return None
        return low, high
