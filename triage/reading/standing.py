"""How a statement stands with vets, as its page says it."""

from __future__ import annotations

from triage.guide.model import Guide


def standing_line(guide: Guide, key: str) -> str:
    """Return how the statement of a key stands in review, in a sentence; an empty text says nothing of it."""
    from triage.review.of import standing

    found = standing(guide, key)
    return " ".join(part for part in (found.words, found.objection, *found.notes) if part)
