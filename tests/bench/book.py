"""Making the book, as one process, against one that only reads the same guide whole.

Both run in turns, in a home of nobody, so that both take the guide as it was kept by the first round. The
size of the book is counted beside it.

Run: python tests/bench/book.py
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, middle_and_best, report

ROUNDS = 9
MOST_MS = 2000.0
MOST_RATIO = 12.0
MOST_KB = 1500.0
TITLE = "The book; baseline: reading the whole guide as it is kept"
READ = (
    "from triage.guide.wanted import EVERYTHING; from triage.shipped import read_shipped; "
    "assert read_shipped(also=EVERYTHING).guide"
)


def measure() -> list[Figure]:
    """Make the book and read the guide in turns."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "book.html"
        programs = {"book": ("-m", "triage", "book", str(file)), "read": ("-c", READ)}
        times: dict[str, list[float]] = {name: [] for name in programs}
        for turn in range(ROUNDS + 1):
            for name, arguments in programs.items():
                taken = _once(arguments, folder)
                if turn:  # the first round only warms the disk, the compiled files and the kept guide
                    times[name].append(taken)
        kilobytes = file.stat().st_size / 1000
    return [
        *middle_and_best("making the book", times["book"], times["read"], MOST_RATIO),
        Figure("making the book, longest", max(times["book"]), limit=MOST_MS),
        Figure("its size", kilobytes, unit="kB", limit=MOST_KB),
    ]


def _once(arguments: tuple[str, ...], home: str) -> float:
    """Run a program, and return how long it took, in ms."""
    environment = {**os.environ, "HOME": home}
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"):
        environment[name] = home
    begun = perf_counter()
    subprocess.run([sys.executable, *arguments], check=True, capture_output=True, env=environment, timeout=60)
    return (perf_counter() - begun) * 1000


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
