"""A topic: what it is about, where it can lead, and its sections."""

from __future__ import annotations

from collections.abc import Iterator

from triage.book.marks import listed, para, tag
from triage.book.places import map_anchor, node_anchor, topic_anchor
from triage.book.walked import Walked
from triage.book.words import Words
from triage.guide.model import End

CODE = "Code of this topic as printed here: {}. A vet who has read it on paper signs it with this code."


def topic_part(words: Words, walked: Walked, name: str) -> str:
    """Return a topic with its sections."""
    topic = words.guide.topics[name]
    head = (
        tag("h2", words.plain(topic.title))
        + para(words.fill(topic.about))
        + words.standing(f"topic/{name}")
        + para(_code(words, name), "code")
        + _map(words, name)
        + _leads(words, name)
    )
    sections = "".join(walked.nodes(words.places.of_topic(name)))
    return f'<section id="{topic_anchor(name)}" class="topic">{head}{sections}</section>\n'


def _code(words: Words, name: str) -> str:
    code = words.making.told.codes.get(name, "")
    return CODE.format(f'<span class="sign">{code}</span>') if code else ""


def _map(words: Words, name: str) -> str:
    if map_anchor(name) not in words.places.numbers:
        return ""
    title = f"The map of {words.small(words.guide.topics[name].title)}"
    return para(words.places.link(map_anchor(name), title), "to-map")


def _leads(words: Words, name: str) -> str:
    """Return every end of the topic in a line, the most urgent first: what the map shows, in words."""
    ends = [node for node in words.guide.by_topic.get(name, ()) if isinstance(node, End)]
    found = {
        urgency.say: [end for end in ends if end.urgency == urgency.name]
        for urgency in words.guide.front.urgencies
    }
    said = "".join(
        f"<dt>{words.plain(say)}</dt><dd>{listed(_ends(words, each))}</dd>"
        for say, each in found.items()
        if each
    )
    return f'<dl class="leads">{said}</dl>' if said else ""


def _ends(words: Words, ends: list[End]) -> Iterator[str]:
    for end in ends:
        yield words.places.link(node_anchor(end.name), words.plain(end.title))
