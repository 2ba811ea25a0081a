"""What a line may say by what it rests on: every figure in it, and every answer."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import datetime

from triage.casebook.rows import Lamb, Observation
from triage.clock import hhmm
from triage.guide.model import Ask, Guide
from triage.handover.situation import FORM, GUIDE, Handover, Rest, Situation, Told
from triage.holding.holding import Holding
from triage.observations import words_of
from triage.page.inert import inert
from triage.page.words import Reader
from triage.timeline.entries import act_words
from triage.units import show
from triage.walk import Answer, Done

FIGURE = re.compile(r"[0-9]+(?:[.:][0-9]+)*")
COUNTED = re.compile(r"\b([0-9]+) (?:more|times|before|thing|things)\b")
"""A count: of what it rests on, or of what is said to be in the lists."""


def lines_of(handover: Handover) -> Iterator[Told]:
    """Yield every line of a handover."""
    for name in Handover.__dataclass_fields__:
        yield from getattr(handover, name)


def untraced(line: Told, situation: Situation) -> list[str]:
    """Return what a line says that nothing it rests on says."""
    if not line.rests_on:
        return [f"rests on nothing: {line.text}"]
    text = line.text
    wrong = [count for count in COUNTED.findall(text) if int(count) > len(line.rests_on)]
    text = COUNTED.sub("", text)
    known = " | ".join(words for rest in line.rests_on for words in _words(rest, situation))
    figures = set(FIGURE.findall(known))
    wrong += [figure for figure in FIGURE.findall(text) if figure not in figures]
    answers = {_said(rest, situation) for rest in line.rests_on if isinstance(rest, Answer)}
    wrong += [said for said in _choices_in(text, situation) if said not in answers and said not in known]
    return wrong


def _words(rest: Rest, situation: Situation) -> Iterator[str]:
    """Yield the words that one thing vouches for."""
    guide, now, system = situation.walk.guide, situation.now, situation.system
    match rest:
        case Answer():
            yield _said(rest, situation)
            yield from _time(rest.at, situation)
            if rest.finding == "age" and isinstance(rest.value, float) and rest.at:
                since = (now.moment - rest.at).total_seconds() / 3600
                yield show(round(rest.value + max(since, 0), 1), "h", system)
        case Done():
            yield act_words(guide, rest, system)
            yield from _time(rest.at, situation)
        case Observation():
            yield inert(words_of(rest, guide, system, 100_000))
            yield from _time(rest.at, situation)
        case Lamb():
            yield inert(f"{rest.name} {rest.sex} {rest.birth_type}")
            if rest.born:
                hours = (now.moment - rest.born).total_seconds() / 3600
                yield show(round(hours, 1), "h", system)
        case Holding():
            taught = [*rest.taught, *rest.taught.values()]
            yield from (inert(text) for text in (rest.caller, rest.place, rest.found_by, *taught))
        case str():
            assert rest in (GUIDE, FORM)
            if rest == GUIDE:
                yield from _guides_own(situation)


def _time(at: datetime | None, situation: Situation) -> Iterator[str]:
    if at:
        yield hhmm(at, situation.now)


def _guides_own(situation: Situation) -> Iterator[str]:
    """Yield what the guide itself says where the walk is: its title, its urgency and what is asked."""
    walk = situation.walk
    if not isinstance(walk.node, Ask):
        yield Reader(walk.guide, walk.facts, situation.system).fill(walk.node.title)
    if walk.state.urgency:
        urgency = walk.guide.urgency(walk.state.urgency)
        yield f"{urgency.say} {urgency.asks}"


def _said(answer: Answer, situation: Situation) -> str:
    """Return an answer in words."""
    walk = situation.walk
    finding = walk.guide.findings[answer.finding]
    return Reader(walk.guide, walk.facts, situation.system).answer(finding, answer.value)


def _choices_in(text: str, situation: Situation) -> list[str]:
    """Return every choice of every finding that a line gives as an answer."""
    return [
        said
        for said in every_choice(situation.walk.guide, situation)
        if f": {said}" in text and _stands(said, text)
    ]


def _stands(said: str, text: str) -> bool:
    at = text.find(f": {said}")
    after = text[at + len(said) + 2 :] if at >= 0 else "x"
    return at >= 0 and after[:1] in ("", ";", ",", ".")


def every_choice(guide: Guide, situation: Situation) -> set[str]:
    """Return the words of every choice in the guide."""
    reader = Reader(guide, situation.walk.facts, situation.system)
    return {reader.choice(finding, name) for finding in guide.findings.values() for name in finding.choices}
