"""Pieces of a page: HTML, each with how high it is."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from triage.paper.html import safe
from triage.paper.setting import Style, high

WIDE = 184.0
HIGH = 252.0
FOOT_HIGH = 12.0
ROOM = HIGH - FOOT_HIGH
"""The height in mm that a sheet has for its pieces."""

PAD = 4.0
"""Room in mm at the right of a cell of a table."""

PAD_EVEN = 2.0
"""The same in a table of figures."""

OVER = 2.2
"""Room in mm above and below the text of a cell, and its line."""

SHORT = 60.0
"""A table no higher than this, in mm, is not torn."""

INDENT = 6.5
"""What a list hangs in by, in mm."""


@dataclass(frozen=True)
class Piece:
    """Something on a page: HTML, and how high it is in mm."""

    html: str
    high: float
    leads: bool = False
    """Whether it must not be the last thing on a sheet."""


@dataclass(frozen=True)
class Rows:
    """A table: its rows are never torn, and its head stands again on each sheet that it goes on to."""

    columns: tuple[float, ...]
    """How wide each column is, in mm; there is at least one row."""
    head: Piece
    rows: tuple[Piece, ...]
    name: str = ""


Part = Piece | Rows


def text(words: str, style: Style, tag: str = "p", width: float = WIDE, leads: bool = False) -> Piece:
    """Return a paragraph or a heading."""
    html = f'<{tag} class="{style.name}">{safe(words)}</{tag}>'
    return Piece(html, high(words, style, width), leads)


def listed(words: Iterable[str], style: Style, mark: str = "-", width: float = WIDE) -> Piece:
    """Return a list; `mark` is a sign, `1` to count, or `box` for boxes to tick."""
    each = tuple(words)
    kind = "ol" if mark == "1" else "ul"
    items = "".join(
        f'<li class="{style.name}"><i>{_mark(mark, number)}</i>{safe(said)}</li>'
        for number, said in enumerate(each, 1)
    )
    return Piece(f"<{kind}>{items}</{kind}>", sum(high(said, style, width - INDENT) for said in each))


def _mark(mark: str, number: int) -> str:
    if mark == "box":
        return BOX
    return str(number) if mark == "1" else safe(mark)


BOX = '<span class="box"></span>'


def whole(pieces: Iterable[Piece], name: str = "", more: float = 0.0) -> Piece:
    """Return several pieces as one that is not torn; `more` is the height that its own border takes."""
    kept = tuple(pieces)
    named = f' class="{name}"' if name else ""
    html = f"<section{named}>{''.join(piece.html for piece in kept)}</section>"
    return Piece(html, sum(piece.high for piece in kept) + more)


TURN = Piece("", 0.0)
"""Where a new sheet begins."""


def gap(mm: float) -> Piece:
    """Return empty room."""
    return Piece(f'<div style="height:{mm:g}mm"></div>', mm)


def blank(label: str, style: Style, tall: float = 10.0) -> Piece:
    """Return a line to write on, with what is written there at its beginning."""
    html = f'<p class="{style.name} blank" style="height:{tall:g}mm;margin:0">{safe(label)}</p>'
    return Piece(html, tall)


def row(cells: Sequence[Piece], tag: str = "td", tall: float = 0.0) -> Piece:
    """Return a row of a table; the first cell heads it."""
    scope = "col" if tag == "th" else "row"
    made = [
        f'<th scope="{scope}">{each.html}</th>' if tag == "th" or not at else f"<td>{each.html}</td>"
        for at, each in enumerate(cells)
    ]
    least = f' style="height:{tall:g}mm"' if tall else ""
    return Piece(f"<tr{least}>{''.join(made)}</tr>", max(tall + 0.2, *(each.high + OVER for each in cells)))


def under_row(above: Piece, below: Piece, columns: int) -> Piece:
    """Return a row with a line under it that goes across all columns."""
    html = above.html.replace("<tr", '<tr class="on"', 1)
    under = f'<tr class="under"><td colspan="{columns}">{below.html}</td></tr>'
    return Piece(html + under, above.high + below.high + 0.7)


def cell(words: str, style: Style, width: float) -> Piece:
    """Return the text of a cell in a column so many mm wide."""
    return text(words, style, width=width - PAD)


def head_of(
    titles: Sequence[str], columns: Sequence[float], style: Style, over: Piece | None = None
) -> Piece:
    """Return the head of a table; `over` stands above its titles and is repeated with them."""
    cells = [cell(title, style, width) for title, width in zip(titles, columns, strict=True)]
    titles_row = row(cells, "th")
    if over is None:
        return Piece(titles_row.html, titles_row.high + 0.3)
    above = f'<tr><th class="over" colspan="{len(columns)}" scope="colgroup">{over.html}</th></tr>'
    return Piece(above + titles_row.html, over.high + titles_row.high + 0.3)
