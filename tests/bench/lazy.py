"""What is imported on the way to the first question; the baseline is nothing at all.

Two ways, each in a fresh interpreter: plain mode as a person runs it, with no input, and the Textual
app under its headless test driver. Neither may import networkx, and plain mode may not import Textual.
Then the imports of the program's own packages that cost most, by `-X importtime`, the best of a few
runs; a module's cost is its own, without what it imports.

Run: python tests/bench/lazy.py
"""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from tests.bench.figures import Figure, report
from tests.bench.terminal import ROOT, run_python, surroundings

RUNS = 7
SHOWN = 12
TITLE = "Imports up to the first question; limits count modules, baseline: none"

PLAIN = """
import json, sys
import triage.cli
guide = triage.commands.shared.open_guide(None)
from triage.session import Session
from triage.walk import Walk
assert Session(Walk(guide)).page().choices
print(json.dumps(sorted(sys.modules)))
"""
FULL_SCREEN = """
import asyncio, json, sys
import triage.cli
guide = triage.commands.shared.open_guide(None)
from triage.session import Session
from triage.walk import Walk
from triage.screens.app import LambApp
async def see():
    session = Session(Walk(guide))
    async with LambApp(session).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert session.page().blocks[0].text in str(pilot.app.query_one('#body').render())
        print(json.dumps(sorted(sys.modules)), file=sys.__stdout__)
asyncio.run(see())
"""
_TIMED = re.compile(r"import time:\s+(\d+) \|\s+\d+ \| +([\w.]+)")


def measure() -> list[Figure]:
    """Look at what each way imports and return the figures."""
    pages, full = _modules(PLAIN), _modules(FULL_SCREEN)
    timed = [_timed() for _ in range(RUNS)]
    figures = [
        _none("to the first page: networkx modules", "networkx", pages),
        _none("to the first page: Textual modules", "textual", pages),
        _none("plain mode as run: networkx modules", "networkx", timed[0]),
        _none("plain mode as run: Textual modules", "textual", timed[0]),
        _none("full screen: networkx modules", "networkx", full),
        Figure("full screen: modules in all", len(full), "count"),
        Figure("plain mode as run: modules in all", len(timed[0]), "count"),
    ]
    return figures + _costs(timed)


def _none(what: str, package: str, modules: Iterable[str]) -> Figure:
    return Figure(what, len([each for each in modules if _within(each, package)]), "count", limit=0)


def _within(module: str, package: str) -> bool:
    return module == package or module.startswith(f"{package}.")


def _modules(code: str) -> list[str]:
    names: list[str] = json.loads(run_python("-c", code).stdout)
    return names


def _timed() -> dict[str, float]:
    """Run plain mode to the end of its empty input; return each module's own milliseconds."""
    ran = subprocess.run(
        [sys.executable, "-X", "importtime", "-m", "triage", "walk", "--plain"],
        cwd=ROOT,
        env=surroundings(),
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=True,
    )
    return {name: int(cost) / 1000 for cost, name in _TIMED.findall(ran.stderr)}


def _costs(timed: list[dict[str, float]]) -> list[Figure]:
    best = {name: min(each.get(name, cost) for each in timed) for name, cost in timed[0].items()}
    own = {name: cost for name, cost in best.items() if _within(name, "triage")}
    dear = sorted(own, key=own.__getitem__, reverse=True)[:SHOWN]
    packages = {"triage": own.values(), "yaml": [best[each] for each in best if _within(each, "yaml")]}
    return [
        Figure("import of every module, plain mode", sum(best.values())),
        *(Figure(f"import of {name} and within", sum(costs)) for name, costs in packages.items()),
        *(Figure(f"import of {name}, itself", own[name]) for name in dear),
    ]


if __name__ == "__main__":
    raise SystemExit(report((TITLE, measure())))
