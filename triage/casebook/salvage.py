"""What can still be read of a damaged casebook, written into a new one."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, suppress
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from triage.casebook.base import log_of
from triage.casebook.form import Form
from triage.casebook.moves import moment, number, parts_of
from triage.casebook.whose import MAGIC, read_only

MOST_GAP = 20_000
"""Rows tried one by one between two damaged places; more would keep a person waiting."""

_WANTED: dict[str, Any] = {"TEXT": (str,), "INTEGER": (int,)}
"""What Python makes of the columns of each kind; any other column holds a number or a text."""


@dataclass(frozen=True)
class Saved:
    """How many rows of each kind could be saved."""

    counts: dict[str, int]
    form: Form

    @property
    def told(self) -> str:
        """Return what was saved as a sentence."""
        if not any(self.counts.values()):
            return "Nothing in it could be read."
        told = [f"{count} {self.form.called[table][count != 1]}" for table, count in self.counts.items()]
        return f"Saved from it: {', '.join(told)}."


def salvage(damaged: Path, fresh: sqlite3.Connection, form: Form) -> Saved:
    """Copy all rows that can be read from a damaged file into a new one, in one transaction."""
    fresh.execute("PRAGMA foreign_keys = OFF")
    fresh.execute("BEGIN IMMEDIATE")
    with TemporaryDirectory() as folder:
        for copy in _copies(damaged, fresh, Path(folder)):
            if _copy_all(copy, fresh, form):
                break
        else:
            _copy_all(damaged, fresh, form, also_in_part=True)
    for statement in form.mending:
        fresh.execute(statement)
    counts = {table: fresh.execute(f"SELECT count(*) FROM {table}").fetchone()[0] for table in form.tables}
    fresh.execute("COMMIT")
    return Saved(counts, form)


def _copy_all(damaged: Path, fresh: sqlite3.Connection, form: Form, also_in_part: bool = False) -> bool:
    """Copy the rows of every table, if the list of tables can be read; whether that was so."""
    with closing(read_only(damaged)) as old:
        # Half a sign is no reason to lose an answer: it becomes a sign that stands for one.
        old.text_factory = lambda written: written.decode("utf-8", errors="replace")
        try:
            tables = [_Table.of(name, old, fresh, form.version) for name in form.tables]
        except sqlite3.Error:
            return False
        whole = all(table.whole for table in tables)
        if whole or also_in_part:
            for table in tables:
                table.copy(old, fresh)
        return whole


def _copies(damaged: Path, fresh: sqlite3.Connection, folder: Path) -> Iterator[Path]:
    """Yield the file, and copies of it with its first bytes or its first page taken from a new casebook.

    The first page lists the tables, and every casebook of a version has them in the same places.
    """
    yield damaged
    written = damaged.read_bytes()
    # `fresh` is in the middle of a transaction, and so still as it was made.
    made = Path(fresh.execute("PRAGMA database_list").fetchone()[2]).read_bytes()
    page = fresh.execute("PRAGMA page_size").fetchone()[0]
    for patched in (100, page):
        copy = folder / f"copy-{patched}"
        # Bytes 28 to 31 of the header are the number of pages (SQLite file format, 1.3.7).
        first = made[:28] + (-(-len(written) // page)).to_bytes(4, "big") + made[32:patched]
        rest = written[patched:]
        copy.write_bytes(first + rest + bytes(-len(first + rest) % page))
        log = log_of(damaged)
        if log.is_file() and written.startswith(MAGIC):
            log_of(copy).write_bytes(log.read_bytes())
        yield copy


@dataclass(frozen=True)
class _Table:
    """One table of the damaged file: those of its columns that a new casebook has too."""

    name: str
    kinds: dict[str, str]
    needed: frozenset[str]
    """Columns without which a row says nothing."""
    whole: bool
    """Whether no column is missing that its version has."""

    @classmethod
    def of(cls, name: str, old: sqlite3.Connection, fresh: sqlite3.Connection, version: int) -> _Table:
        """Read what columns there are; sqlite3.Error where the list of tables is damaged."""
        there = {row[1] for row in old.execute(f"PRAGMA table_info({name})")}
        older = old.execute("PRAGMA user_version").fetchone()[0] < version
        columns = fresh.execute(f"PRAGMA table_info({name})").fetchall()
        needed = {column for _, column, _, never_null, _, key in columns if never_null or key}
        later = {
            column
            for _, column, _, never_null, usual, key in columns
            if not key and (usual or not never_null)
        }
        missing = {column for _, column, *_ in columns} - there
        kinds = {column: kind for _, column, kind, *_ in columns if column in there}
        return cls(name, kinds, frozenset(needed), missing <= (later if older else set()))

    def copy(self, old: sqlite3.Connection, fresh: sqlite3.Connection) -> None:
        """Copy all rows that can be read; without a name of their own they are none."""
        if "id" not in self.kinds:
            return
        names = ", ".join(self.kinds)
        insert = f"INSERT OR IGNORE INTO {self.name} ({names}) VALUES ({', '.join('?' * len(self.kinds))})"
        for _, *row in _rows(old, f"SELECT rowid, {names} FROM {self.name} NOT INDEXED"):
            if _readable(dict(zip(self.kinds, row, strict=True)), self.kinds, self.needed):
                with suppress(sqlite3.Error):  # a row that breaks a rule of the table is itself damage
                    fresh.execute(insert, row)


def _readable(row: dict[str, Any], kinds: dict[str, str], needed: frozenset[str]) -> bool:
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
