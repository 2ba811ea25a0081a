"""Days on which guidance is to be read again, whatever a clock says.

A day is a day wherever one is: it is compared as it stands on the calendar of the machine. A clock that
stands before the day of the edition is wrong, and then nobody can know whether the day has passed.
"""

from __future__ import annotations

from datetime import date

from triage.guide.model import Front


def overdue(front: Front, today: date) -> str:
    """Return a sentence where the guidance is overdue, or where the clock can't tell; else an empty text."""
    written, due = day_of(front.date), day_of(front.review_by)
    if due and written and today < written:
        return (
            f"This machine's clock says {today.isoformat()}, before this edition was made. "
            f"It was to be reviewed by {front.review_by}."
        )
    return past(front, today)


def past(front: Front, today: date) -> str:
    """Return a sentence where the guidance is overdue by this clock; else an empty text."""
    due = day_of(front.review_by)
    if due and today > due:
        return (
            f"Overdue: this guidance was to be reviewed by {front.review_by}. Ask your vet what has changed."
        )
    return ""


def day_of(text: str) -> date | None:
    """Return a day that is written year first, or None for any other text."""
    try:
        return date.fromisoformat(text) if len(text) == len("2026-01-01") else None
    except ValueError:
        return None
