"""An empty record of one lamb, to write on by hand: its card, its feeds and signs, and the vet's words."""

from __future__ import annotations

from collections.abc import Iterator

from triage.handover.composing import LONG_ORDERS, TO_WRITE
from triage.paper.pieces import TURN, Part, Piece, Rows, blank, cell, gap, head_of, row, text
from triage.paper.setting import BODY, CELL, HEAD, LABEL, NOTE, TITLE
from triage.units import System

NAME = "Lamb record"
CARD = (92.0, 92.0)
ON_CARD = (
    ("Name or number", "Ewe lamb or ram lamb"),
    ("Born, day and time", "Born as one, two, three"),
    ("Weight at birth", "Its mother, and her vaccine"),
    ("First milk: when, how much", "Navel dipped: when"),
)
SEEN = (30.0, 24.0, 24.0, 46.0, 30.0, 30.0)
GIVEN = (30.0, 46.0, 34.0, 34.0, 40.0)
TALL = 10.0
SEEN_ROWS = 14
GIVEN_ROWS = 6


def record_parts(system: System) -> Iterator[Part]:
    """Yield the record: two sheets."""
    warmth, weight = ("\u00b0F", "lb, oz") if system == "us" else ("\u00b0C", "kg")
    yield text(NAME, TITLE, "h1")
    rows = tuple(row([cell(each, NOTE, 92.0) for each in pair], tall=TALL) for pair in ON_CARD)
    yield Rows(CARD, head_of(("Card", ""), CARD, LABEL), rows, "grid")
    yield gap(4)
    heads = (
        "Day, time",
        f"Warmth, {warmth}",
        f"Weight, {weight}",
        "Fed: what, how much",
        "Dung, urine",
        "How it is",
    )
    yield Rows(SEEN, head_of(heads, SEEN, LABEL), _empty(SEEN, SEEN_ROWS), "grid")
    yield TURN
    yield from _said()
    yield text("Given on a vet's word", HEAD, "h2", leads=True)
    heads_given = ("Day, time", "What, and its batch", "How much", "How", "Ordered by")
    yield Rows(GIVEN, head_of(heads_given, GIVEN, LABEL), _empty(GIVEN, GIVEN_ROWS), "grid")
    yield text("Nothing for a lamb's illness is given without a vet, and never past its label.", BODY)


def _said() -> Iterator[Part]:
    yield text("What the vet said", HEAD, "h2", leads=True)
    for _ in range(2):
        for label in TO_WRITE:
            yield blank(label, NOTE, TALL)
            if label in LONG_ORDERS:
                yield blank("", NOTE, TALL - 2)
        yield gap(4)


def _empty(columns: tuple[float, ...], count: int) -> tuple[Piece, ...]:
    return (row([cell("", CELL, width) for width in columns], tall=TALL),) * count
