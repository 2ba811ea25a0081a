"""The page that lists all others when everything is printed at once, each with a link to its file."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape

from triage.paper.html import safe
from triage.paper.pieces import Part, Piece, text
from triage.paper.setting import BODY, LEAD, TITLE

NAME = "Pages to print"
FILE = "index.html"
HOW = "Open a page and print it at its full size. Print them anew with each edition."


@dataclass(frozen=True)
class Entry:
    """A page: the name of its file, and its title."""

    file: str
    title: str


def index_parts(entries: Sequence[Entry]) -> Iterator[Part]:
    """Yield the list of pages."""
    yield text(NAME, TITLE, "h1")
    yield text(HOW, LEAD)
    for entry in entries:
        link = f'<a href="{escape(entry.file)}">{safe(entry.title)}</a>'
        yield Piece(f'<p class="{BODY.name}">{link}</p>', BODY.line + BODY.after)
