"""How the check takes a guide that grows as the shipped one will: by more topics.

The shipped guide with all its nodes twice and three times, each copy entered by ways of its own, is
proved in a fresh interpreter each time. The limit holds the shipped guide; the copies stand beside it. What
the copies say is worded as the first one is, so of the wording only the first is measured.

Run: python tests/bench/grown.py
"""

from __future__ import annotations

import gc
import sys
from dataclasses import replace
from itertools import chain
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, report
from tests.bench.terminal import run_python
from triage.guide.model import Act, Ask, Branch, Guide, Node

RUNS = 5
COPIES = (1, 2, 3)
MOST_MS = 500.0
TITLE = "Proving the guide, with its topics once, twice and three times"


def measure() -> list[Figure]:
    """Prove each in turns, and return the best times with what was looked at."""
    times: dict[int, list[float]] = {copies: [] for copies in COPIES}
    states: dict[int, float] = {}
    for _ in range(RUNS):
        for copies, kept in times.items():
            taken, count = map(float, run_python("-m", "tests.bench.grown", str(copies)).stdout.split())
            kept.append(taken)
            states[copies] = count
    base = min(times[1])
    figures = [Figure("once", base, limit=MOST_MS)]
    figures += [Figure(f"{copies} times", min(times[copies]), baseline=base) for copies in COPIES[1:]]
    return [*figures, *(Figure(f"situations, {copies} times", states[copies], "count") for copies in COPIES)]


def grown(guide: Guide, copies: int) -> Guide:
    """Return a guide with all its nodes so many times, each copy with ways in of its own."""
    nodes = dict(chain.from_iterable(_copy(guide, at).items() for at in range(copies)))
    if copies == 1 or not guide.front.unless_told:
        return replace(guide, nodes=nodes)
    [(name, taken)] = guide.front.unless_told.items()
    way_in, finding = nodes[guide.front.way_in], guide.findings[name]
    assert isinstance(way_in, Ask)
    choices = {
        f"{choice}{_mark(at)}": words for at in range(copies) for choice, words in finding.choices.items()
    }
    branches: list[Branch] = []
    for at in range(copies):
        entered = nodes.pop(guide.front.way_in + _mark(at))
        assert isinstance(entered, Ask)
        branches += [
            replace(branch, is_=tuple(choice + _mark(at) for choice in branch.is_))
            for branch in entered.branches
        ]
    return replace(
        guide,
        front=replace(guide.front, unless_told={name: taken}),
        findings={**guide.findings, name: replace(finding, choices=choices)},
        nodes={guide.front.way_in: replace(way_in, branches=tuple(branches)), **nodes},
    )


def _mark(at: int) -> str:
    return f"-copy-{at + 1}" if at else ""


def _copy(guide: Guide, at: int) -> dict[str, Node]:
    return {name + _mark(at): _renamed(node, _mark(at)) for name, node in guide.nodes.items()}


def _renamed(node: Node, mark: str) -> Node:
    if isinstance(node, Ask):
        branches = tuple(replace(branch, go=branch.go + mark) for branch in node.branches)
        return replace(node, name=node.name + mark, branches=branches)
    if isinstance(node, Act):
        else_ = node.else_ + mark if node.else_ else ""
        return replace(node, name=node.name + mark, then=node.then + mark, else_=else_)
    return replace(node, name=node.name + mark)


def _once(copies: int) -> None:
    """Print the milliseconds of one proof in this interpreter, and the situations that it looked at."""
    from triage.check import prove
    from triage.check.search.searched import search
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide

    gc.disable()  # as the command does
    guide = read_guide(knowledge_root()).guide
    assert guide is not None
    guide = grown(guide, copies)
    began = perf_counter()
    proof = prove(guide)
    taken = (perf_counter() - began) * 1000
    # So many ways in are too many to choose from, and nothing else is wrong.
    assert {problem.rule for problem in proof.problems} <= {"too-many-items"}, proof.problems[:3]
    print(taken, len(search(guide).states.at))


if __name__ == "__main__":
    if sys.argv[1:]:
        _once(int(sys.argv[1]))
    else:
        raise SystemExit(report((TITLE, measure())))
