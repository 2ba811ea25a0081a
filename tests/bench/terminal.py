"""Programs under a pseudo-terminal of 80 by 24, in clean surroundings, timed from outside."""

from __future__ import annotations

import fcntl
import os
import pty
import re
import select
import shutil
import signal
import struct
import subprocess
import sys
import termios
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from types import TracebackType

ROOT = Path(__file__).resolve().parents[2]
PATIENCE = 20.0
"""Seconds after which a program that shows nothing has failed."""

GUIDE = ("-m", "triage")
"""The real program, as arguments to this interpreter."""
ONE_STATIC = ("-m", "tests.bench.bare", "static")
"""A bare Textual app with one Static and a Footer."""
STILL_PAGES = ("-m", "tests.bench.bare", "still")
"""A bare Textual app that swaps two fixed pages of the same shape, so that no widget moves."""
MOVING_PAGES = ("-m", "tests.bench.bare", "moving")
"""The same, with a key line that is one row on one page and two on the other."""

_ESCAPES = re.compile(rb"\x1b(?:\[[0-9;?<>=]*[a-zA-Z~$]|[()][0-9A-Z]|.)")


_HOME = TemporaryDirectory()
"""A home of nobody: what is kept there is of no lamb, and the person's own casebook is left alone."""


def forget_lambs() -> None:
    """Take away what an earlier run kept, so that each opens at the first question."""
    shutil.rmtree(Path(_HOME.name) / ".local", ignore_errors=True)


def surroundings() -> dict[str, str]:
    """Return the environment of every measured program: nothing that changes its face or its speed."""
    kept = {"PATH": os.environ["PATH"]} if "PATH" in os.environ else {}
    return {**kept, "HOME": _HOME.name, "LANG": "C.UTF-8", "TERM": "xterm-256color"}


def run_python(*arguments: str) -> subprocess.CompletedProcess[str]:
    """Run this interpreter to its end with no input and return what it wrote."""
    return subprocess.run(
        [sys.executable, *arguments],
        cwd=ROOT,
        env=surroundings(),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=True,
    )


@dataclass(frozen=True, slots=True)
class Painted:
    """What a key brought: milliseconds to the last byte of the repaint, and its bytes."""

    ms: float
    size: int


@dataclass(frozen=True, slots=True)
class Spent:
    """What a program took of the machine: MB at its peak, and milliseconds of every core it used.

    Children that it waited for count: their milliseconds are added, and the greater peak is kept.
    """

    peak_mb: float
    cpu_ms: float


class Terminal:
    """A program of this interpreter under a pseudo-terminal. `started` is the moment before the spawn.

    With `forget` what an earlier run kept is taken away first; the next one then makes its casebook anew.
    """

    def __init__(self, arguments: Sequence[str], forget: bool = True) -> None:
        if forget:
            forget_lambs()
        self._ours, theirs = pty.openpty()
        fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        self.started = perf_counter()
        self._process = subprocess.Popen(
            [sys.executable, *arguments],
            cwd=ROOT,
            env=surroundings(),
            stdin=theirs,
            stdout=theirs,
            stderr=theirs,
            start_new_session=True,
        )
        os.close(theirs)

    def __enter__(self) -> Terminal:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._process.returncode is None:
            self.end()
        os.close(self._ours)

    def seen(self, text: str) -> float:
        """Wait until the text has been read; return the milliseconds since the spawn."""
        got = b""
        while text.encode() not in _ESCAPES.sub(b"", got):
            got += self._more(PATIENCE, text)
        return (perf_counter() - self.started) * 1000

    def settle(self, quiet: float) -> None:
        """Read on until nothing has come for this many seconds."""
        while self._ready(quiet):
            self._more(quiet, "")

    def press(self, keys: str, text: str, quiet: float) -> Painted:
        """Write keys at once; time the last byte read before a silence that follows the text."""
        start = last = perf_counter()
        os.write(self._ours, keys.encode())
        got = b""
        while text.encode() not in _ESCAPES.sub(b"", got) or self._ready(quiet):
            got += self._more(PATIENCE, text)
            last = perf_counter()
        return Painted((last - start) * 1000, len(got))

    def end(self) -> Spent:
        """Kill the program; return what it took."""
        os.kill(self._process.pid, signal.SIGKILL)  # not send_signal, which would reap it and its usage
        _, status, usage = os.wait4(self._process.pid, 0)
        self._process.returncode = os.waitstatus_to_exitcode(status)
        return Spent(in_mb(usage.ru_maxrss), (usage.ru_utime + usage.ru_stime) * 1000)

    def _ready(self, seconds: float) -> bool:
        return bool(select.select([self._ours], [], [], seconds)[0])

    def _more(self, seconds: float, awaited: str) -> bytes:
        if not self._ready(seconds):
            raise TimeoutError(f"{awaited!r} was never shown")
        try:
            return os.read(self._ours, 1 << 16)
        except OSError as error:
            raise ChildProcessError(f"the program ended before it showed {awaited!r}") from error


def in_mb(maxrss: int) -> float:
    """Return a ru_maxrss in MB; the kernel counts it in KB, except on macOS, in bytes."""
    return maxrss / (1 << 20 if sys.platform == "darwin" else 1 << 10)
