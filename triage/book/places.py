"""The numbers of sections: one row of them through the whole book, in the order in which it is read."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from triage.book.making import Making
from triage.guide.model import Ask, Guide, Node
from triage.ways_in import matter

MAIN = ("raising", "laws", "cupboard", "rules", "numbers", "words", "sources")
"""The parts behind the walk, the techniques and the tables."""


def parts_of(guide: Guide) -> tuple[str, ...]:
    """Return those of the parts that this guide has anything for."""
    held = (
        *(guide.duties, guide.laws, guide.cupboard, guide.rules),
        *(guide.numbers, guide.glossary, guide.sources),
    )
    return tuple(name for name, has in zip(MAIN, held, strict=True) if has)


def start_of(guide: Guide) -> str:
    """Return the first node that a walk shows where nobody says what it is about."""
    node = guide.nodes[guide.front.way_in]
    finding = matter(guide)
    if isinstance(node, Ask) and finding is not None and node.finding == finding.name:
        taken = guide.front.unless_told[finding.name]
        return next((branch.go for branch in node.branches if taken in branch.is_), node.name)
    return node.name


class Places:
    """Where everything is: anchors and numbers."""

    def __init__(self, making: Making, tables: tuple[str, ...], maps: tuple[str, ...]) -> None:
        self._guide = making.guide
        self._tables, self._maps = tables, maps
        self.start = start_of(making.guide)

    @cached_property
    def first(self) -> tuple[Node, ...]:
        """The question that a walk begins with, and what asks what it is about."""
        names = dict.fromkeys((self.start, self._guide.front.way_in))
        return tuple(self._guide.nodes[name] for name in names)

    def of_topic(self, topic: str) -> tuple[Node, ...]:
        """Return the nodes of a topic that do not stand at the very beginning."""
        return tuple(node for node in self._guide.by_topic.get(topic, ()) if node not in self.first)

    def _anchors(self) -> Iterator[str]:
        yield from (node_anchor(node.name) for node in self.first)
        for topic in self._guide.front.topics:
            yield from (node_anchor(node.name) for node in self.of_topic(topic))
        yield from (how_anchor(name) for name in self._guide.how_tos)
        yield from (table_anchor(name) for name in self._tables)
        yield from parts_of(self._guide)
        yield from (map_anchor(topic) for topic in self._maps)

    @cached_property
    def numbers(self) -> dict[str, int]:
        """The number of each anchor, from 1."""
        return {anchor: number for number, anchor in enumerate(self._anchors(), 1)}

    def number(self, anchor: str) -> int:
        """Return the number of an anchor."""
        return self.numbers[anchor]

    def link(self, anchor: str, words: str) -> str:
        """Return a link in words with the number of where it leads."""
        return f'<a href="#{anchor}">{words}, {self.numbers[anchor]}</a>'


def node_anchor(name: str) -> str:
    """Return the anchor of a question, an act or an end."""
    return f"node-{name}"


def how_anchor(name: str) -> str:
    """Return the anchor of a technique."""
    return f"how-{name}"


def table_anchor(name: str) -> str:
    """Return the anchor of the table that holds a sum."""
    return f"table-{name}"


def map_anchor(topic: str) -> str:
    """Return the anchor of the map of a topic."""
    return f"map-{topic}"


def topic_anchor(topic: str) -> str:
    """Return the anchor of a topic."""
    return f"topic-{topic}"
