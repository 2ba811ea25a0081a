"""Times gone by as people type them, of birth above all, right across a clock change."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta, tzinfo

from triage.typed import Refused

NEAREST_YEARS = 2

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


@dataclass(frozen=True)
class Asked:
    """How a time gone by is asked for, so that a refusal speaks of what was asked."""

    what: str
    example: str
    again: str
    """What is said after a time that is still to come."""
    oldest: timedelta
    too_old: str
    earlier: bool = True
    """Which is taken of a time that the clock showed twice: the earlier one, or the last one gone by."""


BIRTH = Asked(
    "a time of birth",
    EXAMPLE,
    "Type when it was born.",
    timedelta(days=366),
    "That is more than a year ago. This guide is for lambs.",
)


@dataclass(frozen=True)
class Past:
    """A moment gone by, in UTC."""

    moment: datetime
    rolled: bool = False
    """Whether a clock time alone was still to come today, and so was taken as yesterday's."""
    other: datetime | None = None
    """The other moment at which the clock showed this time, where it showed it twice."""


def looks_like_clock(text: str) -> bool:
    """Tell a time of birth from an age: it holds a clock time, a date, or the word yesterday."""
    lowered = text.lower()
    return bool(_CLOCK.search(lowered) or _DATE.search(lowered) or re.search("born|yesterday|today", lowered))


def read_birth(text: str, now: datetime, zone: tzinfo | None = None) -> Born | Refused:
    """Read a local time of birth and count the real hours from it to `now` (an aware time).

    `zone` None means the machine's own zone. A time that the clock showed twice is taken as the
    earlier one: an older lamb is the more careful reading. A clock time alone means the last one.
    """
    read = read_past(text, Now(now, zone), BIRTH)
    if isinstance(read, Refused):
        return read
    hours = (now - read.moment).total_seconds() / 3600
    return Born(read.moment, round(hours, 2), _understood(read.moment, zone), read.rolled)


def read_past(text: str, now: Now, asked: Asked) -> Past | Refused:
    """Read a local time gone by. A clock time alone means the last one.

    In an hour that the clock shows twice the name of the zone may stand behind the time: `1:30 GMT`.
    """
    here = _wall(now.moment, now.zone)
    day, rest, dated = _day(text.strip().lower(), here, asked.example)
    if isinstance(day, Refused):
        return day
    rest, named = _zone_name(rest, day, now.zone)
    clock = _clock(rest)
    if clock is None:
        return Refused(f"'{text.strip()[:40]}' is not {asked.what}. Type it like {asked.example}.")
    wall = datetime(day.year, day.month, day.day, *clock)
    rolled = not dated and not any(each <= now.moment for each in _moments(wall, now.zone, named))
    if rolled:
        wall -= timedelta(days=1)
    moments = _moments(wall, now.zone, named)
    if not moments:
        return Refused(f"The clock never showed {clock[0]:02}:{clock[1]:02} {named.upper()} that day.")
    if moments[0] > now.moment:
        return Refused(f"That is still to come: it is {here:%H:%M} on {here:%Y-%m-%d} now. {asked.again}")
    if now.moment - moments[0] > asked.oldest:
        return Refused(asked.too_old)
    gone_by = [moment for moment in moments if moment <= now.moment]
    taken = gone_by[0] if asked.earlier or not _shown_twice(wall, now.zone) else gone_by[-1]
    return Past(taken, rolled, _other(taken, wall, now))


def _other(taken: datetime, wall: datetime, now: Now) -> datetime | None:
    """Return the other moment gone by at which the clock showed this time, if there is one."""
    if not _shown_twice(wall, now.zone):
        return None
    others = [each for each in _moments(wall, now.zone) if each != taken and each <= now.moment]
    return others[0] if others else None


def _day(text: str, here: datetime, such_as: str) -> tuple[datetime | Refused, str, bool]:
    match = _DATE.search(text)
    if match:
        if abs(int(match[1]) - here.year) > NEAREST_YEARS:
            return Refused(f"The year {match[1]} can't be right. Type it like {such_as}."), "", True
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


def _zone_name(text: str, day: datetime, zone: tzinfo | None) -> tuple[str, str]:
    """Split the name of the zone off a time, as it is called on these days."""
    midnight = day.replace(hour=0, minute=0)
    days = [midnight + timedelta(days=step) for step in (-1, 0, 1)]
    names = {f"{each.replace(tzinfo=zone).astimezone(zone):%Z}".lower() for each in days}
    head, _, last = text.rstrip().rpartition(" ")
    return (head, last) if head and last in names else (text, "")


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


def _moments(wall: datetime, zone: tzinfo | None, named: str = "") -> list[datetime]:
    """Return the UTC moments that a time on a wall clock can mean, the earlier first: one, or two.

    A time that the clock skipped is read both ways as well. A zone's name leaves those that it fits.
    """
    moments = sorted({wall.replace(tzinfo=zone, fold=fold).astimezone(UTC) for fold in (0, 1)})
    if named:
        return [each for each in moments if f"{each.astimezone(zone):%Z}".lower() == named]
    return moments


def _shown_twice(wall: datetime, zone: tzinfo | None) -> bool:
    """Whether the clock showed this time twice; one that it skipped comes back as another time."""
    moments = _moments(wall, zone)
    return len(moments) > 1 and all(_wall(each, zone) == wall for each in moments)


def _understood(moment: datetime, zone: tzinfo | None) -> str:
    return f"Taken as born {moment.astimezone(zone):%H:%M on %Y-%m-%d}."


def at_clock(moment: datetime, zone: tzinfo | None) -> str:
    """Return a moment as a clock time where the person is.

    In the hour that the clock shows twice the name of the zone is added, which tells the two apart.
    """
    here = moment.astimezone(zone)
    return f"{here:%H:%M}{f' {here:%Z}' if _shown_twice(here.replace(tzinfo=None), zone) else ''}"


def hhmm(moment: datetime, now: Now) -> str:
    """Return a moment as a clock time where the person is, with the day where it is not today."""
    here, today = moment.astimezone(now.zone), now.moment.astimezone(now.zone)
    days = (today.date() - here.date()).days
    named = {0: "", 1: " yesterday", -1: " tomorrow"}.get(days, f" on {here:%d %b}")
    return f"{at_clock(moment, now.zone)}{named}"
