"""Looks as an iCalendar file (RFC 5545), through the library icalendar."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from hashlib import sha256

from triage.casebook.rows import Look
from triage.page.inert import inert

WARNING = "A calendar is never the only alarm: many ignore the alarms of a file that is brought in."
"""Said in each event, and wherever such a file is written."""

LASTS = timedelta(minutes=10)


def calendar_of(looks: Iterable[tuple[str, str, Look]], now: datetime) -> bytes:
    """Return the looks (case, lamb's name, look) as a calendar with an alarm at each due time, in UTC.

    There has to be at least one: a calendar without an entry is none (RFC 5545, 3.6).
    """
    from icalendar import Alarm, Calendar, Event

    calendar = Calendar()
    calendar.add("prodid", "-//bummer-triage//looks//EN")
    calendar.add("version", "2.0")
    for case, name, look in looks:
        what = f"Look again: {inert(name, 60)}"
        event = Event()
        event.add("uid", _name_of(case, look))
        event.add("dtstamp", now.astimezone(UTC))
        # Cut to the second, and so early and never late.
        event.add("dtstart", look.due.astimezone(UTC).replace(microsecond=0))
        event.add("dtend", look.due.astimezone(UTC).replace(microsecond=0) + LASTS)
        event.add("summary", what)
        event.add("description", WARNING)
        alarm = Alarm()
        alarm.add("action", "DISPLAY")
        alarm.add("description", what)
        alarm.add("trigger", timedelta(0))
        event.add_component(alarm)
        calendar.add_component(event)
    return bytes(calendar.to_ical())


def _name_of(case: str, look: Look) -> str:
    """Return a look's own name, the same each time, so that bringing the file in twice gives one entry."""
    named = f"{case} {look.due.astimezone(UTC).isoformat()}"
    return f"{sha256(named.encode()).hexdigest()[:40]}@bummer-triage"
