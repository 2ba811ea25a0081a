"""The one place where a book asks what is told of the review of its guidance."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from datetime import date

from triage.book.making import Told
from triage.guide.model import Guide

UNLESS = "Where no line says otherwise: {}"


def told_of(guide: Guide, today: date) -> Told:
    """Return what a book of this guide says of its review. The guide must have been read whole."""
    from triage.review.of import standings, words_of

    codes = {name: code_of(guide, name) for name in guide.topics}
    whole, each = told_once(words_of(guide), standings(guide))
    return Told(whole, overdue(guide, today), each, codes)


def told_once(whole: str, each: Mapping[str, str]) -> tuple[str, dict[str, str]]:
    """Return what stands at the top of a book, and a line for each statement that does not stand as most do.

    A line at each of a thousand statements would be read by nobody, so what holds of most is said once.
    """
    if not each:
        return whole, {}
    usual, often = Counter(each.values()).most_common(1)[0]
    if often == len(each):
        return whole, {}
    return f"{whole} {UNLESS.format(usual)}", {key: said for key, said in each.items() if said != usual}


def overdue(guide: Guide, today: date) -> str:
    """Return a sentence where the guidance was to be read again by an earlier day."""
    from triage.review import dates

    return dates.overdue(guide.front, today)


def code_of(guide: Guide, topic: str) -> str:
    """Return the code of a topic's wording, as `3f2a-91c4`."""
    from triage.review import codes

    return codes.code_of(guide, topic)
