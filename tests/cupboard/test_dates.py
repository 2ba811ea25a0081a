"""Dates on labels: every way to write one that can only mean one day, and none that could mean two."""

from __future__ import annotations

import calendar
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.cupboard.dates import Until, read_until

DAYS = st.dates(date(2000, 1, 1), date(2099, 12, 31))


@pytest.mark.parametrize(
    ("text", "day", "said"),
    [
        ("2027-03", date(2027, 3, 31), "2027-03"),
        ("2028-02", date(2028, 2, 29), "2028-02"),
        ("2027-03-15", date(2027, 3, 15), "2027-03-15"),
        ("2027/3/15", date(2027, 3, 15), "2027-03-15"),
        ("03/2027", date(2027, 3, 31), "2027-03"),
        ("3.2027", date(2027, 3, 31), "2027-03"),
        ("MAR 2027", date(2027, 3, 31), "2027-03"),
        ("March 2027", date(2027, 3, 31), "2027-03"),
        ("15 Mar 2027", date(2027, 3, 15), "2027-03-15"),
        ("Sept 2027", date(2027, 9, 30), "2027-09"),
        ("15/03/2027", date(2027, 3, 15), "2027-03-15"),
        ("03/15/2027", date(2027, 3, 15), "2027-03-15"),
        ("04/04/2027", date(2027, 4, 4), "2027-04-04"),
    ],
)
def test_a_date_is_read(text: str, day: date, said: str) -> None:
    """A month lasts to its last day, and each date is written down year first."""
    assert read_until(text) == Until(day, said)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("3/4/2027", "could be two dates"),
        ("next year", "is not a date"),
        ("2027", "is not a date"),
        ("27-03", "is not a date"),
        ("2027-13", "There is no date"),
        ("2027-02-30", "There is no date"),
        ("2027-00", "There is no date"),
        ("0000-01", "There is no date"),
        ("3 Mud 2027", "is not a date"),
        ("marble 2027", "is not a date"),
        ("31 Feb 2027", "There is no date"),
    ],
)
def test_what_is_no_date_gets_a_sentence(text: str, why: str) -> None:
    """What could mean two days, or none, is refused with how to write it."""
    came = read_until(text)

    assert isinstance(came, str)
    assert why in came
    assert came.endswith("like 2027-03 or 2027-03-15.")


@given(DAYS)
def test_every_day_comes_back(day: date) -> None:
    """Any day, written in any of the ways, is that day; so is what is written down of it."""
    month = calendar.month_abbr[day.month]
    for text in (day.isoformat(), f"{day.day} {month} {day.year}", f"{day.year}/{day.month}/{day.day}"):
        came = read_until(text)
        assert came == Until(day, day.isoformat())


@given(st.text(max_size=30))
def test_anything_typed_is_a_date_or_a_sentence(text: str) -> None:
    """Nothing that is typed makes it fail."""
    came = read_until(text)

    assert isinstance(came, Until) or came.endswith(".")
