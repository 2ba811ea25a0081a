"""Killing the writer at random moments, and reading what it left behind."""

from __future__ import annotations

import random
import subprocess
import sys
import time
from dataclasses import dataclass, field
from pathlib import Path

from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case

ROOT = Path(__file__).resolve().parents[2]


@dataclass
class Killed:
    """What came of a number of kills."""

    kills: int = 0
    acknowledged: int = 0
    lost: list[str] = field(default_factory=list)
    """Cases that hold less than was acknowledged."""
    damaged: int = 0
    told: list[str] = field(default_factory=list)
    slowest: float = 0.0
    """Seconds of the slowest opening afterwards."""


def kill_and_read(path: Path, times: int, seed: int, longest: float = 0.25) -> Killed:
    """Start the writer on one casebook, kill it with SIGKILL, open the casebook, and so on."""
    chance, killed = random.Random(seed), Killed()
    for turn in range(times):
        acknowledged = _write_and_kill(path, seed * 10_000 + turn, chance.random() * longest)
        killed.kills += 1
        killed.acknowledged += sum(count for _, count in acknowledged.values())
        _read(path, acknowledged, killed)
    return killed


def _write_and_kill(path: Path, seed: int, seconds: float) -> dict[str, tuple[int, int]]:
    """Return, for each case, the fewest and the number of answers that are acknowledged.

    They differ where the writer was killed while it took one back.
    """
    program = (sys.executable, "-m", "tests.casebook.writer", str(path), str(seed))
    with subprocess.Popen(program, stdout=subprocess.PIPE, text=True, cwd=ROOT) as writer:
        assert writer.stdout is not None
        assert writer.stdout.readline() == "open\n"
        time.sleep(seconds)
        writer.kill()
        lines = writer.stdout.read().splitlines(keepends=True)
    acknowledged: dict[str, tuple[int, int]] = {}
    case = ""
    for line in lines:
        if line == "back\n":
            acknowledged[case] = (acknowledged[case][1] - 1, acknowledged[case][1])
        elif line.endswith("\n"):  # the last one may be cut
            case, count = line.split()
            acknowledged[case] = (int(count), int(count))
    return acknowledged


def _read(path: Path, acknowledged: dict[str, tuple[int, int]], killed: Killed) -> None:
    began = time.perf_counter()
    opened = open_casebook(path)
    if not isinstance(opened, Opened):
        killed.told.append(opened.why)
        return
    opened.book.open_cases(20)
    killed.slowest = max(killed.slowest, time.perf_counter() - began)
    killed.told += [opened.told] if opened.told else []
    killed.damaged += not opened.book.sound()
    for name, (fewest, count) in acknowledged.items():
        kept = opened.book.case(name)
        found = len(kept.moves) if isinstance(kept, Case) else 0
        # The one after the last that was named may be kept too; nothing that was named may be missing.
        if not fewest <= found <= count + 1:
            killed.lost.append(f"{name}: {count} named, {found} found")
    opened.book.close()
