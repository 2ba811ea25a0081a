"""Looks as a calendar: what RFC 5545 asks, each with its section, and what a library reads back."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from triage.calendars import WARNING, calendar_of
from triage.casebook.rows import Look

NOW = datetime(2026, 10, 25, 0, 10, 30, 123456, tzinfo=UTC)
DUE = NOW + timedelta(minutes=20)
HOSTILE = "Blue; 7, \\n [b]\r\nBEGIN:VALARM\x00\x1b[2J\u202e" + "é" * 300


def made(name: str = "Blue 7", case: str = "case-1", due: datetime = DUE) -> bytes:
    return calendar_of([(case, name, Look(NOW, due))], NOW)


def lines(written: bytes) -> list[str]:
    """Undo the folding (RFC 5545, 3.1)."""
    return written.decode().replace("\r\n ", "").removesuffix("\r\n").split("\r\n")


def test_it_reads_back() -> None:
    """A library reads each look: whose, when it is due to the second and never later, and the warning."""
    calendar = Calendar.from_ical(
        calendar_of([("a", "Blue 7", Look(NOW, DUE)), ("b", "Red", Look(NOW, NOW))], NOW)
    )

    blue, red = calendar.walk("VEVENT")
    assert (blue["SUMMARY"], red["SUMMARY"]) == ("Look again: Blue 7", "Look again: Red")
    assert blue.decoded("DTSTART") == datetime(2026, 10, 25, 0, 30, 30, tzinfo=UTC) <= DUE
    assert blue["DESCRIPTION"] == red["DESCRIPTION"] == WARNING
    [alarm] = blue.walk("VALARM")
    assert alarm.decoded("TRIGGER") == timedelta(0)


def test_what_a_calendar_must_have() -> None:
    """Each required property stands exactly once, in its component."""
    told = lines(made())

    assert told[0] == "BEGIN:VCALENDAR"  # 3.4
    assert told[-1] == "END:VCALENDAR"  # 3.4
    assert told.count("VERSION:2.0") == 1  # 3.6 and 3.7.4
    assert [each for each in told if each.startswith("PRODID:")] == [
        "PRODID:-//bummer-triage//looks//EN"
    ]  # 3.7.3
    event = told[told.index("BEGIN:VEVENT") : told.index("BEGIN:VALARM")]
    names = [each.partition(":")[0].partition(";")[0] for each in event]
    assert all(names.count(name) == 1 for name in ("UID", "DTSTAMP", "DTSTART"))  # 3.6.1
    assert names.count("DTEND") + names.count("DURATION") == 1  # 3.6.1: never both
    alarm = told[told.index("BEGIN:VALARM") : told.index("END:VALARM")]
    assert "ACTION:DISPLAY" in alarm  # 3.6.6
    assert sum(each.startswith("TRIGGER") for each in alarm) == 1  # 3.6.6
    assert sum(each.startswith("DESCRIPTION:") for each in alarm) == 1  # 3.6.6, for DISPLAY
    assert told.index("END:VALARM") < told.index("END:VEVENT")  # 3.6.6: only inside an event or a to-do


@pytest.mark.parametrize("zone", ["Europe/London", "America/Denver"])
def test_times_are_utc(zone: str) -> None:
    """Times are written in UTC, whatever zone they come in, so that a clock change moves none (3.3.5, form 2)."""
    there = ZoneInfo(zone)
    told = lines(calendar_of([("a", "x", Look(NOW, DUE.astimezone(there)))], NOW.astimezone(there)))

    assert "DTSTART:20261025T003030Z" in told
    assert "DTSTAMP:20261025T001030Z" in told  # 3.8.7.2: it must be UTC
    assert not any("TZID" in each for each in told)


def test_a_look_keeps_its_name() -> None:
    """The same look has the same name in each file, and any other look another (3.8.4.7)."""
    names = [
        Calendar.from_ical(written).walk("VEVENT")[0]["UID"]
        for written in (
            made(),
            made("Another name"),
            made(due=DUE + timedelta(minutes=1)),
            made(case="case-2"),
        )
    ]

    assert names[0] == names[1]
    assert len(set(names)) == 3
    assert made() == made()


@pytest.mark.parametrize("name", [HOSTILE, "Lamm mit schönem Namen " * 20, "羊" * 200, "", "-"])
def test_lines_are_folded(name: str) -> None:
    """No line is longer than 75 octets, each ends with CR LF, and no sign is cut in two (3.1)."""
    written = made(name)

    physical = written.split(b"\r\n")
    assert physical.pop() == b""
    assert all(len(each) <= 75 for each in physical)
    assert b"\n" not in b"".join(physical)
    assert all(each.decode() for each in physical)


@given(st.text(max_size=80), st.text(max_size=40))
@settings(max_examples=60, deadline=None)
def test_no_name_adds_a_line(name: str, case: str) -> None:
    """A name stays text, whatever is in it: the calendar has the same lines as with any other (3.3.11)."""
    case = case.encode(errors="replace").decode()
    shape = [each.partition(":")[0] for each in lines(made())]

    assert [each.partition(":")[0] for each in lines(made(name, case))] == shape
    [event] = Calendar.from_ical(made(name, case)).walk("VEVENT")
    assert str(event["SUMMARY"]).startswith("Look again: ")
    assert event["DESCRIPTION"] == WARNING
