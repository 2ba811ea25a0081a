"""A guide ready to be read in, and a session that reads."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from triage import plain
from triage.clock import Now
from triage.guide.model import Guide
from triage.reading.collection import Collection
from triage.session import Session
from triage.session.reading import ReadingRoom
from triage.units import System
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)


@pytest.fixture(scope="session")
def collection(guide: Guide) -> Collection:
    """The shipped guide, ready to be read in; made once."""
    return Collection(guide)


def reading(collection: Collection, *lines: str, system: System = "metric") -> Session:
    """Return a session in the contents, with lines typed."""
    session = Session(Walk(collection.guide), system, "01632 960111", lambda: NOW)
    session.desk.open(ReadingRoom(session, collection, alone=True))
    for line in lines:
        session.take(line)
    return session


def heading(session: Session) -> str:
    """The heading of the page in view."""
    return session.page().blocks[0].text


def texts(session: Session) -> list[str]:
    """All texts of the page in view."""
    page = session.page()
    return [*(block.text for block in page.blocks), *(choice.text for choice in page.choices)]


@pytest.fixture(autouse=True)
def _prompted(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(plain.PROMPTS, "read", "A number, or a word to look for")
