"""What a page is to the rules: its tags, what it shows and what it says, each gathered once."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from triage.guide.model import PLACEHOLDER, Act, Ask, End, Guide
from triage.guide.model_rules import Rule, Trait
from triage.guide.texts import steps_of, texts_of
from triage.problems import Place


@dataclass(frozen=True)
class Page:
    """An act or an end, as rules see it."""

    node: Act | End
    tags: frozenset[str]
    """Every tag of its steps."""
    shown: Mapping[str, Place]
    """The numbers and sums that it shows, each with the place of its text."""
    said: str
    """Its texts, in small letters, with a sign between them that no word holds."""

    def spoken_of(self, rule: Rule) -> bool:
        """Whether a rule speaks of this page: those of `on`, or else every act and end, or every end."""
        on = rule.on
        if on is None:
            return rule.never is not None or isinstance(self.node, End)
        return (
            not self.tags.isdisjoint(on.tag)
            or not self.shown.keys().isdisjoint(on.shows)
            or (isinstance(self.node, End) and self.node.urgency in on.end)
        )

    def has(self, trait: Trait) -> bool:
        """Whether it has a trait, urgency left aside: any of the tags or sums, or all of the words."""
        if trait.tag:
            return not self.tags.isdisjoint(trait.tag)
        if trait.shows:
            return not self.shown.keys().isdisjoint(trait.shows)
        return bool(trait.says) and not self.unsaid(trait.says)

    def unsaid(self, words: tuple[str, ...]) -> list[str]:
        """Return the words that no text of it says."""
        return [word for word in words if word.lower() not in self.said]


def pages_of(guide: Guide) -> dict[str, Page]:
    """Return every act and end as a page, by its name."""
    return {name: _page(node) for name, node in guide.nodes.items() if not isinstance(node, Ask)}


def _page(node: Act | End) -> Page:
    passages = tuple(texts_of(node))
    return Page(
        node,
        frozenset(tag for step in steps_of(node) for tag in step.tag),
        {name: text.place for text in passages for name in PLACEHOLDER.findall(text.text)},
        "\0".join(text.text.lower() for text in passages),
    )
