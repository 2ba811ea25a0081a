"""The ways into a guide: what a walk is about, where it is not what the guide takes as known.

A guide that asks about one lamb first must not ask a keeper whose ewe is in trouble for a lamb's
temperature. Which other matters there are is data: the choices of the finding that the way in asks.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import datetime

from triage.guide.model import Finding, Guide
from triage.walk import Answer, Walk, opens


def matter(guide: Guide) -> Finding | None:
    """Return the finding that tells what a walk is about, None where every walk is about the same."""
    name = next(iter(guide.front.unless_told), "")
    return guide.findings.get(name)


def other_ways(guide: Guide) -> Mapping[str, str]:
    """Return each other matter that a walk can begin with, and its words."""
    finding = matter(guide)
    if finding is None:
        return {}
    taken = guide.front.unless_told[finding.name]
    return {name: words for name, words in finding.choices.items() if name != taken}


def begin(guide: Guide, about: str = "", at: datetime | None = None) -> Walk:
    """Return a walk about one of the other matters; about anything else, the walk that begins as always."""
    finding = matter(guide)
    if finding is None or about not in other_ways(guide):
        return Walk(guide)
    return Walk(guide, (Answer(finding.name, about, at=at),))


def again(walk: Walk) -> Walk:
    """Return a new walk about the same matter."""
    return Walk(walk.guide, walk.moves[:1] if _told(walk) else ())


def about(walk: Walk) -> str:
    """Return which of the other matters a walk is about, or an empty text."""
    first = walk.moves[0] if _told(walk) else None
    value = first.value if isinstance(first, Answer) else ""
    return value if isinstance(value, str) and value in other_ways(walk.guide) else ""


def begun(walk: Walk) -> bool:
    """Whether anything was answered or done, what the walk is about left aside."""
    return len(walk.moves) > _told(walk)


def _told(walk: Walk) -> bool:
    return bool(walk.moves) and opens(walk.guide, walk.moves[0])


def letters(ways: Iterable[str], taken: Iterable[str]) -> dict[str, str]:
    """Return a letter for each way, its own first one where that is free; numbers keep their meaning."""
    used, found = set(taken), dict[str, str]()
    for way in ways:
        signs = (sign for sign in f"{way}abcdefghijklmnopqrstuvwxyz" if sign.isalpha() and sign not in used)
        if letter := next(signs, ""):
            used.add(letter)
            found[letter] = way
    return found
