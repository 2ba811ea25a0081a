"""Pieces that several pages are made of."""

from __future__ import annotations

from collections.abc import Iterable

from triage.page.page import Block
from triage.page.wall import Wall

GAP = Block("blank", "")


def body(wall: Wall, text: str) -> list[Block]:
    """Return a paragraph; nothing for an empty text."""
    return [Block("body", wall.fill(text))] if text else []


def under(label: str, lines: Iterable[Block]) -> list[Block]:
    """Return lines with a label over them; nothing where there are none."""
    kept = list(lines)
    return [GAP, Block("label", label), *kept] if kept else []


def listed(wall: Wall, texts: Iterable[str]) -> list[Block]:
    """Return texts as a list with dashes."""
    return [Block("body", wall.fill(text), "-") for text in texts]


def numbered(wall: Wall, texts: Iterable[str]) -> list[Block]:
    """Return texts as steps with their numbers."""
    return [Block("step", wall.fill(text), str(number)) for number, text in enumerate(texts, 1)]


def cautions(wall: Wall, texts: Iterable[str]) -> list[Block]:
    """Return what to take care of."""
    return under("Take care", [Block("caution", wall.fill(text), "!") for text in texts])


def labelled(wall: Wall, label: str, text: str) -> list[Block]:
    """Return a paragraph with a label over it; nothing for an empty text."""
    return under(label, body(wall, text))
