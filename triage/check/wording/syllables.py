"""How many syllables a word is said in, judged by its letters.

A dictionary would be larger than all the guidance and slower to load than the whole check. Against
the CMU Pronouncing Dictionary this estimate is a small part of a grade off over the shipped texts;
`tests/published/test_syllables.py` measures it.
"""

from __future__ import annotations

import re
from functools import lru_cache

_SILENT = re.compile(
    r"(?:(?<=[^aeioutdy])ed|(?<=[^aeiouyl])e|(?<=[aeiouywr]l)e|(?<=[bdfkmnprtvwh])(?<![cs]h)es"
    r"|(?<=[aeiouywr]l)es)$"
    r"|(?<=[^aeiouyl])e(?=(?:ly|ful|less|ness|ment|thing|where|one|body|times|what)$)"
)
"""An `e` that is written and not said: `passed`, `these`, `scale`, `safely`, `someone`."""

_SPLIT = re.compile(
    r"(?<![cstgx])i(?=[ao])|[aeiouy](?=ing$)|i(?=e(?:rs?|st|nce|nt|t)$|um)|(?<![qg])u(?=et|id|al|ous)|e(?=um)"
)
"""The first of two vowels that are said apart: `iodine`, `going`, `drier`, `fluid`, `usual`."""

_VOWELS = re.compile(r"[aeiouy]+")


@lru_cache(maxsize=8192)
def syllables(word: str) -> int:
    """Return the syllables of a word; a figure or a sign counts as one, as Flesch counted them."""
    return sum(_of_part(part) for part in word.lower().split("-"))


def _of_part(part: str) -> int:
    letters = re.sub(r"[^a-z]", "", part.removesuffix("'s"))
    said = _SPLIT.sub(lambda match: f"{match[0]}-", _SILENT.sub("", letters))
    return max(1, len(_VOWELS.findall(said)))
