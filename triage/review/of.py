"""How a guide in use stands: its seals and its sittings, read when somebody asks, and once."""

from __future__ import annotations

from datetime import date
from functools import lru_cache
from typing import TYPE_CHECKING

from triage.guide.files import REVIEWS
from triage.guide.known import NEVER, Known
from triage.guide.model import Guide
from triage.review.dates import overdue
from triage.review.same import Same
from triage.review.standing import Review, Standing

if TYPE_CHECKING:
    from triage.review.sittings import Sitting


def review_of(guide: Guide) -> Review:
    """Return how a guide stands. Where it is not known to have passed a check its seals are worked out."""
    known = guide.known or Known()
    return _review(known) if known.seals_in else _worked_out(Same(guide))


@lru_cache(maxsize=4)
def _worked_out(same: Same) -> Review:
    from triage.review.statements import seals_of, statements_of

    return Review(seals_of(statements_of(same.guide)), _sittings(same.guide.known or Known()))


@lru_cache(maxsize=4)
def _sittings(known: Known) -> tuple[Sitting, ...]:
    folders = [folder for folder in known.reviews_in if (folder / REVIEWS).is_dir()]
    if not folders:
        return ()
    from triage.review.sittings import read_sittings

    found = [sitting for folder in folders for sitting in read_sittings(folder)[0]]
    return tuple(sorted(found, key=lambda each: each.on))


@lru_cache(maxsize=4)
def _review(known: Known) -> Review:
    from triage.review.proved import seals_in

    assert known.seals_in
    return Review(seals_in(known.seals_in), _sittings(known))


def standing(guide: Guide, key: str) -> Standing:
    """Return how one statement of a guide in use stands."""
    known = guide.known
    if known is None or not _sittings(known):
        return Standing("never", NEVER)
    review = review_of(guide)
    return review.of(key) if key in review.seals else Standing("never", NEVER)


def words_of(guide: Guide) -> str:
    """Return how a whole guide in use stands, in one sentence."""
    known = guide.known
    if known is None or not _sittings(known):
        return NEVER
    return review_of(guide).words


def standings(guide: Guide) -> dict[str, str]:
    """Return how each statement stands, in a sentence; nothing where nobody has signed anything."""
    known = guide.known
    if known is None or not _sittings(known):
        return {}
    review = review_of(guide)
    found = {key: review.of(key) for key in review.seals}
    return {key: f"{each.words} {each.objection}".strip() for key, each in found.items()}


def said_of(guide: Guide, today: date) -> str:
    """Return how a guide stands and, where it is overdue for another reading, that too."""
    return f"{words_of(guide)} {overdue(guide.front, today)}".strip()
