"""Opening a file of ours: made if there is none, brought up to date if old, set aside if damaged."""

from __future__ import annotations

import fcntl
import os
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Generic, TypeVar

from triage.casebook.base import Stamp, log_of, stamp_of
from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept, not_kept
from triage.casebook.form import Form
from triage.casebook.whose import damaged_mark, newer, not_ours
from triage.casebook.writing import WritableFile

PATIENCE = 2.0
"""Seconds to wait while another copy writes. A writing takes about a thousandth of that."""

BESIDE = ("-wal", "-shm", "-journal")
"""What SQLite keeps beside a database while it is open, or after a crash."""

MOVED = "The {what} was moved or deleted while it was open. What follows is kept in its usual place."

B = TypeVar("B", bound=WritableFile)


def _now() -> datetime:
    return datetime.now(UTC)


@dataclass(frozen=True)
class Opened(Generic[B]):
    """A file, and what a person must be told of its opening; empty when all is as it was."""

    book: B
    told: str = ""


def open_casebook(path: Path, now: Callable[[], datetime] = _now) -> Opened[Casebook] | NotKept:
    """Open the casebook at a path, or tell why that can't be done."""
    return open_book(Casebook, path, now)


def open_book(kind: type[B], path: Path, now: Callable[[], datetime] = _now) -> Opened[B] | NotKept:
    """Open a file of a kind, or tell why that can't be done. Never raises for what is there.

    Not to be called for a file that this process has open: closing a file that was read beside SQLite
    takes SQLite's locks off it (POSIX, fcntl).
    """
    try:
        place = Path(os.path.realpath(path))  # where `path` is a link, it stays one
        found = _open_sound(kind, place)
        if isinstance(found, WritableFile):
            return Opened(found)
        from triage.casebook.mending import set_aside

        return Opened(*set_aside(kind, place, found, now()))
    except Refused as refusal:
        return NotKept(str(refusal))
    except ValueError:
        return NotKept("no file can have that name")
    except (sqlite3.Error, OSError) as error:
        return not_kept(error)


def mend(book: B, now: datetime) -> Opened[B] | NotKept:
    """Make a file usable that no longer is: closed, moved away, or damaged.

    A damaged one is set aside, and a new one begun from what can be read of it.
    """
    gone = stamp_of(book.path) != book.stamp
    book.close()
    if gone:
        return _open_again(book, now)
    from triage.casebook.mending import set_aside

    try:
        return Opened(*set_aside(type(book), book.path, book.stamp, now))
    except Refused as refusal:
        return NotKept(str(refusal))
    except (sqlite3.Error, OSError, ValueError) as error:
        return not_kept(error)


def _open_again(book: B, now: datetime) -> Opened[B] | NotKept:
    """Open what lies in the place of a file that was moved away, whose log may have stayed behind."""
    log = log_of(book.path)
    with suppress(OSError):
        # SQLite would take it for the log of the file that lies there now, and mix the two.
        if book.log is not None and stamp_of(log) == book.log:
            os.replace(log, f"{book.path}.left-{now:%Y%m%d-%H%M%S}-wal")
    opened = open_book(type(book), book.path, lambda: now)
    if isinstance(opened, NotKept):
        return opened
    return Opened(opened.book, f"{MOVED.format(what=book.FORM.what)} {opened.told}".strip())


def _open_sound(kind: type[B], place: Path) -> B | Stamp | None:
    """Open a file, or tell which one it is that turned out to be damaged."""
    place.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    # Copies that make the file take turns: SQLite does not wait while another switches the log on.
    with folder_lock(place.parent, alone=not _size(place)):
        make_file(place)
        refused = not_ours(place, kind.FORM)
        if refused:
            raise Refused(refused)
        stamp = stamp_of(place)
        try:
            return open_file(kind, place)
        except sqlite3.DatabaseError as error:
            if not not_kept(error).damaged:
                raise
        return stamp


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except OSError:
        return 0


@contextmanager
def folder_lock(folder: Path, alone: bool) -> Iterator[None]:
    """Hold the folder while a casebook is opened, or hold it alone while a damaged one is replaced.

    Else a copy might open the damaged file, and its log come to lie beside the new one.
    """
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:  # a folder that may be passed through and not read; then there is no lock
        yield
        return
    try:
        with suppress(OSError):
            fcntl.flock(handle, fcntl.LOCK_EX if alone else fcntl.LOCK_SH)
        yield
    finally:
        os.close(handle)


class Refused(Exception):
    """The file is none that this edition may write to."""


def make_file(path: Path) -> None:
    """Make an empty file that only its owner may read, or make what is there the owner's alone."""
    try:
        os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    except FileExistsError:
        for each in (path, *(path.with_name(f"{path.name}{end}") for end in BESIDE)):
            with suppress(OSError):
                if each.is_file() and each.stat().st_mode & 0o077:
                    each.chmod(0o600)


def open_file(kind: type[B], path: Path) -> B:
    """Open a file that is ours or empty."""
    stamp = stamp_of(path)
    database = sqlite3.connect(path, timeout=PATIENCE, isolation_level=None)
    try:
        version = _version(database, kind.FORM)
        database.execute("PRAGMA foreign_keys = ON")
        database.execute("PRAGMA journal_mode = WAL")
        database.execute("PRAGMA synchronous = FULL")
        if version < kind.FORM.version:
            _bring_up(database, kind.FORM)
        for table in kind.FORM.tables:
            database.execute(f"SELECT 1 FROM {table} LIMIT 1").fetchall()
    except BaseException:
        database.close()
        raise
    return kind(database, path, stamp, PATIENCE)


def _version(database: sqlite3.Connection, form: Form) -> int:
    application, version = (
        database.execute(f"PRAGMA {name}").fetchone()[0] & 0xFFFFFFFF
        for name in ("application_id", "user_version")
    )
    if damaged_mark(application, version, form):
        raise sqlite3.DatabaseError("the file's first bytes are damaged")
    if version > form.version:
        raise Refused(newer(form))
    return int(version)


def _bring_up(database: sqlite3.Connection, form: Form) -> None:
    """Give the file the migrations that it lacks, all or none; a second copy may have been quicker."""
    database.execute("BEGIN IMMEDIATE")
    try:
        version = _version(database, form)
        if version == 0 and database.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]:
            raise sqlite3.DatabaseError("tables in a file that says it has none")
        for migration in form.migrations[version:]:
            for statement in migration.split(";\n"):
                database.execute(statement)
        database.execute(f"PRAGMA application_id = {form.application}")
        database.execute(f"PRAGMA user_version = {form.version}")
        database.execute("COMMIT")
    except BaseException:
        if database.in_transaction:
            database.rollback()
        raise
