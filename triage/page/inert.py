"""Words that people typed, made safe to show: one line, nothing that moves a cursor or turns text round."""

from __future__ import annotations

import unicodedata

HIDDEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
"""Kinds of signs that steer a terminal or cannot be seen (Unicode general categories)."""

KEPT = "\u200d"
"""Joins the parts of some letters, and moves nothing."""

CUT = ".."

MARKS = frozenset({"Mn", "Me"})
"""Kinds of signs that are drawn over the one before them."""

FIRST_MARK = "\u0300"
"""The lowest of these: a text of lower signs has none."""

MOST_MARKS = 3
"""Marks on one letter, as many as scripts need; a tower of them would cover the lines above."""


def inert(text: str, most: int = 0) -> str:
    """Return a text as one line without control signs, shortened to `most` signs with two dots.

    Runs of white space become one space. What is stored stays whole; this is for showing.
    """
    line = " ".join(_plain(text[: most * 8 or None]).split())
    if most and (len(line) > most or len(text) > most * 8):
        return f"{line[: most - len(CUT)].rstrip()}{CUT}"
    return line


def _plain(text: str) -> str:
    """Return a text without signs that steer, and with no more marks on a letter than it needs."""
    if text.isprintable() and max(text, default="") < FIRST_MARK:
        return text
    kept: list[str] = []
    marks = 0
    for sign in text:
        kind = unicodedata.category(sign)
        if sign.isspace():
            kept.append(" ")
        elif kind in HIDDEN and sign != KEPT:
            continue
        elif kind not in MARKS or marks < MOST_MARKS:
            kept.append(sign)
        marks = marks + 1 if kind in MARKS else 0
    return "".join(kept)
