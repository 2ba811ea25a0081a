"""Looking at a text file that a person keeps and may edit: what it holds, or why that can't be told."""

from __future__ import annotations

import os
import stat
from pathlib import Path

BIGGEST = 100_000


def look(path: Path) -> bytes | str | None:
    """Return what a file holds, or half a sentence on why that can't be told; None where there is none."""
    try:
        # Without waiting: a pipe that lies in its place may never be written to.
        handle = os.open(path, os.O_RDONLY | os.O_NONBLOCK)
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError as error:
        return f"it can't be read: {error.strerror or error}"
    try:
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            return "this is not a file"
        with open(handle, "rb", closefd=False) as file:
            raw = file.read(BIGGEST + 1)
    except OSError as error:
        return f"it can't be read: {error.strerror or error}"
    finally:
        os.close(handle)
    return raw if len(raw) <= BIGGEST else f"it is longer than {BIGGEST:,} bytes"


def make_folder(folder: Path) -> None:
    """Make a folder for its owner alone, and those above it that are not there either."""
    if not folder.is_dir():
        make_folder(folder.parent)
        folder.mkdir(mode=0o700, exist_ok=True)
