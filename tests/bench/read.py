"""Reading the shipped guide for a walk, without what only the proof goes by, against PyYAML's CSafeLoader on the same files.

`read_guide(knowledge_root(), frozenset())` is timed inside a fresh interpreter each time, after the
imports, and takes turns with `yaml.load(text, CSafeLoader)` of the same files, also fresh. "Warm" is the
best and the median of the same two in one interpreter, in turns. The parts come from doing less: composing
only, composing and building with places, all of it. "Kept" is what every opening but the first does: the
guide is taken from the cache as it was read before, its hash over all files included.

The guide rests the garbage collector while it reads, and so do the parts; the baseline does not, as its
users don't.

Run: python tests/bench/read.py
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable
from pathlib import Path
from statistics import median
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, middle_and_best, report
from tests.bench.terminal import run_python

RUNS = 21
MOST_MS = 60.0
TITLE = "Reading the guide for a walk; baseline: PyYAML CSafeLoader on the same files"


def measure() -> list[Figure]:
    """Read the guide in turns with the baseline, fresh and warm, and return the figures."""
    times: dict[str, list[float]] = {"guide": [], "kept": [], "yaml": []}
    for turn in range(RUNS + 1):
        for name, kept in times.items():
            taken = float(run_python("-m", "tests.bench.read", "once", name).stdout)
            if turn:  # the first round only warms the disk and the compiled files
                kept.append(taken)
    fresh = Figure("fresh, median", median(times["guide"]), baseline=median(times["yaml"]), limit=MOST_MS)
    kept_one = Figure(
        "kept from before, median", median(times["kept"]), baseline=median(times["yaml"]), limit=MOST_MS
    )
    best = Figure("fresh, best", min(times["guide"]), baseline=min(times["yaml"]))
    return [kept_one, fresh, best, *_warm()]


def _warm() -> list[Figure]:
    """Ask one other interpreter for the warm times of every way of reading."""
    lines = run_python("-m", "tests.bench.read", "warm").stdout.splitlines()
    times = {name: [float(each) for each in rest] for name, *rest in (line.split() for line in lines)}
    compose, build, whole = (min(times[name]) for name in ("compose", "build", "guide"))
    base = min(times["yaml"])
    return [
        *middle_and_best("warm", times["guide"], times["yaml"]),
        Figure("of it: compose, best", compose, baseline=base),
        Figure("of it: refusals and build with places, best", build - compose, baseline=base),
        Figure("of it: model and links, best", whole - build, baseline=base),
        Figure("size of the guide", times["size"][0], "KB"),
    ]


def _files() -> list[Path]:
    from triage.guide.find import knowledge_root
    from triage.guide.wanted import is_wanted

    root = Path(str(knowledge_root()))
    files = (each for each in root.rglob("*.yaml") if is_wanted(str(each.relative_to(root)), frozenset()))
    return sorted(files)


def _guide() -> None:
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide

    assert read_guide(knowledge_root(), frozenset()).guide


def _kept() -> None:
    from triage.shipped import read_shipped

    assert read_shipped().guide


def _yaml() -> None:
    import yaml

    for file in _files():
        yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)


def _compose() -> None:
    import yaml

    for file in _files():
        yaml.compose(file.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)


def _build() -> None:
    from triage.guide.text import read_text

    for file in _files():
        read_text(file.read_text(encoding="utf-8"), file.name, [])


WAYS: dict[str, Callable[[], None]] = {
    "guide": _guide,
    "kept": _kept,
    "yaml": _yaml,
    "compose": _compose,
    "build": _build,
}
PARTS = ("compose", "build")


def _taken(name: str) -> float:
    (gc.disable if name in PARTS else gc.enable)()
    start = perf_counter()
    WAYS[name]()
    return (perf_counter() - start) * 1000


def _once(name: str) -> None:
    """Print the milliseconds of one reading in this interpreter, the imports left out."""
    import triage.guide.find
    import triage.guide.kept
    import triage.guide.read
    import triage.holding.place
    import triage.shipped  # noqa: F401

    print(_taken(name))


def _many() -> None:
    """Print the milliseconds of every way of reading, done in turns, and the size in KB."""
    times: dict[str, list[float]] = {name: [] for name in WAYS}
    for turn in range(RUNS + 2):
        for name in WAYS:
            taken = _taken(name)
            if turn > 1:
                times[name].append(taken)
    for name, kept in times.items():
        print(name, *kept)
    print("size", sum(file.stat().st_size for file in _files()) / 1024)


if __name__ == "__main__":
    match sys.argv[1:]:
        case ["once", name]:
            _once(name)
        case ["warm"]:
            _many()
        case _:
            raise SystemExit(report((TITLE, measure())))
