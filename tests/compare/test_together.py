"""What one cause brings to one page is told together: shorter, and with nothing left out."""

from __future__ import annotations

from dataclasses import replace

from triage.compare import compare
from triage.compare.report.compared import Compared, Edition
from triage.compare.report.names import Names
from triage.compare.report.sections import sections
from triage.guide.model import Guide


def test_told_together_nothing_is_left_out(guide: Guide) -> None:
    """Every way from a page to a page stands in one entry with its cause, and the count is of them all."""
    chill = replace(guide.numbers["severe-chill"], value=36.5)
    new = replace(guide, numbers={**guide.numbers, "severe-chill": chill})
    came = compare(guide, new)
    assert len(came.elsewhere) > 100

    told = next(
        each
        for each in sections(Compared(Edition(guide, "old"), Edition(new, "new"), came))
        if each.name == "elsewhere"
    )

    names = Names(guide, "metric")
    ways = {(names.page(each.old_end), names.page(each.new_end)) for each in came.elsewhere if each.new_page}
    entries = [dict.fromkeys(each.lines) for each in told.entries]
    together = {
        (came_to, comes_to)
        for lines in entries
        for label, came_to in lines
        if label == "Came to"
        for other, comes_to in lines
        if other == "Comes to"
    }
    assert ways <= together
    assert told.count == len(came.elsewhere) + len(came.on_the_way)
    assert len(told.entries) < told.count / 4
    assert all(entry.lamb for entry in told.entries)
