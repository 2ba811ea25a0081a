"""The handover as one page to print: a single HTML file that asks nothing of any network."""

from __future__ import annotations

from html import escape

from triage.handover.situation import Handover, Told
from triage.handover.text import lists

_STYLE = """
@page { margin: 14mm; }
body { font: 12pt/1.35 Georgia, 'Times New Roman', serif; color: #111; background: #fff;
       max-width: 42em; margin: 1.2em auto; padding: 0 1em; overflow-wrap: anywhere; }
h1 { font-size: 16pt; margin: 0 0 .4em; }
h2 { font-size: 11.5pt; margin: .9em 0 .2em; border-bottom: 1px solid #111; break-after: avoid; }
ol, ul { margin: .2em 0; padding-left: 1.4em; }
li { break-inside: avoid; }
.said { font-size: 12.5pt; }
.lists { columns: 2; column-gap: 2em; font-size: 10.5pt; }
.lists section { break-inside: avoid; }
.write p { margin: 0; padding-top: 1.1em; border-bottom: 1px solid #555; font-size: 10pt; }
footer { margin-top: 1.2em; font-size: 9pt; }
@media (max-width: 34em) { .lists { columns: 1; } }
"""

FOOT = "Written by a keeper's guide. It is first aid and care, not a diagnosis. The vet's word comes first."


def paper_of(handover: Handover, title: str = "For the vet", numbers: str = "", made: str = "") -> str:
    """Return the page as HTML. Every text in it is escaped, and there are no scripts in it."""
    said = "".join(f"<li>{escape(told.text)}</li>" for told in handover.spoken)
    back = "".join(f"<li>{escape(line)}</li>" for line in handover.read_back)
    write = "".join(f"<p>{escape(line)}</p>" for line in handover.to_write)
    listed = "".join(_section(label, told) for label, told in lists(handover) if told)
    head = " · ".join(escape(part) for part in (numbers, made) if part)
    return (
        "<!doctype html>\n"
        '<html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(title)}</title><style>{_STYLE}</style></head><body>\n"
        f"<h1>{escape(title)}</h1>\n<p>{head}</p>\n"
        f'<h2>Say</h2><ol class="said">{said}</ol>\n'
        f"<h2>Then read back</h2><ul>{back}</ul>\n"
        f'<h2>What the vet said</h2><div class="write">{write}</div>\n'
        f'<div class="lists">{listed}</div>\n'
        f"<footer>{FOOT}</footer>\n</body></html>\n"
    )


def _section(label: str, told: tuple[Told, ...]) -> str:
    items = "".join(f"<li>{escape(each.text)}</li>" for each in told)
    return f"<section><h2>{escape(label)}</h2><ul>{items}</ul></section>"
