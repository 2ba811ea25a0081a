"""What if one thing were otherwise: the nearest neighbours of a made-up lamb."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

from triage.facts import Value
from triage.guide.model import Finding
from triage.practice.case import Case
from triage.practice.drawing import Drawing
from triage.practice.questions import supposed_walk
from triage.walk import Answer, Walk

FARTHEST = 4.0
"""How many times an age may be taken for."""

TRIES = 4
"""Figures drawn for a measurement, so that more than one band has its turn."""


def suppositions(case: Case, drawing: Drawing, rng: Random) -> Iterator[tuple[Answer, Walk]]:
    """Yield each one answer thought otherwise that leads to another page, with the walk to it."""
    # What an act made forgotten was true at two times, and a single "if" would not say at which.
    once = [name for name in case.asked if name in case.now and not is_twice(case, name)]
    rng.shuffle(once)
    for name in once:
        for value in dict.fromkeys(_others(drawing.guide.findings[name], case, drawing, rng)):
            walk = supposed_walk(case, Answer(name, value))
            if walk is not None and walk.node.name != case.page.name and not drawing.clashes(walk):
                yield Answer(name, value), walk


def is_twice(case: Case, finding: str) -> bool:
    """Whether a finding was asked again on the way."""
    return sum(isinstance(move, Answer) and move.finding == finding for move in case.walk.moves) > 1


def _others(finding: Finding, case: Case, drawing: Drawing, rng: Random) -> list[Value]:
    if finding.choices:
        return [name for name in finding.choices if name != case.now[finding.name]]
    was = case.now[finding.name]
    drawn = (drawing.likely.draw(finding, case.now, rng) for _ in range(TRIES))
    return [value for value in drawn if isinstance(value, float) and _near(finding, was, value)]


def _near(finding: Finding, was: Value, value: float) -> bool:
    """Whether a lamb could as well have been so: an age far from its own would make it another animal."""
    if finding.measure != "h" or not isinstance(was, float):
        return True
    return was / FARTHEST <= value <= was * FARTHEST
