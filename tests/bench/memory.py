"""Most memory ever held, at the first question and after 50 page turns, against a bare Textual app.

Each program runs under its own pseudo-terminal and is killed at that point; the figure is the child's
ru_maxrss, the median of a few runs in turns. The baseline is one Static and a Footer, whose text each
of its 50 keys swaps; the guide's turns also type measurements. A child's ru_maxrss counts what this
script held at the spawn, so this script must stay smaller than any figure, and says so if it does not.

Run: python tests/bench/memory.py
"""

from __future__ import annotations

import resource
import sys
from collections.abc import Sequence
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.bare_texts import FIRST, SECOND
from tests.bench.figures import Figure, report
from tests.bench.terminal import GUIDE, ONE_STATIC, Terminal, in_mb
from tests.bench.walks import first_words, presses

RUNS = 5
KEYS = 50
QUIET = 0.03
MOST = 1.5
TITLE = "Peak resident memory; baseline: bare Textual, one Static and a Footer"


def measure() -> list[Figure]:
    """Run both in turns, to the first question and through 50 keys, and return the figures."""
    words = first_words()
    turns = [(f"{press.typed}{press.key}", press.words) for press in presses(KEYS)]
    swaps = [("x", text) for text in (SECOND, FIRST) * (KEYS // 2)]
    peaks: dict[tuple[str, int], list[float]] = {}
    for _ in range(RUNS):
        for keys in (0, KEYS):
            peaks.setdefault(("guide", keys), []).append(_peak(GUIDE, words, turns[:keys]))
            peaks.setdefault(("bare", keys), []).append(_peak(ONE_STATIC, FIRST, swaps[:keys]))
    figures = [_figure(keys, peaks["guide", keys], peaks["bare", keys]) for keys in (0, KEYS)]
    own = in_mb(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
    if own >= min(min(each) for each in peaks.values()):
        raise SystemExit(f"This script itself held {own:.1f} MB, so the figures mean nothing.")
    return figures


def _figure(keys: int, ours: list[float], theirs: list[float]) -> Figure:
    what = f"peak after {keys} page turns" if keys else "peak at the first question"
    return Figure(what, median(ours), "MB", median(theirs), limit_ratio=MOST)


def _peak(arguments: tuple[str, ...], words: str, turns: Sequence[tuple[str, str]]) -> float:
    with Terminal(arguments) as terminal:
        terminal.seen(words)
        terminal.settle(0.2)
        for keys, text in turns:
            terminal.press(keys, text, QUIET)
        return terminal.end().peak_mb


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
