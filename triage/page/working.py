"""How an amount came about, and what stands behind a page: sums, numbers and sources."""

from __future__ import annotations

from collections.abc import Iterable

from triage.amounts import AMOUNTS, Sum
from triage.amounts.weight import WEIGHT_NUMBERS
from triage.guide.model import COMMON_PRACTICE, FROM_MEMORY, NOT_PUBLISHED, Ask, Guide, Number
from triage.guide.texts import said_on
from triage.page.page import Block, Page
from triage.page.side import word_blocks
from triage.page.words import Reader
from triage.units import System, show
from triage.walk import Walk

NAMED = 3
"""Sources named beside a number; the rest are counted."""


def working_page(walk: Walk, system: System) -> Page:
    """How each amount here came about, and what stands behind this page."""
    reader = Reader(walk.guide, walk.facts, system)
    node = walk.node
    blocks = [Block("heading", "Working and sources")]
    if isinstance(node, Ask):
        return Page("side", "Working and sources", (*blocks, Block("body", "There is no sum on this page.")))
    blocks += sum_blocks(reader, reader.sums(said_on(node)))
    words = word_blocks(walk.guide, [block.text for block in blocks])
    blocks += [Block("blank", ""), Block("label", "Sources of this page")]
    blocks += [Block("quiet", source_words(walk.guide, name), "-") for name in node.sources]
    return Page("side", "Working and sources", (*blocks, *words))


def sum_blocks(reader: Reader, sums: dict[str, Sum]) -> list[Block]:
    """Return each sum with its working line by line, then every number they rest on, once."""
    blocks: list[Block] = []
    for name, result in sums.items():
        title = f"{AMOUNTS[name].title}: {result.words(reader.system)}"
        blocks += [Block("blank", ""), Block("label", title)]
        blocks += [Block("body", line, "-") for line in result.working]
        blocks += [Block("body", result.guessed, "!")] if result.guessed else []
    numbers = [reader.guide.numbers[name] for name in _numbers(sums)]
    if numbers:
        blocks += [Block("blank", ""), Block("label", "Numbers used")]
        blocks += [Block("quiet", number_words(reader, number), "-") for number in numbers]
    return blocks


def _numbers(sums: dict[str, Sum]) -> Iterable[str]:
    """Return the numbers that these sums rest on; those of a guessed weight only where it was guessed."""
    names = [
        number
        for name, result in sums.items()
        for number in AMOUNTS[name].numbers
        if result.guessed or number not in WEIGHT_NUMBERS
    ]
    return dict.fromkeys(names)


def number_words(reader: Reader, number: Number) -> str:
    """Return a number with what is published and by whom, and why this value was taken."""
    low = min(span[0] for span in number.published.values())
    high = max(span[1] for span in number.published.values())
    said = f"{number.title}: {reader.number(number.name)}."
    if low != high:
        span = [show(edge, number.unit, reader.system) for edge in (low, high)]
        said += f" Published: {span[0]} to {span[1]}."
    return " ".join(part for part in (said, f"{_named(reader.guide, number)}.", number.note) if part)


def _named(guide: Guide, number: Number) -> str:
    """Name the strongest sources of a number, and count the others."""
    published = sorted(
        (name for name in number.published if name not in NOT_PUBLISHED),
        key=lambda name: guide.sources[name].grade,
    )
    names = [_short(guide, name) for name in published[:NAMED]]
    if not names:
        return {COMMON_PRACTICE: "Common practice, no source"}.get(
            number.certainty, "From memory, not checked"
        )
    rest = len(published) - len(names)
    return f"From {', '.join(names)}" + (f" and {rest} more" if rest else "")


def _short(guide: Guide, name: str) -> str:
    source = guide.sources[name]
    return " ".join(part for part in (source.by or source.title, source.year) if part)


def source_words(guide: Guide, name: str) -> str:
    """Return a source as one line, with its grade."""
    source = guide.sources.get(name)
    if source is None:
        return {COMMON_PRACTICE: "Common practice, no source.", FROM_MEMORY: "From memory, not checked."}[
            name
        ]
    parts = [source.by, source.title, source.in_, source.year]
    return f"{'. '.join(part for part in parts if part)}. Grade {source.grade}."
