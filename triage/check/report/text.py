"""The report for people: a line for each problem, the walk that shows it, and the counts at the end."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.report.checked import Checked, visible
from triage.problems import Problem

SHOWS_IT = "  The shortest walk that shows it; 'triage walk --answers FILE' replays it from a file:"


def as_text(checked: Checked) -> str:
    """Return every problem as `file:line:column: message [rule]`; of a sound guide, the summary too."""
    lines = [line for problem in checked.problems for line in _lines(problem)]
    if checked.sound and checked.tally:
        lines += checked.tally.lines()
    return "".join(f"{line}\n" for line in lines)


def _lines(problem: Problem) -> Iterator[str]:
    yield visible(str(problem))
    if problem.walk:
        yield SHOWS_IT
        yield from (f"    {visible(line)}" for line in problem.walk.splitlines())
