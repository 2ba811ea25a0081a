"""Pages of figures: numbers with what each source says, sums with lambs worked out, and sources."""

from __future__ import annotations

from triage.amounts import AMOUNTS
from triage.guide.model import COMMON_PRACTICE, FROM_MEMORY, Number, Source
from triage.page.page import Block
from triage.page.wall import Wall
from triage.reading.blocks import body, labelled, under
from triage.reading.kinds import who_wrote
from triage.reading.samples import sample_lines, working_lines
from triage.units import show

SAFER = {"higher": "The higher side is the safer one.", "lower": "The lower side is the safer one."}

GRADES = {
    "A": "Grade A: a paper that others of its field have judged, or its abstract.",
    "B": "Grade B: vet practice, a university, a government or a levy board, or a textbook.",
    "C": "Grade C: trade press that names a vet or an adviser.",
    "D": "Grade D: a firm, a farm's own pages, or no name; it may support a figure and never carries one.",
}

FIRST = (
    "With a lamb before you, open the guide: it asks first what decides. Vet, law and labels outrank this."
)

NO_SOURCE = {COMMON_PRACTICE: "Common practice, no source", FROM_MEMORY: "From memory, not checked"}


def number_blocks(wall: Wall, number: Number) -> list[Block]:
    """The value of a number, which side is safer, and what each source says."""
    return [
        Block("body", f"This guide takes {wall.number(number.name)}. {SAFER.get(number.safer, '')}".strip()),
        *under("What each source says", [Block("body", each, "-") for each in _published(wall, number)]),
        *labelled(wall, "Why this value", number.note),
    ]


def _published(wall: Wall, number: Number) -> list[str]:
    def rank(name: str) -> str:
        source = wall.guide.sources.get(name)
        return source.grade if source else "Z"

    names = sorted(number.published, key=rank)
    return [f"{span_words(wall, number, name)}: {_by(wall, name)}." for name in names]


def span_words(wall: Wall, number: Number, source: str) -> str:
    """Return what a source says of a number: one value, or from one to another."""
    low, high = (show(edge, number.unit, wall.system) for edge in number.published[source])
    return low if low == high else f"{low} to {high}"


def _by(wall: Wall, name: str) -> str:
    source = wall.guide.sources.get(name)
    if source is None:
        return NO_SOURCE.get(name, name)
    who = who_wrote(source) if source.by else f"{source.title} {source.year}".strip()
    return f"{who.rstrip('.')}, grade {source.grade}"


def source_blocks(wall: Wall, source: Source) -> list[Block]:
    """A publication, what its grade means, and what it says of each number."""
    given = [number for number in wall.guide.numbers.values() if source.name in number.published]
    says = [f"{wall.fill(number.title)}: {span_words(wall, number, source.name)}." for number in given]
    place = ", ".join(part for part in (source.in_, source.year) if part)
    lines = (source.title, f"By {source.by}" if source.by else "", place, source.where, source.note)
    return [
        *(Block("body", f"{line.rstrip('.')}.") for line in lines if line),
        Block("body", GRADES.get(source.grade, f"Grade {source.grade}.")),
        *under("What it says of numbers", [Block("body", each, "-") for each in says]),
    ]


def sum_blocks(wall: Wall, name: str) -> list[Block]:
    """What a sum needs, what it comes to for a few lambs, and how one of them is worked out."""
    amount, findings = AMOUNTS[name], wall.guide.findings
    needs = [findings[each].label for each in amount.needs if each in findings]
    uses = [findings[each].label for each in amount.uses if each in findings]
    worked = (sample_lines(wall.guide, name, wall.system), working_lines(wall.guide, name, wall.system))
    few, line_by_line = ([Block("body", each, "-") for each in lines] for lines in worked)
    return [
        Block("caution", FIRST, "!"),
        *body(wall, f"It needs: {', '.join(needs)}." if needs else "It needs nothing of the lamb."),
        *body(wall, f"Where they are known it goes by these too: {', '.join(uses)}." if uses else ""),
        *under("For a few lambs", few),
        *under("How one of them is worked out", line_by_line),
    ]
