"""Which lambs are meant, in words: by a duty, by a rule."""

from __future__ import annotations

from collections.abc import Iterator

from triage.book.words import Words
from triage.guide.model import Condition, Finding, Lamb


def lamb_words(words: Words, lamb: Lamb) -> str:
    """Return which lambs are meant, or an empty text where all are."""
    return "; ".join(
        f"{words.small(words.guide.findings[name].label)}: {' or '.join(_all(words, name, conditions))}"
        for name, conditions in lamb.items()
    )


def _all(words: Words, name: str, conditions: tuple[Condition, ...]) -> Iterator[str]:
    finding = words.guide.findings[name]
    for condition in conditions:
        yield _one(words, finding, condition)


def _one(words: Words, finding: Finding, condition: Condition) -> str:
    if condition.unsure:
        return "not sure"
    if condition.unasked:
        return "not asked"
    if condition.is_:
        return " or ".join(words.small(finding.choices[each]) for each in condition.is_)
    limits = (
        ("more than", condition.above),
        ("from", condition.from_),
        ("less than", condition.below),
        ("up to", condition.up_to),
    )
    return ", ".join(f"{said} {words.number(name)}" for said, name in limits if name)
