"""Other words for texts of a guide, text for text, so that none can be added, dropped or moved."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, is_dataclass, replace
from typing import Any

from triage.guide.files import OWN
from triage.guide.find import Folder
from triage.guide.fitting import WORDS
from triage.guide.leaves import Plain
from triage.guide.model import PLACEHOLDER, Guide
from triage.guide.shapes import ListOf, Reading, Record
from triage.problems import Place, Problem, nearest

PROSE: Mapping[str, tuple[str, ...]] = {
    "Front": ("title", "intended_use", "not_covered", "urgencies"),
    "Urgency": ("say", "means", "opens", "asks"),
    "Topic": ("title", "about"),
    "Finding": ("label", "ask", "why", "look", "choices", "unsure"),
    "Step": ("do",),
    "Act": ("title", "steps", "cautions"),
    "End": ("title", "likely", "do", "cautions", "call_vet"),
    "Number": ("title", "note"),
    "HowTo": ("title", "steps", "cautions", "why", "need", "right", "stop", "note"),
    "Term": ("means",),
    "Duty": ("title", "do", "why", "cautions"),
    "Law": ("where", "says"),
    "Item": ("title", "why", "ask_vet", "keeps", "cautions"),
    "Rule": ("because",),
}
"""For each part of a guide its fields that hold texts for people."""

HELD = (
    "topics",
    "findings",
    "nodes",
    "numbers",
    "how_tos",
    "glossary",
    "duties",
    "laws",
    "cupboard",
    "rules",
)


@dataclass(frozen=True)
class Pair:
    """A text of the guide, and what stands here in its place."""

    shipped: str
    here: str
    place: Place = field(default=Place(""), compare=False)


@dataclass(frozen=True)
class Words:
    """Other words, and the language that they are in where it is another one."""

    words: tuple[Pair, ...]
    language: str = ""
    place: Place = field(default=Place(""), compare=False)

    @property
    def pairs(self) -> dict[str, str]:
        """What stands in the place of each text."""
        return {pair.shipped: pair.here for pair in self.words}


_PAIR: Record[Pair] = Record("pair of texts", Pair, {"shipped": Plain(), "here": Plain()})
_WORDS: Record[Words] = Record("file of words", Words, {"words": ListOf(_PAIR)}, {"language": Plain()})


def read_words(own: Folder | None) -> tuple[Words | None, tuple[Problem, ...]]:
    """Return the other words of an own folder, or None where it has none or they can't be read."""
    from triage.guide.read import read_file

    if own is None or not (own / WORDS).is_file():
        return None, ()
    reading = Reading()
    written = read_file(f"{OWN}/{WORDS}", own / WORDS, reading)
    words = _WORDS.read(written, reading) if written else None
    return words, tuple(sorted(reading.problems))


def reworded(guide: Guide, words: Words | None) -> Guide:
    """Return a guide in other words."""
    if words is None:
        return guide
    pairs = words.pairs
    held: dict[str, Any] = {
        name: {key: _said(value, pairs) for key, value in getattr(guide, name).items()} for name in HELD
    }
    return replace(guide, front=_said(guide.front, pairs), **held)


def _said(value: Any, pairs: Mapping[str, str]) -> Any:
    if isinstance(value, str):
        return pairs.get(value, value)
    if isinstance(value, tuple):
        return tuple(_said(each, pairs) for each in value)
    if isinstance(value, Mapping):
        return {key: _said(each, pairs) for key, each in value.items()}
    if is_dataclass(value) and not isinstance(value, type):
        told = ((name, getattr(value, name)) for name in PROSE.get(type(value).__name__, ()))
        changed = {name: new for name, old in told if (new := _said(old, pairs)) != old}
        return replace(value, **changed) if changed else value
    return value


def texts_in(guide: Guide) -> Iterator[str]:
    """Yield every text of a guide that other words can stand for, each once, in reading order."""
    seen: dict[str, None] = {}
    for value in (guide.front, *(each for name in HELD for each in getattr(guide, name).values())):
        seen |= dict.fromkeys(texts_of_value(value))
    yield from seen


def texts_of_value(value: Any) -> Iterator[str]:
    """Yield the texts for people in a part of a guide."""
    if isinstance(value, str):
        yield from (value,) if value else ()
    elif isinstance(value, tuple | Mapping):
        for each in value.values() if isinstance(value, Mapping) else value:
            yield from texts_of_value(each)
    elif is_dataclass(value):
        for name in PROSE.get(type(value).__name__, ()):
            yield from texts_of_value(getattr(value, name))


def ill_fitting(guide: Guide, words: Words) -> Iterator[Problem]:
    """Yield what is wrong with other words: no such text, told twice, or with other figures in it."""
    known, met = set(texts_in(guide)), set[str]()
    for pair in words.words:
        if pair.shipped not in known:
            what = f"the guide says nowhere '{pair.shipped[:60]}'{nearest(pair.shipped, known)}"
            yield Problem(pair.place, f"{what}; it may be older words", "no-such-text", "warning")
        elif sorted(PLACEHOLDER.findall(pair.shipped)) != sorted(PLACEHOLDER.findall(pair.here)):
            what = "both texts need the same {names} of numbers and sums, each as often"
            yield Problem(pair.place, what, "other-figures")
        if pair.shipped in met:
            yield Problem(pair.place, "this text is told twice; keep one", "duplicate-key")
        met.add(pair.shipped)
