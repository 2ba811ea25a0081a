"""How the check grows with the guide: `python tests/bench/proof.py`.

Guides of 100, 1,000 and 10,000 nodes, of like shape, each checked by `triage check` in a process of its
own. Beside it, on the same graphs in the same run, networkx's `all_simple_paths` from the way in to the
ends, as far as it comes in the seconds given: what following every walk would take.
"""

from __future__ import annotations

import gc
import math
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from itertools import islice, pairwise
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

import networkx as nx

from tests.bench.like import write_like
from tests.published.walks import shipped
from triage.check import prove
from triage.guide.graph import graph_of
from triage.guide.model import End, Guide
from triage.guide.read import read_guide

SIZES = (100, 1_000, 10_000)
PATHS_FOR = 5.0
"""Seconds that `all_simple_paths` is given."""


def main() -> None:
    """Print the times, the exponent, and how far following every path comes."""
    gc.disable()  # as the command does
    print(f"shipped guide: {process()} s as a process; inside: {inside(shipped())}")
    print(f"paths of the shipped guide: {paths(shipped())}")
    times: list[tuple[int, float]] = []
    for size in SIZES:
        with tempfile.TemporaryDirectory() as folder:
            write_like(Path(folder), size)
            guide = read_guide(Path(folder)).guide
            assert guide is not None
            seconds = process(Path(folder))
            times.append((len(guide.nodes), seconds))
            print(f"{len(guide.nodes):6} nodes: {seconds} s as a process; {inside(guide)}")
            print(f"       paths: {paths(guide)}")
    for (small, quick), (large, slow) in pairwise(times):
        grows = math.log((slow - bare()) / (quick - bare())) / math.log(large / small)
        print(f"from {small} to {large} nodes time grows with exponent {grows:.2f}, start-up taken off")


def process(*folder: Path) -> float:
    """Return the best of three whole runs of `triage check`, in seconds."""
    best = math.inf
    for _ in range(3):
        began = perf_counter()
        ran = subprocess.run(
            [sys.executable, "-m", "triage", "check", *map(str, folder)], capture_output=True, check=False
        )
        best = min(best, perf_counter() - began)
        assert ran.returncode == 0, ran.stdout.decode()[:500]
    return round(best, 3)


def bare() -> float:
    """Return what a check costs that finds nothing to read: starting up."""
    best = math.inf
    for _ in range(3):
        began = perf_counter()
        code = "import triage.check, triage.commands.check, triage.guide.read, networkx"
        subprocess.run([sys.executable, "-c", code], check=True)
        best = min(best, perf_counter() - began)
    return best


def inside(guide: Guide) -> str:
    """Return what the check itself takes, and what it looked at."""
    best = min(_timed(guide) for _ in range(3))
    tally = prove(guide).tally
    assert tally is not None
    return f"{best:.3f} s in the check, {tally.states:,} situations, {tally.walks:,} walks"


def _timed(guide: Guide) -> float:
    began = perf_counter()
    prove(guide)
    return perf_counter() - began


def paths(guide: Guide) -> str:
    """Return how many simple paths networkx follows before its time is up."""
    graph: nx.DiGraph[str] = nx.DiGraph(graph_of(guide))
    ends = [name for name, node in guide.nodes.items() if isinstance(node, End)]
    found: Iterator[list[str]] = nx.all_simple_paths(graph, guide.front.way_in, ends)
    began, count = perf_counter(), 0
    while perf_counter() - began < PATHS_FOR:
        some = sum(1 for _ in islice(found, 10_000))
        count += some
        if some < 10_000:
            return f"all {count:,} in {perf_counter() - began:.2f} s"
    return f"{count:,} in {PATHS_FOR:.0f} s, and more to come"


if __name__ == "__main__":
    main()
