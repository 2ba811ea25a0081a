"""The opening screen with 5,000 open cases of 40 answers, against the same with none.

Both open the guide as the command does, each under its own pseudo-terminal of 80 by 24, in turns, with a
casebook of its own: one holds one closed case, so that the file is there; the other 5,000 open ones. Timed
from before the spawn until the first page has been read.

Run: python tests/bench/opening.py [CASES]
"""

from __future__ import annotations

import os
import sys
import tempfile
from collections.abc import Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, middle_and_best, report
from tests.bench.terminal import GUIDE, Terminal
from tests.bench.walks import first_words
from triage.casebook.book import Casebook
from triage.casebook.opening import Opened, open_casebook
from triage.casebook.rows import Case, Lamb, Look
from triage.walk import Answer

CASES = 5000
ANSWERS = 40
ROUNDS = 15
MOST = 1.2
TITLE = f"Opening with {CASES:,} open cases of {ANSWERS} answers; baseline: a casebook with none open"
NOW = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)


def measure(cases: int = CASES) -> list[Figure]:
    """Build both casebooks, open the guide on each in turns, and return the figures."""
    with tempfile.TemporaryDirectory() as folder:
        many, none = Path(folder) / "many.sqlite", Path(folder) / "none.sqlite"
        build(many, cases, closed=False)
        build(none, 1, closed=True)
        texts = {many: "Lambs in care", none: first_words()}
        times: dict[Path, list[float]] = {many: [], none: []}
        for turn in range(ROUNDS + 1):
            for path, kept in times.items():
                with Terminal((*GUIDE, "--casebook", str(path))) as terminal:
                    taken = terminal.seen(texts[path])
                if turn:
                    kept.append(taken)
        inside = [_inside(many) for _ in range(5)], [_inside(none) for _ in range(5)]
        return [
            *middle_and_best("opening screen", times[many], times[none], MOST),
            Figure("of it: open, list, looks, count", median(inside[0]), baseline=median(inside[1])),
            Figure("reading the whole file for damage", _whole(many)),
            Figure("size of the casebook", many.stat().st_size / 1e6, "MB"),
        ]


def build(path: Path, cases: int, closed: bool) -> None:
    """Write invented lambs, each with one case; a third has a look set."""
    book = _opened(path)
    database = book._database
    database.execute("PRAGMA synchronous = OFF")
    moves = tuple(Answer(f"finding-{place}", 36.2 + place / 100, at=NOW) for place in range(ANSWERS - 1))
    moves = (Answer("danger", "none", at=NOW), *moves)
    for number in range(cases):
        at = NOW + timedelta(seconds=number)
        lamb = Lamb(f"lamb-{number}", f"Invented {number}", at)
        look = Look(at, at + timedelta(minutes=20)) if number % 3 == 0 else None
        case = Case(f"case-{number}", lamb.id, at, at, "2026.1", moves, look)
        book.begin(lamb, replace(case, closed=at if closed else None))
    database.execute("PRAGMA wal_checkpoint(TRUNCATE)")
    book.close()


def _opened(path: Path) -> Casebook:
    opened = open_casebook(path)
    assert isinstance(opened, Opened)
    return opened.book


def _inside(path: Path) -> float:
    start = perf_counter()
    book = _opened(path)
    book.open_cases(40)
    book.looks(50)
    book.count_open()
    taken = (perf_counter() - start) * 1000
    book.close()
    return taken


def _whole(path: Path) -> float:
    book = _opened(path)
    start = perf_counter()
    assert book.sound()
    taken = (perf_counter() - start) * 1000
    book.close()
    return taken


def main(arguments: Sequence[str]) -> int:
    """Measure with so many cases."""
    os.environ.pop("NO_COLOR", None)
    return report((TITLE, measure(int(arguments[0]) if arguments else CASES)))


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
