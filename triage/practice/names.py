"""The name of a helper: however it is typed, the same person."""

from __future__ import annotations

import unicodedata

from triage.page.inert import inert

LONGEST = 40


def plain_name(typed: str) -> str:
    """Return a name as it is kept and shown; empty where nothing of it can be seen."""
    return " ".join(inert(unicodedata.normalize("NFC", typed), LONGEST).split())


def same(one: str, other: str) -> bool:
    """Whether two names are the same person's."""
    return plain_name(one).casefold() == plain_name(other).casefold()
