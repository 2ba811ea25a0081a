"""A case as a leader plays it aloud: what to read out, what to tell when asked, questions and answers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from random import Random

from triage.amounts import AMOUNTS
from triage.guide.model import Guide, Topic
from triage.page.words import Reader
from triage.page.working import source_words
from triage.practice.case import Case
from triage.practice.debrief import ROWS, to_remember
from triage.practice.faults import Score
from triage.practice.looking import listed
from triage.practice.options import Option
from triage.practice.questions import Posed, Question, amount_of, line_words
from triage.practice.telling import fact_words, question_heading, story_blocks, supposed_of, supposed_words
from triage.units import System

LETTERS = "ABCDEFGH"
AT_ONCE = 6
"""Cases on one leader's sheet."""


@dataclass(frozen=True)
class Asked:
    """One question with its lettered lines, what is supposed before it, and what is right."""

    heading: str
    supposed: str
    lines: tuple[tuple[str, str], ...]
    row: str
    right: str
    whys: tuple[str, ...]
    """For each line that a rule asks for or forbids, its letter and the reason."""


@dataclass(frozen=True)
class ToPlay:
    """One case: the front of its sheet and the back."""

    title: str
    """Told on the back only."""
    story: tuple[str, ...]
    tell: tuple[tuple[str, str], ...]
    """What can be asked for, and what the leader then says."""
    asked: tuple[Asked, ...]
    working: tuple[str, ...]
    trap: str
    remember: str
    sources: tuple[str, ...]


def to_play(posed: Posed, system: System) -> ToPlay:
    """Return a case as it is played aloud."""
    case = posed.case
    guide = case.walk.guide
    reader = Reader(guide, case.walk.facts, system)
    nothing = Score((), case.urgency, case.urgency, case.urgency == guide.top, frozenset(), frozenset())
    return ToPlay(
        reader.fill(case.page.title),
        tuple(block.text for block in story_blocks(case, system)),
        (*_tell(case, reader), ("Anything else", "It is as it should be.")),
        tuple(_asked(posed, question, system) for question in posed.questions),
        tuple(_working(case, system)),
        reader.fill(case.trap),
        reader.fill(to_remember(case, nothing)),
        tuple(source_words(guide, name) for name in case.page.sources),
    )


def _tell(case: Case, reader: Reader) -> Iterator[tuple[str, str]]:
    for finding in listed(case):
        if finding.name in case.now:
            told = fact_words(case.walk, finding.name, case.now[finding.name], reader.system)
            yield finding.label, told.removeprefix(f"{finding.label}: ")


def _asked(posed: Posed, question: Question, system: System) -> Asked:
    case = posed.case
    lines = tuple(
        (letter, line_words(question, option, system))
        for letter, option in zip(LETTERS, question.options, strict=False)
    )
    otherwise = supposed_of(case, question.kind)
    right = [letter for letter, option in zip(LETTERS, question.options, strict=False) if option.right]
    return Asked(
        question_heading(case, question),
        supposed_words(case, otherwise, system) if otherwise else "",
        lines,
        ROWS[question.kind],
        ", ".join(right),
        tuple(_whys(question, system)),
    )


def _whys(question: Question, system: System) -> Iterator[str]:
    guide = question.walk.guide
    reader = Reader(guide, question.walk.facts, system)
    for letter, option in zip(LETTERS, question.options, strict=False):
        if option.rules and _telling(question, option):
            rule = guide.rules[option.rules[0]]
            yield f"{letter}: {reader.fill(rule.because)}"


def _telling(question: Question, option: Option) -> bool:
    """Whether a line's reason is worth reading out: of how soon, only why it is not the next milder one."""
    if question.kind not in ("vet", "vet-if"):
        return True
    milder = [each for each in question.options if each.rules]
    return bool(milder) and option.name == milder[0].name


def _working(case: Case, system: System) -> Iterator[str]:
    name = amount_of(case)
    if name:
        yield from AMOUNTS[name].work_out(case.walk.facts, system).working


def chosen(
    guide: Guide, written: Sequence[Posed], topic: Topic | None, name: str, today: date
) -> tuple[Posed, ...]:
    """Return the case of a name, or a few of a topic, or a few that put much to the test; others each day."""
    if name in guide.cases:
        return tuple(posed for posed in written if posed.case.name == name)
    first = guide.farm.first if guide.farm else ()
    kept = [
        posed
        for posed in written
        if (posed.case.page.topic == topic.name if topic else posed.case.name in first)
    ]
    return tuple(Random(today.toordinal()).sample(kept, min(AT_ONCE, len(kept))))
