"""The app in a real terminal: it opens, and it leaves the terminal clean whatever ends it."""

from __future__ import annotations

import os
import pty
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

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


def test_a_terminal_that_vanishes_ends_the_app(tmp_path: Path) -> None:
    """When the terminal is gone for good the app ends by itself, and the record is kept."""
    record = tmp_path / "night.json"
    for _ in range(3):
        record.unlink(missing_ok=True)
        child, terminal = pty.fork()
        if child == 0:
            os.environ["TERM"] = "xterm-256color"
            os.execv(sys.executable, [sys.executable, "-m", "triage", "walk", "--record", str(record)])
        shown = b""
        while b"Do you see any of these now" not in shown:
            shown += os.read(terminal, 65536)
        os.close(terminal)

        for _ in range(100):
            ended, status = os.waitpid(child, os.WNOHANG)
            if ended:
                break
            time.sleep(0.1)
        else:
            os.kill(child, signal.SIGKILL)
            os.waitpid(child, 0)
            pytest.fail("the app outlived its terminal")
        assert status == 0
        assert record.exists()


def test_no_stderr_means_plain_lines() -> None:
    """The screen is drawn on stderr; where that is no terminal the guide opens in plain lines."""
    env = {**os.environ, "TERM": "xterm-256color", "LC_ALL": "C.UTF-8"}
    command = f"{sys.executable} -m triage 2>/dev/null"
    child: pexpect.spawn[str] = pexpect.spawn(
        "/bin/sh", ["-c", command], encoding="utf-8", timeout=30, env=env
    )

    child.expect("Answer")
    child.sendline("q")

    assert "\x1b[?1049h" not in ended(child)


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


def test_what_was_answered_is_kept_when_a_signal_ends_it(child: pexpect.spawn[str]) -> None:
    """After SIGHUP the next start lists the lamb, and one key leads on."""
    child.send("6")
    child.expect("What is its temperature")
    child.kill(signal.SIGHUP)
    ended(child)

    ran = subprocess.run(
        [sys.executable, "-m", "triage", "walk", "--plain"],
        check=True, input="2\n39.3\n", capture_output=True, text=True, timeout=60,
    )  # fmt: skip

    assert "Lambs in care" in ran.stdout
    assert "39.3 °C" in ran.stdout
