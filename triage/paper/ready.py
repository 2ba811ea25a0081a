"""Who is ready for a night turn, as a page for the owner. It takes plain values."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from triage.paper.pieces import Part, Rows, cell, head_of, listed, row, text, whole
from triage.paper.setting import CELL, HEAD, LABEL, LEAD, NOTE, STRONG, TITLE

NAME = "Ready for a night turn"
COLUMNS = (40.0, 30.0, 38.0, 38.0, 38.0)
HEADS = ("Who", "Pass mark met", "Danger cases, missed", "Called too mild", "Called too grave")


@dataclass(frozen=True)
class Row:
    """One helper, all of it in words."""

    name: str
    ready: bool
    danger: str
    under: str
    over: str
    last: str
    wanting: tuple[str, ...] = ()
    weak: tuple[str, ...] = ()


def ready_parts(mark: str, rows: Sequence[Row], caution: str) -> Iterator[Part]:
    """Yield the table of all helpers, and under it what each still wants and is weak in."""
    yield text(NAME, TITLE, "h1")
    yield text(mark, LEAD)
    yield text(caution, NOTE)
    if not rows:
        yield text("Nobody has practised yet.", LEAD)
        return
    table = tuple(
        row(
            [
                cell(words, STRONG if not at else CELL, width)
                for at, (words, width) in enumerate(zip(_cells(each), COLUMNS, strict=True))
            ]
        )
        for each in rows
    )
    yield Rows(COLUMNS, head_of(HEADS, COLUMNS, LABEL), table)
    for each in rows:
        told = [text(f"{each.name}: last practised {each.last}.", HEAD, "h2")]
        if each.wanting:
            told += [text("Still wanting", LABEL), listed(each.wanting, NOTE)]
        if each.weak:
            told += [text("Weak spots", LABEL), listed(each.weak, NOTE)]
        yield whole(told)


def _cells(each: Row) -> tuple[str, ...]:
    return (each.name, "yes" if each.ready else "not yet", each.danger, each.under, each.over)
