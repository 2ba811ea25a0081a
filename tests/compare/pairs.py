"""What the search finds, in the form in which the naive opinion tells it, and which pairs are differences."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from tests.compare.naive import Came
from triage.compare import Comparison, Difference
from triage.compare.sides import Sides
from triage.compare.states import STUCK
from triage.guide.model import End, Guide
from triage.problems import Place

Pair = tuple[Came, Came]


def pairs_found(old: Guide, new: Guide) -> set[Pair]:
    """Return every pair of ends that the search comes to when it leaves nothing aside."""
    sides = Sides.of(old, new)
    found = sides.search(leave_aside=False)
    assert found.complete
    return {
        (
            (_name(sides, 0, outcome.old), sides.scale.name(0, outcome.old_rank)),
            (_name(sides, 1, outcome.new), sides.scale.name(1, outcome.new_rank)),
        )
        for outcome in found.outcomes
    }


def _name(sides: Sides, side: int, at: int) -> str:
    return "" if at == STUCK else sides.paths[side].names[at]


def pairs_told(comparison: Comparison) -> list[Pair]:
    """Return every pair of ends that a comparison tells as a difference."""
    return [pair_of(each) for each in differences(comparison)]


def differences(comparison: Comparison) -> list[Difference]:
    """Return all differences of a comparison."""
    return [*comparison.less_urgent, *comparison.more_urgent, *comparison.elsewhere]


def pair_of(each: Difference) -> Pair:
    """Return one difference as a pair of ends."""
    return (each.old_end, each.old_urgency), (each.new_end, each.new_urgency)


def differing(old: Guide, new: Guide, pairs: Iterable[Pair]) -> set[Pair]:
    """Return the pairs that are differences: another urgency, another page, or other steps on the same page."""
    return {pair for pair in pairs if _differs(old, new, pair)}


def _differs(old: Guide, new: Guide, pair: Pair) -> bool:
    (before, urgency), (after, urgency_now) = pair
    if urgency != urgency_now or not (before and after):
        return urgency != urgency_now or before != after
    was, now = old.nodes[before], new.nodes[after]
    assert isinstance(was, End)
    assert isinstance(now, End)
    if before == after:
        return (_bare(was).do, was.look_again) != (_bare(now).do, now.look_again)
    return _bare(was) != _bare(now)


def _bare(end: End) -> End:
    """Return an end with all that its page shows, and nothing else."""
    nowhere = Place("")
    steps = tuple(replace(step, place=nowhere) for step in end.do)
    return replace(end, name="", do=steps, for_={}, must_say=(), sources=(), certainty="", topic="")
