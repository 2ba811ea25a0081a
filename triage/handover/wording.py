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


WORD = 10
"""Signs that a word may have on average: what is typed without a space is cut as well."""


def cut(text: str, most: int) -> str:
    """Return at most so many words, with a sign at the last one where some are missing.

    A figure is never cut in two, as half a figure is another one.
    """
    words = text.split(maxsplit=most)[:most]
    while len(words) > 1 and len(" ".join(words)) > most * WORD:
        words.pop()
    kept = " ".join(words)
    if len(kept) > most * WORD:
        kept = kept[: most * WORD].rstrip("0123456789")
    return text if len(kept) == len(text) else f"{kept.rstrip(' ,.;:')}{CUT}"


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
    return gifts_words((gift,), situation, free)


def gifts_words(group: tuple[Gift, ...], situation: Situation, free: int, ways: bool = True) -> str:
    """Return things of one kind as one: how often, and the last of them; its way only where asked for."""
    gift, often = group[0], len(group)
    at = at_words(gift.at, situation)
    what = cut(gift.what, free) if gift.free else small(gift.what)
    if gift.said:
        # Said in two walks it may still have been given once.
        last = f" {often} times, last" if often > 1 else ""
        return f"{what}: {gift.much}, said{last}{at}"
    parts = [cut(gift.much, free) if gift.free else gift.much]
    if ways:
        parts += [gift.way, f"ordered by {cut(gift.ordered, free)}" if gift.ordered else ""]
    more = ", ".join(part for part in parts if part)
    last = f", {often} times, last" if often > 1 else ""
    joint = " " if last else ", "
    return f"{what}{last}{joint}{more},{at}" if more else f"{what}{last}{at}"
