"""Why the vet is called, in a few words: the sign, and not the age that decided it."""

from __future__ import annotations

from tests.published.walks import shipped
from triage.page.page import page_of
from triage.walk import Walk


def test_an_age_is_not_what_one_phones_for() -> None:
    """A lamb that ate grain is called for because of the grain, though its age decided how soon."""
    walk = Walk(shipped())
    for value in ("none", 39.4, "sucks", "other", "ate"):
        walk = walk.answer(value)
    walk = walk.answer("grain")
    while walk.state.urgency != walk.guide.top and not walk.finished:
        walk = walk.answer(35 * 24.0)

    page = page_of(walk, "metric")
    assert page.urgency is not None
    assert page.urgency.name == "vet-now"
    assert not page.because.startswith("Age")
    assert page.because
