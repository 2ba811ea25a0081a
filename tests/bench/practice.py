"""Practice: how it opens against the guide itself, and what a drawn case and a dealt one take.

Opening is timed as in `start.py`, both programs in turns under a pseudo-terminal: the guide to its first
question, practice to the page of a helper who is named on the line. The baseline of a drawn case is a
hundred plain walks of the guide by the same answers.

Run: python tests/bench/practice.py
"""

from __future__ import annotations

import sys
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, middle_and_best, report
from tests.bench.start import once
from tests.bench.terminal import GUIDE
from tests.bench.walks import first_words
from triage.guide.find import knowledge_root
from triage.guide.read import read_guide
from triage.practice.dealing import Dealer, Past, Played, calls
from triage.walk import Walk

ROUNDS = 15
DRAWN = 400
DEALT = 120
MOST_OPENING = 1.3
MOST_DRAWN = 20.0
WALKS = 100
TITLE = "Practice; baselines: the guide to its first question, and a hundred plain walks"
PRACTICE = ("-m", "triage", "practice", "Imani")
NAMED = "Practice: Imani"
EVENING = datetime(2026, 2, 1, 19, tzinfo=UTC)


def measure() -> list[Figure]:
    """Open both in turns, then draw and deal."""
    return [*_opening(), *_cases()]


def _opening() -> list[Figure]:
    programs = {"practice": (PRACTICE, NAMED), "guide": (GUIDE, first_words())}
    times: dict[str, list[float]] = {name: [] for name in programs}
    for turn in range(ROUNDS + 1):
        for name, (arguments, text) in programs.items():
            taken, _ = once(arguments, text)
            if turn:  # the first round only warms the disk, the compiled files and the kept guide
                times[name].append(taken)
    return middle_and_best("opening practice", times["practice"], times["guide"], MOST_OPENING)


def _cases() -> list[Figure]:
    guide = read_guide(knowledge_root()).guide
    assert guide is not None
    began = perf_counter()
    dealer = Dealer(guide)
    known = len(dealer.rarity)
    index = (perf_counter() - began) * 1000
    drawn, walked, dealt = list[float](), list[float](), list[float]()
    for seed in range(DRAWN):
        began = perf_counter()
        posed = dealer.draw(Random(seed))
        drawn.append((perf_counter() - began) * 1000)
        if posed:
            began = perf_counter()
            for _ in range(WALKS):
                assert Walk(guide, posed.case.walk.moves).state.met
            walked.append((perf_counter() - began) * 1000)
    past, rng = Past(), Random(1)
    for _ in range(DEALT):
        began = perf_counter()
        posed = dealer.deal(past, EVENING, rng)
        dealt.append((perf_counter() - began) * 1000)
        assert posed is not None
        case = posed.case
        past = Past(
            [
                *past.rounds,
                Played(
                    case.name,
                    case.page.name,
                    posed.rules,
                    case.urgency == guide.top,
                    calls(guide, case.urgency),
                ),
            ]
        )
    base = median(walked)
    return [
        Figure("a drawn case, median", median(drawn), baseline=base),
        Figure("a drawn case, the slowest", max(drawn), baseline=base, limit=MOST_DRAWN),
        Figure("a dealt case, median", median(dealt), baseline=base),
        Figure("a dealt case, the slowest", max(dealt), baseline=base),
        Figure(f"before the first one: every written case posed ({known} cards)", index, baseline=base),
    ]


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
