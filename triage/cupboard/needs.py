"""Which pages, how-tos and duties need a thing: found from words, tags and sums, and written down nowhere.

A page needs what its steps name, what their tags and sums call for, and all that their how-tos need. A
question needs what it takes to look. Cautions are not read: they name what to keep away from.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from triage.guide.glossary import Glossary
from triage.guide.items import Item
from triage.guide.model import PLACEHOLDER, Ask, Guide, HowTo, Node, Step, Term
from triage.guide.model_rearing import Duty
from triage.guide.texts import steps_of


class Needed(NamedTuple):
    """The names of what needs a thing, in the guide's own order."""

    how_tos: tuple[str, ...]
    nodes: tuple[str, ...]
    duties: tuple[str, ...] = ()
    """Of the raising plan; empty where the guide was read without it."""


class Needs:
    """A guide's things, ready to be found in its texts."""

    def __init__(self, guide: Guide) -> None:
        self._guide = guide
        self._items = guide.cupboard
        # The words are found as trade words are: the longest where two begin, and with a plural `s`.
        self._words = Glossary(
            Term(item.words[0], item.name, item.words[1:]) for item in self._items.values() if item.words
        )
        self._of_how_to = {
            name: self.named((*how_to.need, *how_to.steps)) for name, how_to in guide.how_tos.items()
        }

    def named(self, texts: Iterable[str]) -> frozenset[str]:
        """Return the things that texts name."""
        return frozenset(term.means for term in self._words.terms_in(texts))

    def of_how_to(self, how_to: HowTo) -> frozenset[str]:
        """Return the things that a technique needs."""
        return self._of_how_to[how_to.name]

    def of_node(self, node: Node) -> frozenset[str]:
        """Return the things that a page needs."""
        if isinstance(node, Ask):
            finding = self._guide.findings[node.finding]
            return self.named((finding.look,)) | self._how(finding.how)
        return frozenset().union(*(self._of_step(step) | self._how(step.how) for step in steps_of(node)))

    def of_duty(self, duty: Duty) -> frozenset[str]:
        """Return the things that a duty of the raising plan needs: what its lines name or measure out."""
        shown = {name for text in duty.do for name in PLACEHOLDER.findall(text)}
        return self.named(duty.do) | {item.name for item in self._items.values() if shown & set(item.shows)}

    def _how(self, how_to: str) -> frozenset[str]:
        return self._of_how_to.get(how_to, frozenset())

    def _of_step(self, step: Step) -> frozenset[str]:
        tags, shown = set(step.tag), set(PLACEHOLDER.findall(step.do))
        called = {
            item.name for item in self._items.values() if tags & set(item.tags) or shown & set(item.shows)
        }
        wanted = called | self.named((step.do,))
        return frozenset(name for name in wanted if not tags & set(self._items[name].unless))


def needs_of(guide: Guide) -> Mapping[str, Needed]:
    """Return what needs each thing of the cupboard."""
    needs = Needs(guide)
    by_how_to = {name: needs.of_how_to(how_to) for name, how_to in guide.how_tos.items()}
    by_node = {name: needs.of_node(node) for name, node in guide.nodes.items()}
    by_duty = {name: needs.of_duty(duty) for name, duty in guide.duties.items()}
    return {
        name: Needed(_which(by_how_to, name), _which(by_node, name), _which(by_duty, name))
        for name in guide.cupboard
    }


def _which(needing: Mapping[str, frozenset[str]], item: str) -> tuple[str, ...]:
    return tuple(name for name, items in needing.items() if item in items)


def words_of(item: Item) -> tuple[str, ...]:
    """Return the words of a thing as they are compared: in small letters, each once."""
    return tuple(dict.fromkeys(word.lower() for word in item.words))
