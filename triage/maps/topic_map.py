"""A map as values: the places of a topic in layers, and the ways between them with their answers."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

from triage.guide.model import Act, Ask, End, Guide, Node
from triage.maps.layers import Laid, lay
from triage.maps.words import answers_of, label_of, leads_to
from triage.page.wall import Wall
from triage.units import System

Shape = Literal["ask", "act", "end"]


@dataclass(frozen=True)
class Spot:
    """One place of a map. `number` is a page's own, or counts from 1 by layers and from left to right."""

    name: str
    shape: Shape
    label: str
    number: int
    layer: int
    across: float
    """How far right it stands in its layer, for the order alone."""
    urgency: str = ""
    """The name of the urgency of an end."""
    comes_from: tuple[str, ...] = ()
    """The names of the other topics that lead here."""


@dataclass(frozen=True)
class Stub:
    """A place of another topic that is led to; its own map shows what follows."""

    name: str
    topic: str
    label: str
    number: int = 0
    """Where a page has a number of its own for it."""


@dataclass(frozen=True)
class Way:
    """A way from one place to another; answers that lead to one place at one urgency are one way."""

    start: str
    to: str
    answers: tuple[str, ...]
    at_least: str = ""
    """The name of the urgency that it asks for from there on."""
    back: bool = False
    """Whether it goes up again, to a place that one has come through."""
    through: tuple[float, ...] = ()
    """How far right it passes each layer between, top down."""


@dataclass(frozen=True)
class TopicMap:
    """The whole of a topic: its places in reading order, its stubs, and every way."""

    topic: str
    spots: tuple[Spot, ...]
    stubs: tuple[Stub, ...]
    ways: tuple[Way, ...]
    _spot: Mapping[str, Spot] = field(init=False, repr=False, compare=False)
    _stub: Mapping[str, Stub] = field(init=False, repr=False, compare=False)
    _from: Mapping[str, tuple[Way, ...]] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        leaving: dict[str, tuple[Way, ...]] = {}
        for way in self.ways:
            leaving[way.start] = (*leaving.get(way.start, ()), way)
        object.__setattr__(self, "_spot", {spot.name: spot for spot in self.spots})
        object.__setattr__(self, "_stub", {stub.name: stub for stub in self.stubs})
        object.__setattr__(self, "_from", leaving)

    def spot(self, name: str) -> Spot | None:
        """Return a place of the topic by its node's name, None where it belongs to another."""
        return self._spot.get(name)

    def stub(self, name: str) -> Stub:
        """Return a place of another topic; KeyError where none such is led to."""
        return self._stub[name]

    def numbered(self, number: Callable[[str], int]) -> TopicMap:
        """Return the map with the numbers that a page gives to its nodes."""
        spots = tuple(replace(each, number=number(each.name)) for each in self.spots)
        stubs = tuple(replace(each, number=number(each.name)) for each in self.stubs)
        return TopicMap(self.topic, spots, stubs, self.ways)

    def ways_from(self, name: str) -> tuple[Way, ...]:
        """Return the ways out of a place, in the order in which they are written."""
        return self._from.get(name, ())


def map_of(guide: Guide, topic: str, system: System = "metric") -> TopicMap:
    """Return the map of a topic, with no place where it has no nodes; KeyError where there is none such."""
    wall = Wall(guide, system)
    nodes = {node.name: node for node in guide.by_topic.get(guide.topics[topic].name, ())}
    joined = tuple(way for node in nodes.values() for way in _ways(wall, node))
    laid = lay(tuple(nodes), ((way.start, way.to) for way in joined if way.to in nodes))
    led_out = dict.fromkeys(way.to for way in joined if way.to not in nodes)
    return TopicMap(
        topic,
        tuple(_spots(wall, nodes, laid)),
        tuple(Stub(name, guide.nodes[name].topic, label_of(wall, guide.nodes[name])) for name in led_out),
        tuple(_placed(way, laid) for way in joined),
    )


def _ways(wall: Wall, node: Node) -> Iterator[Way]:
    answers: dict[tuple[str, str], list[str]] = {}
    for answer, to, at_least in answers_of(wall, node):
        answers.setdefault((to, at_least), []).append(answer)
    for (to, at_least), together in answers.items():
        yield Way(node.name, to, tuple(together), at_least)


def _placed(way: Way, laid: Laid) -> Way:
    pair = (way.start, way.to)
    return Way(way.start, way.to, way.answers, way.at_least, pair in laid.back, laid.through.get(pair, ()))


def _spots(wall: Wall, nodes: Mapping[str, Node], laid: Laid) -> Iterator[Spot]:
    order = sorted(nodes, key=lambda name: (laid.layer[name], laid.across[name]))
    coming = _coming(wall.guide, nodes)
    for number, name in enumerate(order, 1):
        node = nodes[name]
        urgency = node.urgency if isinstance(node, End) else ""
        place = (number, laid.layer[name], laid.across[name])
        yield Spot(name, _shape(node), label_of(wall, node), *place, urgency, coming.get(name, ()))


def _shape(node: Node) -> Shape:
    if isinstance(node, Ask):
        return "ask"
    return "act" if isinstance(node, Act) else "end"


def _coming(guide: Guide, nodes: Mapping[str, Node]) -> dict[str, tuple[str, ...]]:
    """Return, for each place that other topics lead to, those topics in the guide's order."""
    found: dict[str, set[str]] = {}
    for node in guide.nodes.values():
        for to in leads_to(node):
            if to in nodes and node.name not in nodes:
                found.setdefault(to, set()).add(node.topic)
    return {name: tuple(topic for topic in guide.topics if topic in topics) for name, topics in found.items()}
