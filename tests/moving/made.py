"""An invented lamb to move, and its file."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.test_book import HOSTILE
from triage.casebook.book import Casebook
from triage.casebook.rows import Case, Lamb, Observation
from triage.facts import UNSURE
from triage.moving.export import exported
from triage.moving.reading import Moved, Refused, read_moved
from triage.walk import Answer, Done

SEEN = (
    Observation("o-1", LAMB.id, "weight", NOW, NOW, {"weight": 4.2}),
    Observation("o-2", LAMB.id, "note", NOW, NOW, {"note": HOSTILE}),
)
WALK = replace(
    CASE,
    moves=(
        *CASE.moves, Answer("mouth", UNSURE, "?", NOW), Done("warm-it", NOW), Answer("age", 3.0), Done("act"),
        Answer("a-finding-of-another-guide", "x", HOSTILE, NOW),
    ),
)  # fmt: skip
CLOSED = Case("case-2", LAMB.id, NOW, NOW, "2026.1", closed=NOW + timedelta(hours=1))


def file_of(book: Casebook, lamb: Lamb = LAMB) -> bytes:
    text = exported(book, lamb, "2026.1", NOW)
    assert isinstance(text, str), text
    return text.encode()


def read(written: bytes) -> Moved:
    moved = read_moved(written)
    assert isinstance(moved, Moved), moved
    return moved


def refused(data: object) -> str:
    moved = read_moved(data if isinstance(data, bytes) else json.dumps(data).encode())
    assert isinstance(moved, Refused)
    return moved.why


def everything(book: Casebook) -> list[tuple[object, ...]]:
    return [
        row
        for table in ("lambs", "cases", "moves", "observations")
        for row in book._database.execute(f"SELECT * FROM {table} ORDER BY 1")
    ]


def whole_file() -> bytes:
    with TemporaryDirectory() as folder:
        book = opened_at(Path(folder) / "from").book
        book.begin(LAMB, WALK)
        for seen in SEEN[:1]:
            book.note(seen)
        whole = file_of(book)
        book.close()
    return whole.replace(HOSTILE[-9_900:].encode(), b"")


WHOLE = whole_file()
