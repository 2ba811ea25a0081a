"""What must be said on every page: the lambs that are due for a look, and that something is not kept."""

from __future__ import annotations

from collections.abc import Mapping

from triage.casebook.failing import NotKept
from triage.casebook.rows import Look
from triage.page.inert import inert
from triage.session.keeping import Keeping
from triage.walk import Walk

WATCHED = 50
"""Looks watched at a time, the first due first."""

IN_HAND = "this lamb"


def looks_now(keeping: Keeping, walk: Walk) -> Mapping[str, tuple[str, Look]]:
    """Return the looks that are set, by case, each with the lamb's name. Without a casebook, this walk's."""
    looks = keeping.book.looks(WATCHED) if keeping.book else ()
    kept = () if isinstance(looks, NotKept) else looks
    found = {case: (inert(name, 24), look) for case, name, look in kept}
    if keeping.why_not or not keeping.book or isinstance(looks, NotKept):
        # What could not be kept rings all the same, while the guide is open.
        for name, look in keeping.unkept_looks(walk):
            found[f"{name} {look.due}"] = (inert(name, 24) or IN_HAND, look)
    return found


def alarm_line(keeping: Keeping, due: str) -> str:
    """Return the line that stands on every page, or an empty text."""
    lines = []
    if due:
        lines.append(f"Look again now: {inert(due, 60)}.")
    if keeping.why_not:
        lines.append(f"Not kept: {keeping.why_not}. The guide works on; write down what matters.")
    return " ".join(lines)
