"""What the engine of the checks finds in a guide, in the form in which the naive engine tells it too."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from tests.published.naive import Replay, along
from tests.published.naive_claims import Broken
from triage.answers import Answers, Stopped, follow, read_answers
from triage.check import dead, safety, unsure, urgency
from triage.check.search.searched import Searched
from triage.check.search.states import SILENT
from triage.clock import Now
from triage.entry import AnswerReader
from triage.guide.model import Guide
from triage.problems import Place, Problem
from triage.walk import Answer, Move, Walk

Told = tuple[Place, str]
"""Where something is wrong, and the urgency that is spoken of."""

Easy = tuple[Place, str, str]
"""A branch for "not sure", the urgency that it is sure of, and that of the most worrying known answer."""

NOW = Now(datetime(2026, 3, 1, tzinfo=UTC), UTC)


@dataclass(frozen=True)
class Found:
    """Everything that both engines must agree on in any guide."""

    met: frozenset[str]
    """Every node that some walk comes to, ends among them, shown or passed in silence."""
    taken: frozenset[tuple[str, int, bool]]
    """Each branch taken, by node and place, and whether in silence."""
    broken: frozenset[Broken]
    """All that some lamb breaks at a page."""
    no_unsure: frozenset[Place]
    dead_branches: frozenset[Place]
    no_lamb: frozenset[Place]


@dataclass(frozen=True)
class Urgent:
    """What both must agree on besides, where every answer has a way on: which rules prove nothing, what is
    certain, and how long walks are."""

    walks: int
    idle: frozenset[str]
    """The rules that prove nothing."""
    longest: Mapping[str, int]
    """For each end the most different screens of a walk to it."""
    easy: frozenset[str]
    """The questions at which "not sure" is the easy way out."""
    late: frozenset[Told]
    understated: frozenset[Told]
    danger_top: frozenset[Place]


def found_by_search(searched: Searched) -> Found:
    """Return what the engine of the checks finds."""
    names = searched.states.ways.names
    return Found(
        frozenset(names[at] for at in searched.states.at),
        frozenset(
            (names[at], index, edge.answer == SILENT)
            for (at, index), ways in searched.taken.items()
            for _, edge in ways
        ),
        frozenset(broken_by_search(searched)),
        _places(unsure.missing(searched)),
        _places(dead.branches(searched)),
        _places(dead.nodes(searched)),
    )


def broken_by_search(searched: Searched) -> dict[Broken, Problem]:
    """Return all that the engine of the checks finds broken, with the problem that tells it."""
    rules = searched.guide.rules
    claims = searched.states.broken
    return {
        (claim.rule, claim.node, "" if claim.rule in rules else claim.parts[0].finding): problem
        for claim, problem in zip(claims, safety.broken(searched), strict=True)
    }


def walked(guide: Guide, problem: Problem) -> Replay:
    """Return the walk that a problem is told with, as a person would type it and the project reads it.

    Every answer in it must be understood, and be asked for.
    """
    answers: Answers | list[Problem] = Answers("walk.yaml", {})
    if problem.walk:  # a page shown before the first question needs no answers
        answers = read_answers(problem.walk, "walk.yaml", guide)
    assert isinstance(answers, Answers), answers
    came = follow(Walk(guide), answers, AnswerReader(guide, "metric", NOW))
    why, moves = (came.why, came.walk.moves) if isinstance(came, Stopped) else ("", came.moves)
    given = sum(map(len, answers.texts.values()))
    assert given == sum(isinstance(move, Answer) for move in moves), f"{problem}\n{problem.walk}\n{why}"
    return replayed(guide, moves)


def replayed(guide: Guide, moves: Sequence[Move]) -> Replay:
    """Return one walk with everything that it passes."""
    return Replay(guide, along(moves))


def urgent_by_search(searched: Searched) -> Urgent:
    """Return what the engine of the checks finds of urgency and length."""
    return Urgent(
        searched.onward.walks,
        frozenset(re.findall(r"rule '(\S+)'", problem.what)[0] for problem in safety.idle(searched)),
        {end: len(shown) for end, shown in searched.longest().items()},
        frozenset(easy_by_search(searched)),
        frozenset((each.place, urgency_in(each)) for each in urgency.late(searched)),
        frozenset((each.place, urgency_in(each)) for each in urgency.understated(searched)),
        _places(urgency.danger_signs(searched)),
    )


def easy_by_search(searched: Searched) -> dict[str, Easy]:
    """Return each question with an easy "not sure"; of its walks the engine tells one."""
    return dict(map(easy_in, unsure.too_easy(searched)))


def easy_in(problem: Problem) -> tuple[str, Easy]:
    """Return the question that a problem with "not sure" is about, and what it says."""
    _, mine, node, worst = re.findall(r"'([^']*)'", problem.what)
    return node, (problem.place, mine, worst)


def urgency_in(problem: Problem) -> str:
    """Return the urgency that a problem says to write."""
    return str(re.findall(r"(?:at_least|end): (\S+)$", problem.what)[0])


def _places(problems: Iterable[Problem]) -> frozenset[Place]:
    return frozenset(problem.place for problem in problems)
