"""Who notices damage: the check, and the tests against published figures."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from types import ModuleType
from unittest.mock import patch

from tests.published import (
    test_dryness,
    test_first_milk_window,
    test_looks,
    test_numbers,
    walks,
)
from triage.check.limit import reached
from triage.check.run import CHECKS, WALK_CHECKS, WALK_CHECKS_ASIDE
from triage.check.search.searched import search
from triage.check.structure import endless_loops, rounds
from triage.guide.model import Guide, Read
from triage.problems import Problem

PUBLISHED: tuple[ModuleType, ...] = (test_numbers, test_looks, test_dryness, test_first_milk_window)


def noticed_by_the_check(guide: Guide) -> str:
    """Return the rule of the first problem that the check finds, or an empty text.

    The same checks as `triage check` runs, one after the other, stopped at the first problem.
    """
    problem = next(_problems(guide), None)
    return problem.rule if problem else ""


def _problems(guide: Guide) -> Iterator[Problem]:
    for check in CHECKS:
        yield from check(guide)
    yield from endless_loops(guide)
    yield from rounds(guide)
    searched = search(guide)
    yield from reached(searched)
    for walk_check in (*WALK_CHECKS, *WALK_CHECKS_ASIDE):
        yield from walk_check(searched)


def noticed_by_the_published(guide: Guide) -> str:
    """Return the first test against published figures that fails on a guide, or an empty text."""
    walks.shipped.cache_clear()
    try:
        with patch.object(walks, "read_guide", lambda folder: Read(guide, ())):
            return next((name for name, test in _tests() if _fails(test)), "")
    finally:
        walks.shipped.cache_clear()


def _tests() -> Iterator[tuple[str, Callable[[], None]]]:
    for module in PUBLISHED:
        for name, test in vars(module).items():
            if name.startswith("test_") and callable(test) and not test.__code__.co_argcount:
                yield name, test


def _fails(test: Callable[[], None]) -> bool:
    try:
        test()
    except Exception:  # a guide that a test can't even walk is noticed
        return True
    return False
