"""A guide as it is to be signed: its statements, who signed them, and what changed in it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable, Mapping

    from triage.guide.find import Folder
    from triage.guide.model import Guide
    from triage.review.queue import Due
    from triage.review.sittings import Sitting
    from triage.review.standing import Review
    from triage.review.statements import Statement


@dataclass(frozen=True)
class Reviewed:
    """A guide as it is to be signed: the guide, where signatures go, and what an own folder changed in it."""

    guide: Guide
    folder: Path
    statements: Mapping[str, Statement]
    review: Review
    differing: Mapping[str, list[str]]
    """What an own folder changed, by statement: a line for each part that is other than shipped."""
    reasons: Mapping[str, str]
    """Why this edition changed a statement, as its editor says."""
    fresh: tuple[str, ...]
    """The statements that this edition changed or added, or that were changed since it was cut."""

    @property
    def moved(self) -> tuple[str, ...]:
        """The statements that an own folder changed or added."""
        return tuple(self.differing)

    @property
    def queue(self) -> tuple[Due, ...]:
        """All that is to be read, the most pressing first."""
        from triage.review.queue import queue_of

        return queue_of(self.guide, self.review, self.moved, self.fresh)


def read_reviewed(parsed: argparse.Namespace) -> Reviewed | Exit:
    """Read the guide as it is, also one that did not pass: whoever reads it may be about to mend it."""
    from triage.guide.find import knowledge_root
    from triage.guide.kept import in_other_words
    from triage.guide.known import Known
    from triage.guide.read import read_guide
    from triage.review.standing import Review
    from triage.review.statements import seals_of, statements_of

    root = parsed.guide or knowledge_root()
    own = None if parsed.guide else _own_folder()
    if isinstance(own, str):
        complain(own)
        return Exit.UNREADABLE
    laid = own if own and own.is_dir() else None
    read = read_guide(root, own=laid)
    if read.unreadable or read.guide is None:
        for line in [read.unreadable] if read.unreadable else map(str, read.problems):
            complain(line)
        complain("Nothing can be signed before that is mended.")
        return Exit.UNREADABLE if read.unreadable else Exit.PROBLEMS
    guide = in_other_words(read, laid).guide if laid else read.guide
    assert guide is not None
    guide = replace(guide, known=Known(reviews_in=(root, laid) if laid else (root,), own=laid))
    folders: list[Folder] = [root, laid] if laid else [root]
    statements = statements_of(guide)
    review = Review(seals_of(statements), _sittings(folders))
    reasons = _reasons(folders, guide.front.edition)
    fresh = (*reasons, *_uncut(root, statements))
    return Reviewed(guide, own or parsed.guide, statements, review, _moved(root, laid, guide), reasons, fresh)


def _reasons(folders: Iterable[Folder], edition: str) -> dict[str, str]:
    """Return why this edition changed what it changed, as its editors say."""
    from triage.review.changes import reasons_of

    found: dict[str, str] = {}
    for folder in folders:
        found |= reasons_of(folder, edition)
    return found


def _uncut(root: Folder, statements: Mapping[str, Statement]) -> tuple[str, ...]:
    """Return the statements that were changed since the edition was cut."""
    from triage.review.editions import moved_since, read_cut

    cut = read_cut(root)
    return moved_since(cut, statements).all if cut else ()


def _own_folder() -> Path | str:
    """Return where signatures under the shipped guide go: the own folder, also before there is one."""
    from triage.holding.place import Nowhere, holding_file, own_folder

    there = own_folder()
    if there:
        return there
    place = holding_file()
    if isinstance(place, Nowhere):
        return f"A signature has no place to go to, as {place.why}; set TRIAGE_OWN to a folder."
    return place.parent / "own"


def _sittings(folders: Iterable[Folder]) -> tuple[Sitting, ...]:
    """Return all sittings over the guide, and say which files count for nothing."""
    from triage.review.sittings import read_sittings

    found: list[Sitting] = []
    for folder in folders:
        sittings, problems = read_sittings(folder)
        found += sittings
        for problem in problems:
            complain(str(problem))
    return tuple(sorted(found, key=lambda each: each.on))


def _moved(root: Folder, own: Path | None, guide: Guide) -> dict[str, list[str]]:
    """Return the statements that an own folder changed or added, and what is other in each."""
    from triage.guide.read import read_guide
    from triage.review.differing import differing
    from triage.review.statements import values_of

    base = read_guide(root).guide if own else None
    if base is None:
        return {}
    before = values_of(base)
    told = {key: differing(before.get(key), value) for key, value in values_of(guide).items()}
    return {key: lines for key, lines in told.items() if lines}
