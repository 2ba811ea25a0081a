"""All who practise on a holding, and what each has shown."""

from __future__ import annotations

from triage.casebook.failing import NotKept
from triage.casebook.practice import PracticeBook
from triage.guide.model import Guide
from triage.holding.holding import Holding
from triage.practice.learner import Learner
from triage.practice.names import same
from triage.practice.readiness import PassMark, Readiness


def mark_of(holding: Holding) -> PassMark:
    """Return the holding's own pass mark, or the usual one."""
    return PassMark(*holding.pass_mark) if holding.pass_mark else PassMark()


def all_shown(
    guide: Guide, book: PracticeBook, mark: PassMark, name: str = ""
) -> list[tuple[Learner, Readiness]] | NotKept:
    """Return each helper, or the one of a name, with what was shown, or why that can't be read."""
    helpers = book.helpers()
    if isinstance(helpers, NotKept):
        return helpers
    learners = [Learner.of(each, book) for each in helpers if not name.strip() or same(each.name, name)]
    return [(each, Readiness(guide, each.shown, mark)) for each in learners]
