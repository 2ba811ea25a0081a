"""An open casebook, a lamb and a case."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from triage.casebook.book import Casebook
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case, Lamb, Look
from triage.walk import Answer

NOW = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)
LAMB = Lamb("lamb-1", "Blue 7", NOW, NOW - timedelta(hours=3), True, "twin", "ewe")
CASE = Case(
    "case-1",
    LAMB.id,
    NOW,
    NOW,
    "2026.1",
    (Answer("danger", "none", at=NOW), Answer("temperature", 36.2, "36.2", NOW)),
    Look(NOW, NOW + timedelta(minutes=20)),
)
"""An invented lamb and its walk."""


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Where the casebook is to be."""
    return tmp_path / "kept" / "casebook.sqlite"


@pytest.fixture
def book(path: Path) -> Iterator[Casebook]:
    """An open casebook with nothing in it."""
    opened = opened_at(path)
    yield opened.book
    opened.book.close()


def opened_at(path: Path) -> Opened[Casebook]:
    """Open a casebook that can be opened."""
    opened = open_casebook(path)
    assert isinstance(opened, Opened), opened
    return opened


@pytest.fixture(scope="session")
def whole(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A sound casebook of several pages, as bytes."""
    from tests.casebook.damaging import sound_casebook  # it stands on what is above

    return sound_casebook(tmp_path_factory.mktemp("whole") / "casebook.sqlite")
