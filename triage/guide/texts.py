"""Every text that people read, listed once: the faces, the record and the checks all go by this list."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Literal, NamedTuple

from triage.guide.model import (
    Act,
    Ask,
    End,
    Finding,
    Front,
    Guide,
    HowTo,
    Node,
    Number,
    Step,
    Term,
    Topic,
)
from triage.problems import Place

if TYPE_CHECKING:
    from triage.guide.items import Item
    from triage.guide.model_practice import WrittenCase
    from triage.guide.model_rearing import Duty, Law

UNWRITTEN = "TOWRITE"
"""Stands in each text that is left to its author; the check refuses it wherever it stands."""

Kind = Literal[
    "title", "label", "about", "ask", "look", "why", "choice", "likely", "step", "caution", "call",
    "need", "right", "stop", "note", "basis", "means",
]  # fmt: skip
"""What a text is for. `basis` is the title and the note of a number, which tell what its sources say."""


class Passage(NamedTuple):
    """One text: where it was written (its step, or else what it belongs to), what it is for, and itself."""

    place: Place
    kind: Kind
    text: str


def steps_of(node: Node) -> tuple[Step, ...]:
    """Return the steps of an act or an end; an ask has none."""
    if isinstance(node, Act):
        return node.steps
    return node.do if isinstance(node, End) else ()


def said_on(node: Node) -> tuple[str, ...]:
    """Return the texts of a node alone, in the order in which its page shows them."""
    return tuple(passage.text for passage in texts_of(node))


def texts_of(node: Node) -> Iterator[Passage]:
    """Yield the texts that a node has itself; an ask shows those of its finding."""
    if isinstance(node, Ask):
        return
    yield Passage(node.place, "title", node.title)
    if isinstance(node, End) and node.likely:
        yield Passage(node.place, "likely", node.likely)
    yield from (Passage(step.place, "step", step.do) for step in steps_of(node))
    yield from (Passage(node.place, "caution", text) for text in node.cautions)
    if isinstance(node, End):
        yield Passage(node.place, "call", node.call_vet)


def topic_texts(guide: Guide, topic: Topic) -> Iterator[Passage]:
    """Yield the texts of a topic and of all its nodes."""
    yield Passage(topic.place, "title", topic.title)
    yield Passage(topic.place, "about", topic.about)
    for node in guide.by_topic.get(topic.name, ()):
        yield from texts_of(node)


def finding_texts(finding: Finding) -> Iterator[Passage]:
    """Yield the texts of a finding, its choices and its words for "not sure" among them."""
    place = finding.place
    yield Passage(place, "label", finding.label)
    yield Passage(place, "ask", finding.ask)
    if finding.look:
        yield Passage(place, "look", finding.look)
    yield Passage(place, "why", finding.why)
    for choice in (*finding.choices.values(), finding.unsure):
        if choice:
            yield Passage(place, "choice", choice)


def how_to_texts(how_to: HowTo) -> Iterator[Passage]:
    """Yield the texts of a technique."""
    place = how_to.place
    yield Passage(place, "title", how_to.title)
    yield from (Passage(place, "need", text) for text in how_to.need)
    yield from (Passage(place, "step", text) for text in how_to.steps)
    yield from (Passage(place, "caution", text) for text in how_to.cautions)
    rest: tuple[tuple[Kind, str], ...] = (
        ("why", how_to.why),
        ("right", how_to.right),
        ("stop", how_to.stop),
        ("note", how_to.note),
    )
    yield from (Passage(place, kind, text) for kind, text in rest if text)


def number_texts(number: Number) -> Iterator[Passage]:
    """Yield the texts of a number, which stand on the page of the working."""
    yield Passage(number.place, "basis", number.title)
    if number.note:
        yield Passage(number.place, "basis", number.note)


def item_texts(item: Item) -> Iterator[Passage]:
    """Yield the texts of a thing in the cupboard."""
    place = item.place
    yield Passage(place, "title", item.title)
    yield Passage(place, "why", item.why)
    yield from (Passage(place, "note", text) for text in (item.keeps, item.ask_vet) if text)
    yield from (Passage(place, "caution", text) for text in item.cautions)


def term_texts(term: Term) -> Iterator[Passage]:
    """Yield the meaning of a trade word."""
    yield Passage(term.place, "means", term.means)


def front_texts(front: Front) -> Iterator[Passage]:
    """Yield the texts of the guide's first page."""
    yield Passage(front.place, "title", front.title)
    yield Passage(front.place, "about", front.intended_use)
    yield from (Passage(front.place, "label", text) for text in front.not_covered)
    for urgency in front.urgencies:
        yield Passage(urgency.place, "title", urgency.say)
        yield Passage(urgency.place, "means", urgency.means)
        if urgency.asks:
            yield Passage(urgency.place, "ask", urgency.asks)


def duty_texts(duty: Duty) -> Iterator[Passage]:
    """Yield the texts of one thing that is done in raising a lamb."""
    yield Passage(duty.place, "title", duty.title)
    yield from (Passage(duty.place, "step", text) for text in duty.do)
    yield from (Passage(duty.place, "caution", text) for text in duty.cautions)
    if duty.why:
        yield Passage(duty.place, "why", duty.why)


def law_texts(law: Law) -> Iterator[Passage]:
    """Yield what a law says."""
    yield Passage(law.place, "label", law.where)
    yield from (Passage(law.place, "note", text) for text in law.says)


def case_texts(case: WrittenCase) -> Iterator[Passage]:
    """Yield the texts of a practice case."""
    yield from (Passage(case.place, "note", text) for text in (case.story, case.trap, case.remember) if text)


def practice_texts(guide: Guide) -> Iterator[Passage]:
    """Yield all texts of practice, the names of the invented farm's people among them."""
    for case in guide.cases.values():
        yield from case_texts(case)
    for deed in guide.deeds.values():
        yield Passage(deed.place, "step", deed.do)
    if guide.farm:
        yield from (
            Passage(guide.farm.place, "note", text) for each in guide.farm.openings.values() for text in each
        )


def all_texts(guide: Guide) -> Iterator[Passage]:
    """Yield every text of a guide. Sources are titles of other people's, and are not among them."""
    yield from front_texts(guide.front)
    for finding in guide.findings.values():
        yield from finding_texts(finding)
    for topic in guide.topics.values():
        yield from topic_texts(guide, topic)
    for how_to in guide.how_tos.values():
        yield from how_to_texts(how_to)
    for number in guide.numbers.values():
        yield from number_texts(number)
    for term in guide.glossary.values():
        yield from term_texts(term)
    for duty in guide.duties.values():
        yield from duty_texts(duty)
    for law in guide.laws.values():
        yield from law_texts(law)
    for item in guide.cupboard.values():
        yield from item_texts(item)
    yield from practice_texts(guide)
