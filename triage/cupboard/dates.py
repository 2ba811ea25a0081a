"""The date on a label, as people type it: a day or a month, and never a guess at which is which."""

from __future__ import annotations

import calendar
import re
from dataclasses import dataclass
from datetime import date

EXAMPLE = "2027-03 or 2027-03-15"
_MONTHS = {name.lower(): number for number, name in enumerate(calendar.month_abbr) if name}
_YEARS = (2000, 2099)

_YEAR_FIRST = re.compile(r"(\d{4})[-/. ](\d{1,2})(?:[-/. ](\d{1,2}))?")
_MONTH_YEAR = re.compile(r"(\d{1,2})[-/. ](\d{4})")
_NUMBERS = re.compile(r"(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4})")
_NAMED = re.compile(r"(?:(\d{1,2})[-. ]*)?([a-z]{3,9})[-. ]*(\d{4})")


@dataclass(frozen=True)
class Until:
    """The last day on which a thing may be used; where the label has a month, the last day of it."""

    day: date
    said: str
    """The date as it is written down, year first."""


def read_until(text: str) -> Until | str:
    """Read a date from a label, or say in a sentence why that can't be done."""
    cleaned = " ".join(text.lower().replace(",", " ").split())
    if match := _YEAR_FIRST.fullmatch(cleaned):
        return _made(text, match[1], match[2], match[3])
    if match := _MONTH_YEAR.fullmatch(cleaned):
        return _made(text, match[2], match[1], None)
    if match := _NUMBERS.fullmatch(cleaned):
        return _either_way(text, match[1], match[2], match[3])
    match = _NAMED.fullmatch(cleaned)
    month = match and _MONTHS.get(match[2][:3])
    if match and month and calendar.month_name[month].lower().startswith(match[2].removesuffix("t")):
        return _made(text, match[3], str(month), match[1])
    return f"'{text.strip()}' is not a date. Write it year first, like {EXAMPLE}."


def _either_way(text: str, first: str, second: str, year: str) -> Until | str:
    """Read two small numbers: which of them is the month is told only where one can't be."""
    if int(first) > 12:
        return _made(text, year, second, first)
    if int(second) > 12 or first == second:
        return _made(text, year, first, second)
    return f"'{text.strip()}' could be two dates. Write it year first, like {EXAMPLE}."


def _made(text: str, year: str, month: str, day: str | None) -> Until | str:
    wrong = f"There is no date '{text.strip()}'. Write it year first, like {EXAMPLE}."
    if not _YEARS[0] <= int(year) <= _YEARS[1] or not 1 <= int(month) <= 12:
        return wrong
    last = calendar.monthrange(int(year), int(month))[1]
    if day is not None and not 1 <= int(day) <= last:
        return wrong
    until = date(int(year), int(month), int(day) if day else last)
    return Until(until, until.isoformat() if day else f"{until:%Y-%m}")
