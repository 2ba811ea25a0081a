"""What is held of a guide's upkeep: each change explained, no signature tampered with, nothing overdue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date

from triage.guide.find import Folder
from triage.guide.model import Guide
from triage.problems import Place, Problem
from triage.review.changes import read_changes
from triage.review.dates import overdue
from triage.review.editions import read_cut, unexplained
from triage.review.sittings import read_sittings
from triage.review.statements import Statement, statements_of


def upkeep(
    folder: Folder, guide: Guide, today: date, statements: Mapping[str, Statement] | None = None
) -> Iterator[Problem]:
    """Yield every problem of a guide's upkeep; a folder of which no edition was cut has no changes yet."""
    changes = read_changes(folder)
    yield from changes.problems
    _, ill = read_sittings(folder)
    yield from (replace(problem, weight="warning") for problem in ill)
    late = overdue(guide.front, today)
    if late:
        yield Problem(guide.front.place or Place("guide.yaml"), late, "overdue", "warning")
    cut = read_cut(folder)
    if cut and not changes.problems:
        yield from unexplained(cut, statements or statements_of(guide), guide.front.edition, changes)
