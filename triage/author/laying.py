"""Laying down a new file: never over one that is there, and whole or not at all."""

from __future__ import annotations

import os
from pathlib import Path

from triage.whole_file import ANYONE


def write_new(text: str, path: Path) -> None:
    """Write a text to a file that is not there; FileExistsError where it is, and then it is untouched.

    Any other OSError leaves nothing behind.
    """
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, ANYONE)
    try:
        with open(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
    except BaseException:
        path.unlink(missing_ok=True)  # only what was begun here: nobody else's can have its name
        raise
