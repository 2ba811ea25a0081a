"""Where the places of a map stand: which ways lead back, how far down each is, and what stands left of what.

The order within the layers is igraph's; it is loaded where a map is made, and nowhere else.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

Pair = tuple[str, str]

ROUNDS = 200
"""How often the order within the layers is gone over, to have fewer lines cross."""


@dataclass(frozen=True)
class Laid:
    """The layer of each place (0 is the top), how far right it stands, and the ways that lead back.

    `through` has, for a way over several layers, how far right it passes each layer between, top down.
    """

    layer: Mapping[str, int]
    across: Mapping[str, float]
    through: Mapping[Pair, tuple[float, ...]]
    back: frozenset[Pair]


def lay(names: Sequence[str], pairs: Iterable[Pair]) -> Laid:
    """Lay places out in layers, each way leading down but those that close a loop."""
    kept = tuple(dict.fromkeys(pair for pair in pairs))
    back = leading_back(names, kept)
    down = {pair: (pair[::-1] if pair in back else pair) for pair in kept if pair[0] != pair[1]}
    layer = layers_of(names, tuple(dict.fromkeys(down.values())))
    across, through = _ordered(names, tuple(dict.fromkeys(down.values())), layer)
    return Laid(layer, across, {pair: through[turned] for pair, turned in down.items()}, back)


def leading_back(names: Sequence[str], pairs: Sequence[Pair]) -> frozenset[Pair]:
    """Return the ways that close a loop, as somebody meets them who goes in the written order.

    Without them no loop is left, as every loop has a way to a place that one has come through.
    """
    onward: dict[str, list[str]] = {name: [] for name in names}
    for start, to in pairs:
        onward[start].append(to)
    entered = {to for start, to in pairs if start != to}
    done: set[str] = set()
    back: set[Pair] = set()
    for first in (*(name for name in names if name not in entered), *names):
        _go(first, onward, done, back)
    return frozenset(back)


def _go(first: str, onward: Mapping[str, Sequence[str]], done: set[str], back: set[Pair]) -> None:
    if first in done:
        return
    trail, coming = [first], {first: iter(onward[first])}
    while trail:
        here = trail[-1]
        to = next(coming[here], None)
        if to is None:
            done.add(trail.pop())
            del coming[here]
        elif to in coming:
            back.add((here, to))
        elif to not in done:
            trail.append(to)
            coming[to] = iter(onward[to])


def layers_of(names: Sequence[str], pairs: Sequence[Pair]) -> dict[str, int]:
    """Return how far down each place stands: below all that lead to it, where `pairs` close no loop.

    What nothing leads to stands just above what it leads to.
    """
    above: dict[str, list[str]] = {name: [] for name in names}
    below: dict[str, list[str]] = {name: [] for name in names}
    for start, to in pairs:
        above[to].append(start)
        below[start].append(to)
    layer: dict[str, int] = {}
    for name in _from_the_top(names, above, below):
        layer[name] = 1 + max((layer[each] for each in above[name]), default=-1)
    for name in names:
        if not above[name] and below[name]:
            layer[name] = min(layer[each] for each in below[name]) - 1
    return layer


def _from_the_top(
    names: Sequence[str], above: Mapping[str, Sequence[str]], below: Mapping[str, Sequence[str]]
) -> list[str]:
    waiting = {name: len(above[name]) for name in names}
    found = [name for name in names if not waiting[name]]
    for name in found:  # it grows while it is gone through
        for to in below[name]:
            waiting[to] -= 1
            if not waiting[to]:
                found.append(to)
    return found


def _ordered(
    names: Sequence[str], pairs: Sequence[Pair], layer: Mapping[str, int]
) -> tuple[dict[str, float], dict[Pair, tuple[float, ...]]]:
    """Return how far right each place stands, and each pair where it passes the layers between.

    A long way is made of short ones here: where a map falls into parts, igraph 1.0 gives the bends of one
    way to another.
    """
    import igraph

    number = {name: at for at, name in enumerate(names)}
    layers = [layer[name] for name in names]
    passed: dict[Pair, range] = {}
    edges: list[tuple[int, int]] = []
    for start, to in pairs:
        between = range(layer[start] + 1, layer[to])
        passed[start, to] = range(len(layers), len(layers) + len(between))
        layers += between
        edges += pairwise((number[start], *passed[start, to], number[to]))
    graph = igraph.Graph(n=len(layers), edges=edges, directed=True)
    laid = graph.layout_sugiyama(layers=layers, maxiter=ROUNDS)
    across = [float(point[0]) for point in laid]
    through = {pair: tuple(across[at] for at in points) for pair, points in passed.items()}
    return {name: across[at] for name, at in number.items()}, through
