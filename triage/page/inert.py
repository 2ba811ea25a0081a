"""Words that people typed, made safe to show: one line, nothing that moves a cursor or turns text round."""

from __future__ import annotations

import unicodedata

HIDDEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
"""Kinds of signs that steer a terminal or cannot be seen (Unicode general categories)."""

KEPT = "\u200d"
"""Joins the parts of some letters, and moves nothing."""

CUT = ".."


def inert(text: str, most: int = 0) -> str:
    """Return a text as one line without control signs, shortened to `most` signs with two dots.

    Runs of white space become one space. What is stored stays whole; this is for showing.
    """
    plain = "".join(_shown(sign) for sign in text[: most * 8 or None])
    line = " ".join(plain.split())
    if most and (len(line) > most or len(text) > most * 8):
        return f"{line[: most - len(CUT)].rstrip()}{CUT}"
    return line


def _shown(sign: str) -> str:
    if sign.isspace():
        return " "
    if unicodedata.category(sign) in HIDDEN and sign != KEPT:
        return ""
    return sign
