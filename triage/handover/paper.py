"""The handover as one page to print: a single HTML file that asks nothing of any network."""

from __future__ import annotations

from collections.abc import Iterable

from triage.handover.composing import LONG_ORDERS
from triage.handover.situation import Handover, Told
from triage.handover.text import lists
from triage.paper.html import document, safe

_STYLE = """
@page { margin: 9mm 13mm; }
* { box-sizing: border-box; }
body { font: 10.5pt/1.26 Georgia, 'Times New Roman', serif; color: #111; background: #fff;
       max-width: 46em; margin: 1em auto; padding: 0 1em; overflow-wrap: anywhere; }
h1 { font-size: 16pt; margin: 0; }
h2 { font-size: 10pt; margin: .6em 0 .1em; border-bottom: 1px solid #111; break-after: avoid; }
p { margin: .15em 0; }
ol, ul { margin: .15em 0; padding-left: 1.4em; }
.say { font-size: 11.5pt; }
.say li { margin-bottom: .15em; }
.write p { display: flex; gap: .6em; align-items: flex-end; height: 2.1em; margin: 0; break-inside: avoid;
           font-size: 9.5pt; }
.write p::after { content: ""; flex: 1; border-bottom: 1px solid #555; }
.lists { columns: 2; column-gap: 2em; font-size: 9pt; line-height: 1.25; margin-top: .6em; }
.lists h2 { font-size: 9pt; margin: 0 0 .1em; padding-top: .5em; }
.lists ul { list-style: none; padding: 0; }
.lists li { padding-left: .8em; text-indent: -.8em; }
.lists section { break-inside: avoid-column; }
.foot { font-size: 8.5pt; }
@media screen and (max-width: 34em) { .lists { columns: 1; } }
@media print { body { margin: 0; padding: 0; max-width: none; } }
"""

_RULE = "<p></p>"

FOOT = "Written by a keeper's guide. It is first aid and care, not a diagnosis. The vet's word comes first."


def paper_of(handover: Handover, title: str = "For the vet", numbers: str = "", made: str = "") -> str:
    """Return the page as HTML. Every text in it is escaped, and there are no scripts in it."""
    write = "".join(f"<p>{safe(line.text)}</p>{_RULE * lines}" for line, lines in _ruled(handover))
    listed = "".join(_section(label, lines) for label, lines in lists(handover))
    head = " · ".join(safe(part) for part in (numbers, made) if part)
    return document(
        title,
        _STYLE,
        f'<h1>{safe(title)}</h1>\n<p>{head}</p>\n<p class="foot">{FOOT}</p>\n'
        f'<h2>Say</h2><ol class="say">{_items(handover.spoken)}</ol>\n'
        f"<h2>Then read back</h2><ul>{_items(handover.read_back)}</ul>\n"
        f'<h2>What the vet said</h2><div class="write">{write}</div>\n'
        f'<div class="lists">{listed}</div>',
    )


def _ruled(handover: Handover) -> Iterable[tuple[Told, int]]:
    """Return what is to be written down, and how many more lines it needs."""
    return ((line, 1 if line.text in LONG_ORDERS else 0) for line in handover.to_write)


def _section(label: str, lines: Iterable[Told]) -> str:
    return f"<section><h2>{safe(label)}</h2><ul>{_items(lines)}</ul></section>"


def _items(lines: Iterable[Told]) -> str:
    return "".join(f"<li>{safe(line.text)}</li>" for line in lines)
