"""A map set out: where each box stands, and the line that each way takes between them. Lengths are pixels."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from triage.guide.model import Guide
from triage.maps.boxes import WIDE, Box, Port, box_of
from triage.maps.spread import spread
from triage.maps.topic_map import TopicMap, Way

LANE = 7
"""Between two lines beside a box."""

THIN = 12.0
"""Room for a line that passes a layer."""

BETWEEN = 14.0
"""Room between two things of a layer."""

EDGE = 4
"""Room round the whole."""

LOW, HIGH = 40.0, 110.0
"""The least and the most room between two layers; lines that go far to the side need more."""

SLOPE = 14.0
"""So many pixels to the side ask for one more of height."""

PULLS = (8.0, 2.0, 1.0)
"""How much two things pull at each other, by how many of them are boxes: a long line is to be straight."""

Point = tuple[float, float]


@dataclass(frozen=True)
class Placed:
    """A box, and where its left upper corner is."""

    box: Box
    x: float
    y: float


@dataclass(frozen=True)
class Route:
    """The line of a way, from the side of its box to the box it leads to, by the points that it goes through.

    Between two points it is straight where they share a side or a height, and else bent.
    """

    way: Way
    points: tuple[Point, ...]


@dataclass(frozen=True)
class Drawing:
    """All of a map with its size."""

    boxes: tuple[Placed, ...]
    routes: tuple[Route, ...]
    wide: float
    high: float


def set_out(guide: Guide, drawn: TopicMap) -> Drawing:
    """Return a map set out."""
    return _Setting(guide, drawn).drawing()


class _Setting:
    """A map while it is set out. A way that passes a layer has a name there: its two ends and the layer."""

    def __init__(self, guide: Guide, drawn: TopicMap) -> None:
        self.drawn = drawn
        self.boxes = {spot.name: box_of(guide, drawn, spot) for spot in drawn.spots}
        self.layer = {spot.name: spot.layer for spot in drawn.spots}
        self.ports = [(name, port) for name, box in self.boxes.items() for port in box.ports]
        self.chains = {(port.way.start, port.way.to): self._chain(port.way) for _, port in self.ports}
        self.layers = self._layers()
        self.left: dict[str, int] = dict.fromkeys(self.boxes, 0)
        self.at = self._spread()
        # Which side a line leaves by hangs on where boxes stand, and that on the lines beside them.
        self.left = {name: sum(self._is_left(port) for port in box.ports) for name, box in self.boxes.items()}
        self.sides = {id(port): self._is_left(port) for _, port in self.ports}
        self.at = self._spread()
        self.tops = self._tops()

    def drawing(self) -> Drawing:
        """Return where everything stands."""
        placed = tuple(self._placed(name, box) for name, box in self.boxes.items())
        routes = tuple(self._routes())
        right = max((x for route in routes for x, _ in route.points), default=0.0)
        wide = max((each.x + WIDE for each in placed), default=0.0)
        high = max((each.y + each.box.high for each in placed), default=0.0)
        return Drawing(placed, routes, max(wide, right) + EDGE, high + EDGE)

    def _placed(self, name: str, box: Box) -> Placed:
        return Placed(box, self._x(name), self.tops[self.layer[name]])

    def _chain(self, way: Way) -> tuple[str, ...]:
        """Return what a way leads by, from its start: a name for each layer that it passes, and its end."""
        start, to = self.layer[way.start], self.layer[way.to]
        between = range(start + 1, to) if start < to else range(start - 1, to, -1)
        return (way.start, *(f"{way.start} {way.to} {layer}" for layer in between), way.to)

    def _layers(self) -> tuple[tuple[str, ...], ...]:
        found: dict[int, list[tuple[float, str]]] = {}
        for spot in self.drawn.spots:
            found.setdefault(spot.layer, []).append((spot.across, spot.name))
        for way in self.drawn.ways:
            passed = self.chains.get((way.start, way.to), ())[1:-1]
            for name, across in zip(passed[::-1] if way.back else passed, way.through, strict=False):
                row = found[int(name.split()[2])]
                if (across, name) not in row:
                    row.append((across, name))
        return tuple(tuple(name for _, name in sorted(found[layer])) for layer in sorted(found))

    def _spread(self) -> dict[str, float]:
        joined: dict[str, list[tuple[str, float]]] = {}
        for chain in self.chains.values():
            for one, other in pairwise(chain):
                pull = PULLS[(one in self.boxes) + (other in self.boxes)]
                joined.setdefault(one, []).append((other, pull))
                joined.setdefault(other, []).append((one, pull))
        wide = {name: self._wide(name) for layer in self.layers for name in layer}
        return {name: at + EDGE for name, at in spread(self.layers, wide, joined, BETWEEN).items()}

    def _wide(self, name: str) -> float:
        return WIDE + LANE * len(self.boxes[name].ports) if name in self.boxes else THIN

    def _is_left(self, port: Port) -> bool:
        chain = self.chains[port.way.start, port.way.to]
        return self.at[chain[1]] < self.at[chain[0]]

    def _x(self, name: str) -> float:
        """Return the left side of a box; lines that leave by the left run beside it."""
        return self.at[name] - self._wide(name) / 2 + LANE * self.left[name]

    def _tops(self) -> list[float]:
        far = [0.0] * len(self.layers)
        for chain in self.chains.values():
            for one, other in pairwise(chain):
                upper = min(self._layer_of(one), self._layer_of(other))
                far[upper] = max(far[upper], abs(self.at[one] - self.at[other]))
        tops, down = [], float(EDGE)
        for layer, aside in zip(self.layers, far, strict=True):
            tops.append(down)
            down += self._height(layer) + min(max(LOW, LOW / 2 + aside / SLOPE), HIGH)
        return tops

    def _height(self, layer: Iterable[str]) -> float:
        return max((self.boxes[name].high for name in layer if name in self.boxes), default=0)

    def _layer_of(self, name: str) -> int:
        return self.layer[name] if name in self.layer else int(name.split()[2])

    def _bottom(self, layer: int) -> float:
        return self.tops[layer] + self._height(self.layers[layer])

    def _routes(self) -> Iterator[Route]:
        arrivals = self._arrivals()
        for name, port in self.ports:
            lane = self._lane(name, port)
            y = self.tops[self.layer[name]] + port.down
            side = self._x(name) if self.sides[id(port)] else self._x(name) + WIDE
            onward = self._onward(port.way, lane, arrivals[port.way.start, port.way.to])
            yield Route(port.way, ((side, y), (lane, y), *onward))

    def _lane(self, name: str, port: Port) -> float:
        """Return how far right the line of a port runs beside its box: an upper one further out."""
        is_left = self.sides[id(port)]
        beside = [each for each in self.boxes[name].ports if self.sides[id(each)] == is_left]
        out = LANE * (len(beside) - next(at for at, each in enumerate(beside) if each is port))
        return self._x(name) - out if is_left else self._x(name) + WIDE + out

    def _onward(self, way: Way, lane: float, arrival: float) -> Iterator[Point]:
        chain = self.chains[way.start, way.to]
        here = self.layer[way.start]
        yield lane, (self.tops[here] if way.back else self._bottom(here))
        for name in chain[1:-1]:
            layer = self._layer_of(name)
            edges = (self.tops[layer], self._bottom(layer))
            for y in reversed(edges) if way.back else edges:
                yield self.at[name], y
        there = self.layer[way.to]
        if way.back:
            yield arrival, self._bottom(there)
            yield arrival, self.tops[there] + self.boxes[way.to].high
        else:
            yield arrival, self.tops[there]

    def _arrivals(self) -> Mapping[tuple[str, str], float]:
        """Return how far right each way arrives: at one box side by side, in the order in which they come."""
        coming: dict[tuple[str, bool], list[tuple[float, str]]] = {}
        for (start, to), chain in self.chains.items():
            up = self.layer[start] > self.layer[to]
            coming.setdefault((to, up), []).append((self.at[chain[-2]], start))
        found = {}
        for (to, up), starts in coming.items():
            step = min(16.0, (WIDE - 80) / len(starts))
            rest = step * (len(starts) - 1)
            first = self._x(to) + (WIDE - 24 - rest if up else (WIDE - rest) / 2)
            for at, (_, start) in enumerate(sorted(starts)):
                found[start, to] = first + at * step
        return found
