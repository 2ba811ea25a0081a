"""A lamb's age across a change of the clocks, against `zoneinfo` and hours counted by hand.

The dates are those of the tz database (IANA): Europe/London goes forward at 01:00 UTC on 29 March 2026 and
back at 01:00 UTC on 25 October; America/New_York goes forward at 02:00 on 8 March and back at 02:00 on
1 November 2026.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.published.walks import every_trail
from triage.clock import Born, read_birth

LONDON = ZoneInfo("Europe/London")
NEW_YORK = ZoneInfo("America/New_York")


def hours(typed: str, now: datetime, zone: ZoneInfo) -> float:
    """Return the hours since birth that are understood."""
    born = read_birth(typed, now, zone)
    assert isinstance(born, Born), born
    return born.hours


@pytest.mark.parametrize(
    ("zone", "typed", "now", "counted"),
    [
        # Forward in London: from 23:30 GMT to 08:30 GMT, which the wall calls 09:30.
        (LONDON, "2026-03-28 23:30", datetime(2026, 3, 29, 9, 30), 9.0),
        (LONDON, "born 2026-03-29 00:30", datetime(2026, 3, 29, 2, 30), 1.0),
        (LONDON, "2026-03-29 00:59", datetime(2026, 3, 29, 2, 1), 0.03),
        (LONDON, "2026-03-22 12:00", datetime(2026, 3, 29, 12, 0), 167.0),
        # Back in London: from 22:30 GMT (23:30 summer time) to 09:30 GMT.
        (LONDON, "2026-10-24 23:30", datetime(2026, 10, 25, 9, 30), 11.0),
        (LONDON, "2026-10-25 00:30", datetime(2026, 10, 25, 2, 30), 3.0),
        (LONDON, "2026-10-18 12:00", datetime(2026, 10, 25, 12, 0), 169.0),
        # Forward in New York: from 22:00 to 02:00 is four hours, and 03:00 to 08:00 five more.
        (NEW_YORK, "2026-03-07 22:00", datetime(2026, 3, 8, 8, 0), 9.0),
        (NEW_YORK, "2026-03-08 01:30", datetime(2026, 3, 8, 3, 30), 1.0),
        # Back in New York: ten hours on the wall, and the hour from 01:00 twice.
        (NEW_YORK, "2026-10-31 22:00", datetime(2026, 11, 1, 8, 0), 11.0),
        (NEW_YORK, "2026-11-01 00:30", datetime(2026, 11, 1, 3, 0), 3.5),
        # A week with no change.
        (LONDON, "2026-02-01 12:00", datetime(2026, 2, 8, 12, 0), 168.0),
    ],
)
def test_hours_across_a_change(zone: ZoneInfo, typed: str, now: datetime, counted: float) -> None:
    """An age is counted in hours that passed, not in hours that the wall clock shows."""
    # tz database (IANA).
    assert hours(typed, now.replace(tzinfo=zone), zone) == pytest.approx(counted, abs=0.005)


@pytest.mark.parametrize(
    ("zone", "typed", "now", "counted"),
    [
        (LONDON, "yesterday 23:30", datetime(2026, 3, 29, 9, 30), 9.0),
        (LONDON, "born 23:30", datetime(2026, 3, 29, 9, 30), 9.0),
        (LONDON, "today 00:30", datetime(2026, 3, 29, 9, 30), 8.0),
        (LONDON, "yesterday 23:30", datetime(2026, 10, 25, 9, 30), 11.0),
        (LONDON, "11:30 pm", datetime(2026, 10, 25, 9, 30), 11.0),
        (NEW_YORK, "yesterday 10pm", datetime(2026, 3, 8, 8, 0), 9.0),
        (NEW_YORK, "10 pm", datetime(2026, 11, 1, 8, 0), 11.0),
    ],
)
def test_clock_time_alone_is_the_last_one(zone: ZoneInfo, typed: str, now: datetime, counted: float) -> None:
    """A clock time with no date is the last time the clock showed it, counted across the change."""
    # tz database (IANA).
    assert hours(typed, now.replace(tzinfo=zone), zone) == pytest.approx(counted)


@pytest.mark.parametrize(
    ("zone", "typed", "now", "older"),
    [
        # 01:30 in London came at 00:30 and at 01:30 UTC; 05:30 is UTC.
        (LONDON, "2026-10-25 01:30", datetime(2026, 10, 25, 5, 30), 5.0),
        (LONDON, "born 01:30", datetime(2026, 10, 25, 5, 30), 5.0),
        (LONDON, "2026-10-25 01:00", datetime(2026, 10, 25, 6, 0), 6.0),
        # 01:30 in New York came at 05:30 and at 06:30 UTC; 06:30 there is 11:30 UTC.
        (NEW_YORK, "2026-11-01 01:30", datetime(2026, 11, 1, 6, 30), 6.0),
        (NEW_YORK, "1:30 am", datetime(2026, 11, 1, 6, 30), 6.0),
    ],
)
def test_time_shown_twice_makes_the_older_lamb(
    zone: ZoneInfo, typed: str, now: datetime, older: float
) -> None:
    """A time that the clock showed twice is taken as the earlier, so that the lamb counts as older."""
    # tz database (IANA). Python's PEP 495 calls the earlier one fold 0.
    assert hours(typed, now.replace(tzinfo=zone), zone) == pytest.approx(older)


def test_older_reading_is_the_careful_one() -> None:
    """A very cold lamb born in the hour that came twice is asked about glucose, not warmed as a newborn."""
    # Eales and others, Vet Rec 114:469 (1984): past five hours, glucose first. Read as the later of the two
    # hours, this lamb would be 4.5 hours old.
    now = datetime(2026, 10, 25, 6, 0, tzinfo=LONDON)
    age = hours("2026-10-25 01:30", now, LONDON)
    trails = list(every_trail({"danger": "none", "temperature": 36.0, "age": age}, {"weight": (4.0,)}))
    assert trails
    assert all(trail.when("ask", "glucose") < trail.when("tag", "warm") for trail in trails)


@settings(deadline=None, max_examples=300)
@given(
    st.sampled_from(["Europe/London", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "UTC"]),
    st.datetimes(datetime(2026, 1, 2), datetime(2026, 12, 30)),
    st.integers(1, 60 * 24 * 200),
)
def test_ages_agree_with_zoneinfo(zone_name: str, wall: datetime, minutes: int) -> None:
    """At any moment of the year, in zones that change by an hour, by half an hour and not at all, ages agree."""
    # tz database (IANA) through Python's zoneinfo; fold 0 is the earlier of two equal wall times (PEP 495).
    zone = ZoneInfo(zone_name)
    wall = wall.replace(second=0, microsecond=0)
    born = wall.replace(tzinfo=zone, fold=0).astimezone(UTC)
    now = born + timedelta(minutes=minutes)
    read = read_birth(f"{wall:%Y-%m-%d %H:%M}", now, zone)
    assert isinstance(read, Born)
    assert read.moment == born
    assert read.hours == pytest.approx(minutes / 60, abs=0.0051)
