"""Looks as an iCalendar file (RFC 5545), through the library icalendar."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import datetime, timedelta

from triage.casebook.rows import Look
from triage.page.inert import inert

WARNING = "A calendar is never the only alarm: many ignore the alarms of a file that is brought in."
"""Said in each event, and wherever such a file is written."""

LASTS = timedelta(minutes=10)


def calendar_of(looks: Iterable[tuple[str, str, Look]], now: datetime) -> bytes:
    """Return the looks (case, lamb's name, look) as a calendar with an alarm at each due time, in UTC."""
    from icalendar import Alarm, Calendar, Event

    calendar = Calendar()
    calendar.add("prodid", "-//bummer-triage//looks//EN")
    calendar.add("version", "2.0")
    for case, name, look in looks:
        what = f"Look again: {inert(name, 60)}"
        event = Event()
        # The same look keeps its name, so that bringing the file in twice gives one entry.
        event.add("uid", f"{case}-{look.due:%Y%m%dT%H%M%SZ}@bummer-triage")
        event.add("dtstamp", now)
        event.add("dtstart", look.due)
        event.add("dtend", look.due + LASTS)
        event.add("summary", what)
        event.add("description", WARNING)
        alarm = Alarm()
        alarm.add("action", "DISPLAY")
        alarm.add("description", what)
        alarm.add("trigger", timedelta(0))
        event.add_component(alarm)
        calendar.add_component(event)
    return bytes(calendar.to_ical())
