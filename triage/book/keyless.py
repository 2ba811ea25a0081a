"""Texts that speak of keys, as a reader who has none can follow them.

The guidance is written for a page that answers are typed into. In a book one goes back to a question.
"""

from __future__ import annotations

import re

_CHANGE = re.compile(r"\b([Pp])ress a, and change\b")
_NUMBER = re.compile(r"\btype ([0-9]+)\b")
_LETTER = re.compile(r",? or type [a-z]\b")
_TYPED = re.compile(r"(?:(?<=^)|(?<=[.?] ))Type [^.?]*[.?] ?")
KEYED = re.compile(r"\b[Pp]ress [a-z]\b[.,]|(?<!birth\s)(?<!-)\b[Tt]ype\b")
"""What must not be left in a text."""


def keyless(text: str) -> str:
    """Return a text without keys: what is typed is taken, and what is changed is gone back to."""
    if "ype " not in text and "ress a" not in text:
        return text
    text = _CHANGE.sub(lambda found: f"{'G' if found[1] == 'P' else 'g'}o back, and change", text)
    text = _LETTER.sub(", or take the last answer", text)
    return _TYPED.sub("", _NUMBER.sub(r"count it as \1", text)).strip()
