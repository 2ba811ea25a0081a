"""The map of a topic as lines of text, to follow by its numbers: each place once, with where answers lead."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import Guide
from triage.maps.topic_map import Spot, TopicMap, Way, map_of
from triage.maps.words import joined
from triage.page.lines import Line, lay_out
from triage.page.page import Block, Page
from triage.units import System

HOW = (
    "Begin at 1, or where you came in. Each answer says the number to go to. What is known already is not "
    "asked again."
)


def map_lines(guide: Guide, topic: str, width: int, system: System = "metric") -> tuple[Line, ...]:
    """Return the map of a topic laid out for a width; KeyError where the guide has no such topic."""
    blocks = map_blocks(guide, topic, system)
    return tuple(lay_out(Page("side", "", blocks), width))


def map_blocks(guide: Guide, topic: str, system: System = "metric") -> tuple[Block, ...]:
    """Return the map of a topic as pieces of a page: the mark of each place is its number."""
    drawn = map_of(guide, topic, system)
    blocks = [Block("heading", f"The way through: {guide.topics[topic].title}"), Block("quiet", HOW)]
    for spot in drawn.spots:
        blocks += [Block("blank", ""), *_spot(guide, drawn, spot)]
    return tuple(blocks)


def _spot(guide: Guide, drawn: TopicMap, spot: Spot) -> Iterator[Block]:
    yield Block("choice", _said(guide, spot), str(spot.number))
    if spot.comes_from:
        titles = (guide.topics[topic].title for topic in spot.comes_from)
        yield Block("quiet", f"You can come here from: {'; '.join(titles)}.", " ")
    for way in drawn.ways_from(spot.name):
        yield Block("body", f"{joined(way.answers)}: {_to(guide, drawn, way)}", "-")


def _said(guide: Guide, spot: Spot) -> str:
    if spot.shape == "end":
        return f"End: {spot.label}. {guide.urgency(spot.urgency).say}."
    return f"Do: {spot.label}" if spot.shape == "act" else spot.label


def _to(guide: Guide, drawn: TopicMap, way: Way) -> str:
    to = drawn.spot(way.to)
    if to:
        where = f"back to {to.number}" if way.back else f"go to {to.number}"
    else:
        stub = drawn.stub(way.to)
        where = f"on to {guide.topics[stub.topic].title} ({stub.label})"
    return f"{guide.urgency(way.at_least).say}, then {where}." if way.at_least else f"{where}."
