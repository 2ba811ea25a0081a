"""Whose file lies in the casebook's place, found out without a change to it."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from triage.casebook.base import log_of
from triage.casebook.form import Form

MAGIC = b"SQLite format 3\0"
LATEST = 1000
"""A version above this was never written: its bytes are damaged."""

NEWER = "the {what} was written by a newer edition of this program; it was left as it is"


@dataclass(frozen=True)
class _Mark:
    """What a database says of itself (SQLite file format, 1.3, and its list of tables)."""

    application: int
    version: int
    tables: frozenset[str] | None
    """None where the list can't be read."""


def not_ours(path: Path, form: Form) -> str:
    """Return why a file must be left as it is: empty for one that is ours, empty, or too damaged to tell."""
    if not path.is_file():
        return f"{path} is not a file"
    with path.open("rb") as file:
        head = file.read(100)
    if len(head) < 100 or not head.startswith(MAGIC):
        return ""
    mark = _head(head)
    if mark.application != form.application or mark.version > form.version or _unwritten(path):
        mark = _asked(path) or mark
    if mark.application == form.application:
        return newer(form) if form.version < mark.version < LATEST else ""
    return "" if _of_ours(mark, form) else f"{path} is the file of another program"


def newer(form: Form) -> str:
    """Return why a file of a later edition is left alone."""
    return NEWER.format(what=form.what)


def damaged_mark(application: int, version: int, form: Form) -> bool:
    """Whether what a file of ours says of itself can't be so, as it is past its beginning."""
    return version >= LATEST or (version > 0 and application != form.application)


def _of_ours(mark: _Mark, form: Form) -> bool:
    """Whether a file without our mark is new and empty, or one of ours whose first bytes are damaged."""
    if mark.tables is None:
        return mark.application == 0
    return mark.tables >= set(form.tables) or (not mark.tables and mark.application == 0)


def _head(head: bytes) -> _Mark:
    version, application = (int.from_bytes(head[at : at + 4], "big") for at in (60, 68))
    return _Mark(application, version, None)


def _unwritten(path: Path) -> bool:
    """Whether the log beside the file holds something that is newer than the file."""
    try:
        return log_of(path).stat().st_size > 0
    except OSError:
        return False


def read_only(path: Path) -> sqlite3.Connection:
    """Open a database for reading, with what its log holds; without a log it is to leave no trace at all."""
    how = "mode=ro" if _unwritten(path) else "immutable=1"
    return sqlite3.connect(f"{path.as_uri()}?{how}", uri=True, timeout=0)


def _asked(path: Path) -> _Mark | None:
    """Ask SQLite itself."""
    try:
        with closing(read_only(path)) as database:
            names = database.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall()
            application, version = (
                database.execute(f"PRAGMA {name}").fetchone()[0] & 0xFFFFFFFF
                for name in ("application_id", "user_version")
            )
    except sqlite3.Error:
        return None
    return _Mark(application, version, frozenset(name for (name,) in names))
