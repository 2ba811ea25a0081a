"""Why something could not be kept, in a sentence for a tired person."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

_WHY = {
    "SQLITE_FULL": "the disk is full",
    "SQLITE_BUSY": "another copy of this guide is writing just now",
    "SQLITE_LOCKED": "another copy of this guide is writing just now",
    "SQLITE_READONLY": "the casebook may not be written to",
    "SQLITE_PERM": "the casebook may not be written to",
    "SQLITE_AUTH": "the casebook may not be written to",
    "SQLITE_CANTOPEN": "the casebook can't be opened",
    "SQLITE_IOERR": "the disk does not answer as it should",
    "SQLITE_NOMEM": "the machine has no memory left",
    "SQLITE_TOOBIG": "it is too long",
}
DAMAGED = ("SQLITE_CORRUPT", "SQLITE_NOTADB")


@dataclass(frozen=True)
class NotKept:
    """Something could not be written or read; `why` is half a sentence."""

    why: str
    damaged: bool = False
    """Whether the file itself is damaged, so that trying again is of no use."""


def not_kept(error: Exception) -> NotKept:
    """Return what an error of the database or of the system means."""
    name = getattr(error, "sqlite_errorname", None) or ""
    primary = "_".join(name.split("_")[:2])  # SQLITE_IOERR_WRITE is a kind of SQLITE_IOERR
    if primary in DAMAGED or (not name and type(error) is sqlite3.DatabaseError):
        return NotKept("the casebook file is damaged", damaged=True)
    if isinstance(error, OSError):
        return NotKept(error.strerror or str(error))
    return NotKept(_WHY.get(primary, str(error)))
