"""Damage the shipped guide in many ways and tell who notices: `python tests/bench/defects/run.py [COUNT]`.

Each kind gives every guide that it can make, or a seeded sample of them. A guide that the check passes is
put before the tests against published figures. What neither notices is written out, one a line.
"""

from __future__ import annotations

import os
import random
import sys
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from tests.bench.defects.damage import Damaged, Kind
from tests.bench.defects.judge import noticed_by_the_check, noticed_by_the_published
from tests.bench.defects.kinds import OTHER, SAFETY
from tests.published.walks import shipped

SEED = 20261125


def sample(kind: Kind, most: int) -> list[Damaged]:
    """Return what a kind makes, or a seeded sample of it."""
    made = list(kind(shipped()))
    return made if len(made) <= most else random.Random(SEED).sample(made, most)


def judge(kind: Kind, most: int) -> tuple[str, int, int, list[str]]:
    """Return a kind's name, how many guides it made, how many only the published tests noticed, and the rest."""
    published, left = 0, []
    damaged = sample(kind, most)
    for each in damaged:
        if noticed_by_the_check(each.guide):
            continue
        if noticed_by_the_published(each.guide):
            published += 1
        else:
            left.append(each.told)
    return kind.__name__, len(damaged), published, left


def main() -> None:
    """Judge every kind, and print the table and the survivors."""
    most = int(sys.argv[1]) if len(sys.argv) > 1 else 650
    wanted = set(sys.argv[2:])
    began = perf_counter()
    sound = noticed_by_the_check(shipped()) or noticed_by_the_published(shipped())
    if sound:
        sys.exit(f"the sound guide itself is taken for damaged, by {sound}")
    kinds = [kind for kind in (*SAFETY, *OTHER) if not wanted or kind.__name__ in wanted]
    safety = {kind.__name__ for kind in SAFETY}
    total, missed, missed_safety = 0, 0, 0
    survivors: list[str] = []
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        for name, made, published, left in pool.map(judge, kinds, [most] * len(kinds)):
            caught = 100 * (made - len(left)) / made if made else 100
            mark = "safety" if name in safety else "other"
            print(
                f"{mark:6} {name:30} {made:5} made, {caught:6.1f} % noticed, {published} by the published alone",
                flush=True,
            )
            total, missed = total + made, missed + len(left)
            missed_safety += len(left) if name in safety else 0
            survivors += [f"{name}: {told}" for told in left]
    print(
        f"{total} damaged guides, {100 * (total - missed) / total:.2f} % noticed; "
        f"{missed_safety} of safety kinds not; {perf_counter() - began:.0f} s"
    )
    print("\n".join(survivors))


if __name__ == "__main__":
    main()
