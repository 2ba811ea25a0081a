"""Damage the shipped guide in many ways and tell who notices: `python tests/bench/defects/run.py [COUNT]`.

Each kind gives every guide that it can make, or a seeded sample of them. A guide that the check passes is
put before the tests against published figures. What neither notices is written out, one a line.
"""

from __future__ import annotations

import gc
import os
import random
import sys
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from tests.bench.defects.damage import Damaged, Kind
from tests.bench.defects.judge import noticed_by_the_check, noticed_by_the_published
from tests.bench.defects.kinds import OTHER, SAFETY
from tests.bench.defects.lambs import effect
from tests.published.walks import shipped

SEED = 20261125


def sample(kind: Kind, most: int) -> list[Damaged]:
    """Return what a kind makes, or a seeded sample of it."""
    made = list(kind(shipped()))
    return made if len(made) <= most else random.Random(SEED).sample(made, most)


@dataclass(frozen=True)
class Judged:
    """What came of one kind: how many guides, how many only the published tests noticed, and the rest."""

    kind: str
    made: int
    published: int
    left: tuple[tuple[str, str], ...]
    """What nobody noticed, each with what made-up lambs see of it."""

    def harmful(self) -> int:
        """Return how many of the rest give some lamb a milder call or another page."""
        return sum(seen in ("milder", "another page") for _, seen in self.left)


def judge(kind: Kind, most: int) -> Judged:
    """Judge a kind's guides, or a sample of them."""
    gc.disable()  # a guide and its states hold no circles
    published, left = 0, list[tuple[str, str]]()
    damaged = sample(kind, most)
    for each in damaged:
        if noticed_by_the_check(each.guide):
            continue
        if noticed_by_the_published(each.guide):
            published += 1
        else:
            left.append((each.told, effect(shipped(), each.guide)))
    return Judged(kind.__name__, len(damaged), published, tuple(left))


def main() -> None:
    """Judge every kind, and print the table and the survivors."""
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    wanted = set(sys.argv[2:])
    began = perf_counter()
    sound = noticed_by_the_check(shipped()) or noticed_by_the_published(shipped())
    if sound:
        sys.exit(f"the sound guide itself is taken for damaged, by {sound}")
    kinds = [kind for kind in (*SAFETY, *OTHER) if not wanted or kind.__name__ in wanted]
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        judged = []
        for each in pool.map(judge, kinds, [most] * len(kinds)):
            print(_row(each), flush=True)
            for told, seen in each.left:
                print(f"       {told} [lambs see: {seen}]", flush=True)
            judged.append(each)
    print(_total("safety", [each for each in judged if each.kind in _NAMES]))
    print(_total("all", judged), f"in {perf_counter() - began:.0f} s")


_NAMES = {kind.__name__ for kind in SAFETY}


def _row(each: Judged) -> str:
    mark = "safety" if each.kind in _NAMES else "other"
    caught = 100 * (each.made - len(each.left)) / each.made if each.made else 100
    return (
        f"{mark:6} {each.kind:28} {each.made:5} made {caught:6.1f} % noticed, "
        f"{each.published} by the published tests alone, {each.harmful()} of the rest seen by lambs"
    )


def _total(name: str, judged: list[Judged]) -> str:
    made, left = sum(each.made for each in judged), sum(len(each.left) for each in judged)
    harmful = sum(each.harmful() for each in judged)
    return (
        f"{name}: {made} damaged guides, {100 * (made - left) / max(made, 1):.2f} % noticed, {left} not, "
        f"{harmful} of these give some lamb a milder call or another page"
    )


if __name__ == "__main__":
    main()
