"""The rules: what must never happen to a lamb, or always, and why."""

from __future__ import annotations

from triage.amounts import AMOUNTS
from triage.book.lambs import lamb_words
from triage.book.marks import listed, para, part
from triage.book.words import Words
from triage.guide.model_rules import Pages, Rule, Trait

LEAD = (
    "The guide is proved against each of these, on every way that a lamb can take through it. "
    "They are also what to hold on to where you have no time to read."
)


def rules_part(words: Words) -> str:
    """Return every rule."""
    number = words.places.number("rules")
    rules = listed((_rule(words, rule) for rule in words.guide.rules.values()), "entries")
    return part(
        "rules", number, "What must never happen, and what must always be, and why", para(LEAD) + rules
    )


def _rule(words: Words, rule: Rule) -> str:
    trait = rule.never or rule.always
    said = f"{'Never' if rule.never else 'Always'}: {_trait(words, trait)}." if trait else ""
    on = _pages(words, rule.on) if rule.on else ""
    when = lamb_words(words, rule.when)
    return (
        f'<b id="rule-{rule.name}">{said}</b>'
        + (f" Where there is: {on}." if on else "")
        + (f" When: {when}." if when else "")
        + f' Why: {words.fill(rule.because)} <span class="behind">{words.sources(rule.sources)}.</span>'
        + words.standing(f"rule/{rule.name}")
    )


def _trait(words: Words, trait: Trait) -> str:
    parts = _tags(words, trait.tag) + _shown(words, trait.shows)
    parts += [f"the words \u201c{words.small(each)}\u201d" for each in trait.says]
    if trait.urgency:
        parts.append(words.small(words.guide.urgency(trait.urgency).say))
    return ", or ".join(parts)


def _pages(words: Words, pages: Pages) -> str:
    ends = [words.small(words.guide.urgency(name).say) for name in pages.end]
    return ", or ".join(_tags(words, pages.tag) + _shown(words, pages.shows) + ends)


def _tags(words: Words, tags: tuple[str, ...]) -> list[str]:
    return [words.small(words.guide.front.act_tags[each]) for each in tags]


def _shown(words: Words, names: tuple[str, ...]) -> list[str]:
    numbers = words.guide.numbers
    titles = (AMOUNTS[name].title if name in AMOUNTS else numbers[name].title for name in names)
    return [words.small(title) for title in titles]
