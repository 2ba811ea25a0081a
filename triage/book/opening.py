"""The first pages: what the book is, the danger signs, how to use it, what it is for, and what is in it."""

from __future__ import annotations

from collections.abc import Iterator

from triage.book.marks import listed, para, tag
from triage.book.memory import Memory
from triage.book.phone import STANDS, numbers, stands
from triage.book.places import (
    Places,
    how_anchor,
    map_anchor,
    node_anchor,
    parts_of,
    table_anchor,
    topic_anchor,
)
from triage.book.walked import Walked
from triage.book.words import Words
from triage.guide.model import Finding
from triage.paper.html import safe
from triage.paper.sheets import Foot

FIRST = Foot("", "").word
"""What every written page says of itself."""

OFTEN = 5
"""A finding that so many questions ask for again gets a line on paper to be written on."""

TITLES = {
    "raising": "Raising a lamb",
    "laws": "Rings and docking: what laws say",
    "cupboard": "What to have in the house",
    "rules": "What must never happen, and why",
    "numbers": "Numbers, and what is published",
    "words": "Words",
    "sources": "Sources",
}
USE = (
    "Begin at the danger signs, each time. Take the answer that is true now, and go to the number beside it.",
    "On a screen touch the answer. On paper turn to the section of that number; they run through the book.",
    "Not sure is an answer too, and counts as a worry.",
    "The book remembers nothing. Where you have answered before, it says so: take the same answer.",
    "A call to the vet on your way stands from there on. It gets more urgent, and never less.",
    "Took a wrong answer? Go back to its question. Your browser's own way back does it too.",
    "An amount goes by weight. Follow its number to the table, and read it off for this lamb.",
)


def header(words: Words) -> str:
    """Return the title, the edition, how the guidance stands, and whom to phone."""
    front, making = words.guide.front, words.making
    meta = f"Edition {safe(front.edition)} of {safe(front.date)}. {safe(making.told.whole)}".strip()
    parts = (
        f"<h1>{words.plain(front.title)}</h1>",
        para(meta, "meta"),
        para(safe(making.told.overdue), "overdue"),
        para(_phone(words), "phone"),
    )
    return f"<header>{''.join(parts)}</header>\n"


def _phone(words: Words) -> str:
    """Return the vet's numbers, or room on paper to write one."""
    room = '<span class="paper">Your vet, by day and at night: <span class="blank"></span></span>'
    return numbers(words.making) or room


def bar(words: Words) -> str:
    """Return what stays in view: links, that a call stands, and the number to phone."""
    links = [(node_anchor(words.places.start), "Danger signs"), ("contents", "Contents")]
    tables = any(anchor.startswith("table-") for anchor in words.places.numbers)
    links += [("amounts", "Amounts")] if tables else []
    inner = "".join(f'<a href="#{anchor}">{said}</a>' for anchor, said in links)
    return f'<nav class="bar" aria-label="Always at hand">{inner}{para(stands(words.making))}</nav>\n'


def first_part(words: Words, walked: Walked) -> str:
    """Return the danger signs and, where there are other ways in, the question that leads to them."""
    start, *others = words.places.first
    other = "".join(
        para(f"Not about one lamb? {words.places.link(node_anchor(each.name), 'Another way in')}.", "other")
        for each in others
    )
    sections = walked.section(start) + other + "".join(map(walked.section, others))
    return f'<section id="first" class="topic"><h2>Danger signs first</h2>{sections}</section>\n'


def use_part(words: Words, memory: Memory) -> str:
    """Return how to use the book, what it is for, and what it does not cover."""
    front = words.guide.front
    return (
        f'<section id="use" class="topic"><h2>How to use this book</h2>'
        f"{listed(map(safe, USE))}{_room(words, memory)}"
        f"<h2>What it is for</h2>{para(words.fill(front.intended_use))}{para(FIRST)}"
        f"{words.standing('guide/front')}"
        f"<h3>What it does not cover</h3>{listed(map(words.fill, front.not_covered))}</section>\n"
    )


def _room(words: Words, memory: Memory) -> str:
    """Return lines to write those answers on that are asked for again, for paper alone."""
    again = memory.often(OFTEN)
    findings: list[Finding] = [each for each in words.guide.findings.values() if each.name in again]
    lines = "".join(f'<li>{words.label(each)} <span class="blank"></span></li>' for each in findings)
    title = "Write your answers here in pencil"
    return f'<div class="paper room"><p><b>{title}</b></p><ul>{lines}</ul></div>' if lines else ""


def contents(words: Words) -> str:
    """Return the list of what is in the book."""
    rows = "".join(f"<li>{each}</li>" for each in _rows(words))
    inner = tag("h2", "Contents") + f'<ul class="answers">{rows}</ul>'
    return f'<nav id="contents" aria-label="Contents">{inner}</nav>\n'


def _rows(words: Words) -> Iterator[str]:
    guide, places = words.guide, words.places
    for name in guide.front.topics:
        nodes = places.of_topic(name)
        if nodes:
            ends = [places.number(node_anchor(node.name)) for node in (nodes[0], nodes[-1])]
            yield _row(topic_anchor(name), words.plain(guide.topics[name].title), *ends)
    groups = (
        ("How to do it", [how_anchor(name) for name in guide.how_tos]),
        ("Amounts by weight", [anchor for anchor in places.numbers if anchor.startswith("table-")]),
    )
    for title, anchors in groups:
        if anchors:
            yield _row(anchors[0], title, places.number(anchors[0]), places.number(anchors[-1]))
    yield from (_row(anchor, TITLES[anchor], places.number(anchor)) for anchor in parts_of(guide))
    drawn = [map_anchor(name) for name in guide.front.topics if map_anchor(name) in places.numbers]
    if drawn:
        yield _row(drawn[0], "Maps of the topics", places.number(drawn[0]), places.number(drawn[-1]))


def _row(anchor: str, title: str, first: int, last: int = 0) -> str:
    said = f"{first} to {last}" if last > first else str(first)
    return f'<a href="#{anchor}"><span>{title}</span> <i>{said}</i></a>'


def listing(title: str, anchor: str, links: Iterator[str]) -> str:
    """Return a second heading with a list of links to the sections that follow."""
    return f'<section id="{anchor}" class="topic"><h2>{title}</h2>{listed(links, "leads")}</section>\n'


def how_links(words: Words) -> Iterator[str]:
    """Yield a link to each technique."""
    for how in words.guide.how_tos.values():
        yield words.places.link(how_anchor(how.name), words.plain(how.title))


def table_links(words: Words, places: Places, titles: dict[str, str]) -> Iterator[str]:
    """Yield a link to each table."""
    for name, title in titles.items():
        yield places.link(table_anchor(name), words.plain(title))


def footer(words: Words) -> str:
    """Return what stands at the end, and on paper at the foot of each page."""
    front, told = words.guide.front, words.making.told
    said = (
        f"{words.plain(front.title)}. Edition {safe(front.edition)} of {safe(front.date)}. "
        f"Written {words.making.written}. {safe(told.whole)} {safe(told.overdue)}"
    )
    return f"<footer><p>{said.strip()}</p><p>{FIRST} {STANDS}.</p></footer>\n"
