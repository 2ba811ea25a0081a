"""Why each statement changed, as the editor of the new guide says; only this knows where that stands."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from triage.guide.find import Folder

NO_REASON = "No reason is given."


def reasons_in(folder: Folder, edition: str) -> Mapping[str, str]:
    """Return the reason for each changed statement, by its key; that of this edition before any older one."""
    from triage.review.changes import reasons_of

    return {**reasons_of(folder), **reasons_of(folder, edition)}


def told(reasons: Mapping[str, str], keys: Iterable[str]) -> str:
    """Return the reasons that are given for some statements, each once, or that none is given."""
    given = dict.fromkeys(reasons[key] for key in keys if key in reasons)
    return " ".join(given) or NO_REASON
