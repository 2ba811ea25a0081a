"""A session with a casebook, at a time that the test can move."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from triage.casebook.book import Casebook
from triage.casebook.opening import Opened, open_casebook
from triage.clock import Now
from triage.guide.model import Guide
from triage.holding.holding import Holding
from triage.looks import Alarm
from triage.session import Session
from triage.session.desk import House
from triage.session.keeping import Keeping
from triage.walk import Walk

START = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)


@dataclass
class Night:
    """An invented night: sessions on one casebook, and a clock that goes on when told."""

    guide: Guide
    path: Path
    moment: datetime = START
    holding: Holding = field(default_factory=Holding)
    books: list[Casebook] = field(default_factory=list)

    def now(self) -> Now:
        """The time in the test."""
        return Now(self.moment, UTC)

    def passes(self, minutes: float) -> None:
        """Let time go by."""
        self.moment += timedelta(minutes=minutes)

    def steady(self) -> float:
        """Seconds on a clock that nobody sets."""
        return self.moment.timestamp()

    def open(self, *lines: str, guide: Guide | None = None) -> Session:
        """Begin a session as the command does, and type lines."""
        opened = open_casebook(self.path)
        assert isinstance(opened, Opened)
        self.books.append(opened.book)
        house = House(Keeping(opened.book), self.holding, alarm=Alarm(self.steady))
        session = Session(Walk(guide or self.guide), clock=self.now, house=house)
        if opened.book.count_open():
            session.open("lambs")
        return typed(session, *lines)


def typed(session: Session, *lines: str) -> Session:
    """Type lines one after another."""
    for line in lines:
        session.take(line)
    return session


def texts(session: Session) -> list[str]:
    """The texts of the page in view."""
    page = session.page()
    return [*(block.text for block in page.blocks), *(choice.text for choice in page.choices)]


def listed(session: Session) -> dict[str, str]:
    """What the numbers of the page in view stand for."""
    blocks = session.page().blocks
    return {block.mark: block.text for block in blocks if block.role == "choice" and block.mark.isdecimal()}


@pytest.fixture
def night(guide: Guide, tmp_path: Path) -> Iterator[Night]:
    """A night that begins at ten past two."""
    held = Night(guide, tmp_path / "casebook.sqlite")
    yield held
    for book in held.books:
        book.close()
