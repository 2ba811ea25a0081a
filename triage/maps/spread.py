"""How far right each thing of a map stands: as near to what it is joined with as the rest leave room."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

SWEEPS = 60
"""Times that all layers are gone over, down and up in turn; more changes nothing that is seen."""

Layers = Sequence[Sequence[str]]
Joined = Mapping[str, Sequence[tuple[str, float]]]
"""What each thing is joined with in the layers next to its own, and how much the join pulls."""


def spread(layers: Layers, wide: Mapping[str, float], joined: Joined, gap: float) -> dict[str, float]:
    """Return the middle of each thing, from 0 for the left edge of all.

    `layers` has the things of each layer from left to right, and that order is kept. No two of a layer come
    nearer than `gap`.
    """
    rows = [(layer, _offsets(layer, wide, gap)) for layer in layers]
    pulls = {name: sum(pull for _, pull in near) for name, near in joined.items()}
    at: dict[str, float] = {}
    for layer, offsets in rows:
        at.update(zip(layer, _apart([(0.0, 1.0)] * len(layer), offsets), strict=True))
    for sweep in range(SWEEPS):
        for layer, offsets in rows if sweep % 2 == 0 else reversed(rows):
            wished = [_between(at[name], joined.get(name, ()), pulls.get(name, 0.0), at) for name in layer]
            at.update(zip(layer, _apart(wished, offsets), strict=True))
    left = min((at[name] - wide[name] / 2 for layer in layers for name in layer), default=0.0)
    return {name: middle - left for name, middle in at.items()}


def _offsets(layer: Sequence[str], wide: Mapping[str, float], gap: float) -> list[float]:
    """Return how far each thing of a layer stands from the first at least."""
    offsets, reach = [], 0.0
    for before, name in zip(("", *layer), layer, strict=False):
        reach += (wide[before] + wide[name]) / 2 + gap if before else 0.0
        offsets.append(reach)
    return offsets


def _between(
    now: float, near: Sequence[tuple[str, float]], hard: float, at: Mapping[str, float]
) -> tuple[float, float]:
    """Return where a thing is pulled to, and how hard."""
    pulled = 0.0
    for each, pull in near:
        pulled += at[each] * pull
    return (pulled / hard, hard) if near else (now, 0.01)


def _apart(wished: Sequence[tuple[float, float]], offsets: Sequence[float]) -> list[float]:
    """Return places as near to the wished ones as may be, in order and apart.

    What would overlap is moved as one, to where it is nearest to all its wishes (least squares by pooling).
    """
    # Of each pool: where its members are pulled to, how hard, and how many they are.
    pools: list[tuple[float, float, int]] = []
    for (wish, pull), offset in zip(wished, offsets, strict=True):
        pool = (wish - offset, pull, 1)
        while pools and pools[-1][0] > pool[0]:
            where, hard, count = pools.pop()
            both = hard + pool[1]
            pool = ((where * hard + pool[0] * pool[1]) / both, both, count + pool[2])
        pools.append(pool)
    starts = [where for where, _, count in pools for _ in range(count)]
    return [start + offset for start, offset in zip(starts, offsets, strict=True)]
