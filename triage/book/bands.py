"""Bands of a measurement in words, in both unit systems, with no reading lost between two of them.

A line is published in one unit. In the other it falls between two marks of a thermometer or a scale, so it is
told as the mark that parts the readings as the line does: 39.2 degC is 102.56 degF, and `up to 102.5 degF`
says the same of every reading, where `up to 102.6` would not.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from triage.book.words import Words
from triage.guide.model import Ask, Branch
from triage.units import KG_PER_LB, System, convert, show, tidy
from triage.walk import bound

MARK_F = 0.1
SLIP = 1e-6
"""What a float may be off by."""


@dataclass(frozen=True, order=True)
class Line:
    """Where two bands meet: a value, and whether a reading right on it is of the lower one."""

    value: float
    within: bool


@dataclass(frozen=True)
class Band:
    """One branch of a measured question, with the lines below and above it, None where there is none."""

    branch: Branch
    low: Line | None
    high: Line | None


def bands_of(words: Words, node: Ask) -> Iterator[Band]:
    """Yield the bands in their order; one that no reading can be in is left out."""
    low: Line | None = None
    for branch in node.branches:
        if branch.unsure:
            continue
        if branch.otherwise:
            yield Band(branch, low, None)
            return
        line = Line(bound(words.guide, node, branch.below or branch.up_to), bool(branch.up_to))
        if low is None or line > low:
            yield Band(branch, low, line)
            low = line


def band_words(words: Words, node: Ask, band: Band) -> str:
    """Return a band in words, as `More than 37 degC (98.6 degF), up to 40 degC (104 degF)`."""
    finding = words.guide.findings[node.finding]
    low = _told(words, band.low, finding.measure) if band.low else ""
    high = _told(words, band.high, finding.measure) if band.high else ""
    said = []
    if band.low:
        said.append(f"more than {low}" if band.low.within else f"{low} or more")
    if band.high:
        said.append(f"up to {high}" if band.high.within else f"less than {high}")
    text = ", ".join(said) or f"any {words.small(finding.label)}"
    return text[:1].upper() + text[1:]


def _told(words: Words, line: Line, unit: str) -> str:
    here, there = (
        mark(line, unit, system).replace(" ", "\u00a0", 1) for system in (words.making.system, words.other)
    )
    return here if here == there else f"{here} ({there})"


def mark(line: Line, unit: str, system: System) -> str:
    """Return a line as the mark of a thermometer or a scale that parts the same readings."""
    if system == "us" and unit == "degC":
        return f"{tidy(_step(convert(line.value, 'degC', 'degF') / MARK_F, line.within) * MARK_F, 1)} °F"
    if system == "us" and unit == "kg":
        return show(_step(line.value / KG_PER_LB * 16, line.within) * KG_PER_LB / 16, "kg", "us")
    return show(line.value, unit, system)


def _step(marks: float, within: bool) -> int:
    """Return the last mark that is of the lower band, or the first that is of the upper one."""
    return math.floor(marks + SLIP) if within else math.ceil(marks - SLIP)
