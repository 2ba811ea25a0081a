"""Reading: short sentences of short words, for someone who is tired, cold and frightened."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain
from typing import NamedTuple

from triage.check.wording.syllables import syllables
from triage.guide.model import PLACEHOLDER, Guide
from triage.guide.texts import (
    Kind,
    Passage,
    all_texts,
    case_texts,
    duty_texts,
    finding_texts,
    how_to_texts,
    item_texts,
    law_texts,
    topic_texts,
)
from triage.problems import Place, Problem

LONGEST = 22
LONGEST_MEAN = 12
HARDEST_GRADE = 6
ENOUGH_WORDS = 100
"""Fewer words have no grade: the formula is unsteady on short texts."""

SENTENCES: frozenset[Kind] = frozenset(
    ("about", "ask", "look", "why", "likely", "step", "caution", "call", "right", "stop", "note", "means")
)
"""Running text. Titles, labels and lists of what is needed are no sentences, and would flatter the mean."""

_FIGURE = " 0 0 "
"""A number or sum stands for two words: its figure and its unit."""

_END = re.compile(r"(?<=[.?!])[\"')]*\s+")
_SAID = re.compile(r"[A-Za-z0-9]")
_WORD = re.compile(r"\S*?[A-Za-z0-9]\S*")


@dataclass(frozen=True)
class Measured:
    """What was counted in some texts."""

    sentences: int
    words: int
    syllables: int

    @property
    def mean(self) -> float:
        """Words in a sentence, on average."""
        return self.words / self.sentences

    @property
    def grade(self) -> float:
        """The school grade that can read it: Kincaid, Fishburne, Rogers and Chissom, 1975."""
        return 0.39 * self.mean + 11.8 * self.syllables / self.words - 15.59


@lru_cache(maxsize=8192)
def sentences_in(text: str) -> tuple[str, ...]:
    """Return the sentences of a text; a colon or semicolon ends none."""
    return tuple(each for each in _END.split(text) if _SAID.search(each))


@lru_cache(maxsize=8192)
def words_in(sentence: str) -> tuple[str, ...]:
    """Return the words of a sentence, parted where there is a space; a hyphen parts none."""
    return tuple(_WORD.findall(PLACEHOLDER.sub(_FIGURE, sentence) if "{" in sentence else sentence))


def measure(passages: Iterable[Passage]) -> Measured | None:
    """Count the running text among passages; None where there is none."""
    texts = (each.text for each in passages if each.kind in SENTENCES)
    sentences = [sentence for text in texts for sentence in sentences_in(text)]
    words = [word for sentence in sentences for word in words_in(sentence)]
    return Measured(len(sentences), len(words), sum(map(syllables, words))) if words else None


_measured = lru_cache(maxsize=128)(measure)


def long_sentences(guide: Guide) -> Iterator[Problem]:
    """No sentence has more than twenty-two words."""
    for place, _, text in all_texts(guide):
        for sentence in sentences_in(text):
            count = len(words_in(sentence))
            if count > LONGEST:
                what = f"{count} words in one sentence, {LONGEST} at most; part it: '{sentence}'"
                yield Problem(place, what, "long-sentence")


def long_on_average(guide: Guide) -> Iterator[Problem]:
    """The sentences of each topic and how-to, the questions and the plan have twelve words on average."""
    questions, plan = _pooled("the questions", _questions(guide)), _pooled("the raising plan", _plan(guide))
    for whole in (*_topics(guide), *_how_tos(guide), *questions, *plan):
        measured = _measured(whole.passages)
        if measured and measured.mean > LONGEST_MEAN:
            what = (
                f"the sentences of {whole.name} have {measured.mean:.1f} words on average, "
                f"{LONGEST_MEAN} at most are read at night; shorten them"
            )
            yield Problem(whole.place, what, "long-on-average")


def grades(guide: Guide) -> Iterator[Problem]:
    """Each topic, and all that is pooled here, reads at grade six at most."""
    how_tos, questions = _pooled("the how-tos", _how_tos(guide)), _pooled("the questions", _questions(guide))
    plan, cupboard = _pooled("the raising plan", _plan(guide)), _pooled("the cupboard", _items(guide))
    practice = _pooled("the practice cases", _cases(guide))
    for whole in (*_topics(guide), *how_tos, *questions, *plan, *cupboard, *practice):
        measured = _measured(whole.passages)
        if measured and measured.words >= ENOUGH_WORDS and measured.grade > HARDEST_GRADE:
            what = (
                f"the reading grade of {whole.name} is {measured.grade:.1f}, {HARDEST_GRADE} at most; "
                f"use shorter words and sentences"
            )
            yield Problem(whole.place, what, "reading-grade")


class _Whole(NamedTuple):
    """What is measured as one."""

    name: str
    place: Place
    passages: tuple[Passage, ...]


def _topics(guide: Guide) -> list[_Whole]:
    topics = guide.topics.values()
    return [_Whole(f"topic '{each.name}'", each.place, tuple(topic_texts(guide, each))) for each in topics]


def _how_tos(guide: Guide) -> list[_Whole]:
    how_tos = guide.how_tos.values()
    return [_Whole(f"how-to '{each.name}'", each.place, tuple(how_to_texts(each))) for each in how_tos]


def _plan(guide: Guide) -> list[_Whole]:
    """Duties and laws: a keeper reads them on one page, and each alone is too short to be graded."""
    duties, laws = guide.duties.values(), guide.laws.values()
    told = [_Whole(each.name, each.place, tuple(duty_texts(each))) for each in duties]
    return [*told, *(_Whole(each.name, each.place, tuple(law_texts(each))) for each in laws)]


def _questions(guide: Guide) -> list[_Whole]:
    return [_Whole(each.name, each.place, tuple(finding_texts(each))) for each in guide.findings.values()]


def _items(guide: Guide) -> list[_Whole]:
    return [_Whole(each.name, each.place, tuple(item_texts(each))) for each in guide.cupboard.values()]


def _cases(guide: Guide) -> list[_Whole]:
    return [_Whole(each.name, each.place, tuple(case_texts(each))) for each in guide.cases.values()]


def _pooled(name: str, wholes: list[_Whole]) -> list[_Whole]:
    passages = tuple(chain.from_iterable(whole.passages for whole in wholes))
    return [_Whole(name, wholes[0].place, passages)] if wholes else []
