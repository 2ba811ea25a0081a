"""Writing a file whole or not at all, so that a full disk or a killed process spoils nothing."""

from __future__ import annotations

import os
from pathlib import Path

ANYONE = 0o666
OWNER = 0o600
"""Who may open a new file, as far as the person's own mask allows."""


def write_whole(text: str, path: Path, mode: int = ANYONE) -> None:
    """Write a text: beside the target first, made durable, then renamed over it.

    OSError when it can't be written; then nothing at `path` has changed.
    """
    write_bytes_whole(text.encode("utf-8", errors="replace"), path, mode)


def write_bytes_whole(written: bytes, path: Path, mode: int = ANYONE) -> None:
    """Write bytes as `write_whole` writes a text."""
    if path.exists() and not path.is_file():
        with path.open("wb") as there:  # a device or a pipe is written to; a rename would take its place
            there.write(written)
        return
    target = Path(os.path.realpath(path))  # where `path` is a link, it stays one
    beside = target.with_name(f".{os.urandom(8).hex()}.part")
    try:
        # The mode from the first byte on: later would leave a moment in which others could read it.
        with open(beside, "xb", opener=lambda name, flags: os.open(name, flags, mode)) as file:
            file.write(written)
            file.flush()
            os.fsync(file.fileno())
        os.replace(beside, target)
    except BaseException:
        beside.unlink(missing_ok=True)
        raise
