"""All checks over one guide."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from triage.check import coverage, danger, ends, knowledge, numbers, screens, structure
from triage.check.tally import Tally
from triage.guide.model import Guide
from triage.problems import Problem, errors

Check = Callable[[Guide], Iterator[Problem]]

CHECKS: tuple[Check, ...] = (
    structure.unreachable,
    structure.dead_ends,
    structure.endless_loops,
    structure.unused,
    coverage.branches,
    coverage.unsure,
    knowledge.amounts_known,
    danger.in_front,
    danger.top_urgency,
    numbers.within_published,
    numbers.support,
    numbers.unused,
    numbers.in_prose,
    ends.complete,
    screens.too_many_steps,
    screens.too_long,
    screens.danger_keys,
)


@dataclass(frozen=True)
class Proof:
    """What came of checking a guide: every problem, and the counts when it is sound."""

    problems: tuple[Problem, ...]
    tally: Tally | None


def prove(guide: Guide) -> Proof:
    """Hold a guide to everything that must hold of it."""
    problems = tuple(check(guide))
    return Proof(problems, None if errors(problems) else Tally.of(guide))


def check(guide: Guide) -> list[Problem]:
    """Return every problem that any check finds, in the order of their places."""
    return sorted({problem for each in CHECKS for problem in each(guide)})
