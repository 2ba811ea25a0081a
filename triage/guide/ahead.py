"""Reading a guide beside other work, so that the first question is not kept waiting.

Loading the screen library and reading the guide take about as long as each other, and neither needs
the other. A child process reads while this one loads; what it found comes back through a pipe.
"""

from __future__ import annotations

import os
import pickle
from contextlib import suppress
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

    from triage.guide.find import Folder
    from triage.guide.model import Read


def read_ahead(folder: Folder) -> Callable[[], Read]:
    """Begin to read a knowledge folder; return a function that waits for what was read.

    Where a process can't be split, or the child fails in any way, the folder is read on the spot.
    """
    if not hasattr(os, "fork") or (os.cpu_count() or 1) < 2:
        return lambda: _read(folder)
    receiving, sending = os.pipe()
    try:
        child = os.fork()
    except OSError:
        os.close(receiving)
        os.close(sending)
        return lambda: _read(folder)
    if child == 0:
        _send(folder, receiving, sending)
    os.close(sending)

    def take() -> Read:
        with os.fdopen(receiving, "rb") as pipe:
            sent = pipe.read()
        with suppress(ChildProcessError):
            os.waitpid(child, 0)
        try:
            read: Read = pickle.loads(sent)  # from our own child, through a pipe that nobody else holds
            return read
        except Exception:  # whatever came, or did not: read it here
            return _read(folder)

    return take


def _send(folder: Folder, receiving: int, sending: int) -> None:
    """Read in the child and send the result; whatever happens, the child ends here."""
    try:
        os.close(receiving)
        with os.fdopen(sending, "wb") as pipe:
            pickle.dump(_read(folder), pipe, pickle.HIGHEST_PROTOCOL)
    finally:
        os._exit(0)


def _read(folder: Folder) -> Read:
    from triage.guide.read import read_guide

    return read_guide(folder)
