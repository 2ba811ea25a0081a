"""Two casebooks: one with a lamb in it, and one with nothing."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.casebook.conftest import LAMB, opened_at
from tests.moving.made import CLOSED, SEEN, WALK
from triage.casebook.book import Casebook


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Casebook]:
    """A casebook with one invented lamb, two walks and two notes."""
    kept = opened_at(tmp_path / "from.sqlite").book
    for case in (WALK, CLOSED):
        kept.begin(LAMB, case)
    for seen in SEEN:
        kept.note(seen)
    yield kept
    kept.close()


@pytest.fixture
def other(tmp_path: Path) -> Iterator[Casebook]:
    """Another casebook, with nothing in it."""
    kept = opened_at(tmp_path / "to.sqlite").book
    yield kept
    kept.close()
