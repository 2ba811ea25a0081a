"""Invented lambs for the tests of the story: readings, walks and notes at times that are easy to count."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tests.conftest import small_guide
from triage.casebook.rows import Case, Observation, Part
from triage.clock import Now
from triage.facts import Value
from triage.guide.model import Act, Ask, Guide
from triage.page.lines import lay_out
from triage.page.page import Block, Page
from triage.walk import Answer, Move, Walk

LONDON = ZoneInfo("Europe/London")
NIGHT = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)
NOW = Now(NIGHT, LONDON)


def utc(*parts: int) -> datetime:
    """Return a moment in UTC."""
    return datetime(*parts, tzinfo=UTC)  # type: ignore[misc, arg-type]


def seen(at: datetime, kind: str, **parts: Part) -> Observation:
    """Return an invented observation."""
    return Observation(f"{kind}-{at:%d%H%M%S}", "lamb", kind, at, at, parts)


def measured(finding: str, *values: tuple[datetime, float]) -> tuple[Observation, ...]:
    """Return an invented series, written down between walks."""
    return tuple(seen(at, finding, **{finding: value}) for at, value in values)


def walked(guide: Guide, at: datetime, *values: Value, minutes: int = 1) -> Walk:
    """Answer in turn, so many minutes apart, and carry out each act met on the way."""
    walk = Walk(guide)
    for value in values:
        while isinstance(walk.node, Act):
            walk, at = walk.done(at), at + timedelta(minutes=minutes)
        assert isinstance(walk.node, Ask), walk.node.name
        walk, at = walk.answer(value, at=at), at + timedelta(minutes=minutes)
    return walk


def case(*moves: Move, begun: datetime = NIGHT, edition: str = "test") -> Case:
    """Return an invented case."""
    return Case(f"case-{begun:%d%H%M}", "lamb", begun, begun, edition, moves)


def temperature(value: float, at: datetime | None, said: str = "") -> Answer:
    """Return an answer to the finding temperature."""
    return Answer("temperature", value, said, at)


def lines_of(blocks: tuple[Block, ...] | list[Block], width: int) -> list[str]:
    """Return blocks as the lines of a side page."""
    return [line.text for line in lay_out(Page("side", "", tuple(blocks)), width)]


@pytest.fixture(scope="session")
def small_for_all(tmp_path_factory: pytest.TempPathFactory) -> Guide:
    """The small guide, made once for all the examples of a property."""
    return small_guide(tmp_path_factory.mktemp("small"))
