"""Key to the next page painted, against a bare Textual app that swaps two fixed pages of text.

Both run at once, each under its own pseudo-terminal of 80 by 24, and take turns key by key: the guide
is walked forth and back over questions, measurements, acts and ends; the bare app has the same three
Statics and pages of about the same size. Timed from writing the key to the last byte of the repaint,
which is the last before a silence; nothing is subtracted. For a measurement the key is Enter; what
is typed before it is painted first, and timed apart as "letters typed".

Run: python tests/bench/paint.py
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path
from statistics import mean, median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.bare_texts import MARKS
from tests.bench.figures import Figure, percentile, report
from tests.bench.terminal import GUIDE, TWO_PAGES, Painted, Terminal
from tests.bench.walks import Press, first_words, presses

KEYS = 400
QUIET = 0.04
"""Seconds of silence that end a repaint: more than two of Textual's frames."""
MOST_MS = 50.0
MOST = 2.0
TITLE = "Key to the next page painted; baseline: bare Textual swapping two fixed pages"


def measure() -> list[Figure]:
    """Press the keys of both in turns and return the figures."""
    ours: list[tuple[Press, Painted]] = []
    theirs: list[Painted] = []
    letters: list[Painted] = []
    with Terminal(GUIDE) as guide, Terminal(TWO_PAGES) as bare:
        for terminal, words in ((guide, first_words()), (bare, MARKS[0])):
            terminal.seen(words)
            terminal.settle(0.3)
        for turn, press in enumerate(presses(KEYS), 1):
            if press.typed:
                letters.append(guide.press(press.typed, press.typed, QUIET))
            ours.append((press, guide.press(press.key, press.words, QUIET)))
            theirs.append(bare.press("x", MARKS[turn % 2], QUIET))
    return _figures(ours, theirs, letters)


def _figures(
    ours: Sequence[tuple[Press, Painted]], theirs: Sequence[Painted], letters: Sequence[Painted]
) -> list[Figure]:
    mine, bare = [painted.ms for _, painted in ours], [painted.ms for painted in theirs]
    p50, p99 = ((percentile(mine, share), percentile(bare, share)) for share in (0.50, 0.99))
    middle = median(bare)
    figures = [
        Figure(f"key to page, p50 of {len(mine)}", p50[0], baseline=p50[1]),
        Figure("key to page, p99", p99[0], baseline=p99[1], limit=MOST_MS, limit_ratio=MOST),
        Figure("key to page, worst", max(mine), baseline=max(bare)),
    ]
    for kind in sorted({press.kind for press, _ in ours}):
        times = [painted.ms for press, painted in ours if press.kind == kind]
        figures.append(
            Figure(f"p50 of {len(times)} to a page of kind {kind}", median(times), baseline=middle)
        )
    figures.append(
        Figure("p50 of letters typed at once", median(each.ms for each in letters), baseline=middle)
    )
    sizes = mean(painted.size for _, painted in ours), mean(painted.size for painted in theirs)
    return [*figures, Figure("bytes in a repaint, mean", sizes[0], "bytes", sizes[1])]


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
