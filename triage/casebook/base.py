"""An open file of ours: whatever is read of it is read at one moment, and no failure is raised."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

from triage.casebook.failing import NotKept, not_kept
from triage.casebook.moves import clean

T = TypeVar("T")
Stamp = tuple[int, int]


class OpenFile:
    """One open file. Each method returns what it says, or NotKept with the reason."""

    def __init__(
        self, database: sqlite3.Connection, path: Path, stamp: Stamp | None, patience: float
    ) -> None:
        self._database = database
        self.path = path
        self._patience = patience
        self.stamp = stamp
        """Which file this is; another one may later lie in its place."""
        self.log = stamp_of(log_of(path))
        """Which log belongs to it."""

    def close(self) -> None:
        """Close the file; what was kept is kept already."""
        try:
            self._database.close()
        except sqlite3.Error:
            return

    def sound(self) -> bool:
        """Whether the whole file is in order; this reads all of it.

        One that can't be read just now may well be.
        """
        try:
            return bool(self._one("PRAGMA quick_check(1)") == "ok")
        except sqlite3.DatabaseError as error:
            return not not_kept(error).damaged

    def _read(self, work: Callable[[], T]) -> T | NotKept:
        try:
            if self._database.in_transaction:
                return work()
            self._run("BEGIN")  # so that another copy writes nothing between a case and its moves
            try:
                return work()
            finally:
                self._database.rollback()
        except (sqlite3.Error, OSError) as error:
            return not_kept(error)
        except (ValueError, TypeError, OverflowError):
            # A number stands where a text was written, or the like: SQLite itself does not notice that.
            return NotKept("the casebook file is damaged", damaged=True)

    def _run(self, statement: str, values: Sequence[Any] = ()) -> sqlite3.Cursor:
        storable = [clean(value) if isinstance(value, str) else value for value in values]
        return self._database.execute(statement, storable)

    def _one(self, statement: str) -> Any:
        return self._run(statement).fetchone()[0]


def log_of(path: Path) -> Path:
    """Return where SQLite writes first what it later writes into the file."""
    return path.with_name(f"{path.name}-wal")


def stamp_of(path: Path) -> Stamp | None:
    """Return what tells a file from any other that has its name at another time; None without a file."""
    try:
        found = os.stat(path)
    except OSError:
        return None
    return found.st_dev, found.st_ino
