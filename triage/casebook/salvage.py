"""What can still be read of a damaged casebook, written into a new one."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from triage.casebook.schema import TABLES

LOST = "A lamb whose card was lost"
MOST_GAP = 20_000
"""Rows tried one by one between two damaged places; more would keep a person waiting."""

_MENDING = (
    "INSERT OR IGNORE INTO lambs (id, name, added) "
    f"SELECT lamb, '{LOST}', begun FROM cases WHERE lamb NOT IN (SELECT id FROM lambs)",
    "INSERT OR IGNORE INTO lambs (id, name, added) "
    f"SELECT lamb, '{LOST}', at FROM observations WHERE lamb NOT IN (SELECT id FROM lambs)",
    "DELETE FROM moves WHERE case_id NOT IN (SELECT id FROM cases)",
)
"""A case without its lamb gets one, so that its answers stay; moves without a case say nothing."""


@dataclass(frozen=True)
class Saved:
    """How many rows of each kind could be saved; None where nothing of the file could be read."""

    counts: dict[str, int] | None

    @property
    def told(self) -> str:
        """Return what was saved as a sentence."""
        if not self.counts or not any(self.counts.values()):
            return "Nothing in it could be read."
        lambs, cases = self.counts["lambs"], self.counts["cases"]
        moves, seen = self.counts["moves"], self.counts["observations"]
        return f"Saved from it: {lambs} lambs, {cases} walks, {moves} answers and acts, {seen} notes."


def salvage(damaged: Path, fresh: sqlite3.Connection) -> Saved:
    """Copy all rows that can be read from a damaged file into a new casebook, in one transaction."""
    counts: dict[str, int] = {}
    with closing(sqlite3.connect(f"{damaged.as_uri()}?mode=ro", uri=True, timeout=0)) as old:
        fresh.execute("PRAGMA foreign_keys = OFF")
        fresh.execute("BEGIN IMMEDIATE")
        for table in TABLES:
            _copy(old, fresh, table)
        for statement in _MENDING:
            fresh.execute(statement)
        for table in TABLES:
            counts[table] = fresh.execute(f"SELECT count(*) FROM {table}").fetchone()[0]
        fresh.execute("COMMIT")
    return Saved(counts)


def _copy(old: sqlite3.Connection, fresh: sqlite3.Connection, table: str) -> None:
    names = [row[1] for row in fresh.execute(f"PRAGMA table_info({table})")]
    insert = f"INSERT OR IGNORE INTO {table} VALUES ({', '.join('?' * len(names))})"
    select = f"SELECT rowid, {', '.join(names)} FROM {table}"
    for row in _rows(old, select):
        with suppress(sqlite3.Error):  # a row that breaks a rule of the table is itself damage
            fresh.execute(insert, row[1:])


def _rows(old: sqlite3.Connection, select: str) -> Iterator[tuple[Any, ...]]:
    """Yield the rows from the front as far as they can be read, from the back likewise, then one by one."""
    first, last = -1, 0
    for row in _until_damage(old, f"{select} NOT INDEXED ORDER BY rowid"):
        first = row[0]
        yield row
    for row in _until_damage(old, f"{select} NOT INDEXED WHERE rowid > {first} ORDER BY rowid DESC"):
        last = row[0]
        yield row
    for rowid in range(first + 1, min(last, first + 1 + MOST_GAP)):
        yield from _until_damage(old, f"{select} NOT INDEXED WHERE rowid = {rowid}")


def _until_damage(old: sqlite3.Connection, select: str) -> Iterator[tuple[Any, ...]]:
    try:
        yield from old.execute(select)
    except (sqlite3.Error, ValueError, OverflowError):
        return
