"""What every page that is written has in common: escaped text, and a head that lets nothing load or run."""

from __future__ import annotations

import unicodedata
from html import escape
from itertools import groupby

from triage.page.inert import inert

POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"
"""Nothing may be loaded, run or sent, whatever a text should smuggle in."""


def document(title: str, style: str, body: str) -> str:
    """Return a whole page; `body` is HTML in which every text went through `safe`."""
    return (
        "<!doctype html>\n"
        '<html lang="en"><head><meta charset="utf-8">'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{escape(inert(title))}</title><style>{style}</style></head><body>\n"
        f"{body}\n</body></html>\n"
    )


def safe(text: str) -> str:
    """Return a text as HTML, with each stretch of right-to-left script kept from turning what follows."""
    shown = inert(text)
    if shown.isascii():
        return escape(shown)
    words = shown.split(" ")
    said = (
        (f"<bdi>{escape(' '.join(each))}</bdi>" if leftward else escape(" ".join(each)))
        for leftward, each in groupby(words, _leftward)
    )
    return " ".join(said)


def _leftward(word: str) -> bool:
    return any(unicodedata.bidirectional(sign) in ("R", "AL", "AN") for sign in word)
