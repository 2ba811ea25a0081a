"""Times gone by: what is understood of what people type, and how a moment is told again."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.clock import BIRTH, Asked, Now, Past, at_clock, hhmm, read_past
from triage.typed import Refused

LONDON = ZoneInfo("Europe/London")
SEEN = Asked("a time", "1:30", "When was it?", timedelta(days=30), "Too long ago.", earlier=False)
NIGHT = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), LONDON)


def utc(*parts: int) -> datetime:
    """Return a moment in UTC."""
    return datetime(*parts, tzinfo=UTC)  # type: ignore[misc, arg-type]


def past(text: str, now: Now, asked: Asked = SEEN) -> Past:
    """Return what is understood, which must be something."""
    read = read_past(text, now, asked)
    assert isinstance(read, Past), read
    return read


def refused(text: str, now: Now, asked: Asked = SEEN) -> str:
    """Return why a text is refused, which it must be."""
    read = read_past(text, now, asked)
    assert isinstance(read, Refused), read
    return read.why


@pytest.mark.parametrize(
    ("text", "moment", "rolled"),
    [
        ("1:30", utc(2026, 2, 11, 1, 30), False),
        ("2:10", utc(2026, 2, 11, 2, 10), False),
        ("1.30 am", utc(2026, 2, 11, 1, 30), False),
        ("23:30", utc(2026, 2, 10, 23, 30), True),
        ("23:30 yesterday", utc(2026, 2, 10, 23, 30), False),
        ("2026-02-01 09:00", utc(2026, 2, 1, 9), False),
        ("2:10 gmt", utc(2026, 2, 11, 2, 10), False),
    ],
)
def test_a_clock_time_is_the_last_one(text: str, moment: datetime, rolled: bool) -> None:
    """A clock time alone is the last one gone by; a day may be named."""
    assert past(text, NIGHT) == Past(moment, rolled)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2:11 today", "That is still to come: it is 02:10 on 2026-02-11 now. When was it?"),
        ("2026-01-01 12:00", "Too long ago."),
        ("25:00", "'25:00' is not a time. Type it like 1:30."),
        ("half past one", "'half past one' is not a time. Type it like 1:30."),
        ("2026-02-30 1:00", "There is no such date as 2026-02-30."),
        ("1999-02-03 1:00", "The year 1999 can't be right. Type it like 1:30."),
    ],
)
def test_a_refusal_speaks_of_what_was_asked(text: str, words: str) -> None:
    """What can't be used is refused in the words of the one who asked."""
    assert refused(text, NIGHT) == words


@pytest.mark.parametrize(
    ("asked", "text", "moment", "other"),
    [
        # At 01:10 UTC on the night the clock goes back it shows 01:10 for the second time.
        (SEEN, "1:05", utc(2026, 10, 25, 1, 5), utc(2026, 10, 25, 0, 5)),
        (BIRTH, "1:05", utc(2026, 10, 25, 0, 5), utc(2026, 10, 25, 1, 5)),
        (SEEN, "1:05 BST", utc(2026, 10, 25, 0, 5), utc(2026, 10, 25, 1, 5)),
        (SEEN, "1:05 gmt", utc(2026, 10, 25, 1, 5), utc(2026, 10, 25, 0, 5)),
        (SEEN, "1:30", utc(2026, 10, 25, 0, 30), None),
        (SEEN, "0:30", utc(2026, 10, 24, 23, 30), None),
    ],
)
def test_an_hour_shown_twice_is_told_apart(
    asked: Asked, text: str, moment: datetime, other: datetime | None
) -> None:
    """Of two such times the last one gone by is taken, for a birth the earlier one; a name picks either."""
    assert past(text, Now(utc(2026, 10, 25, 1, 10), LONDON), asked) == Past(moment, other=other)


def test_a_zone_is_looked_for_on_the_day_before_too() -> None:
    """Just after midnight a time with the name of summer time is the one of the day before."""
    assert past("1:30 bst", Now(utc(2026, 10, 26, 0, 30), LONDON)).moment == utc(2026, 10, 25, 0, 30)


def test_a_zone_that_did_not_hold_then_is_refused() -> None:
    """A time in summer time on a day after it ended was never shown."""
    why = refused("1:30 bst today", Now(utc(2026, 10, 26, 6, 0), LONDON))

    assert why == "The clock never showed 01:30 BST that day."


def test_a_skipped_time_is_the_earlier_reading() -> None:
    """On the night the clock goes forward 01:30 was never shown; it is taken as half an hour past midnight."""
    assert past("1:30", Now(utc(2026, 3, 29, 6, 0), LONDON)) == Past(utc(2026, 3, 29, 0, 30))


@pytest.mark.parametrize(
    ("moment", "words"),
    [
        (utc(2026, 10, 25, 0, 30), "01:30 BST yesterday"),
        (utc(2026, 10, 25, 1, 30), "01:30 GMT yesterday"),
        (utc(2026, 10, 25, 2, 0), "02:00 yesterday"),
        (utc(2026, 10, 26, 0, 30), "00:30"),
        (utc(2026, 10, 27, 0, 30), "00:30 tomorrow"),
        (utc(2026, 10, 12, 8, 30), "09:30 on 12 Oct"),
    ],
)
def test_a_moment_is_told_on_the_clock_of_the_place(moment: datetime, words: str) -> None:
    """A moment is told in local time, with its day, and with the zone where the clock showed it twice."""
    assert hhmm(moment, Now(utc(2026, 10, 26, 6, 0), LONDON)) == words


ZONES = st.sampled_from(
    [UTC, LONDON, ZoneInfo("America/New_York"), ZoneInfo("Australia/Lord_Howe"), timezone(timedelta(hours=5))]
)


@given(st.datetimes(datetime(2026, 1, 1), datetime(2026, 12, 31)), st.integers(0, 29 * 1440), ZONES)
def test_what_is_told_is_understood_again(now: datetime, minutes: int, zone: ZoneInfo) -> None:
    """A moment told with its date, and with the zone in an hour shown twice, is read as the same moment."""
    here = Now(now.replace(second=0, microsecond=0, tzinfo=UTC), zone)
    moment = here.moment - timedelta(minutes=minutes)

    typed = f"{moment.astimezone(zone):%Y-%m-%d} {at_clock(moment, zone)}"

    assert past(typed, here).moment == moment
