"""Numbers: inside what is published, on the safer side or with a note, used, and never in prose."""

from __future__ import annotations

import re
from collections.abc import Iterator

from triage.amounts import AMOUNTS
from triage.amounts.expects import RAISING_UNITS
from triage.guide.model import (
    COMMON_PRACTICE,
    FROM_MEMORY,
    NOT_PUBLISHED,
    PLACEHOLDER,
    Act,
    Ask,
    Guide,
)
from triage.guide.texts import all_texts
from triage.problems import Problem

FIGURE = re.compile(
    r"[0-9][0-9.,]*\s*(?:°|deg|%|ml\b|cc\b|l\b|litres?\b|kg\b|g\b|lbs?\b|oz\b|ounces?\b|pints?\b|"
    r"hours?\b|hrs?\b|h\b|min(?:ute)?s?\b|days?\b|weeks?\b|seconds?\b|cm\b|mm\b|inch(?:es)?\b|watts?\b|[CF]\b)"
)
"""A figure with a unit; counts such as "two people" are words, and are not figures."""

MAY_HOLD_FIGURES = ("look", "basis")
"""Texts that show how to type an answer, or that tell what the sources of a number say."""


def within_published(guide: Guide) -> Iterator[Problem]:
    """Each value lies inside what its sources publish, and off the safer side only with a note."""
    for number in guide.numbers.values():
        low = min(each[0] for each in number.published.values())
        high = max(each[1] for each in number.published.values())
        if not low <= number.value <= high:
            what = f"'{number.name}' is {number.value:g}, outside what is published, {low:g} to {high:g}"
            yield Problem(number.place, what, "outside-published")
        safest = high if number.safer == "higher" else low
        if number.value != safest and not number.note:
            what = (
                f"'{number.name}' is {number.value:g}, but the {number.safer} side is safer and goes to "
                f"{safest:g}; say why in a note"
            )
            yield Problem(number.place, what, "off-the-safer-side")
        elif number.value != safest and not _named(number.value, number.note):
            what = f"the note of '{number.name}' defends another value than {number.value:g}; name it there"
            yield Problem(number.place, what, "off-the-safer-side")


def _named(value: float, text: str) -> bool:
    """Whether a text holds a value as a figure of its own."""
    return any(float(figure) == value for figure in re.findall(r"[0-9]+(?:\.[0-9]+)?", text))


def support(guide: Guide) -> Iterator[Problem]:
    """Grade D never carries a number alone; memory and common practice are marked as such."""
    for number in guide.numbers.values():
        names = set(number.published)
        grades = {
            guide.sources[name].grade if name in guide.sources else "" for name in names - set(NOT_PUBLISHED)
        }
        if grades == {"D"} and COMMON_PRACTICE not in names:
            what = f"'{number.name}' rests on grade D alone; find an A, B or C source"
            yield Problem(number.place, what, "weak-source")
        for only in (FROM_MEMORY, COMMON_PRACTICE):
            if names == {only} and number.certainty != only:
                what = f"'{number.name}' has no source but '{only}'; its certainty should be {only}"
                yield Problem(number.place, what, "certainty")


def unused(guide: Guide) -> Iterator[Problem]:
    """Every number is used by a branch, a text, a wait, a finding or a sum."""
    used = set(_used(guide))
    for name, number in guide.numbers.items():
        if name not in used:
            yield Problem(number.place, f"nothing uses the number '{name}'; use it, or delete it", "unused")


def _used(guide: Guide) -> Iterator[str]:
    for amount in AMOUNTS.values():
        yield from amount.numbers
    for item in guide.cupboard.values():
        yield from item.how_many.each_lamb if item.how_many else ()
    for passage in all_texts(guide):
        yield from PLACEHOLDER.findall(passage.text)
    for finding in guide.findings.values():
        if finding.usual_rises:
            yield finding.usual_rises.by
    for duty in guide.duties.values():
        yield from (duty.from_, duty.until, duty.every)
    yield from (law.ring_until for law in guide.laws.values())
    yield from RAISING_UNITS if guide.duties else ()
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            yield from (branch.below or branch.up_to for branch in node.branches)
        elif isinstance(node, Act):
            yield node.wait
        else:
            yield node.look_again


def in_prose(guide: Guide) -> Iterator[Problem]:
    """No measurable figure is typed into a text: it stands in numbers.yaml under a name."""
    for place, kind, text in all_texts(guide):
        match = FIGURE.search(PLACEHOLDER.sub("", text))
        if match and kind not in MAY_HOLD_FIGURES:
            what = f"'{match[0]}' is a figure in a text; name it in numbers.yaml and write {{its-name}}"
            yield Problem(place, what, "figure-in-prose")
