"""Printing everything: every topic, table and form, and the plans of twenty invented lambs, as one process.

Run: python tests/bench/printing.py
"""

from __future__ import annotations

import os
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, report
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case, Lamb, new_id

ROUNDS = 7
LAMBS = 20
MOST = 3000.0
TITLE = f"Printing everything, with {LAMBS} lambs in care"


def measure() -> list[Figure]:
    """Print everything again and again, and return the middle and the longest time. Other jobs make the longest."""
    with TemporaryDirectory() as folder:
        book, out = Path(folder) / "casebook.sqlite", Path(folder) / "pages"
        _keep(book)
        times = [_once(book, out) for _ in range(ROUNDS + 1)][1:]  # the first one warms the disk
        written = len(list(out.iterdir()))
    return [
        Figure(f"{written} files, middle", median(times), limit=MOST),
        Figure(f"{written} files, longest", max(times)),
    ]


def _keep(place: Path) -> None:
    opened = open_casebook(place)
    assert isinstance(opened, Opened)
    now = datetime.now(UTC)
    for number in range(LAMBS):
        lamb = Lamb(new_id(), f"Invented {number}", now, now - timedelta(days=number))
        opened.book.begin(lamb, Case(new_id(), lamb.id, now, now, "2026.1"))
    opened.book.close()


def _once(book: Path, out: Path) -> float:
    begun = perf_counter()
    command = ["-m", "triage", "print", "all", "--casebook", str(book), "--out", str(out)]
    home = {"HOME": str(book.parent), "XDG_CONFIG_HOME": str(book.parent), "XDG_DATA_HOME": str(book.parent)}
    environment = {**os.environ, **home}
    subprocess.run([sys.executable, *command], check=True, capture_output=True, env=environment, timeout=60)
    return (perf_counter() - begun) * 1000


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
