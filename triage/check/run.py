"""All checks over one guide: those that look at its parts, and those that look at every walk."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from time import perf_counter

from triage.check import (
    coverage,
    cupboard,
    danger,
    dead,
    ends,
    limit,
    numbers,
    practice,
    safety,
    screens,
    structure,
    tags,
    unsure,
    urgency,
)
from triage.check.search.searched import Searched, search
from triage.check.tally import Tally
from triage.check.wording import items, orders, reading, trade, unwritten
from triage.guide.ahead import read_ahead
from triage.guide.model import Guide
from triage.problems import Problem, errors

Check = Callable[[Guide], Iterator[Problem]]
WalkCheck = Callable[[Searched], Iterator[Problem]]

CHECKS: tuple[Check, ...] = (
    structure.unreachable,
    structure.dead_ends,
    structure.unused,
    coverage.branches,
    danger.in_front,
    danger.unlisted,
    numbers.within_published,
    numbers.support,
    numbers.unused,
    numbers.in_prose,
    ends.complete,
    ends.calls_as_it_says,
    ends.must_say,
    screens.too_many_steps,
    screens.danger_keys,
    tags.hidden,
    tags.stale,
    items.too_many,
    reading.long_sentences,
    reading.long_on_average,
    reading.grades,
    orders.vague,
    trade.unexplained,
    unwritten.left,
    trade.unused,
    cupboard.needed,
    cupboard.covered,
    cupboard.tags,
    cupboard.shared_words,
    cupboard.certain,
    practice.cases,
    practice.deeds,
    practice.openings,
)

PART_CHECKS: tuple[Check, ...] = (
    coverage.branches,
    numbers.within_published,
    numbers.support,
    numbers.in_prose,
    ends.complete,
    ends.calls_as_it_says,
    ends.must_say,
    screens.too_many_steps,
    items.too_many,
    reading.long_sentences,
    orders.vague,
    unwritten.left,
)
"""What can be held true of parts alone, while others have mistakes."""

WALK_CHECKS: tuple[WalkCheck, ...] = (
    safety.broken,
    safety.idle,
    safety.contradicting,
    screens.too_long,
    unsure.missing,
)
WALK_CHECKS_ASIDE: tuple[WalkCheck, ...] = (
    unsure.too_easy,
    urgency.danger_signs,
    urgency.late,
    urgency.understated,
    dead.branches,
    dead.nodes,
)
"""About as much work as the others, for a second process where there is one."""


@dataclass(frozen=True)
class Proof:
    """What came of checking a guide: every problem, and the counts when it is sound."""

    problems: tuple[Problem, ...]
    tally: Tally | None


def prove(guide: Guide, two: bool = False) -> Proof:
    """Hold a guide to everything that must hold of it.

    With `two` the work is shared with a child process, which is only for a program that has no threads.
    """
    began = perf_counter()
    problems = {*structure.endless_loops(guide), *structure.rounds(guide)}
    if problems:  # there are walks without an end, or nearly so, and they can't all be searched
        return Proof(tuple(sorted(problems | _over_parts(guide))), None)
    parts = _aside(lambda: _over_parts(guide), two)
    searched = search(guide)
    too_many = set(limit.reached(searched))
    if too_many:
        return Proof(tuple(sorted(too_many | parts())), None)
    others = _aside(lambda: _held(searched, WALK_CHECKS_ASIDE), two)
    problems = _held(searched, WALK_CHECKS)
    counted = Tally.of(searched)  # before the others are waited for
    problems |= others() | parts()
    tally = None if errors(problems) else replace(counted, seconds=perf_counter() - began)
    return Proof(tuple(sorted(problems)), tally)


def _over_parts(guide: Guide) -> set[Problem]:
    return {problem for each in CHECKS for problem in each(guide)}


def _aside(work: Callable[[], set[Problem]], two: bool) -> Callable[[], set[Problem]]:
    """Return what gives the result of some work: begun now in a child, or done when it is asked for."""
    return read_ahead(work) if two else work


def check_parts(part: Guide) -> list[Problem]:
    """Return every problem that can be told of the parts of a guide which has mistakes elsewhere."""
    return sorted({problem for each in PART_CHECKS for problem in each(part)})


def _held(searched: Searched, checks: tuple[WalkCheck, ...]) -> set[Problem]:
    return {problem for each in checks for problem in each(searched)}


def check(guide: Guide) -> list[Problem]:
    """Return every problem that any check finds, in the order of their places."""
    return list(prove(guide).problems)
