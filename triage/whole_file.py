"""Writing a file whole or not at all, so that a full disk or a killed process spoils nothing."""

from __future__ import annotations

import os
from pathlib import Path


def write_whole(text: str, path: Path) -> None:
    """Write a text: beside the target first, made durable, then renamed over it.

    OSError when it can't be written; then nothing at `path` has changed.
    """
    write_bytes_whole(text.encode("utf-8", errors="replace"), path)


def write_bytes_whole(written: bytes, path: Path) -> None:
    """Write bytes as `write_whole` writes a text."""
    if path.exists() and not path.is_file():
        with path.open("wb") as there:  # a device or a pipe is written to; a rename would take its place
            there.write(written)
        return
    target = Path(os.path.realpath(path))  # where `path` is a link, it stays one
    beside = target.with_name(f".{os.urandom(8).hex()}.part")
    try:
        with beside.open("xb") as file:
            file.write(written)
            file.flush()
            os.fsync(file.fileno())
        os.replace(beside, target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise
