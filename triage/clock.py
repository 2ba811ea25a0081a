"""Time of birth as people type it, and the hours since, right across a clock change."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo

from triage.typed import Refused

NEAREST_YEARS = 2
OLDEST = timedelta(days=366)

_CLOCK = re.compile(r"(?<![0-9])([0-9]{1,2})[:.]([0-9]{2})\s*(am|pm)?|(?<![0-9])([0-9]{1,2})\s*(am|pm)")
_DATE = re.compile(r"([0-9]{4})-([0-9]{1,2})-([0-9]{1,2})")
_FILLER = re.compile(r"\b(born|at|on|about|t)\b|[,]")
EXAMPLE = "10 h, 3 days, born 23:30, or born 2026-03-28 23:30"


@dataclass(frozen=True)
class Now:
    """The present moment (aware) and the zone that clock times are typed in; None is the machine's."""

    moment: datetime
    zone: tzinfo | None = None

    @classmethod
    def read(cls) -> Now:
        """Read the machine's clock."""
        return cls(datetime.now(UTC))


@dataclass(frozen=True)
class Born:
    """A moment of birth in UTC, and the hours from it to now."""

    moment: datetime
    hours: float
    note: str = ""
    rolled: bool = False
    """Whether a clock time alone was still to come today, and so was taken as yesterday's."""


def looks_like_clock(text: str) -> bool:
    """Tell a time of birth from an age: it holds a clock time, a date, or the word yesterday."""
    lowered = text.lower()
    return bool(_CLOCK.search(lowered) or _DATE.search(lowered) or re.search("born|yesterday|today", lowered))


def read_birth(text: str, now: datetime, zone: tzinfo | None = None) -> Born | Refused:
    """Read a local time of birth and count the real hours from it to `now` (an aware time).

    `zone` None means the machine's own zone. A time that the clock showed twice is taken as the
    earlier one: an older lamb is the more careful reading. A clock time alone means the last one.
    """
    lowered = text.strip().lower()
    here = _wall(now, zone)
    day, rest, dated = _day(lowered, here)
    if isinstance(day, Refused):
        return day
    clock = _clock(rest)
    if clock is None:
        return Refused(f"'{text.strip()}' is not a time of birth. Type it like {EXAMPLE}.")
    wall = datetime(day.year, day.month, day.day, *clock)
    rolled = not dated and _moment(wall, zone) > now
    if rolled:
        wall -= timedelta(days=1)
    moment = _moment(wall, zone)
    if moment > now:
        return Refused(
            f"That is still to come: it is {here:%H:%M} on {here:%Y-%m-%d} now. Type when it was born."
        )
    if now - moment > OLDEST:
        return Refused("That is more than a year ago. This guide is for lambs.")
    hours = (now - moment).total_seconds() / 3600
    return Born(moment, round(hours, 2), _understood(moment, zone), rolled)


def _day(text: str, here: datetime) -> tuple[datetime | Refused, str, bool]:
    match = _DATE.search(text)
    if match:
        if abs(int(match[1]) - here.year) > NEAREST_YEARS:
            return Refused(f"The year {match[1]} can't be right. Type it like {EXAMPLE}."), "", True
        try:
            day = datetime(int(match[1]), int(match[2]), int(match[3]))
        except ValueError:
            return Refused(f"There is no such date as {match[0]}."), "", True
        return day, text[: match.start()] + text[match.end() :], True
    if "yesterday" in text:
        return here - timedelta(days=1), text.replace("yesterday", ""), True
    if "today" in text:
        return here, text.replace("today", ""), True
    return here, text, False


def _clock(text: str) -> tuple[int, int] | None:
    rest = _FILLER.sub(" ", text).strip()
    match = _CLOCK.fullmatch(rest)
    if match is None:
        return None
    hour = int(match[1] or match[4])
    minute = int(match[2] or 0)
    half = match[3] or match[5]
    if half:
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if half == "pm" else 0)
    return (hour, minute) if hour < 24 and minute < 60 else None


def _wall(now: datetime, zone: tzinfo | None) -> datetime:
    return now.astimezone(zone).replace(tzinfo=None)


def _moment(wall: datetime, zone: tzinfo | None) -> datetime:
    """Return the UTC moment of a time on a wall clock: the earlier one where the clock showed it twice.

    A time that the clock skipped is read both ways as well, and the earlier one taken.
    """
    return min(wall.replace(tzinfo=zone, fold=fold).astimezone(UTC) for fold in (0, 1))


def _understood(moment: datetime, zone: tzinfo | None) -> str:
    return f"Taken as born {moment.astimezone(zone):%H:%M on %Y-%m-%d}."


def hhmm(moment: datetime, now: Now) -> str:
    """Return a moment as a clock time where the person is, with the day where it is not today.

    In the hour that the clock shows twice the name of the zone is added, which tells the two apart.
    """
    here, today = moment.astimezone(now.zone), now.moment.astimezone(now.zone)
    days = (today.date() - here.date()).days
    named = {0: "", 1: " yesterday", -1: " tomorrow"}.get(days, f" on {here:%d %b}")
    wall = here.replace(tzinfo=None)
    twice = len({wall.replace(tzinfo=now.zone, fold=fold).astimezone(UTC) for fold in (0, 1)}) > 1
    return f"{here:%H:%M}{f' {here:%Z}' if twice else ''}{named}"
