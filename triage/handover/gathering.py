"""Sorting what is known of a lamb into what worries, what is normal, and what was not looked at."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from triage.casebook.rows import Observation
from triage.facts import UNSURE, Value
from triage.guide.model import Condition, Finding, Guide
from triage.handover.situation import GUIDE, Rest, Situation
from triage.observations import KINDS
from triage.walk import KEPT, Answer, fits
from triage.ways_in import about

MEASURED = ("temperature", "weight")
"""Findings that are also written down between walks, under the same name."""

LATELY = timedelta(hours=1)
"""What was seen so long before the walk began still tells how the lamb is now."""

LATELY_FOR = {"weight": timedelta(hours=24)}
"""What changes more slowly tells it for longer."""

FED = {"first-milk-had": "first-milk"}
"""Findings that are answered by a feed of this kind, however long ago it was."""

DAY = timedelta(hours=24)
"""Readings of the last day are told with those of the walk: a vet asks how it went on."""


@dataclass(frozen=True)
class Reading:
    """One answer to a finding, or one reading written down between walks."""

    value: Value
    at: datetime | None
    rest: Rest


@dataclass(frozen=True)
class Item:
    """One finding to tell, with what was read, the latest first."""

    finding: Finding
    readings: tuple[Reading, ...]

    @property
    def rests(self) -> tuple[Rest, ...]:
        """What all its readings rest on."""
        return tuple(reading.rest for reading in self.readings)


@dataclass(frozen=True)
class Sorted:
    """All findings that have something to tell, by what they say to a vet; what he asks first comes first."""

    found: tuple[Item, ...]
    normal: tuple[Item, ...]
    other: tuple[Item, ...]
    not_checked: tuple[tuple[Finding, Rest], ...]
    before: tuple[tuple[Finding, Reading], ...]
    """Readings of the days before."""


def sort_findings(situation: Situation) -> Sorted:
    """Sort every finding: one that raised the urgency worries, whatever its answer is called."""
    guide = situation.walk.guide
    raised = raised_by(situation)
    found: list[Item] = []
    normal: list[Item] = []
    other: list[Item] = []
    missing: list[tuple[Finding, Rest]] = []
    before: list[tuple[Finding, Reading]] = []
    for finding in _in_order(guide, raised):
        now, past = _parted(situation, _readings(situation, finding))
        before += [(finding, reading) for reading in past]
        rest = _not_checked(situation, finding, now)
        if rest is not None:
            missing.append((finding, rest))
        sure = tuple(reading for reading in now if reading.value is not UNSURE)
        if not sure:
            continue
        item = Item(finding, sure)
        if finding.name not in raised and _all_normal(guide, item):
            normal.append(item)
        else:
            (found if finding.name in raised or finding.normal else other).append(item)
    # What is well again by its last reading gives way to what is not.
    found.sort(key=lambda item: well_again(situation, item))
    return Sorted(tuple(found), tuple(normal), tuple(other), tuple(missing), tuple(before))


def raised_by(situation: Situation) -> tuple[str, ...]:
    """Return the findings whose answers raised the urgency, the last first."""
    rises = reversed(situation.walk.state.rises)
    return tuple(dict.fromkeys(rise.finding for rise in rises if rise.finding and rise.value is not UNSURE))


def well_again(situation: Situation, item: Item) -> bool:
    """Whether the last reading of what was found is normal, and it is not why the urgency rose."""
    if item.finding.name in raised_by(situation):
        return False
    return meets(situation.walk.guide, item.finding, item.finding.normal, item.readings[0].value)


def begun(situation: Situation) -> datetime:
    """Return when the walk began, or now where that is not known."""
    times = [move.at for move in situation.walk.moves if move.at]
    return min(times, default=situation.now.moment)


def meets(guide: Guide, finding: Finding, condition: Condition | None, value: Value) -> bool:
    """Whether an answer meets a condition on its finding."""
    if condition is None:
        return False
    if isinstance(value, str):
        return value in condition.is_
    if not isinstance(value, float):
        return condition.unsure

    def bound(name: str) -> float:
        return guide.numbers[name].quantity.to(finding.measure).value

    band = any((condition.from_, condition.above, condition.below, condition.up_to))
    return band and not (
        (condition.from_ and value < bound(condition.from_))
        or (condition.above and value <= bound(condition.above))
        or (condition.below and value >= bound(condition.below))
        or (condition.up_to and value > bound(condition.up_to))
    )


def _in_order(guide: Guide, raised: Iterable[str]) -> list[Finding]:
    """Return the findings: those that raised the urgency, then what a vet asks, then all others."""
    # What a walk is about opens the call, and is told nowhere else.
    apart = guide.front.unless_told
    names = dict.fromkeys((*raised, *guide.front.vet_asks, *guide.findings))
    return [guide.findings[name] for name in names if name in guide.findings and name not in apart]


def _readings(situation: Situation, finding: Finding) -> list[Reading]:
    """Return the answers of this walk, and for what is measured every reading there is, the latest first."""
    name = finding.name
    measured = name in MEASURED and bool(finding.measure)
    found = [
        Reading(move.value, move.at, move)
        for move in situation.walk.moves
        if isinstance(move, Answer) and move.finding == name and not (measured and move.said == KEPT)
    ]
    if not measured:
        found = [*_earlier(situation, finding), *found]
    else:
        found += _measured(situation, name)
        if not found:
            found += _kept(situation, name)
    placed = sorted(enumerate(found), key=lambda each: (_when(each[1], situation), each[0]), reverse=True)
    return [reading for _, reading in placed]


def _earlier(situation: Situation, finding: Finding) -> Iterator[Reading]:
    """Yield what earlier walks of the day found wrong, and what they looked at just now.

    What was found stays true of the lamb, also when it is well on a later look. What was normal hours
    ago says nothing of now.
    """
    since = begun(situation) - LATELY
    for move in situation.earlier:
        if not isinstance(move, Answer) or move.finding != finding.name or move.at is None:
            continue
        if finding.normal is None or move.value is UNSURE or not fits(finding, move.value):
            continue
        normal = meets(situation.walk.guide, finding, finding.normal, move.value)
        if move.at >= since or (not normal and move.at >= situation.now.moment - DAY):
            yield Reading(move.value, move.at, move)


def _measured(situation: Situation, name: str) -> Iterator[Reading]:
    """Yield the readings of earlier walks and those written down between walks."""
    for move in situation.earlier:
        if not isinstance(move, Answer) or move.finding != name or move.said == KEPT:
            continue
        if isinstance(move.value, float):
            yield Reading(move.value, move.at, move)
    for seen in situation.observations:
        value = seen.parts.get(name)
        if seen.kind == name and isinstance(value, float):
            yield Reading(value, seen.at, seen)


def _kept(situation: Situation, name: str) -> Iterator[Reading]:
    """Yield answers that were taken from what was kept; when they were read is not known here."""
    for move in situation.walk.moves:
        if isinstance(move, Answer) and move.finding == name:
            yield Reading(move.value, None, move)


def _when(reading: Reading, situation: Situation) -> tuple[int, float]:
    """Return the order of a reading; of this walk's answers one without a time counts as made now."""
    if reading.at is not None:
        return (1, reading.at.timestamp())
    return (2 if any(reading.rest is move for move in situation.walk.moves) else 0, 0.0)


def _parted(situation: Situation, readings: list[Reading]) -> tuple[list[Reading], list[Reading]]:
    """Part readings into those of this walk and the last day, and those of the days before."""
    since = (1, min(begun(situation) - LATELY, situation.now.moment - DAY).timestamp())
    now = [reading for reading in readings if _when(reading, situation) >= since]
    return now, readings[len(now) :]


def _not_checked(situation: Situation, finding: Finding, now: list[Reading]) -> Rest | None:
    """Return what it rests on that a finding was not looked at, or None when it was."""
    noted = max((seen.at.timestamp() for seen in _looks_at(situation, finding.name)), default=0.0)
    if now and now[0].value is UNSURE:
        return now[0].rest if (1, noted) < _when(now[0], situation) else None
    if about(situation.walk):  # a vet asks these of a lamb
        return None
    if finding.name not in situation.walk.guide.front.vet_asks or on_card(situation, finding.name):
        return None
    since = (begun(situation) - LATELY_FOR.get(finding.name, LATELY)).timestamp()
    looked = (
        noted >= since
        or _fed(situation, finding.name)
        or any(_when(reading, situation) >= (1, since) for reading in now)
    )
    return None if looked else GUIDE


def on_card(situation: Situation, finding: str) -> bool:
    """Whether the lamb's card answers a finding."""
    lamb = situation.lamb
    if lamb is None:
        return False
    if finding == "age":
        return lamb.born is not None and lamb.born <= situation.now.moment
    return finding == "birth-type" and bool(lamb.birth_type)


def _looks_at(situation: Situation, finding: str) -> Iterator[Observation]:
    """Yield what was written down by looking at a finding."""
    for seen in situation.observations:
        parts = KINDS[seen.kind].parts if seen.kind in KINDS else ()
        if any(part.looks_at == finding and part.name in seen.parts for part in parts):
            yield seen


def _fed(situation: Situation, finding: str) -> bool:
    """Whether a feed was written down that answers a finding; it is told with what was given."""
    fed = FED.get(finding)
    feeds = [seen.parts.get("what") for seen in situation.observations if seen.kind == "feed"]
    return fed is not None and fed in feeds


def _all_normal(guide: Guide, item: Item) -> bool:
    return all(meets(guide, item.finding, item.finding.normal, reading.value) for reading in item.readings)
