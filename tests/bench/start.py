"""Start to the first question on the screen, against a bare Textual app (one Static and a Footer).

Each program is spawned by the same interpreter under its own pseudo-terminal of 80 by 24, and timed
from before the spawn until its text has been read. All of them take turns, round after round. The
share of the bare interpreter, of importing Textual, and of the guide without Textual are timed in
the same rounds, each until it has printed a word. The limit holds the ratio of the medians and of the
best times: while other jobs run, either one can pass by luck.

A program that works on two cores at once is fast only while the other core is free. So the time of all
cores together stands there too, without a limit: where it and the wall time disagree, that is why.

Run: python tests/bench/start.py
"""

from __future__ import annotations

import sys
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.bare_texts import FIRST
from tests.bench.figures import Figure, middle_and_best, report
from tests.bench.terminal import GUIDE, ONE_STATIC, Terminal
from tests.bench.walks import first_words

ROUNDS = 21
MOST = 1.3
TITLE = "Start to first question; baseline: bare Textual, one Static and a Footer"

UP = "I am up"
_SAY = f"print('{UP}')"
_OPEN = "import triage.cli, triage.session, triage.walk; guide = triage.commands.shared.open_guide(None)"
_PAGE = "triage.session.Session(triage.walk.Walk(guide)).page()"
SHARES = {
    "bare interpreter": _SAY,
    "import textual.app": f"import textual.app; {_SAY}",
    "guide read and first page made, no Textual": f"{_OPEN}; {_PAGE}; {_SAY}",
}
"""Parts of the way, as programs of one line."""


def measure() -> list[Figure]:
    """Start everything in turns and return the figures."""
    programs = {"guide": (GUIDE, first_words()), "bare": (ONE_STATIC, FIRST)}
    programs |= {name: (("-c", code), UP) for name, code in SHARES.items()}
    times: dict[str, list[float]] = {name: [] for name in programs}
    cores: dict[str, list[float]] = {name: [] for name in programs}
    for turn in range(ROUNDS + 1):
        for name, (arguments, text) in programs.items():
            taken, cpu = once(arguments, text)
            if turn:  # the first round only warms the disk and the compiled files
                times[name].append(taken)
                cores[name].append(cpu)
    whole = median(times["bare"])
    return [
        *middle_and_best("start", times["guide"], times["bare"], MOST),
        *middle_and_best("start, time of all cores", cores["guide"], cores["bare"]),
        *(Figure(f"of it: {name}", median(times[name]), baseline=whole) for name in SHARES),
    ]


def once(arguments: tuple[str, ...], text: str) -> tuple[float, float]:
    # Nothing is answered here, so the casebook of the first round serves all: a casebook is made but once.
    with Terminal(arguments, forget=False) as terminal:
        return terminal.seen(text), terminal.end().cpu_ms


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
