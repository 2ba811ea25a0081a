"""The shipped guide as books, made once."""

from __future__ import annotations

from datetime import date

import pytest

from tests.book.reader import Book
from triage.book.making import Making
from triage.book.review import told_of
from triage.book.whole import book_of
from triage.guide.model import Guide

DAY = date(2026, 12, 1)


@pytest.fixture(scope="session")
def metric(guide: Guide) -> Book:
    """The book in metric units."""
    return Book(book_of(Making(guide, DAY, told=told_of(guide, DAY))))


@pytest.fixture(scope="session")
def us(guide: Guide) -> Book:
    """The book in US units."""
    return Book(book_of(Making(guide, DAY, "us", told=told_of(guide, DAY))))
