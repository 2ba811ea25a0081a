"""Why something could not be kept, in a sentence for a tired person."""

from __future__ import annotations

import errno
import sqlite3
from dataclasses import dataclass

FORBIDDEN = "the casebook may not be written to"
_FULL = "the disk is full"
_BUSY = "another copy of this guide is writing just now"

_WHY = {
    "SQLITE_FULL": _FULL,
    "SQLITE_BUSY": _BUSY,
    "SQLITE_LOCKED": _BUSY,
    "SQLITE_READONLY": FORBIDDEN,
    "SQLITE_PERM": FORBIDDEN,
    "SQLITE_AUTH": FORBIDDEN,
    "SQLITE_CANTOPEN": "the casebook can't be opened",
    "SQLITE_CONSTRAINT": "it does not fit what is in the casebook already",
    "SQLITE_IOERR": "the disk does not answer as it should",
    "SQLITE_NOMEM": "the machine has no memory left",
    "SQLITE_TOOBIG": "it is too long",
}
_OF_THE_SYSTEM = {
    errno.ENOSPC: _FULL,
    errno.EDQUOT: _FULL,
    errno.EFBIG: _FULL,
    errno.EACCES: FORBIDDEN,
    errno.EPERM: FORBIDDEN,
    errno.EROFS: FORBIDDEN,
    errno.ENOTDIR: "a file stands where its folder should be",
    errno.EEXIST: "a file stands where its folder should be",
    errno.ENAMETOOLONG: "its name is too long",
}
DAMAGED = ("SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_ERROR")
"""The last one is said of a statement: as none of ours is wrong, the list of tables is."""


@dataclass(frozen=True)
class NotKept:
    """Something could not be written or read; `why` is half a sentence."""

    why: str
    damaged: bool = False
    """Whether the file can't be used any more, so that trying again is of no use before it is mended."""


def not_kept(error: Exception) -> NotKept:
    """Return what an error of the database or of the system means."""
    if isinstance(error, OSError):
        return NotKept(_OF_THE_SYSTEM.get(error.errno or 0, error.strerror or str(error)))
    if not isinstance(error, sqlite3.Error):
        return NotKept("it can't be written down as it is")
    if isinstance(error, sqlite3.ProgrammingError):
        return NotKept("the casebook is closed", damaged="closed" in str(error))
    primary = primary_of(error)
    # SQLite for Python names no code where a text in the file is no text.
    if primary in DAMAGED or (not primary and isinstance(error, sqlite3.DatabaseError)):
        return NotKept("the casebook file is damaged", damaged=True)
    return NotKept(_WHY.get(primary, str(error)))


def primary_of(error: sqlite3.Error) -> str:
    """Return the kind of an error: SQLITE_IOERR_WRITE is a kind of SQLITE_IOERR."""
    name = getattr(error, "sqlite_errorname", None) or ""
    return "_".join(name.split("_")[:2])
