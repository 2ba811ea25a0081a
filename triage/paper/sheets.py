"""A page as HTML: its sheets, each with a foot that says what it is, of which edition and day, and where.

A sheet fits A4 and US Letter both: it is as narrow as the one and as short as the other, and what a paper
has beyond it is margin. So a page keeps its numbers on either paper, and may be printed on the wrong one.
Should a browser set a sheet higher than was counted, it goes on to another page, and nothing is lost.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from triage.guide.known import NEVER
from triage.paper.html import document, safe
from triage.paper.laying import laid
from triage.paper.pieces import Part
from triage.paper.setting import FOOT, STYLES

Size = Literal["a4", "letter"]

_PAGE = {
    "a4": "size: A4 portrait; margin: 20mm 13mm 23mm 13mm;",
    "letter": "size: letter portrait; margin: 12.7mm 15.9mm 12.7mm 15.9mm;",
}

_STYLE = """
* { box-sizing: border-box; }
body { font-family: Arial, Helvetica, 'Liberation Sans', sans-serif; color: #000; background: #fff;
       margin: 0; overflow-wrap: anywhere; }
.sheet { position: relative; width: 184mm; min-height: 252mm;
         padding: .1mm 0 12mm; break-after: page; }
.sheet:last-child { break-after: auto; }
footer { position: absolute; bottom: 0; left: 0; right: 0; border-top: .3mm solid #000; padding-top: 1mm; }
footer p { margin: 0; white-space: nowrap; overflow: hidden; text-overflow: ellipsis; }
footer .number { position: absolute; right: 0; top: 1mm; background: #fff; padding-left: 6mm; }
h1, h2, h3, p, ul, ol { margin: 0; padding: 0; }
h1, .big, .middle, .sign { text-wrap: balance; }
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
.tick { white-space: nowrap; }
.grid td + td, .grid th + td, .grid th + th { border-left: .2mm solid #000; padding-left: 2mm; }
.rule { border-top: .3mm solid #000; margin: 1.5mm 0; }
.now { border-top: 3mm solid #000; padding-top: 1.5mm; }
.today { border-top: 1.4mm solid #000; padding-top: 1.5mm; }
.later { border-top: .5mm solid #000; padding-top: 1.5mm; }
.blank { border-bottom: .3mm solid #000; display: flex; align-items: flex-end; }
.even td, .even th { padding-right: 2mm; font-variant-numeric: tabular-nums; }
@media screen { .sheet { margin: 8mm auto; } }
@media screen and (max-width: 190mm) { .sheet { width: auto; margin: 4mm; min-height: 0; } }
"""


@dataclass(frozen=True)
class Foot:
    """What stands at the foot of each sheet, beside its number."""

    edition: str
    day: str
    stands: str = NEVER
    """Who has reviewed it, and whether it is overdue for another reading."""
    word: str = "First aid and care, not a diagnosis. Your vet, the law and labels come first."


def sheets_of(title: str, parts: Iterable[Part], foot: Foot, size: Size) -> str:
    """Return a page as HTML: its sheets, each with a foot."""
    sheets = laid(parts)
    body = "\n".join(
        f'<div class="sheet">{sheet.html}{_foot(title, foot, number, len(sheets))}</div>'
        for number, sheet in enumerate(sheets, 1)
    )
    return document(title, style_of(size), body)


def style_of(size: Size) -> str:
    """Return the style sheet for a paper."""
    return "\n".join((f"@page {{ {_PAGE[size]} }}", _STYLE.strip(), *(style.css() for style in STYLES)))


def _foot(title: str, foot: Foot, number: int, count: int) -> str:
    where = f"{title}. Edition {foot.edition}. Printed {foot.day}."
    return (
        f'<footer class="{FOOT.name}"><p class="number">Page {number} of {count}</p>'
        f"<p>{safe(where)}</p><p>{safe(foot.stands)}</p><p>{safe(foot.word)}</p></footer>"
    )
