"""Duties with their dates: what is due when, for this lamb, under the law of its place."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo

from triage.facts import Unsure, Value
from triage.guide.model import Condition
from triage.guide.model_rearing import Duty, Law
from triage.page.words import Reader
from triage.rearing.reared import Basis
from triage.weighings import Weighing

TIMED = timedelta(hours=48)
"""A duty that ends within these hours of birth has times of day; every other one has days."""

NO_LAW = "Check your law: it says how, and until what age, this may be done. Which law is yours is not set."


@dataclass(frozen=True)
class Task:
    """One duty, due for one lamb between two moments (aware), with all its texts filled in."""

    duty: Duty
    key: str
    """The same on every making of the plan, also when its date has moved."""
    begins: datetime
    ends: datetime | None
    timed: bool
    """Whether it has times of day; else it has days."""
    title: str
    do: tuple[str, ...]
    cautions: tuple[str, ...]
    why: str
    law: tuple[str, ...]
    """What the law of the place says, as it was read, where it limits this."""


def tasks_of(basis: Basis) -> tuple[Task, ...]:
    """Return every duty that is this lamb's, each of its times, in the order in which they begin."""
    law = basis.guide.laws.get(basis.lamb.law)
    tasks = [
        _task(basis, duty, (number, begins), law)
        for duty in basis.guide.duties.values()
        if meant(duty, basis.lamb.known) and not _over_by_event(basis, duty)
        for number, begins in enumerate(_begins(basis, duty), 1)
    ]
    return tuple(sorted(tasks, key=lambda task: (task.begins, task.key)))


def meant(duty: Duty, known: Mapping[str, Value]) -> bool:
    """Whether a duty is for a lamb; what is not known of it counts as unasked."""
    return all(
        any(_holds(condition, known.get(finding)) for condition in conditions)
        for finding, conditions in duty.for_.items()
    )


def _holds(condition: Condition, value: Value | None) -> bool:
    if value is None:
        return condition.unasked
    if isinstance(value, Unsure):
        return condition.unsure
    return isinstance(value, str) and value in condition.is_


def _over_by_event(basis: Basis, duty: Duty) -> bool:
    return duty.until_event == "weaned" and basis.lamb.weaned is not None


def done(task: Task, weighed: Sequence[Weighing]) -> bool:
    """Whether what ends this time of a duty has happened: it was weighed, the day before at the earliest."""
    since = task.begins - timedelta(days=1)
    return task.duty.until_event == "weighed" and any(when >= since for when, _ in weighed)


def _begins(basis: Basis, duty: Duty) -> Iterator[datetime]:
    """Yield each beginning: one, or one after another until its end or the end of the plan."""
    lamb, born = basis.lamb, basis.lamb.born
    if duty.from_event == "weaned" and lamb.weaned:
        yield lamb.weaned
        return
    begin = basis.number(duty.from_, "h") if duty.from_ else 0.0
    yield born + timedelta(hours=begin)
    if duty.every:
        step, last = basis.number(duty.every, "h"), basis.number(duty.until or "off-milk-latest", "h")
        while begin + step <= last:
            begin += step
            yield born + timedelta(hours=begin)


def _task(basis: Basis, duty: Duty, time: tuple[int, datetime], law: Law | None) -> Task:
    number, begins = time
    if duty.ring:
        begins = _whole_day_from(begins, basis.now.zone)
    ends = None if duty.every or not duty.until else _ends(basis, duty, law)
    reader = Reader(basis.guide, basis.facts(begins), basis.system)
    return Task(
        duty,
        f"{duty.name}-{number}" if duty.every else duty.name,
        begins,
        ends,
        bool(ends and ends - basis.lamb.born <= TIMED),
        reader.fill(duty.title),
        _no_ring(duty, law) or tuple(reader.fill(text) for text in duty.do),
        () if _no_ring(duty, law) else tuple(reader.fill(text) for text in duty.cautions),
        reader.fill(duty.why),
        law_lines(law, reader) if duty.law else (),
    )


def _whole_day_from(moment: datetime, zone: tzinfo | None) -> datetime:
    """Return the first midnight from a moment on.

    A duty is shown by its day: that of a lamb born late would else begin hours before it is old enough.
    """
    here = moment.astimezone(zone).replace(tzinfo=None)
    midnight = here.replace(hour=0, minute=0, second=0, microsecond=0)
    if here == midnight:
        return moment
    return (midnight + timedelta(days=1)).replace(tzinfo=zone).astimezone(UTC)


def _ends(basis: Basis, duty: Duty, law: Law | None) -> datetime:
    """Return when a duty ends; with a ring it ends where the law of the place ends that.

    Where the law is not known the duty's own end holds, which is the strictest of those that allow a ring.
    """
    until = law.ring_until if duty.ring and law and law.ring_until else duty.until
    return basis.lamb.born + timedelta(hours=basis.number(until, "h"))


def _no_ring(duty: Duty, law: Law | None) -> tuple[str, ...]:
    if law and duty.ring and law.no_ring:
        return (f"No ring: the law of the {law.where} forbids it at any age. Ask your vet.",)
    return ()


def law_lines(law: Law | None, reader: Reader) -> tuple[str, ...]:
    """Return what the law of a place says, with the day it was read, and that it is to be checked."""
    if law is None:
        return (NO_LAW,)
    return (f"Check your law. {law.where}, as read on {law.read}:", *(reader.fill(text) for text in law.says))
