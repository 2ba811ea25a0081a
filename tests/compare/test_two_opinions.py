"""The search and the naive opinion must find the same pairs of ends, whatever two guides say.

For many more guides than a test run takes:

    COMPARE_GUIDES=20000 python -m pytest tests/compare/test_two_opinions.py --hypothesis-seed=1
"""

from __future__ import annotations

import os
from random import Random

from hypothesis import HealthCheck, given, reject, settings
from hypothesis import strategies as st

from tests.compare.changes import changed
from tests.compare.naive import Came, TooMany, pairs, so_far
from tests.compare.pairs import differences, differing, pair_of, pairs_found, pairs_told
from tests.published.rich_guides import rich_guides
from triage.check.structure import endless_loops
from triage.compare import compare
from triage.guide.model import Guide
from triage.walk import Move, NotNow, Walk

ASKED_FOR = os.environ.get("COMPARE_GUIDES")
MANY = settings(
    max_examples=int(ASKED_FOR or 300),
    derandomize=not ASKED_FOR,
    deadline=None,
    database=None,
    suppress_health_check=list(HealthCheck),
)
"""The same guides in every run, unless a number of others is asked for."""

MOST_LAMBS = 3000
"""Guides with more lambs than this are left out, for the sake of time."""


def naive_pairs(old: Guide, new: Guide) -> set[tuple[Came, Came]]:
    """Return what some lamb comes to in both guides, or leave the guides out."""
    if list(endless_loops(new)):
        reject()
    try:
        return pairs(old, new, MOST_LAMBS)
    except TooMany:
        reject()


def walked(guide: Guide, moves: tuple[Move, ...], end: str) -> Came:
    """Return what the real walk comes to by these moves; where it can't go on, it is only not over yet."""
    walk = Walk(guide, moves)
    try:
        if end:
            return walk.node.name, walk.state.urgency
        assert not walk.finished
        return "", walk.state.urgency
    except NotNow:
        return "", so_far(walk)


@MANY
@given(rich_guides(most=8), st.randoms(use_true_random=False))
def test_the_search_finds_every_pair_of_ends_and_no_other(guide: Guide, dice: Random) -> None:
    """Followed to the end everywhere, it finds all that any lamb comes to in both guides, and nothing else."""
    new = changed(guide, dice)
    naive = naive_pairs(guide, new)
    assert pairs_found(guide, new) == naive


@MANY
@given(rich_guides(most=8), st.randoms(use_true_random=False))
def test_each_difference_is_told_once_and_nothing_else_is(guide: Guide, dice: Random) -> None:
    """What is left aside as alike hides no difference, and each one is told with a lamb that shows it."""
    new = changed(guide, dice)
    naive = naive_pairs(guide, new)
    comparison = compare(guide, new)
    told = pairs_told(comparison)
    assert len(told) == len(set(told))
    assert set(told) == differing(guide, new, naive)
    for each in differences(comparison):
        for of, walk, pair in ((guide, each.old_walk, 0), (new, each.new_walk, 1)):
            came = pair_of(each)[pair]
            if came[0] or walk or not of.front.unless_told:  # else it stops where it is told what it is about
                assert walked(of, walk, came[0]) == came
