"""The report for people, as lines of text: what is out of a text stands in [- -], what is in it in [+ +]."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from triage.compare.report.compared import Compared, Edition
from triage.compare.report.sections import Entry, Marks, Section, sections
from triage.page.inert import inert

WIDTH = 76
SAME = "Nothing differs."
PARTLY = (
    "Not every situation was followed: these guides share so little that there are too many. What is told "
    "is true, but there may be more that is not told."
)
SHOWS_IT = "A lamb that shows it:"


def as_text(compared: Compared) -> str:
    """Return the whole report."""
    return "".join(f"{line}\n" for line in _lines(compared))


def _lines(compared: Compared) -> Iterator[str]:
    yield from _edition("Old guide", compared.old)
    yield from _edition("New guide", compared.new)
    came = compared.comparison
    if came.same:
        yield SAME
        return
    if not came.complete:
        yield ""
        yield from _wrapped(PARTLY)
    told = sections(compared)
    yield ""
    for number, section in enumerate(told, 1):
        yield from _wrapped(f"{number}. {_counted(section)}")
    for number, section in enumerate(told, 1):
        if section.entries:
            yield ""
            yield from _section(number, section)


def _edition(label: str, edition: Edition) -> Iterator[str]:
    yield from _wrapped(f"{label}: {edition.words} {edition.standing}".rstrip())
    if edition.warning:
        yield from _wrapped(edition.warning, "  ")


def _counted(section: Section) -> str:
    return f"{section.title}: {section.count:,}." if section.entries else section.none


def _section(number: int, section: Section) -> Iterator[str]:
    yield from _wrapped(f"{number}. {_counted(section)}")
    if section.lead:
        yield from _wrapped(section.lead, "   ")
    for entry in section.entries:
        yield ""
        yield from _entry(entry)


def _entry(entry: Entry) -> Iterator[str]:
    yield from _wrapped(entry.head, "   ")
    for label, text in entry.lines:
        yield from _wrapped(f"{label}: {text}", "     ")
    if entry.marks:
        yield from _wrapped(in_signs(entry.marks), "     ")
    if entry.lamb:
        yield f"     {SHOWS_IT}"
        for asked, answer in entry.lamb:
            yield from _wrapped(f"{asked}: {answer}", "       ")
    if entry.why:
        yield from _wrapped(f"Why: {entry.why}", "     ")


def in_signs(marks: Marks) -> str:
    """Return a text with its marks as signs."""
    signs = {"same": "{}", "out": "[-{}-]", "in": "[+{}+]"}
    return " ".join(signs[mark].format(words) for mark, words in marks)


def _wrapped(text: str, indent: str = "") -> list[str]:
    hanging = f"{indent}  " if indent else ""
    return textwrap.wrap(
        inert(text), WIDTH, initial_indent=indent, subsequent_indent=hanging, break_on_hyphens=False
    )
