"""What an author pastes into a file by hand, and how that is told: the file, the place, and the lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

Where = Literal["above", "below", "instead", "end", "new"]

ORDERS: dict[Where, str] = {
    "above": "Put this above that line:",
    "below": "Put this below that line:",
    "instead": "Put this in the place of that line:",
    "end": "Put this at the end of the file:",
    "new": "Make this file:",
}


@dataclass(frozen=True)
class Paste:
    """Lines to paste into a file, with all the spaces that they begin with."""

    file: str
    where: Where
    lines: tuple[str, ...]
    line: int = 0
    """The line that `where` is about, from 1; none for the end of a file and for a new one."""


def told(pastes: Iterable[Paste]) -> Iterator[str]:
    """Yield the lines that tell what to paste where, file by file.

    Within a file the lowest line comes first, so that each line number still holds when it is its turn.
    """
    files: dict[str, list[Paste]] = {}
    for paste in pastes:
        files.setdefault(paste.file, []).append(paste)
    for each in files.values():
        for paste in sorted(each, key=lambda one: -one.line):
            at = f", line {paste.line}" if paste.line else ""
            yield from (f"{paste.file}{at}. {ORDERS[paste.where]}", "", *paste.lines, "")
