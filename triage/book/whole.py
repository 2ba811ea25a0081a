"""The book, put together."""

from __future__ import annotations

from collections.abc import Iterator

from triage.amounts import AMOUNTS
from triage.book import opening
from triage.book.brought import brought_to
from triage.book.forbidding import rules_part
from triage.book.glossary import words_part
from triage.book.making import Making
from triage.book.maps import map_sections, maps_of
from triage.book.marks import lean
from triage.book.memory import memory_of
from triage.book.places import Places, node_anchor, parts_of, topic_anchor
from triage.book.published import numbers_part, sources_part
from triage.book.raising import law_part, raising_part
from triage.book.stock import stock_part
from triage.book.style import style
from triage.book.tables import table_sections, tables_of
from triage.book.techniques import technique_sections
from triage.book.topics import topic_part
from triage.book.walked import Walked
from triage.book.words import Words
from triage.guide.model import Guide
from triage.page.inert import inert
from triage.paper.html import document

PARTS = {
    "raising": raising_part,
    "laws": law_part,
    "cupboard": stock_part,
    "rules": rules_part,
    "numbers": numbers_part,
    "words": words_part,
    "sources": sources_part,
}


def book_of(making: Making) -> str:
    """Return the book as one HTML file that needs nothing beside it. The guide must have been read whole."""
    guide = making.guide
    words = Words(making, Places(making, tables_of(guide), maps_of(making)))
    title = f"{guide.front.title}, edition {guide.front.edition}"
    return document(title, style(_topics(guide)), lean("".join(_body(words))))


def _topics(guide: Guide) -> dict[str, str]:
    return {topic_anchor(name): inert(guide.topics[name].title) for name in guide.front.topics}


def _body(words: Words) -> Iterator[str]:
    memory = memory_of(words.guide, words.places.start)
    walked = Walked(words, memory, brought_to(words.guide, words.places.start))
    yield f'<a class="skip" href="#{node_anchor(words.places.start)}">To the danger signs</a>\n'
    yield opening.header(words)
    yield opening.bar(words)
    yield "<main>\n"
    yield opening.first_part(words, walked)
    yield opening.use_part(words, memory)
    yield opening.contents(words)
    for name in words.guide.front.topics:
        yield topic_part(words, walked, name)
    yield from _reference(words)
    yield "</main>\n"
    yield opening.footer(words)


def _reference(words: Words) -> Iterator[str]:
    titles = {name: AMOUNTS[name].title for name in tables_of(words.guide)}
    if words.guide.how_tos:
        yield opening.listing("How to do it", "how", opening.how_links(words))
        yield f'<div class="topic">{"".join(technique_sections(words))}</div>'
    if titles:
        yield opening.listing(
            "Amounts by weight", "amounts", opening.table_links(words, words.places, titles)
        )
        yield from table_sections(words)
    for name in parts_of(words.guide):
        yield PARTS[name](words)
    if maps_of(words.making):
        yield '<h2 class="maps">Maps of the topics</h2>'
        yield from map_sections(words)
