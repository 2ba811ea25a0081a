"""The plan as iCalendar (RFC 5545), read back by another library than the one that wrote it."""

from __future__ import annotations

from datetime import UTC, date, datetime
from typing import Any
from zoneinfo import ZoneInfo

import vobject

from tests.rearing.lambs import at, lamb, now, shipped, weighed
from triage.calendars import WARNING
from triage.clock import Now
from triage.rearing import plan_of
from triage.rearing.calendar import calendar_of_plan
from triage.rearing.reared import Reared


def written(reared: Reared, at: Now) -> bytes:
    return calendar_of_plan(plan_of(shipped(), reared, at, "metric"), at)


def events(ics: bytes) -> dict[str, Any]:
    return {event.uid.value: event for event in vobject.readOne(ics.decode()).vevent_list}


def test_another_library_reads_it() -> None:
    """Each duty and each week of milk is an event with a name, a day, words and an alarm."""
    plan = plan_of(shipped(), lamb(), now(1), "metric")
    read = events(calendar_of_plan(plan, now(1)))

    assert len(read) == len(plan.tasks) + len(plan.milk)
    assert all(event.summary.value.startswith("Blue 7: ") for event in read.values())
    assert all(WARNING in event.description.value for event in read.values())
    assert all(event.valarm.action.value == "DISPLAY" for event in read.values())


def test_a_second_making_changes_and_does_not_double() -> None:
    """After a weighing the same events come under the same names, with a higher SEQUENCE (RFC 5545, 3.8.7.4)."""
    before = events(written(lamb(), now(1)))
    after = events(written(lamb(weighed=weighed((0, 4.0), (10, 6.5))), now(10)))

    assert before.keys() == after.keys()
    assert all(int(after[uid].sequence.value) > int(before[uid].sequence.value) for uid in before)
    changed = [uid for uid in before if before[uid].summary.value != after[uid].summary.value]
    assert changed


def test_two_lambs_have_two_sets_of_events() -> None:
    """Another lamb's plan touches none of this one's events."""
    other = Reared("red", "Red 2", lamb().born, weighed=lamb().weighed)

    assert not events(written(lamb(), now(1))).keys() & events(written(other, now(1))).keys()


def test_a_clock_change_moves_nothing() -> None:
    """Born two hours before the clock goes forward: the deadline is four real hours later, and days are days.

    In London the clock went from 1:00 to 2:00 on 29 March 2026 (UTC from 1:00).
    """
    london = ZoneInfo("Europe/London")
    born = datetime(2026, 3, 29, 0, 0, tzinfo=UTC)
    reared = Reared("x", "Blue 7", born)
    read = events(written(reared, Now(datetime(2026, 3, 29, 6, tzinfo=UTC), london)))
    first = next(event for event in read.values() if "First milk, the first feed" in event.summary.value)
    lamp = next(event for event in read.values() if "lamp away" in event.summary.value)

    assert first.dtend.value == datetime(2026, 3, 29, 4, 0, tzinfo=UTC)  # 5:00 on a clock in London
    assert lamp.dtstart.value == date(2026, 4, 1)


def test_days_are_those_of_the_person() -> None:
    """A duty of days stands on the day that it is where the person is."""
    auckland = ZoneInfo("Pacific/Auckland")
    born = datetime(2026, 3, 20, 13, 0, tzinfo=UTC)  # 21 March there
    read = events(written(Reared("x", "Blue 7", born), Now(born, auckland)))
    lamp = next(event for event in read.values() if "lamp away" in event.summary.value)

    assert lamp.dtstart.value == date(2026, 3, 24)


def test_hostile_names_stay_text() -> None:
    """A name that looks like calendar lines is no line of its own."""
    hostile = Reared("x", "Blue; 7\r\nBEGIN:VALARM\x00", lamb().born)

    read = events(written(hostile, now(1)))
    assert all("BEGIN:VALARM" in event.summary.value for event in read.values())


def test_a_lamb_that_waits_for_a_vet_has_that_in_each_entry() -> None:
    """A phone shows one entry and no page: why the plan waits stands in front of each feed and each duty."""
    read = events(written(lamb(ill="Phone the vet now."), now(3)))

    assert all(each.description.value.startswith("Phone the vet now. Once it is") for each in read.values())


def test_a_birth_set_right_still_makes_a_newer_calendar() -> None:
    """Born three days later than was thought, made a day later: it changes what is there, and is not passed over."""
    first = events(written(lamb(), now(10)))
    other = events(written(lamb(born=at(3)), now(11)))

    assert all(int(other[uid].sequence.value) > int(first[uid].sequence.value) for uid in first)
