"""Reading beside other work, so that the first question is not kept waiting.

Loading the screen library and reading the guide take about as long as each other, and neither needs
the other. A child process reads while this one loads; what it found comes back through a pipe.
"""

from __future__ import annotations

import os
import pickle
from contextlib import suppress
from typing import TYPE_CHECKING, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

T = TypeVar("T")

WIDE = 1 << 20
"""Bytes that the pipe is to hold: more than a guide takes up."""


def read_ahead(read: Callable[[], T]) -> Callable[[], T]:
    """Begin to read; return a function that waits for what was read.

    Where a process can't be split, or the child fails in any way, it is read on the spot.
    """
    if not hasattr(os, "fork") or (os.cpu_count() or 1) < 2:
        return read
    receiving, sending = os.pipe()
    _widen(receiving)
    try:
        child = os.fork()
    except OSError:
        os.close(receiving)
        os.close(sending)
        return read
    if child == 0:
        _send(read, receiving, sending)
    os.close(sending)

    def take() -> T:
        with os.fdopen(receiving, "rb") as pipe:
            sent = pipe.read()
        with suppress(ChildProcessError):
            os.waitpid(child, 0)
        try:
            found: T = pickle.loads(sent)  # from our own child, through a pipe that nobody else holds
            return found
        except Exception:  # whatever came, or did not: read it here
            return read()

    return take


def _widen(pipe: int) -> None:
    """Let a pipe hold all that is sent, where the system can, so that the child need not wait to be heard."""
    with suppress(ImportError, AttributeError, OSError):
        import fcntl

        fcntl.fcntl(pipe, fcntl.F_SETPIPE_SZ, WIDE)


def _send(read: Callable[[], object], receiving: int, sending: int) -> None:
    """Read in the child and send the result; whatever happens, the child ends here."""
    try:
        os.close(receiving)
        with os.fdopen(sending, "wb") as pipe:
            pickle.dump(read(), pipe, pickle.HIGHEST_PROTOCOL)
    finally:
        os._exit(0)
