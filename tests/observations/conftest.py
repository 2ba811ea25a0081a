"""How the tests of observations type: at ten past two in the night, in London, on an invented lamb."""

from __future__ import annotations

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from triage.clock import Now
from triage.entry import AnswerReader, AskAgain
from triage.guide.model import Guide
from triage.observations import KINDS, Kept, Noting
from triage.units import System

LONDON = ZoneInfo("Europe/London")
NIGHT = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), LONDON)


def utc(*parts: int) -> datetime:
    """Return a moment in UTC."""
    return datetime(*parts, tzinfo=UTC)  # type: ignore[misc, arg-type]


Came = Noting | Kept | AskAgain


def note(
    guide: Guide,
    kind: str,
    *lines: str,
    now: Now = NIGHT,
    system: System = "metric",
    age: float | None = None,
) -> Came:
    """Type lines to one kind; what came of the last one."""
    known = {} if age is None else {"age": age}
    came: Came = Noting(KINDS[kind], guide, now, known=known)
    for line in lines:
        assert isinstance(came, Noting), came
        came = came.take(line, AnswerReader(guide, system, now))
    return came


def kept(
    guide: Guide,
    kind: str,
    *lines: str,
    now: Now = NIGHT,
    system: System = "metric",
    age: float | None = None,
) -> Kept:
    """What is kept after these lines, which must be enough."""
    came = note(guide, kind, *lines, now=now, system=system, age=age)
    assert isinstance(came, Kept), came
    return came


def asked(guide: Guide, kind: str, *lines: str, now: Now = NIGHT, age: float | None = None) -> str:
    """Why the last line is not taken."""
    came = note(guide, kind, *lines, now=now, age=age)
    assert isinstance(came, AskAgain), came
    return came.why
