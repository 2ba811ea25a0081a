"""Pieces of a page, each with its height, and how they are laid on sheets with a foot on each.

A sheet fits A4 and US Letter both: it is as narrow as the one and as short as the other, and what the paper has
beyond it is margin. So a page keeps its numbers on either paper, and may be printed on the wrong one.
Should a browser set a sheet higher than was counted, it goes on to another page, and nothing is lost.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from triage.paper.html import document, safe
from triage.paper.setting import FOOT, STYLES, Style, high

Size = Literal["a4", "letter"]

WIDE = 184.0
HIGH = 252.0
FOOT_HIGH = 10.0
ROOM = HIGH - FOOT_HIGH
"""The height in mm that a sheet has for its pieces."""

PAD = 4.0
"""Room in mm at the right of a cell of a table."""

OVER = 2.2
"""Room in mm above and below the text of a cell, and its line."""

SHORT = 60.0
"""A table no higher than this, in mm, is not torn."""

INDENT = 6.5
"""What a list hangs in by, in mm."""

_PAGE = {
    "a4": "size: A4 portrait; margin: 20mm 13mm 23mm 13mm;",
    "letter": "size: letter portrait; margin: 12.7mm 15.9mm 12.7mm 15.9mm;",
}

_STYLE = """
* { box-sizing: border-box; }
body { font-family: Arial, Helvetica, 'Liberation Sans', sans-serif; color: #000; background: #fff;
       margin: 0; overflow-wrap: anywhere; }
.sheet { position: relative; display: flow-root; width: 184mm; min-height: 252mm; padding-bottom: 10mm; break-after: page; }
.sheet:last-child { break-after: auto; }
footer { position: absolute; bottom: 0; left: 0; right: 0; border-top: .3mm solid #000; padding-top: 1mm;
         display: flex; justify-content: space-between; }
footer p { margin: 0; }
h1, h2, h3, p, ul, ol { margin: 0; padding: 0; }
h1, h2, h3 { break-after: avoid; }
section, tr, ul, ol { break-inside: avoid; }
ul, ol { list-style: none; }
li { position: relative; padding-left: 6.5mm; }
li > i { position: absolute; left: 0; font-style: normal; }
.box { display: inline-block; width: 3.6mm; height: 3.6mm; border: .4mm solid #000; vertical-align: -.4mm; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; }
thead { display: table-header-group; }
th, td { text-align: left; vertical-align: top; padding: 1mm 4mm 1mm 0; border-bottom: .2mm solid #000; }
thead th { border-bottom: .5mm solid #000; vertical-align: bottom; }
tr.on > * { border-bottom: 0; padding-bottom: 0; }
tr.under > td { padding-top: .5mm; padding-right: 0; }
th.over { border-bottom: 0; padding: 0; }
.rule { border-top: .3mm solid #000; margin: 1.5mm 0; }
.now { border-top: 3mm solid #000; padding-top: 1.5mm; }
.today { border-top: 1.4mm solid #000; padding-top: 1.5mm; }
.later { border-top: .5mm solid #000; padding-top: 1.5mm; }
.blank { border-bottom: .3mm solid #000; display: flex; align-items: flex-end; }
.even td, .even th { font-variant-numeric: tabular-nums; }
@media screen { .sheet { margin: 8mm auto; padding-left: 0; } }
@media screen and (max-width: 190mm) { .sheet { width: auto; margin: 4mm; min-height: 0; } }
"""


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


@dataclass(frozen=True)
class Foot:
    """What stands at the foot of each sheet, beside its number."""

    edition: str
    day: str
    word: str = "First aid and care, not a diagnosis. Your vet, the law and labels come first."


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
    return Piece(f"<tr{least}>{''.join(made)}</tr>", max(tall, *(each.high + OVER for each in cells)))


def under_row(above: Piece, below: Piece, columns: int) -> Piece:
    """Return a row with a line under it that goes across all columns."""
    html = above.html.replace("<tr", '<tr class="on"', 1)
    under = f'<tr class="under"><td colspan="{columns}">{below.html}</td></tr>'
    return Piece(html + under, above.high + below.high + 0.7)


def cell(words: str, style: Style, width: float) -> Piece:
    """Return the text of a cell in a column so many mm wide."""
    return text(words, style, width=width - PAD)


def head_of(titles: Sequence[str], columns: Sequence[float], style: Style, over: Piece | None = None) -> Piece:
    """Return the head of a table; `over` stands above its titles and is repeated with them."""
    cells = [cell(title, style, width) for title, width in zip(titles, columns, strict=True)]
    titles_row = row(cells, "th")
    if over is None:
        return Piece(titles_row.html, titles_row.high + 0.3)
    above = f'<tr><th class="over" colspan="{len(columns)}" scope="colgroup">{over.html}</th></tr>'
    return Piece(above + titles_row.html, over.high + titles_row.high + 0.3)


def laid(parts: Iterable[Part]) -> tuple[tuple[str, float], ...]:
    """Lay parts on sheets; return the HTML of each sheet with the height that was counted."""
    sheets: list[list[str]] = [[]]
    used = [0.0]

    def room() -> float:
        return ROOM - used[-1]

    def turn() -> None:
        if sheets[-1]:
            sheets.append([])
            used.append(0.0)

    def put(html: str, tall: float) -> None:
        sheets[-1].append(html)
        used[-1] += tall

    flow = tuple(parts)
    for at, part in enumerate(flow):
        if part is TURN:
            turn()
            continue
        needed = _least(flow[at:])
        if needed > room():
            turn()
        if isinstance(part, Piece):
            put(part.html, part.high)
            continue
        for rows, tall in _chunks(part, room):
            if rows is None:
                turn()
            else:
                put(rows, tall)
    return tuple(("".join(sheet), tall) for sheet, tall in zip(sheets, used, strict=True))


def _least(flow: Sequence[Part]) -> float:
    """Return the height that must be free for the first part to stand where it is."""
    needed = 0.0
    for part in flow:
        if isinstance(part, Rows):
            tall = part.head.high + sum(each.high for each in part.rows)
            return needed + (tall if tall <= SHORT else part.head.high + part.rows[0].high)
        needed += part.high
        if not part.leads:
            return needed
    return needed


def _chunks(table: Rows, room: Callable[[], float]) -> Iterator[tuple[str | None, float]]:
    """Yield as many rows as fit, and None where a new sheet is to be begun."""
    rows: list[Piece] = []
    tall = table.head.high
    for each in table.rows:
        if rows and tall + each.high > room():
            yield _table(table, rows), tall
            yield None, 0.0
            rows, tall = [], table.head.high
        rows.append(each)
        tall += each.high
    yield _table(table, rows), tall


def _table(table: Rows, rows: Iterable[Piece]) -> str:
    columns = "".join(f'<col style="width:{width:g}mm">' for width in table.columns)
    named = f' class="{table.name}"' if table.name else ""
    body = "".join(each.html for each in rows)
    return f"<table{named}><colgroup>{columns}</colgroup><thead>{table.head.html}</thead><tbody>{body}</tbody></table>"


def sheets_of(title: str, parts: Iterable[Part], foot: Foot, size: Size) -> str:
    """Return a page as HTML: its sheets, each with a foot."""
    sheets = laid(parts)
    body = "\n".join(
        f'<div class="sheet">{html}{_foot(title, foot, number, len(sheets))}</div>'
        for number, (html, _) in enumerate(sheets, 1)
    )
    return document(title, style_of(size), body)


def style_of(size: Size) -> str:
    """Return the style sheet for a paper."""
    return "\n".join((f"@page {{ {_PAGE[size]} }}", _STYLE.strip(), *(style.css() for style in STYLES)))


def _foot(title: str, foot: Foot, number: int, count: int) -> str:
    where = f"{title}. Edition {foot.edition}. Printed {foot.day}."
    return (
        f'<footer class="{FOOT.name}"><p>{safe(where)} {safe(foot.word)}</p>'
        f"<p>Page {number} of {count}</p></footer>"
    )
