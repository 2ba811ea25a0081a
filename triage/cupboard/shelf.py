"""What a keeper wrote down of their shelf: one line for each thing, which a hand may change.

The file is theirs. A line that can't be used is told and left as it is, and a change touches its own line
alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from triage.cupboard.lots import Lot, read_lots
from triage.page.inert import inert
from triage.problems import Place, Problem, nearest

LAMBS = "lambs"
MOST_LAMBS = 2000
MOST_TOLD = 50
"""Mistakes told of one file; past these it is no shelf, and the looking would take long."""

HEAD = """\
# What is on the shelf. Change it here, or by `triage cupboard thermometer=2`.
# A line for each thing: its name, a colon, how much there is, and the date on its label.
# More packs are parted by a semicolon, as in   milk-powder: 10 kg, 2027-03; 2 x 5 kg, 2027-06
# `triage cupboard` tells the names, and what is wrong with a line. Lines like this one are yours.
"""

_LINE = re.compile(r"(?P<name>[^:#]*):(?P<value>[^#]*)(?P<note>#.*)?")


@dataclass(frozen=True)
class Shelf:
    """What there is: the lambs that are expected, and the packs of each thing by its name."""

    lambs: int | None = None
    lots: Mapping[str, tuple[Lot, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class ShelfRead:
    """What came of reading: every right line, and each mistake with its place."""

    shelf: Shelf
    problems: tuple[Problem, ...] = ()
    unread: frozenset[str] = frozenset()
    """Things whose line is there and can't be used."""


class _Written(NamedTuple):
    """One line with something in it."""

    number: int
    text: str
    match: re.Match[str] | None

    @property
    def name(self) -> str:
        return self.match["name"].strip().lower() if self.match else ""


def read_lambs(text: str) -> int | str:
    """Read how many lambs are expected, or say in a sentence why that is no such number."""
    cleaned = text.strip()
    if cleaned.isascii() and cleaned.isdigit() and len(cleaned) < 6 and 1 <= int(cleaned) <= MOST_LAMBS:
        return int(cleaned)
    return f"'{inert(text, 40)}' is no number of lambs. Write one from 1 to {MOST_LAMBS}, like 5."


def read_value(name: str, text: str, units: Mapping[str, str]) -> int | tuple[Lot, ...] | str:
    """Read the value of one line, or say in a sentence what is wrong. `units` has a unit for each thing."""
    if name == LAMBS:
        return read_lambs(text)
    if name not in units:
        known = nearest(name, [*units, LAMBS]) or "; 'triage cupboard' tells the names"
        return f"There is no '{inert(name, 40)}' in the cupboard{known}{'' if known.endswith('?') else '.'}"
    return read_lots(text, units[name])


def read_text(text: str, file: str, units: Mapping[str, str]) -> ShelfRead:
    """Return every right line of a shelf's text, and a problem with its place for each wrong one."""
    lambs: int | None = None
    lots: dict[str, tuple[Lot, ...]] = {}
    seen: dict[str, int] = {}
    unread: set[str] = set()
    problems: list[Problem] = []
    for line in _lines(text):
        if len(problems) == MOST_TOLD:
            problems.append(_wrong(file, line, 1, "the lines from here on were not looked at", "too-big"))
            break
        if line.match is None:
            what = f"'{inert(line.text, 40)}' has no colon; write it like thermometer: 2"
            problems.append(_wrong(file, line, 1, what, "shape"))
            continue
        at = line.match.start("value") + len(line.match["value"]) - len(line.match["value"].lstrip()) + 1
        if line.name in seen:
            first = seen[line.name]
            what = f"'{line.name}' is here twice, first at line {first}; keep one, its packs parted by ;"
            problems.append(_wrong(file, line, 1, what, "duplicate-key"))
            continue
        seen[line.name] = line.number
        came = read_value(line.name, line.match["value"], units)
        if isinstance(came, str):
            unread.add(line.name)
            problems.append(_wrong(file, line, at, came, "value"))
        elif isinstance(came, int):
            lambs = came
        else:
            lots[line.name] = came
    return ShelfRead(Shelf(lambs, lots), tuple(problems), frozenset(unread))


def _wrong(file: str, line: _Written, column: int, what: str, rule: str) -> Problem:
    return Problem(Place(file, line.number, column), what, rule)


def _lines(text: str) -> Iterator[_Written]:
    for number, line in enumerate(text.split("\n"), 1):
        if line.partition("#")[0].strip():
            yield _Written(number, line.strip(), _LINE.fullmatch(line.rstrip("\r")))


def changed(text: str, name: str, value: str, keep: bool = False) -> str:
    """Return a shelf's text with one line set anew, at its place, or at the end; nothing else is touched.

    With `keep` the line as it was stays above it as a note, as nobody could tell what it meant.
    """
    lines = text.split("\n")
    for line in _lines(text):
        if line.name == name and line.match:
            note = f"  {line.match['note']}" if line.match["note"] else ""
            ending = "\r" if lines[line.number - 1].endswith("\r") else ""
            before = f"# {line.text}{ending}\n" if keep else ""
            lines[line.number - 1] = f"{before}{name}: {value}{note}{ending}"
            return "\n".join(lines)
    begun = text if not text or text.endswith("\n") else f"{text}\n"
    return f"{begun}{name}: {value}\n"
