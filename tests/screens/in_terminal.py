"""The program in a real terminal, and what it wrote there."""

from __future__ import annotations

import os
import re
import sys
import termios
from pathlib import Path

import pexpect

FIRST = "Do you see any of these now"

COLOURS = re.compile(r"\x1b\[(?:[0-9]+;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;[0-9]+)*m")
"""Escape sequences that choose a colour (ECMA-48, 8.3.117, and the usual bright and wide ones)."""

_MARKS = re.compile(r"\x1b\[([0-9;]*)m")
_MODES = re.compile(r"\x1b\[\?([0-9;]+)([hl])")


def opened(light: str = "", rows: int = 24, columns: int = 80, **env: str) -> pexpect.spawn[str]:
    """Open the program at the first question, in a terminal of some size, with a light of the holding's."""
    if light:
        holding = Path(os.environ["XDG_CONFIG_HOME"], "bummer-triage", "holding.yaml")
        holding.parent.mkdir(parents=True, exist_ok=True)
        holding.write_text(f"theme: {light}\n", encoding="utf-8")
    kept = {name: value for name, value in os.environ.items() if name not in ("NO_COLOR", "COLORTERM")}
    spawned: pexpect.spawn[str] = pexpect.spawn(
        sys.executable,
        ["-m", "triage"],
        encoding="utf-8",
        dimensions=(rows, columns),
        timeout=30,
        env={**kept, "TERM": "xterm-256color", "LC_ALL": "C.UTF-8", **env},
    )
    spawned.written = ""
    wait_for(spawned, FIRST)
    return spawned


def wait_for(child: pexpect.spawn[str], text: str) -> None:
    """Wait until a text has been written; all that was written so far is kept in `written`."""
    child.expect_exact(text)
    child.written += f"{child.before}{child.after}"


def all_written(child: pexpect.spawn[str]) -> str:
    """Wait for the end and return all that was ever written."""
    child.expect(pexpect.EOF)
    child.wait()
    return f"{child.written}{child.before}"


def what_is_left(child: pexpect.spawn[str], written: str) -> list[str]:
    """Return what the program left changed in its terminal; nothing at all is as it should be."""
    began: dict[str, str] = {}
    ended: dict[str, str] = {}
    for modes, way in _MODES.findall(written):
        for mode in modes.split(";"):
            began.setdefault(mode, way)
            ended[mode] = way
    left = [f"mode {mode} is still {ended[mode]}" for mode in began if ended[mode] == began[mode]]
    if _MARKS.findall(written)[-1] not in ("", "0"):
        left.append("a colour or a mark")
    if written.count("\x1b[>") != written.count("\x1b[<u"):
        left.append("the keyboard's way of sending keys")
    wanted = termios.ECHO | termios.ICANON | termios.ISIG
    if termios.tcgetattr(child.child_fd)[3] & wanted != wanted:
        left.append("typed keys are not shown, or not taken by the line")
    return left
