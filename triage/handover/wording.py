"""The words of one reading, one gift, one time: short enough to be said."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from triage.clock import hhmm
from triage.handover.gathering import Item, Reading
from triage.handover.given import Gift
from triage.handover.situation import Situation
from triage.page.inert import CUT
from triage.page.words import Reader

LONGEST_ANSWER = 20
"""Words of an answer that are said. Cut short it can mean its opposite, so no shipped one is longer."""


def cut(text: str, most: int) -> str:
    """Return at most so many words, with a sign at the last one where some are missing."""
    words = text.split()
    return text if len(words) <= most else f"{' '.join(words[:most]).rstrip(',.;:')}{CUT}"


def small(text: str) -> str:
    """Return words of the guide as they stand inside a sentence."""
    return text[:1].lower() + text[1:]


def at_words(at: datetime | None, situation: Situation) -> str:
    """Return ` at 02:10`, or nothing where the time is not known."""
    return f" at {hhmm(at, situation.now)}" if at else ""


def answer_words(item: Item, reading: Reading, situation: Situation) -> str:
    """Return the answer alone, as `36.2 °C` or `It swallows`."""
    reader = Reader(situation.walk.guide, situation.walk.facts, situation.system)
    return cut(reader.answer(item.finding, reading.value), LONGEST_ANSWER)


def readings_words(item: Item, readings: Sequence[Reading], situation: Situation) -> str:
    """Return readings with their times: `temperature 36.2 °C at 02:40, before that 37.4 °C at 02:10`.

    An answer in words follows its time, as many an answer ends in words of time itself.
    """
    label = small(item.finding.label)
    said = []
    for reading in readings:
        at, answer = at_words(reading.at, situation), answer_words(item, reading, situation)
        said.append(f"{answer}{at}" if item.finding.measure else f"{at}: {answer}")
    if item.finding.measure:
        return f"{label} {', before that '.join(said)}"
    return f"{label}{'; before that'.join(said)}"


def gift_words(gift: Gift, situation: Situation, free: int) -> str:
    """Return one thing given, each part that was typed freely cut to so many words."""
    return f"{_what(gift, free)}{_more(gift, situation, free)}"


def gifts_words(group: tuple[Gift, ...], situation: Situation, free: int) -> str:
    """Return things of one kind as one: how often, and the last of them."""
    if len(group) == 1:
        return gift_words(group[0], situation, free)
    return f"{_what(group[0], free)} {len(group)} times, last{_more(group[0], situation, free, ' ')}"


def _what(gift: Gift, free: int) -> str:
    return cut(gift.what, free) if gift.free else small(gift.what)


def _more(gift: Gift, situation: Situation, free: int, joint: str = ", ") -> str:
    """Return the rest of its words and its time, after a sign that parts them from what it was."""
    parts = [cut(part, free) if gift.free else part for part in gift.more]
    more = ", ".join([*parts, *([f"ordered by {cut(gift.ordered, free)}"] if gift.ordered else [])])
    at = at_words(gift.at, situation)
    if gift.said:
        return f"{': ' if joint == ', ' else joint}{more}{f', said{at}' if at else ''}"
    if more:
        return f"{joint}{more}{f',{at}' if at else ''}"
    return at
