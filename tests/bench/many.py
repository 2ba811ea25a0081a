"""A casebook of 5,000 walks of 40 answers each, against an empty one: what a start with it takes.

Each is opened and read as at a start, in turns, in processes of their own, so that nothing is warm but
the disk. The lambs are invented. The limits hold the time that a person waits, and that it hardly grows.

Run: python tests/bench/many.py [CASES]
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import partial
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, report
from triage.casebook.book import Casebook
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case, Lamb, Look
from triage.walk import Answer

ROUNDS = 15
ANSWERS = 40
TITLE = "A casebook of many walks; baseline: an empty one"
NOW = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)

START = """
import sys, time
from pathlib import Path
from triage.casebook.opening import open_casebook
def clock(since=[time.perf_counter()]):
    now = time.perf_counter()
    taken, since[0] = now - since[0], now
    return taken * 1000
clock()
opened = open_casebook(Path(sys.argv[1])); times = [clock()]
opened.book.open_cases(20); times.append(clock())
opened.book.looks(20); times.append(clock())
opened.book.count_open(); times.append(clock())
print(*times)
"""
PARTS = ("opened", "20 open walks with their answers", "20 looks", "open walks counted")


def main() -> int:
    """Measure, and print the table."""
    cases = int(sys.argv[1]) if len(sys.argv) > 1 else 5000
    return report((TITLE, measure(cases)))


def measure(cases: int = 5000) -> Sequence[Figure]:
    """Build both casebooks and return the figures."""
    with tempfile.TemporaryDirectory() as folder:
        empty, many = Path(folder) / "empty.sqlite", Path(folder) / "many.sqlite"
        _open(empty).close()
        _fill(many, cases)
        times: dict[Path, list[list[float]]] = {empty: [], many: []}
        for _ in range(ROUNDS):
            for path, taken in times.items():
                taken.append(_start(path))
        figures = [Figure("size of the file", many.stat().st_size / 1e6, "MB")]
        for at, part in enumerate(PARTS):
            figures.append(
                _figure(part, [each[at] for each in times[many]], [each[at] for each in times[empty]])
            )
        whole = [[sum(each) for each in times[path]] for path in (many, empty)]
        figures.append(replace(_figure("all of a start", *whole), limit=50.0))
        return [*figures, *_in_use(many)]


def _figure(what: str, ours: list[float], theirs: list[float]) -> Figure:
    return Figure(f"{what}, median", median(ours), baseline=median(theirs))


def _start(path: Path) -> list[float]:
    ran = subprocess.run([sys.executable, "-c", START, path], capture_output=True, text=True, check=True)
    return [float(each) for each in ran.stdout.split()]


def _in_use(path: Path) -> list[Figure]:
    """Time what goes on while it is open."""
    book = _open(path)
    quick = _timed(book.sound)
    found = book.open_cases(1)
    assert isinstance(found, tuple)
    [(_, case)] = found
    kept: list[float] = []
    for number in range(200):
        case = replace(
            case, moves=(*case.moves[:ANSWERS], Answer("temperature", 36.0 + number / 100, at=NOW))
        )
        began = time.perf_counter()
        came = book.keep(case, NOW)
        kept.append((time.perf_counter() - began) * 1000)
        assert isinstance(came, Case)
        case = came
    book.close()
    return [
        Figure("the whole file proved sound (not at a start)", quick),
        Figure("an answer kept, median", median(kept)),
        Figure("an answer kept, slowest of 200", max(kept), limit=500.0),
    ]


def _timed(work: object) -> float:
    assert callable(work)
    began = time.perf_counter()
    assert work()
    return (time.perf_counter() - began) * 1000


def _open(path: Path) -> Casebook:
    opened = open_casebook(path)
    assert isinstance(opened, Opened), opened
    return opened.book


def _fill(path: Path, cases: int) -> None:
    """Keep invented walks: one in twenty still open, half of those with a look."""
    book = _open(path)
    for first in range(0, cases, 500):
        steps = [
            partial(book.begin, _lamb(number), _case(number))
            for number in range(first, min(first + 500, cases))
        ]
        assert book.together(steps) is None
    book.close()


def _lamb(number: int) -> Lamb:
    return Lamb(f"lamb-{number // 2}", f"Invented {number // 2}", NOW - timedelta(hours=number // 2))


def _case(number: int) -> Case:
    begun = NOW - timedelta(hours=number // 2)
    moves = tuple(
        Answer(f"finding-{place}", "a-choice" if place % 3 else 36.0 + place / 10, "as typed", begun)
        for place in range(ANSWERS)
    )
    look = None if number % 2 else Look(begun, begun + timedelta(minutes=20))
    closed = begun if number % 20 > 1 else None
    return Case(f"case-{number}", f"lamb-{number // 2}", begun, begun, "2026.1", moves, look, closed)


if __name__ == "__main__":
    raise SystemExit(main())
