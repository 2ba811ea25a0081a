"""Vague orders: "keep an eye on it" names no sign and no time, so at night it is not done."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from triage.amounts import AMOUNTS
from triage.check.wording.reading import sentences_in
from triage.guide.model import PLACEHOLDER, Guide
from triage.guide.texts import Kind, all_texts
from triage.problems import Problem
from triage.units import UNITS

ORDERS: frozenset[Kind] = frozenset(("step", "caution", "call", "stop"))

DRINK = r"(?:warm |first )*(?:milk|water|electrolyte|glucose|feed|fluid|drink|heat)"


class Vague(NamedTuple):
    """Words that order nothing definite, what they leave out, and what in the sentence would mend it."""

    words: re.Pattern[str]
    signs: tuple[str, ...]
    """One of these stands in each of the words, so that a text without any is told at once."""
    lacks: str
    mended_by: frozenset[str]


def _any(*patterns: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(patterns)})\b", re.IGNORECASE)


VAGUE = (
    Vague(
        _any(
            r"monitor(?:s|ed|ing)?",
            r"keep(?:ing)? (?:a |an )?(?:close )?(?:eye|watch) on",
            r"keep (?:checking|looking|watching)",
            r"check on",
            r"watch(?:ing)? (?:for|out|closely|carefully)",
            r"look out for",
            r"regular(?:ly)?",
            r"frequent(?:ly)?",
            r"often",
            r"occasional(?:ly)?",
            r"periodic(?:ally)?",
            r"(?:from )?time to time",
            r"now and (?:again|then)",
            r"(?<!as )soon",  # "as soon as it sucks" names a sign
            r"as soon as (?:possible|you can)",
            r"shortly",
            r"before long",
            r"(?:a|some|a little) while",
        ),
        (
            *(
                "monitor",
                "keep",
                "check on",
                "watch",
                "look out",
                "regular",
                "frequent",
                "often",
                "occasional",
            ),
            *("periodic", "time to time", "now and", "soon", "shortly", "before long", "while"),
        ),
        "says no time",
        frozenset(("time",)),
    ),
    Vague(
        _any(
            r"(?:as|if|when|where) (?:appropriate|indicated|necessary|needed|possible|required)",
            r"if need be",
            r"as you see fit",
        ),
        ("appropriate", "indicated", "necessary", "need", "possible", "required", "see fit"),
        "names no sign to go by",
        frozenset(("time",)),
    ),
    Vague(
        _any(
            rf"(?:a little|a bit of|a drop of|some|plenty of|lots of) (?:more )?{DRINK}",
            r"as much as it",
            r"sparingly",
        ),
        ("little", "a bit", "a drop", "some", "plenty", "lots", "as much", "sparing"),
        "says no amount",
        frozenset(("volume", "mass", "dose", "dose a day")),
    ),
)
"""Few on purpose: each stood for an order that people read and did not carry out."""


def vague(guide: Guide) -> Iterator[Problem]:
    """An order says when, how much, or what to go by; a number of time or a sum beside it will do."""
    for place, kind, text in all_texts(guide):
        small = text.lower() if kind in ORDERS else ""
        open_ones = [each for each in VAGUE if any(map(small.__contains__, each.signs))]
        for sentence in sentences_in(text) if open_ones else ():
            for each in open_ones:
                match = each.words.search(sentence)
                if match and not _mended(guide, sentence, each.mended_by):
                    what = (
                        f"'{match[0]}' {each.lacks}; name it, or put a {{number}} or a {{sum}} beside it: "
                        f"'{sentence}'"
                    )
                    yield Problem(place, what, "vague-order")


def _mended(guide: Guide, sentence: str, by: frozenset[str]) -> bool:
    """Whether a sentence holds a sum, or a number of such a dimension."""
    names = PLACEHOLDER.findall(sentence)
    units = (guide.numbers[name].unit for name in names if name in guide.numbers)
    return any(name in AMOUNTS for name in names) or any(UNITS[unit].dimension in by for unit in units)
