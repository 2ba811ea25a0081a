"""Key to the next page painted, against bare Textual apps that swap two fixed pages of text.

All run at once, each under its own pseudo-terminal of 80 by 24, and take turns key by key: the guide
is walked forth over questions and measurements to an act or an end, and back. Timed from writing the key to the
last byte of the repaint, which is the last before a silence; nothing is subtracted. For a measurement
the key is Enter; what is typed before it is painted first, and timed apart.

Textual paints a second frame when a widget changes its height. So there are two baselines with the
guide's three Statics and pages of about its size: "still" never changes a height, "moving" does at
every key. Whether a turn of the guide changes one is known beforehand, from the rows of its head and
keys, and the baseline that does the same is pressed right after it: as many keys of each kind on both
sides. The limits hold all turns together, and each kind by itself.

Run: python tests/bench/paint.py
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import cycle, pairwise
from pathlib import Path
from statistics import mean, median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.bare_texts import MARKS
from tests.bench.figures import Figure, percentile, report
from tests.bench.terminal import GUIDE, MOVING_PAGES, STILL_PAGES, Painted, Terminal
from tests.bench.walks import Press, first_page, first_words, presses

KEYS = 600
QUIET = 0.06
"""Seconds of silence that end a repaint: the second frame follows the first by up to 35 ms."""
MOST_MS = 50.0
MOST = 2.0
TITLE = "Key to the next page painted; baseline: bare Textual swapping two pages"


@dataclass(frozen=True, slots=True)
class Turn:
    """One key of the guide, whether it changes a height, its repaint, and that of the like baseline."""

    press: Press
    moves: bool
    guide: Painted
    bare: Painted


def measure() -> list[Figure]:
    """Press the keys of all in turns and return the figures."""
    planned = presses(KEYS)
    plan = list(zip(planned, _moved(planned), strict=True))
    turns: list[Turn] = []
    letters: list[float] = []
    with Terminal(GUIDE) as guide, Terminal(STILL_PAGES) as still, Terminal(MOVING_PAGES) as moving:
        for terminal, words in ((guide, first_words()), (still, MARKS[0]), (moving, MARKS[0])):
            terminal.seen(words)
            terminal.settle(0.3)
        marks = {still: cycle((MARKS[1], MARKS[0])), moving: cycle((MARKS[1], MARKS[0]))}
        for press, moves in plan:
            if press.typed:
                letters.append(guide.press(press.typed, press.typed, QUIET).ms)
            bare = moving if moves else still
            painted = guide.press(press.key, press.words, QUIET)
            turns.append(Turn(press, moves, painted, bare.press("x", next(marks[bare]), QUIET)))
    return [*_limited(turns), *_beside(turns, letters)]


def _moved(turns: Sequence[Press]) -> list[bool]:
    """Return, for each turn, whether the head or the keys change their number of rows."""
    from triage.screens.view import head_lines, key_lines

    pages = [first_page(), *(press.page for press in turns)]
    rows = [(len(head_lines(page, "", 78, 24)), len(key_lines(page, 78, 24))) for page in pages]
    return [before != after for before, after in pairwise(rows)]


def _limited(turns: Sequence[Turn]) -> list[Figure]:
    return [
        *_pair("all turns", turns),
        *_pair("heights kept", [turn for turn in turns if not turn.moves]),
        *_pair("heights changed", [turn for turn in turns if turn.moves]),
    ]


def _pair(what: str, turns: Sequence[Turn]) -> list[Figure]:
    ours, theirs = [turn.guide.ms for turn in turns], [turn.bare.ms for turn in turns]
    p99 = percentile(ours, 0.99), percentile(theirs, 0.99)
    return [
        Figure(f"{what}: p50 of {len(turns)}", median(ours), baseline=median(theirs)),
        Figure(f"{what}: p99", p99[0], baseline=p99[1], limit=MOST_MS, limit_ratio=MOST),
        Figure(f"{what}: worst", max(ours), baseline=max(theirs)),
    ]


def _beside(turns: Sequence[Turn], letters: Sequence[float]) -> list[Figure]:
    figures = [Figure(f"letters of a measurement: p50 of {len(letters)}", median(letters))]
    for kind in sorted({turn.press.kind for turn in turns}):
        alike = [turn for turn in turns if turn.press.kind == kind]
        ours, theirs = median(turn.guide.ms for turn in alike), median(turn.bare.ms for turn in alike)
        figures.append(Figure(f"to a page of kind {kind}: p50 of {len(alike)}", ours, baseline=theirs))
    sizes = mean(turn.guide.size for turn in turns), mean(turn.bare.size for turn in turns)
    return [*figures, Figure("bytes in a repaint, mean", sizes[0], "bytes", sizes[1])]


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
