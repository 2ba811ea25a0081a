"""Which lambs are meant, and what a rule asks of a page, in words."""

from __future__ import annotations

from triage.amounts import AMOUNTS
from triage.guide.model import Condition, Finding, Lamb
from triage.guide.model_rules import Pages, Rule, Trait
from triage.page.wall import Wall

LIMITS = (("above", "above"), ("from_", "from"), ("below", "below"), ("up_to", "up to"))
"""The edges that an answer may have, and the words for them."""


def lamb_lines(wall: Wall, lamb: Lamb) -> tuple[str, ...]:
    """Return which lambs are meant, a line for each finding."""
    lines = []
    for name, conditions in lamb.items():
        answers = "; or ".join(_condition(wall, name, each) for each in conditions)
        lines.append(f"{wall.guide.findings[name].label}: {answers}.")
    return tuple(lines)


def _condition(wall: Wall, name: str, condition: Condition) -> str:
    finding: Finding = wall.guide.findings[name]
    if condition.unsure:
        return "not sure"
    if condition.unasked:
        return "not asked"
    if condition.is_:
        return "; or ".join(_small(wall.fill(finding.choices[each])) for each in condition.is_)
    return ", ".join(
        f"{word} {wall.number(edge)}" for field, word in LIMITS if (edge := getattr(condition, field))
    )


def rule_line(wall: Wall, rule: Rule) -> str:
    """Return what a rule asks, as one sentence."""
    trait = rule.never or rule.always
    said = f"{'Never' if rule.never else 'Always'}: {_trait(wall, trait)}." if trait else ""
    return f"{said} On pages with: {_pages(wall, rule.on)}." if rule.on else said


def _trait(wall: Wall, trait: Trait) -> str:
    parts = [*_tags(wall, trait.tag), *_shown(wall, trait.shows)]
    parts += [f"the words \u201c{_small(wall.fill(each))}\u201d" for each in trait.says]
    if trait.urgency:
        parts.append(_small(wall.guide.urgency(trait.urgency).say))
    return ", or ".join(parts)


def _pages(wall: Wall, pages: Pages) -> str:
    ends = [_small(wall.guide.urgency(name).say) for name in pages.end]
    return ", or ".join([*_tags(wall, pages.tag), *_shown(wall, pages.shows), *ends])


def _tags(wall: Wall, tags: tuple[str, ...]) -> list[str]:
    return [_small(wall.guide.front.act_tags[each]) for each in tags]


def _shown(wall: Wall, names: tuple[str, ...]) -> list[str]:
    numbers = wall.guide.numbers
    return [_small(AMOUNTS[name].title if name in AMOUNTS else numbers[name].title) for name in names]


def _small(words: str) -> str:
    return words if words.startswith("I ") else words[:1].lower() + words[1:]
