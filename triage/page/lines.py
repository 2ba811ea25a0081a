"""A page laid out as lines of text for a width, the same for both faces."""

from __future__ import annotations

import textwrap
from typing import NamedTuple

from triage.page.page import Block, Page, Role, Scale

WIDEST = 76
NARROWEST = 12
SHORTEST_SCALE = 12
LONGEST_SCALE = 48


class Line(NamedTuple):
    """One line of a page, never wider than it was laid out for."""

    role: Role
    text: str


def lay_out(page: Page, width: int) -> list[Line]:
    """Return a page's lines, wrapped with their marks hanging before them."""
    width = max(NARROWEST, min(width, WIDEST))
    lines: list[Line] = []
    for block in page.blocks:
        lines += lay_block(block, width)
        if block.role == "heading":
            lines.append(Line("blank", ""))
    if page.choices:
        lines.append(Line("blank", ""))
    for choice in page.choices:
        lines += lay_block(Block("choice", choice.text, choice.key), width)
    return _tidy(lines)


def lay_block(block: Block, width: int) -> list[Line]:
    """Return one block's lines; a mark takes its own column and the text hangs after it."""
    if block.role == "blank":
        return [Line("blank", "")]
    drawn = _drawn(block.scale, width) if block.scale else ""
    if block.scale and drawn:
        return [Line(block.role, f"{block.text.ljust(block.scale.column)}{drawn}")]
    if block.mark:
        first, rest = f"{block.mark:>2}  ", "    "
        if width < 30:
            first, rest = f"{block.mark} ", "  "
    else:
        first = rest = ""
    wrapped = textwrap.wrap(
        block.text, width, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False
    )
    return [Line(block.role, text) for text in wrapped or [first.rstrip()]]


def _drawn(scale: Scale, width: int) -> str:
    """Return a scale as signs: `|` for its marks, `*` for the reading, none where there is no room."""
    room = min(width - scale.column, LONGEST_SCALE)
    if room < SHORTEST_SCALE:
        return ""
    signs = ["."] * room
    for mark in scale.marks:
        signs[round(mark * (room - 1))] = "|"
    signs[round(scale.at * (room - 1))] = "*"
    return "".join(signs)


def _tidy(lines: list[Line]) -> list[Line]:
    """Drop doubled blank lines and those at either end."""
    tidied: list[Line] = []
    for line in lines:
        if line.role == "blank" and (not tidied or tidied[-1].role == "blank"):
            continue
        tidied.append(line)
    while tidied and tidied[-1].role == "blank":
        tidied.pop()
    return tidied
