"""Texts that read otherwise, and which of their words are out and which are in."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from difflib import SequenceMatcher
from itertools import zip_longest
from typing import Any, Literal

from triage.compare.compared import Reworded
from triage.compare.statements import Statements
from triage.guide.items import Item
from triage.guide.model import Act, End, Finding, Front, Guide, HowTo, Number, Source, Term, Topic, Urgency
from triage.guide.model_practice import Deed, WrittenCase
from triage.guide.model_rearing import Duty, Law
from triage.guide.model_rules import Rule
from triage.guide.texts import (
    Passage,
    case_texts,
    duty_texts,
    finding_texts,
    front_texts,
    how_to_texts,
    item_texts,
    law_texts,
    number_texts,
    term_texts,
    texts_of,
)

Mark = Literal["same", "out", "in"]


def words_changed(old: Guide, new: Guide, statements: Statements) -> tuple[Reworded, ...]:
    """Return each text of a statement that both guides have, and that reads otherwise in the new one."""
    pairs = [(key, key) for key in statements.both] + list(statements.renamed)
    return tuple(
        Reworded(after, kind, was, now)
        for before, after in pairs
        for kind, was, now in _texts(statements.old[before], statements.new[after])
    )


def marked(old: str, new: str) -> tuple[tuple[Mark, str], ...]:
    """Return the words of both texts in stretches: the same in both, out of the old one, in the new one."""
    before, after = old.split(), new.split()
    found: list[tuple[Mark, str]] = []
    for kind, a, b, c, d in SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        if kind == "equal":
            found.append(("same", " ".join(before[a:b])))
            continue
        if a < b:
            found.append(("out", " ".join(before[a:b])))
        if c < d:
            found.append(("in", " ".join(after[c:d])))
    return tuple(found)


def _texts(before: object, after: object) -> Iterator[tuple[str, str, str]]:
    """Yield the kind of each text that changed, the old one and the new one; one may be empty."""
    was, now = list(passages_of(before)), list(passages_of(after))
    for kind in dict.fromkeys(each.kind for each in (*was, *now)):
        mine = [each.text for each in was if each.kind == kind]
        theirs = [each.text for each in now if each.kind == kind]
        yield from ((kind, *pair) for pair in _changed(mine, theirs))


def _changed(before: Sequence[str], after: Sequence[str]) -> Iterator[tuple[str, str]]:
    for kind, a, b, c, d in SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        if kind != "equal":
            yield from zip_longest(before[a:b], after[c:d], fillvalue="")


def passages_of(value: object) -> Iterator[Passage]:
    """Yield the texts that people read in a statement; a question has none but those of its finding."""
    texts = _TEXTS.get(type(value))
    return texts(value) if texts else iter(())


def _topic(topic: Topic) -> Iterator[Passage]:
    yield Passage(topic.place, "title", topic.title)
    yield Passage(topic.place, "about", topic.about)


def _urgency(urgency: Urgency) -> Iterator[Passage]:
    texts = (urgency.say, urgency.means, urgency.opens, urgency.asks)
    return (Passage(urgency.place, "means", text) for text in texts if text)


def _rule(rule: Rule) -> Iterator[Passage]:
    yield Passage(rule.place, "why", rule.because)


def _deed(deed: Deed) -> Iterator[Passage]:
    yield Passage(deed.place, "step", deed.do)


def _source(source: Source) -> Iterator[Passage]:
    texts = (source.title, source.by, source.in_, source.year, source.where, source.note)
    return (Passage(source.place, "note", text) for text in texts if text)


_TEXTS: Mapping[type, Callable[[Any], Iterator[Passage]]] = {
    Act: texts_of,
    End: texts_of,
    Finding: finding_texts,
    HowTo: how_to_texts,
    Number: number_texts,
    Term: term_texts,
    Duty: duty_texts,
    Law: law_texts,
    Item: item_texts,
    WrittenCase: case_texts,
    Front: front_texts,
    Topic: _topic,
    Urgency: _urgency,
    Rule: _rule,
    Deed: _deed,
    Source: _source,
}
