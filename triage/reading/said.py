"""The texts of each statement, as people read them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from triage.amounts import AMOUNTS
from triage.guide import texts
from triage.guide.model import Ask, Front, Guide
from triage.guide.texts import Passage
from triage.problems import Place
from triage.reading.kinds import parted
from triage.reading.values import value_of


def passages_of(guide: Guide, key: str) -> Iterator[Passage]:
    """Yield the texts of a statement; a question has those of its finding, as its page shows them."""
    kind, name = parted(key)
    value = value_of(guide, key)
    if isinstance(value, Ask):
        yield from texts.finding_texts(guide.findings[value.finding])
    elif isinstance(value, Front):
        yield Passage(value.place, "title", value.title)
        yield Passage(value.place, "about", value.intended_use)
        yield from (Passage(value.place, "label", text) for text in value.not_covered)
    elif kind == "topic":
        yield Passage(value.place, "title", value.title)
        yield Passage(value.place, "about", value.about)
    elif kind == "sum":
        yield Passage(Place("sums"), "title", AMOUNTS[name].title)
    elif kind in _TEXTS:
        yield from _TEXTS[kind](value)
    else:
        yield from (Passage(value.place, "note", getattr(value, field)) for field in _FIELDS[kind])


_TEXTS: dict[str, Callable[[Any], Iterator[Passage]]] = {
    "node": texts.texts_of,
    "finding": texts.finding_texts,
    "number": texts.number_texts,
    "how-to": texts.how_to_texts,
    "duty": texts.duty_texts,
    "law": texts.law_texts,
    "item": texts.item_texts,
    "term": texts.term_texts,
    "case": texts.case_texts,
}
"""The list of texts of each kind that has one."""

_FIELDS = {
    "guide": ("farm",),
    "urgency": ("say", "means"),
    "rule": ("because",),
    "source": ("title", "by", "in_", "note"),
    "deed": ("do",),
}
"""The fields that are texts, of what has no such list."""
