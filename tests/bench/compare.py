"""What it takes to compare two guides of a thousand nodes: `python tests/bench/compare.py`.

The shipped guide with its topics twice, against itself with twenty ends called otherwise, with one change near the
way in, with a number moved, and with every node renamed. The baseline is one search of one such guide, as the
proof makes it, in the same run.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from random import Random
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, report
from tests.bench.grown import grown
from tests.compare.changes import renamed
from tests.published.walks import shipped
from triage.check.search.searched import search
from triage.compare import compare
from triage.guide.model import Ask, End, Guide

RUNS = 5
MOST_MS = 2000.0
TITLE = "Comparing two guides of a thousand nodes, against one search of one of them"


def spread(guide: Guide) -> Guide:
    """Return a guide with twenty ends, spread out, called more or less urgent."""
    dice = Random(1)
    ends = dice.sample([each for each in guide.nodes.values() if isinstance(each, End)], 20)
    names = [each.name for each in guide.front.urgencies]
    called = {
        each.name: replace(each, urgency=dice.choice([name for name in names if name != each.urgency]))
        for each in ends
    }
    return replace(guide, nodes={**guide.nodes, **called})


def near(guide: Guide) -> Guide:
    """Return a guide in which the first answer to its first question leads where the last one does."""
    way_in = guide.nodes[guide.front.way_in]
    assert isinstance(way_in, Ask)
    first = guide.nodes[way_in.branches[0].go]
    assert isinstance(first, Ask)
    turned = replace(first.branches[0], go=first.branches[-1].go)
    ask = replace(first, branches=(turned, *first.branches[1:]))
    return replace(guide, nodes={**guide.nodes, ask.name: ask})


def moved(guide: Guide) -> Guide:
    """Return a guide with the line of severe chill a degree lower."""
    number = guide.numbers["severe-chill"]
    lower = replace(number, value=number.value - 1)
    return replace(guide, numbers={**guide.numbers, number.name: lower})


def measure() -> list[Figure]:
    """Compare in turns, and return the best times."""
    guide = grown(shipped(), 2)
    others: dict[str, Guide] = {
        "the same": replace(guide),
        "twenty ends called otherwise": spread(guide),
        "one change near the way in": near(guide),
        "a number moved": moved(guide),
        "every node renamed": renamed(guide, Random(1)),
        "every node renamed, twenty ends called otherwise": renamed(spread(guide), Random(1)),
    }
    times: dict[str, list[float]] = {name: [] for name in others}
    base: list[float] = []
    for _ in range(RUNS):
        base.append(_timed(partial(search, guide)))
        for name, other in others.items():
            times[name].append(_timed(partial(compare, guide, other)))
    return [Figure(name, min(each), baseline=min(base), limit=MOST_MS) for name, each in times.items()]


def _timed(work: Callable[[], object]) -> float:
    gc.collect()
    began = perf_counter()
    work()
    return (perf_counter() - began) * 1000


if __name__ == "__main__":
    gc.disable()  # as the command does
    raise SystemExit(report((TITLE, measure())))
