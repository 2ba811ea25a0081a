"""Sorting what is known of a lamb into what worries, what is normal, and what was not looked at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from triage.casebook.rows import Observation
from triage.clock import hhmm
from triage.facts import UNSURE, Value
from triage.guide.model import Condition, Finding, Guide
from triage.handover.situation import Rest, Situation
from triage.observations import KINDS, words_of
from triage.page.words import Reader
from triage.timeline.entries import act_words
from triage.walk import KEPT, Answer, Done

MEASURED = ("temperature", "weight")
"""Findings that are also written down between walks, under the same name."""

GIVEN = ("feed", "treatment")


@dataclass(frozen=True)
class Reading:
    """One answer to a finding, or one reading written down between walks."""

    value: Value
    at: datetime | None
    rest: Rest


@dataclass(frozen=True)
class Item:
    """One thing to tell: its label, and each value in words with what it rests on, the oldest first."""

    finding: Finding
    readings: tuple[Reading, ...]

    @property
    def last(self) -> Reading:
        """The latest reading."""
        return self.readings[-1]


@dataclass(frozen=True)
class Sorted:
    """All findings that have something to tell, by what they say to a vet."""

    found: tuple[Item, ...]
    normal: tuple[Item, ...]
    other: tuple[Item, ...]
    not_checked: tuple[tuple[Finding, Rest], ...]


def sort_findings(situation: Situation) -> Sorted:
    """Sort every finding: one that raised the urgency worries, whatever its answer is called."""
    guide, walk = situation.walk.guide, situation.walk
    raised = [rise.finding for rise in walk.state.rises if rise.finding]
    found: list[Item] = []
    normal: list[Item] = []
    other: list[Item] = []
    missing: list[tuple[Finding, Rest]] = []
    looked_at = {
        part.looks_at
        for seen in situation.observations
        if seen.kind in KINDS
        for part in KINDS[seen.kind].parts
    }
    for name, finding in guide.findings.items():
        readings = tuple(_readings(situation, name))
        sure = tuple(reading for reading in readings if reading.value is not UNSURE)
        if not sure:
            if (readings or name in guide.front.vet_asks) and name not in looked_at:
                missing.append((finding, readings[-1].rest if readings else situation.lamb or "the guide"))
            continue
        item = Item(finding, sure)
        if name in raised or not _all_normal(guide, item):
            (found if name in raised or finding.normal else other).append(item)
        else:
            normal.append(item)
        if readings[-1].value is UNSURE:
            missing.append((finding, readings[-1].rest))
    order = {name: place for place, name in enumerate(dict.fromkeys(reversed(raised)))}
    found.sort(key=lambda item: order.get(item.finding.name, len(order)))
    return Sorted(tuple(found), tuple(normal), tuple(other), tuple(missing))


def _readings(situation: Situation, name: str) -> Iterator[Reading]:
    """Yield the answers of this walk, and for what is measured every reading there is, in order of time."""
    measured = name in MEASURED
    moves = (*situation.earlier, *situation.walk.moves) if measured else situation.walk.moves
    found = [
        Reading(move.value, move.at, move)
        for move in moves
        if isinstance(move, Answer) and move.finding == name and not (measured and move.said == KEPT)
    ]
    if measured:
        for seen in situation.observations:
            value = seen.parts.get(name)
            if seen.kind == name and isinstance(value, float):
                found.append(Reading(value, seen.at, seen))
        found.sort(key=lambda each: (each.at is not None, each.at and each.at.timestamp()))
    yield from found


def _all_normal(guide: Guide, item: Item) -> bool:
    normal = item.finding.normal
    return normal is not None and all(
        meets(guide, item.finding, normal, reading.value) for reading in item.readings
    )


def meets(guide: Guide, finding: Finding, condition: Condition, value: Value) -> bool:
    """Whether an answer meets a condition on its finding."""
    if isinstance(value, str):
        return value in condition.is_
    if not isinstance(value, float):
        return condition.unsure

    def bound(name: str) -> float:
        return guide.numbers[name].quantity.to(finding.measure).value

    return not (
        (condition.from_ and value < bound(condition.from_))
        or (condition.above and value <= bound(condition.above))
        or (condition.below and value >= bound(condition.below))
        or (condition.up_to and value > bound(condition.up_to))
    )


def given(situation: Situation) -> list[tuple[datetime | None, str, Rest]]:
    """Return what was given or done, the oldest first, as time, words and what it rests on."""
    guide, system = situation.walk.guide, situation.system
    moves = (*situation.earlier, *situation.walk.moves)
    acts: list[tuple[datetime | None, str, Rest]] = [
        (move.at, act_words(guide, move, system), move) for move in moves if isinstance(move, Done)
    ]
    fed: list[tuple[datetime | None, str, Rest]] = [
        (seen.at, words_of(seen, guide, system, 60), seen)
        for seen in situation.observations
        if seen.kind in GIVEN
    ]
    return sorted([*acts, *fed], key=lambda each: (each[0] is not None, each[0] and each[0].timestamp()))


def seen_else(situation: Situation) -> list[Observation]:
    """Return what was written down that no other list tells."""
    return [each for each in situation.observations if each.kind not in (*GIVEN, *MEASURED)]


def with_time(words: str, at: datetime | None, situation: Situation) -> str:
    """Return words with their time, where it is known."""
    return f"{words} at {hhmm(at, situation.now)}" if at else words


def value_words(item: Item, reading: Reading, situation: Situation) -> str:
    """Return a reading as words, as `36.2 °C at 02:10`."""
    reader = Reader(situation.walk.guide, situation.walk.facts, situation.system)
    return with_time(reader.answer(item.finding, reading.value), reading.at, situation)
