"""Numbers: inside what is published, on the safer side or with a note, used, and never in prose."""

from __future__ import annotations

import re
from collections.abc import Iterator

from triage.amounts import AMOUNTS
from triage.guide.model import (
    COMMON_PRACTICE,
    FROM_MEMORY,
    PLACEHOLDER,
    Act,
    Ask,
    End,
    Guide,
)
from triage.problems import Place, Problem

FIGURE = re.compile(
    r"[0-9][0-9.,]*\s*(?:°|deg|%|ml\b|cc\b|l\b|litres?\b|kg\b|g\b|lbs?\b|oz\b|ounces?\b|pints?\b|"
    r"hours?\b|hrs?\b|h\b|min(?:ute)?s?\b|days?\b|weeks?\b|seconds?\b|cm\b|mm\b|inch(?:es)?\b|watts?\b|[CF]\b)"
)
"""A figure with a unit; counts such as "two people" are words, and are not figures."""


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


def support(guide: Guide) -> Iterator[Problem]:
    """Grade D never carries a number alone; memory and common practice are marked as such."""
    for number in guide.numbers.values():
        names = set(number.published)
        grades = {guide.sources[name].grade for name in names if name in guide.sources}
        if grades and not grades & {"A", "B", "C"} and COMMON_PRACTICE not in names:
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
    for _, text in texts(guide):
        yield from PLACEHOLDER.findall(text)
    for finding in guide.findings.values():
        if finding.usual_rises:
            yield finding.usual_rises.by
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            yield from (branch.below or branch.up_to for branch in node.branches)
        elif isinstance(node, Act):
            yield node.wait
        else:
            yield node.look_again


def in_prose(guide: Guide) -> Iterator[Problem]:
    """No measurable figure is typed into a text: it stands in numbers.yaml under a name."""
    for place, text in texts(guide):
        match = FIGURE.search(PLACEHOLDER.sub("", text))
        if match:
            what = f"'{match[0]}' is a figure in a text; name it in numbers.yaml and write {{its-name}}"
            yield Problem(place, what, "figure-in-prose")


def texts(guide: Guide) -> Iterator[tuple[Place, str]]:
    """Yield every text that people read, with the place of what it belongs to."""
    for finding in guide.findings.values():
        # `look` shows how to type an answer, so it may hold figures as examples.
        for text in (finding.ask, finding.why, *finding.choices.values()):
            yield finding.place, text
    for node in guide.nodes.values():
        if isinstance(node, Act):
            for text in (node.title, *(step.do for step in node.steps), *node.cautions):
                yield node.place, text
        elif isinstance(node, End):
            for text in (
                node.title,
                node.likely,
                *(step.do for step in node.do),
                *node.cautions,
                node.call_vet,
            ):
                yield node.place, text
    for how_to in guide.how_tos.values():
        lines = (*how_to.need, *how_to.steps, *how_to.cautions)
        for text in (how_to.why, *lines, how_to.right, how_to.stop, how_to.note):
            yield how_to.place, text
