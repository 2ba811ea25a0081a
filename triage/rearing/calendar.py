"""A plan as an iCalendar file (RFC 5545), through the library icalendar.

Each duty keeps its own name in the file (its UID) however its date moves, and each making has a higher
SEQUENCE, so that bringing it in again changes what is there and doubles nothing. What has a time of day
is written in UTC, which no clock change moves; all else is written as days.
"""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from hashlib import sha256

from triage.calendars import WARNING
from triage.clock import Now
from triage.page.inert import inert
from triage.rearing.blocks import dates_of
from triage.rearing.duties import Task
from triage.rearing.plan import Plan

DAY = timedelta(days=1)
ANEW = "Once it is well, make this calendar anew."


def calendar_of_plan(plan: Plan, now: Now) -> bytes:
    """Return the plan as a calendar: each duty, and each change of the milk."""
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("prodid", "-//bummer-triage//plan//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", f"Plan for {inert(plan.lamb.name, 40)}")
    # Who reads one entry reads no other: why the plan waits stands in each.
    ill = (f"{plan.lamb.ill} {ANEW}",) if plan.lamb.ill else ()
    for task in plan.tasks:
        said = (f"{dates_of(task, now)}.", *task.do, *task.cautions, *task.law, WARNING)
        text = "\n".join((*ill, *said))
        span = (task.begins, task.ends) if task.timed else _days(task, now)
        _add(calendar, plan, (task.key, task.title, text), span)
    for number, row in enumerate(plan.milk):
        what = f"{row.feeds} feeds of {row.each}, {row.day} a day"
        text = "\n".join(filter(None, (*ill, row.mix, row.published, WARNING)))
        span = (_day(row.begins, now), _day(row.begins, now) + DAY)
        _add(calendar, plan, (f"milk-{number}", f"Milk: {what}", text), span)
    return bytes(calendar.to_ical())


def _days(task: Task, now: Now) -> tuple[date, date]:
    """Return the day on which a duty begins; where it runs for long its end stands in the words."""
    begins = _day(task.begins, now)
    return begins, begins + DAY


def _day(moment: datetime, now: Now) -> date:
    return moment.astimezone(now.zone).date()


def _add(
    calendar: object,
    plan: Plan,
    said: tuple[str, str, str],
    span: tuple[date | datetime, date | datetime | None],
) -> None:
    from icalendar import Alarm, Calendar, Event

    assert isinstance(calendar, Calendar)
    key, title, text = said
    event = Event()
    event.add("uid", name_of(plan, key))
    event.add("dtstamp", plan.made.astimezone(UTC))
    event.add("sequence", sequence(plan))
    event.add("dtstart", _utc(span[0]))
    if span[1] is not None:
        event.add("dtend", _utc(span[1]))
    event.add("summary", f"{inert(plan.lamb.name, 40)}: {title}")
    event.add("description", text)
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", title)
    # A day begins at midnight; its alarm comes at eight in the morning.
    alarm.add("trigger", timedelta(0) if isinstance(span[0], datetime) else timedelta(hours=8))
    event.add_component(alarm)
    calendar.add_component(event)


def _utc(moment: date | datetime) -> date | datetime:
    return moment.astimezone(UTC).replace(microsecond=0) if isinstance(moment, datetime) else moment


def name_of(plan: Plan, key: str) -> str:
    """Return the name of one entry, the same at each making of this lamb's plan."""
    return f"{sha256(f'{plan.lamb.id} {key}'.encode()).hexdigest()[:40]}@bummer-triage"


def sequence(plan: Plan) -> int:
    """Return the minute of the making, so that a later one counts as newer, also with a birth set right."""
    return max(0, int(plan.made.timestamp() // 60))
