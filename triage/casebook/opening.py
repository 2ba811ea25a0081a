"""Opening the casebook file: made if there is none, brought up to date if old, set aside if damaged."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Callable
from contextlib import closing, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept, not_kept
from triage.casebook.schema import APPLICATION_ID, MIGRATIONS, TABLES, VERSION

PATIENCE = 2.0
"""Seconds to wait while another copy writes. A writing takes about a thousandth of that."""

_MAGIC = b"SQLite format 3\0"
_BESIDE = ("-wal", "-shm", "-journal")


@dataclass(frozen=True)
class Opened:
    """A casebook, and what a person must be told of its opening; empty when all is as it was."""

    book: Casebook
    told: str = ""


def open_casebook(path: Path, now: Callable[[], datetime] = lambda: datetime.now(UTC)) -> Opened | NotKept:
    """Open the casebook at a path, or tell why that can't be done. Never raises for what is there."""
    try:
        made = _make(path)
        foreign = _foreign(path)
        if foreign:
            return NotKept(foreign)
        try:
            return Opened(_open(path))
        except sqlite3.DatabaseError as error:
            if made or not not_kept(error).damaged:
                raise
        return _set_aside(path, now())
    except _Newer as newer:
        return NotKept(str(newer))
    except (sqlite3.Error, OSError, ValueError) as error:
        return not_kept(error)


def mend(book: Casebook, now: datetime) -> Opened | NotKept:
    """Set a casebook that turned out to be damaged aside, and begin a new one from what can be read."""
    book.close()
    try:
        return _set_aside(book.path, now)
    except (sqlite3.Error, OSError, ValueError) as error:
        return not_kept(error)


class _Newer(Exception):
    """The file was written by a later edition of the program."""

    def __init__(self) -> None:
        super().__init__("the casebook was written by a newer edition of this program; it was left as it is")


def _make(path: Path) -> bool:
    """Make the folder and an empty file that only its owner may read; whether the file is new."""
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    try:
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    except FileExistsError:
        if path.is_file() and path.stat().st_mode & 0o077:
            with suppress(OSError):
                path.chmod(0o600)
        return False
    return True


def _foreign(path: Path) -> str:
    """Tell a file that is not ours to touch, from its first bytes alone (SQLite file format, 1.3)."""
    if not path.is_file():
        return f"{path} is not a file"
    with path.open("rb") as file:
        head = file.read(100)
    if len(head) < 100 or not head.startswith(_MAGIC):
        return ""  # empty, or too damaged to tell
    version, application = (int.from_bytes(head[at : at + 4], "big") for at in (60, 68))
    if application == APPLICATION_ID and version > VERSION:
        raise _Newer
    if application not in (APPLICATION_ID, 0):
        return f"{path} is the file of another program"
    return ""


def _open(path: Path) -> Casebook:
    database = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
    try:
        version = database.execute("PRAGMA user_version").fetchone()[0]
        if version > VERSION:
            raise _Newer
        database.execute("PRAGMA foreign_keys = ON")
        database.execute("PRAGMA journal_mode = WAL")
        database.execute("PRAGMA synchronous = FULL")
        if version < VERSION:
            _bring_up(database)
        for table in TABLES:
            database.execute(f"SELECT 1 FROM {table} LIMIT 1").fetchall()
    except BaseException:
        database.close()
        raise
    return Casebook(database, path)


def _bring_up(database: sqlite3.Connection) -> None:
    """Give the file the migrations that it lacks, all or none; a second copy may have been quicker."""
    database.execute("BEGIN IMMEDIATE")
    try:
        version = database.execute("PRAGMA user_version").fetchone()[0]
        if version == 0 and database.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]:
            raise sqlite3.OperationalError("the casebook's place is taken by the file of another program")
        for migration in MIGRATIONS[version:]:
            for statement in migration.split(";\n"):
                database.execute(statement)
        database.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        database.execute(f"PRAGMA user_version = {VERSION}")
        database.execute("COMMIT")
    except BaseException:
        if database.in_transaction:
            database.rollback()
        raise


def _set_aside(path: Path, now: datetime) -> Opened:
    """Move the damaged file and what lies beside it to a name of its own, and begin a new casebook.

    The move is a rename, so that the old file is kept whole whatever happens next.
    """
    from triage.casebook.salvage import salvage

    aside = path.with_name(f"{path.name}.damaged-{now:%Y%m%d-%H%M%S}")
    while aside.exists():
        aside = aside.with_name(f"{aside.name}x")
    os.replace(path, aside)
    for end in _BESIDE:
        with suppress(FileNotFoundError):
            os.replace(f"{path}{end}", f"{aside}{end}")
    _make(path)
    book = _open(path)
    with closing(sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)) as fresh:
        saved = salvage(aside, fresh)
    return Opened(book, f"The casebook was damaged. It is kept as {aside}, and a new one begun. {saved.told}")
