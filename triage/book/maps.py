"""The map of each topic as a picture. Its sections and the list of its ends say the same in words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from triage.book.making import Making
from triage.book.marks import para, section
from triage.book.places import map_anchor, node_anchor, topic_anchor
from triage.book.words import Words

NUMBERS = "The number of a box is that of its section."


def maps_of(making: Making) -> tuple[str, ...]:
    """Return the topics that have a map in a book."""
    topics = making.guide.front.topics if making.maps else ()
    return tuple(name for name in topics if making.guide.by_topic.get(name))


def map_sections(words: Words) -> Iterator[str]:
    """Yield the map of each topic; each box on it is a link to its section."""
    from triage.maps.svg import svg_map

    def number(node: str) -> int:
        return words.places.number(node_anchor(node))

    for at, name in enumerate(maps_of(words.making)):
        title, anchor = words.plain(words.guide.topics[name].title), map_anchor(name)
        drawn = svg_map(words.guide, name, _address, words.making.system, number)
        if at:  # one style is enough for all of them
            drawn = _STYLED.sub("", drawn)
        same = f'<a href="#{topic_anchor(name)}">the sections of {words.small(title)}</a>'
        label = f'class="wide map" tabindex="0" role="region" aria-label="The map of {words.small(title)}"'
        inner = para(f"The same in words: {same}. {NUMBERS}") + f"<div {label}>{_begins(drawn)}{drawn}</div>"
        yield section(anchor, words.places.number(anchor), f"Map: {title}", inner, "drawn")


def _address(node: str) -> str:
    return f"#{node_anchor(node)}"


_STYLED = re.compile(r"<style>.*?</style>", re.DOTALL)
_FIRST = re.compile(r"translate\((\d+) ")


def _begins(drawn: str) -> str:
    """Return a mark where a map begins: a browser that can scrolls there, so that none opens empty."""
    found = _FIRST.search(drawn)
    return f'<span class="here" style="left:{found[1]}px"></span>' if found else ""
