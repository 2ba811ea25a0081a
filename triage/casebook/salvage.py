"""What can still be read of a damaged casebook, written into a new one."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from triage.casebook.moves import moment, number, parts_of
from triage.casebook.reading import log_of
from triage.casebook.schema import TABLES
from triage.casebook.whose import MAGIC, read_only

LOST = "A lamb whose card was lost"
MOST_GAP = 20_000
"""Rows tried one by one between two damaged places; more would keep a person waiting."""

_CALLED = {
    "lambs": ("lamb", "lambs"),
    "cases": ("walk", "walks"),
    "moves": ("answer or act", "answers and acts"),
    "observations": ("note", "notes"),
}

_WANTED: dict[str, Any] = {"TEXT": (str,), "INTEGER": (int,)}
"""What Python makes of the columns of each kind; any other column holds a number or a text."""

_MENDING = (
    "INSERT OR IGNORE INTO cases (id, lamb, begun, touched, edition) "
    "SELECT case_id, case_id, coalesce(min(at), 0), coalesce(max(at), 0), '' FROM moves "
    "WHERE dropped IS NULL AND case_id NOT IN (SELECT id FROM cases) GROUP BY case_id",
    "INSERT OR IGNORE INTO lambs (id, name, added) "
    f"SELECT lamb, '{LOST}', begun FROM cases WHERE lamb NOT IN (SELECT id FROM lambs)",
    "INSERT OR IGNORE INTO lambs (id, name, added) "
    f"SELECT lamb, '{LOST}', at FROM observations WHERE lamb NOT IN (SELECT id FROM lambs)",
    "DELETE FROM moves WHERE case_id NOT IN (SELECT id FROM cases)",
)
"""Answers without their case get one, and a case without its lamb too, so that nothing answered is lost."""


@dataclass(frozen=True)
class Saved:
    """How many rows of each kind could be saved."""

    counts: dict[str, int]

    @property
    def told(self) -> str:
        """Return what was saved as a sentence."""
        if not any(self.counts.values()):
            return "Nothing in it could be read."
        told = [f"{count} {_CALLED[table][count != 1]}" for table, count in self.counts.items()]
        return f"Saved from it: {', '.join(told)}."


def salvage(damaged: Path, fresh: sqlite3.Connection) -> Saved:
    """Copy all rows that can be read from a damaged file into a new casebook, in one transaction."""
    fresh.execute("PRAGMA foreign_keys = OFF")
    fresh.execute("BEGIN IMMEDIATE")
    if not _copy_all(damaged, fresh):
        with TemporaryDirectory() as folder:
            for copy in _patched(damaged, fresh, Path(folder)):
                if _copy_all(copy, fresh):
                    break
    for statement in _MENDING:
        fresh.execute(statement)
    counts = {table: fresh.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in TABLES}
    fresh.execute("COMMIT")
    return Saved(counts)


def _copy_all(damaged: Path, fresh: sqlite3.Connection) -> bool:
    """Copy every table; whether the list of tables could be read at all."""
    with closing(read_only(damaged)) as old:
        # Half a sign is no reason to lose an answer: it becomes a sign that stands for one.
        old.text_factory = lambda written: written.decode("utf-8", errors="replace")
        try:
            there = {row[0] for row in old.execute("SELECT name FROM sqlite_master")}
        except sqlite3.Error:
            return False
        for table in TABLES:
            _copy(old, fresh, table)
    return there >= set(TABLES)


def _patched(damaged: Path, fresh: sqlite3.Connection, folder: Path) -> Iterator[Path]:
    """Yield copies of a file with its first bytes, and then with its first page, taken from a new casebook.

    The first page lists the tables, and every casebook of a version has them in the same places.
    """
    whole = damaged.read_bytes()
    # `fresh` is in the middle of a transaction, and so still as it was made.
    made = Path(fresh.execute("PRAGMA database_list").fetchone()[2]).read_bytes()
    page = fresh.execute("PRAGMA page_size").fetchone()[0]
    for patched in (100, page):
        copy = folder / f"copy-{patched}"
        # Bytes 28 to 31 of the header are the number of pages (SQLite file format, 1.3.7).
        first = made[:28] + (-(-len(whole) // page)).to_bytes(4, "big") + made[32:patched]
        rest = whole[patched:]
        copy.write_bytes(first + rest + bytes(-len(first + rest) % page))
        log = log_of(damaged)
        if log.is_file() and whole.startswith(MAGIC):
            log_of(copy).write_bytes(log.read_bytes())
        yield copy


def _copy(old: sqlite3.Connection, fresh: sqlite3.Connection, table: str) -> None:
    columns = fresh.execute(f"PRAGMA table_info({table})").fetchall()
    try:
        there = {row[1] for row in old.execute(f"PRAGMA table_info({table})")}
    except sqlite3.Error:
        return
    kinds = {name: kind for _, name, kind, *_ in columns if name in there}
    needed = {name for _, name, _, never_null, _, key in columns if never_null or key}
    if not kinds:
        return
    names = ", ".join(kinds)
    insert = f"INSERT OR IGNORE INTO {table} ({names}) VALUES ({', '.join('?' * len(kinds))})"
    for _, *row in _rows(old, f"SELECT rowid, {names} FROM {table} NOT INDEXED"):
        if _readable(dict(zip(kinds, row, strict=True)), kinds, needed):
            with suppress(sqlite3.Error):  # a row that breaks a rule of the table is itself damage
                fresh.execute(insert, row)


def _readable(row: dict[str, Any], kinds: dict[str, str], needed: set[str]) -> bool:
    """Whether each value is of its column's kind, so that reading it back raises nothing."""
    try:
        for name, value in row.items():
            if value is None and name not in needed:
                continue
            if not isinstance(value, _WANTED.get(kinds[name], (int, float, str))):
                return False
            if kinds[name] == "INTEGER":
                moment(value)
            if name == "parts":
                parts_of(value)
            if name == "value" and not isinstance(value, str):
                number(value)
    except (ValueError, OverflowError, RecursionError):
        return False
    return True


class _Scan:
    """The rows that a query gives, up to the first damaged place."""

    def __init__(self, old: sqlite3.Connection, select: str, values: Sequence[int] = ()) -> None:
        self._old, self._select, self._values = old, select, values
        self.whole = False
        """Whether it came to its end."""

    def __iter__(self) -> Iterator[tuple[Any, ...]]:
        try:
            yield from self._old.execute(self._select, self._values)
            self.whole = True
        except (sqlite3.Error, ValueError, OverflowError):
            return


def _rows(old: sqlite3.Connection, select: str) -> Iterator[tuple[Any, ...]]:
    """Yield the rows from the front as far as they can be read, from the back likewise, then one by one."""
    first = 0
    front = _Scan(old, f"{select} ORDER BY rowid")
    for row in front:
        first = row[0]
        yield row
    if front.whole:
        return
    last = first + MOST_GAP
    for row in _Scan(old, f"{select} WHERE rowid > ? ORDER BY rowid DESC", (first,)):
        last = row[0]
        yield row
    for rowid in range(first + 1, min(last, first + 1 + MOST_GAP)):
        yield from _Scan(old, f"{select} WHERE rowid = ?", (rowid,))
