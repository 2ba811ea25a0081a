"""The box of each place on a drawn map: its lines of text, counted so that none runs out of it.

Lengths are pixels.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from triage.guide.model import Guide
from triage.maps.topic_map import Spot, TopicMap, Way
from triage.maps.words import joined
from triage.paper.setting import USUAL, WIDTH

WIDE = 240
PAD = 8
SIZE = 12
LINE = 15
ARROW = 44
"""Room at the right of an answer for the number that it leads to."""

SPARE = 1.16
SPARE_BOLD = 1.34
"""Another plain type may run so much wider than the one that was counted."""

KINDS = {"ask": "Question", "act": "To do", "end": "End"}
"""What a box is, in a word."""


@dataclass(frozen=True)
class Line:
    """One line of a box: its text, how far down its foot is from the top, and how it is set."""

    text: str
    down: int
    bold: bool = False
    number: int = 0
    """The number of the place that its answer leads to, which stands at its right."""
    goes_to: str = ""
    """The node of another topic whose map goes on here."""


@dataclass(frozen=True)
class Port:
    """Where a way leaves a box, and how far down that is from its top."""

    way: Way
    down: int


@dataclass(frozen=True)
class Box:
    """A place ready to be drawn."""

    spot: Spot
    lines: tuple[Line, ...]
    ports: tuple[Port, ...]
    high: int


def box_of(guide: Guide, drawn: TopicMap, spot: Spot) -> Box:
    """Return the box of a place: its number and kind, what it is, and a line for each way out."""
    laid = _Laying()
    laid.add(f"{spot.number}. {spot.label}", bold=True)
    laid.add(kind_of(guide, spot))
    for way in drawn.ways_from(spot.name):
        _way(guide, drawn, way, laid)
    return Box(spot, tuple(laid.lines), tuple(laid.ports), laid.down + PAD)


def kind_of(guide: Guide, spot: Spot) -> str:
    """Return what a place is, in words: a question, a thing to do, or an end and how soon a vet is needed."""
    words = KINDS[spot.shape]
    if spot.urgency:
        words += f": {guide.urgency(spot.urgency).say}"
    return f"{words}. A way in" if spot.comes_from else words


def _way(guide: Guide, drawn: TopicMap, way: Way, laid: _Laying) -> None:
    laid.down += 4
    to = drawn.spot(way.to)
    answers = joined(way.answers)
    if to:
        if to.name != way.start:
            laid.ports.append(Port(way, laid.down + LINE - 5))
        laid.add(answers, WIDE - 2 * PAD - ARROW, number=to.number)
        if way.back:
            laid.add(f"back to {to.number}")
    else:
        stub = drawn.stub(way.to)
        laid.add(answers)
        its = f", {stub.number}" if stub.number else ""
        laid.add(f"\u2192 {guide.topics[stub.topic].title}: {stub.label}{its}", goes_to=way.to)
    if way.at_least:
        laid.add(f"! {guide.urgency(way.at_least).say}")


@dataclass
class _Laying:
    """A box while it is filled."""

    lines: list[Line] = field(default_factory=list)
    ports: list[Port] = field(default_factory=list)
    down: int = PAD - 3

    def add(
        self, text: str, room: int = WIDE - 2 * PAD, bold: bool = False, number: int = 0, goes_to: str = ""
    ) -> None:
        """Set a text below the others, over as many lines as it takes; the number stands beside the first."""
        for at, part in enumerate(wrapped(text, room, bold)):
            self.down += LINE
            self.lines.append(Line(part, self.down - 1, bold, 0 if at else number, goes_to))


def wrapped(text: str, room: float, bold: bool = False) -> Iterator[str]:
    """Yield the lines that a text takes in so much room; a word that is longer than a line is broken."""
    line = ""
    for word in text.split():
        if line and long(f"{line} {word}", bold) <= room:
            line = f"{line} {word}"
            continue
        if line:
            yield line
        line = word
        while long(line, bold) > room:
            most = next(end for end in range(len(line), 0, -1) if end == 1 or long(line[:end], bold) <= room)
            yield line[:most]
            line = line[most:]
    if line:
        yield line


def long(text: str, bold: bool = False) -> float:
    """Return how long a text runs."""
    return sum(WIDTH.get(sign, USUAL) for sign in text) / 1000 * SIZE * (SPARE_BOLD if bold else SPARE)
