"""What to have in the house before lambing, as a list to shop and to count by. It takes plain values."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from triage.paper.pieces import BOX, Part, Piece, Rows, cell, head_of, row, text
from triage.paper.setting import CELL, HEAD, LABEL, LEAD, NOTE, STRONG, TITLE

NAME = "Cupboard list"
COLUMNS = (10.0, 84.0, 32.0, 32.0, 26.0)
HEADS = ("", "What", "There should be", "There is", "Use by")


@dataclass(frozen=True)
class Line:
    """One thing, all of it in words: an empty text is room to write."""

    name: str
    need: str = ""
    have: str = ""
    until: str = ""
    note: str = ""


@dataclass(frozen=True)
class Group:
    """Things that belong together: what is to be bought first, what a vet is asked about."""

    title: str
    lines: tuple[Line, ...]


def cupboard_parts(groups: Sequence[Group], lead: str = "") -> Iterator[Part]:
    """Yield the list: a table for each group that holds something, each thing with a box to tick."""
    yield text(NAME, TITLE, "h1")
    if lead:
        yield text(lead, LEAD)
    for group in groups:
        if group.lines:
            over = text(group.title, HEAD)
            yield Rows(COLUMNS, head_of(HEADS, COLUMNS, LABEL, over), tuple(map(_row, group.lines)))


def _row(line: Line) -> Piece:
    """Return a thing with its box, and what there is to know of it under its name."""
    box = Piece(f'<p class="{CELL.name}">{BOX}</p>', CELL.line)
    named = [cell(line.name, STRONG, COLUMNS[1])]
    if line.note:
        named.append(cell(line.note, NOTE, COLUMNS[1]))
    name = Piece("".join(each.html for each in named), sum(each.high for each in named))
    rest = zip((line.need, line.have, line.until), COLUMNS[2:], strict=True)
    return row((box, name, *(cell(words, CELL, width) for words, width in rest)))
