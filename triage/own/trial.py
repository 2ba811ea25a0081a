"""What is not known to have passed its check is checked before use; what fails is closed or set aside."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from triage.guide.files import OWN, digest_of
from triage.guide.kept import in_other_words
from triage.guide.known import Known, known_as
from triage.guide.model import Guide, Read
from triage.guide.read import read_guide
from triage.own.closing import closed, failing, grave, notice
from triage.own.judging import judged
from triage.problems import Problem, errors
from triage.review.proved import failed, found, keep, keep_failed
from triage.review.statements import seals_of, statements_of


@dataclass(frozen=True)
class Tried:
    """What came of a check: the guide as read, what is wrong with it, and the topics that must be closed."""

    guide: Guide
    problems: tuple[Problem, ...]
    failing: frozenset[str]
    first: str = ""
    """The first mistake, as it is told."""


def tried(
    root: Path, own: Path | None, cache: Path | None, digest: str | None, other_words: bool = True
) -> Read:
    """Return the guide for use. It is checked now, and kept as known where it passes."""
    read = read_guide(root, own=own)
    if own and (read.guide is None or errors(read.problems)):
        first = read.unreadable or str(next(iter(errors(read.problems)), ""))
        return _without(root, cache, other_words, first)
    if read.guide is None:
        return read
    came = _remembered(read.guide, digest, cache) or on_trial(root, own, read.guide)
    passed = None
    if cache and digest:
        with suppress(OSError):
            passed = _remember(came, own, digest, cache)
    if own and came.failing == frozenset(read.guide.topics):  # the shipped guide is better than none
        return _without(root, cache, other_words, came.first)
    shown = in_other_words(read, own, other_words).guide if own else read.guide
    assert shown is not None
    shut = closed(shown, came.failing) if came.failing else shown
    what = Known(passed, (root, own) if own else (root,), own, notice(shown, came.failing))
    return Read(replace(shut, known=what), ())


def _remember(came: Tried, own: Path | None, digest: str, cache: Path) -> Path | None:
    """Keep what came of a trial; return the file with the seals where all of it passed."""
    if came.failing:
        keep_failed(digest, (came.first, *sorted(came.failing)), cache)
        return None
    worded = in_other_words(Read(came.guide, ()), own).guide if own else came.guide
    return keep(digest, seals_of(statements_of(worded)), cache) if worded else None


def _remembered(guide: Guide, digest: str | None, cache: Path | None) -> Tried | None:
    """Return what came of an earlier trial of the very same guidance that failed."""
    kept = failed(digest, cache) if digest and cache else ()
    shut = frozenset(kept[1:]) & guide.topics.keys()
    return Tried(guide, (), shut, kept[0]) if shut else None


def on_trial(root: Path, own: Path | None, guide: Guide) -> Tried:
    """Hold a guide that could be read to its check, and an own folder to what it may do.

    Words of another language are held to nothing but their figures: the check can't read them.
    """
    from triage.check import prove

    checked = in_other_words(Read(guide, ()), own, another_language=False).guide if own else guide
    assert checked is not None
    problems = list(grave(prove(checked).problems))
    moved: tuple[str, ...] = ()
    statements = statements_of(guide)
    base = read_guide(root).guide if own else None
    if own and base:
        before = statements_of(base)
        moved = tuple(k for k, each in statements.items() if k not in before or before[k].own != each.own)
        problems += grave(judged(base, guide, own))
    if not problems:
        return Tried(guide, (), frozenset())
    problems.sort(key=lambda each: (not each.place.file.startswith(OWN), each))
    return Tried(guide, tuple(problems), failing(guide, problems, statements, moved), str(problems[0]))


def _without(root: Path, cache: Path | None, other_words: bool, first: str) -> Read:
    """Return the shipped guide, where an own folder can't be used, and say so on every page."""
    digest = digest_of(root)
    passed = found(digest, root, cache) if digest else None
    shipped = read_guide(root) if passed else tried(root, None, cache, digest, other_words)
    said = f"Your own folder has a mistake and is NOT in use; the shipped guide is shown. {first}"
    before = shipped.guide.known if shipped.guide else None
    told = f"{before.notice} {said}".strip() if before else said
    return known_as(shipped, Known(before.seals_in if before else passed, (root,), None, told))
