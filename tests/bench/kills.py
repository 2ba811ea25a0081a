"""Killed with SIGKILL at random moments while answers stream in: what is lost, and how the next start goes.

Run: python tests/bench/kills.py [TIMES] [SEED]
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.casebook.killing import kill_and_read


def main() -> int:
    """Kill so many times, and print the figures."""
    times, seed = (int(sys.argv[at]) if len(sys.argv) > at else usual for at, usual in ((1, 500), (2, 1)))
    with tempfile.TemporaryDirectory() as folder:
        killed = kill_and_read(Path(folder) / "casebook.sqlite", times, seed)
    print(
        f"{killed.kills} kills, {killed.acknowledged} answers acknowledged, {len(killed.lost)} cases with a loss"
    )
    print(f"{killed.damaged} times damaged, told at opening: {killed.told or 'nothing'}")
    print(f"slowest opening afterwards: {killed.slowest * 1000:.1f} ms")
    for line in killed.lost[:10]:
        print(line)
    return int(bool(killed.lost or killed.damaged or killed.told or killed.slowest > 1))


if __name__ == "__main__":
    raise SystemExit(main())
