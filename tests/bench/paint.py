"""Key to the next page painted, against bare Textual apps that swap two fixed pages of text.

All run at once, each under its own pseudo-terminal of 80 by 24, and take turns key by key: the guide
is walked forth and back over questions, measurements, acts and ends. Timed from writing the key to the
last byte of the repaint, which is the last before a silence; nothing is subtracted. For a measurement
the key is Enter; what is typed before it is painted first, and timed apart.

Textual paints a second frame when a widget changes its height. So there are two baselines with the
guide's three Statics and pages of about its size: "still" never changes a height, "moving" does at
every key. The guide's turns are split by the rows of its head and keys, known beforehand, and each
kind is held to its own baseline, and to the limit in ms. All of them together stand beside the still
one too, without a limit.

Run: python tests/bench/paint.py
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import dataclass, field
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


@dataclass(slots=True)
class Times:
    """What was timed, in the order of the keys."""

    guide: list[Painted] = field(default_factory=list)
    letters: list[Painted] = field(default_factory=list)
    still: list[Painted] = field(default_factory=list)
    moving: list[Painted] = field(default_factory=list)


def measure() -> list[Figure]:
    """Press the keys of all in turns and return the figures."""
    turns = presses(KEYS)
    moved = _moved(turns)
    times = Times()
    with Terminal(GUIDE) as guide, Terminal(STILL_PAGES) as still, Terminal(MOVING_PAGES) as moving:
        for terminal, words in ((guide, first_words()), (still, MARKS[0]), (moving, MARKS[0])):
            terminal.seen(words)
            terminal.settle(0.3)
        for turn, press in enumerate(turns, 1):
            if press.typed:
                times.letters.append(guide.press(press.typed, press.typed, QUIET))
            times.guide.append(guide.press(press.key, press.words, QUIET))
            times.still.append(still.press("x", MARKS[turn % 2], QUIET))
            times.moving.append(moving.press("x", MARKS[turn % 2], QUIET))
    return [*_limited(times, moved), *_beside(times, turns)]


def _moved(turns: Sequence[Press]) -> list[bool]:
    """Return, for each turn, whether the head or the keys change their number of rows."""
    from triage.screens.view import head_lines, key_lines

    pages = [first_page(), *(press.page for press in turns)]
    rows = [(len(head_lines(page, "", 78, 24)), len(key_lines(page, 78))) for page in pages]
    return [before != after for before, after in zip(rows, rows[1:], strict=False)]


def _limited(times: Times, moved: Sequence[bool]) -> list[Figure]:
    still = [each.ms for each, moves in zip(times.guide, moved, strict=True) if not moves]
    moving = [each.ms for each, moves in zip(times.guide, moved, strict=True) if moves]
    every = [each.ms for each in times.guide]
    bare_still, bare_moving = ([each.ms for each in kept] for kept in (times.still, times.moving))
    return [
        *_pair("heights kept", still, bare_still, MOST),
        *_pair("heights changed", moving, bare_moving, MOST),
        *_pair("all, beside still", every, bare_still, None),
        Figure("all, worst, beside moving", max(every), baseline=max(bare_moving)),
    ]


def _pair(what: str, ours: Sequence[float], theirs: Sequence[float], ratio: float | None) -> list[Figure]:
    (p50, bare50), (p99, bare99) = (
        (percentile(ours, share), percentile(theirs, share)) for share in (0.50, 0.99)
    )
    return [
        Figure(f"{what}: p50 of {len(ours)} keys", p50, baseline=bare50),
        Figure(f"{what}: p99", p99, baseline=bare99, limit=MOST_MS, limit_ratio=ratio),
    ]


def _beside(times: Times, turns: Sequence[Press]) -> list[Figure]:
    base = median(each.ms for each in times.still)
    figures = [
        Figure("letters of a measurement: p50", median(each.ms for each in times.letters), baseline=base)
    ]
    for kind in sorted({press.kind for press in turns}):
        ms = [each.ms for press, each in zip(turns, times.guide, strict=True) if press.kind == kind]
        figures.append(Figure(f"to a page of kind {kind}: p50 of {len(ms)}", median(ms), baseline=base))
    sizes = mean(each.size for each in times.guide), mean(each.size for each in times.still)
    return [*figures, Figure("bytes in a repaint, mean", sizes[0], "bytes", sizes[1])]


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
