"""The app in a real terminal: it opens, and it leaves the terminal clean whatever ends it."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Iterator

import pexpect
import pytest

LEAVE_ALTERNATE_SCREEN = "\x1b[?1049l"
SHOW_CURSOR = "\x1b[?25h"


@pytest.fixture
def child() -> Iterator[pexpect.spawn[str]]:
    """The app in a terminal of 80 by 24, at the first question."""
    env = {**os.environ, "TERM": "xterm-256color", "LC_ALL": "C.UTF-8"}
    env.pop("NO_COLOR", None)
    spawned: pexpect.spawn[str] = pexpect.spawn(
        sys.executable, ["-m", "triage"], encoding="utf-8", dimensions=(24, 80), timeout=30, env=env
    )
    spawned.expect("Do you see any of these now")
    yield spawned
    spawned.close(force=True)


def ended(child: pexpect.spawn[str]) -> str:
    """Return all that was written until the end."""
    child.expect(pexpect.EOF)
    child.wait()
    return child.before or ""


def test_q_leaves_the_terminal_clean(child: pexpect.spawn[str]) -> None:
    """q ends with status 0, the screen given back and the cursor shown."""
    child.send("q")

    written = ended(child)

    assert child.exitstatus == 0
    assert LEAVE_ALTERNATE_SCREEN in written
    assert SHOW_CURSOR in written


def test_ctrl_c_leaves_the_terminal_clean(child: pexpect.spawn[str]) -> None:
    """Ctrl-C ends the app like q does."""
    child.send("\x03")

    assert LEAVE_ALTERNATE_SCREEN in ended(child)


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_a_signal_leaves_the_terminal_clean(child: pexpect.spawn[str], number: signal.Signals) -> None:
    """A terminal that vanishes or a machine that shuts down ends the app in order."""
    child.send("6")
    child.expect("What is its temperature")
    child.kill(number)

    written = ended(child)

    assert child.exitstatus == 0
    assert LEAVE_ALTERNATE_SCREEN in written
    assert "Traceback" not in written
