"""Setting a damaged file aside, and beginning a new one from what can be read of it."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing, suppress
from datetime import datetime
from pathlib import Path

from triage.casebook.base import Stamp, stamp_of
from triage.casebook.opening import BESIDE, B, folder_lock, make_file, open_file
from triage.casebook.salvage import Saved, salvage


def set_aside(kind: type[B], path: Path, stamp: Stamp | None, now: datetime) -> tuple[B, str]:
    """Put a new file in the place of a damaged one; return it, and what a person must be told.

    The new one is whole before it takes the place. So a full disk or a kill on the way leaves the old
    one where it was. Another copy may have been quicker; then its new one is opened.
    """
    with folder_lock(path.parent, alone=True):
        if stamp_of(path) != stamp:
            return open_file(kind, path), ""
        fresh = path.with_name(f"{path.name}.new")
        _clear(fresh)
        try:
            saved = _filled(kind, fresh, path)
            aside = _free_name(path, now)
            _move(path, aside, fresh)
        except BaseException:
            _clear(fresh)
            raise
        told = f"The {kind.FORM.what} was damaged. It is kept as {aside}, and a new one begun. {saved.told}"
        return open_file(kind, path), told


def _filled(kind: type[B], fresh: Path, damaged: Path) -> Saved:
    make_file(fresh)
    open_file(kind, fresh).close()
    with closing(sqlite3.connect(fresh, isolation_level=None)) as database:
        return salvage(damaged, database, kind.FORM)


def _move(path: Path, aside: Path, fresh: Path) -> None:
    """Give the damaged file its new name and then its place to the fresh one, in one step where it can be."""
    try:
        os.link(path, aside)
    except OSError:  # some disks know no second name for a file
        os.replace(path, aside)
    for end in BESIDE:
        with suppress(FileNotFoundError):
            os.replace(f"{path}{end}", f"{aside}{end}")
    os.replace(fresh, path)
    _flush(path.parent)


def _free_name(path: Path, now: datetime) -> Path:
    aside = path.with_name(f"{path.name}.damaged-{now:%Y%m%d-%H%M%S}")
    while aside.exists():
        aside = aside.with_name(f"{aside.name}x")
    return aside


def _clear(fresh: Path) -> None:
    for end in ("", *BESIDE):
        Path(f"{fresh}{end}").unlink(missing_ok=True)


def _flush(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
