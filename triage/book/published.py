"""Numbers with what each source says and which side is safer, and the sources with what they gave."""

from __future__ import annotations

from collections.abc import Iterator

from triage.book.marks import listed, para, part
from triage.book.words import Words
from triage.guide.model import COMMON_PRACTICE, FROM_MEMORY, Number, Source
from triage.paper.html import safe

SAFER = {"higher": "The higher side is the safer one.", "lower": "The lower side is the safer one."}
SURE = {
    "high": "Good evidence.",
    "moderate": "Fair evidence.",
    "low": "Weak evidence.",
    COMMON_PRACTICE: "Common practice.",
    FROM_MEMORY: "From memory, not checked.",
}
GRADES = (
    "Grade A: a paper that others of the field have judged. B: practice of vets, universities, governments "
    "or levy boards, or a textbook. C: trade press that names a vet or an adviser. D: a firm or a page "
    "without a name; it may support a figure and never carries one."
)


def numbers_part(words: Words) -> str:
    """Return every threshold and rate."""
    entries = listed((_number(words, number) for number in words.guide.numbers.values()), "entries")
    return part("numbers", words.places.number("numbers"), "Numbers, and what is published", entries)


def _number(words: Words, number: Number) -> str:
    said = (
        f'<b id="number-{number.name}">{words.plain(number.title)}: {words.number(number.name)}.</b>',
        f"Published: {'; '.join(_published(words, number))}.",
        SAFER.get(number.safer, ""),
        words.fill(number.note) if number.note else "",
        SURE.get(number.certainty, ""),
    )
    return " ".join(filter(None, said)) + words.standing(f"number/{number.name}")


def _published(words: Words, number: Number) -> Iterator[str]:
    """Yield each figure once, with all who say it."""
    by_span: dict[tuple[float, float], list[str]] = {}
    for source, span in number.published.items():
        by_span.setdefault(span, []).append(source)
    for span, names in by_span.items():
        yield f"{_span(words, span, number.unit)} ({words.sources(names)})"


def _span(words: Words, span: tuple[float, float], unit: str) -> str:
    low, high = (words.one(each, unit) for each in span)
    return low if low == high else f"{low} to {high}"


def sources_part(words: Words) -> str:
    """Return every publication, with its grade and the numbers that it is taken for."""
    taken: dict[str, list[Number]] = {}
    for number in words.guide.numbers.values():
        for name in number.published:
            taken.setdefault(name, []).append(number)
    sources = words.guide.sources.values()
    entries = listed((_source(words, source, taken.get(source.name, [])) for source in sources), "entries")
    return part("sources", words.places.number("sources"), "Sources", para(GRADES) + entries)


def _source(words: Words, source: Source, taken: list[Number]) -> str:
    named = (source.by, source.title, source.in_, source.year)
    said = [f"{'. '.join(each.rstrip('.') for each in named if each)}.", f"Grade {source.grade}."]
    said += [each for each in (source.where, source.note) if each]
    gives = "; ".join(
        f"{words.small(number.title)} {_span(words, number.published[source.name], number.unit)}"
        for number in taken
    )
    number = words.source_numbers[source.name]
    return f'<b id="source-{source.name}">S{number}</b> {safe(" ".join(said))}' + (
        f" <i>It gives:</i> {gives}." if gives else ""
    )
