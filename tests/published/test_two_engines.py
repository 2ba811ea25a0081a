"""Two engines that must agree: the search that proves the guide, and a naive replay of every walk.

The search merges lambs that nothing ahead tells apart; the replay merges nothing, and shares nothing with it
but the guide and the real walk. For many more guides than a test run takes:

    TWO_ENGINES_GUIDES=100000 python -m pytest tests/published/test_two_engines.py --hypothesis-seed=1
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from random import Random

import pytest
from hypothesis import HealthCheck, given, reject, settings

from tests.published.naive import Pick, Replay, TooManyWalks, telling_answers
from tests.published.naive_claims import least_moves
from tests.published.naive_found import (
    branches_taken,
    easy_by_replay,
    found_by_replay,
    screens,
    settled,
    slighted,
    untold_at,
    urgent_by_replay,
)
from tests.published.rare_guides import RARE
from tests.published.rich_guides import rich_guides
from tests.published.rich_parts import URGENCIES
from tests.published.two_engines import (
    broken_by_search,
    easy_by_search,
    easy_in,
    found_by_search,
    urgency_in,
    urgent_by_search,
    walked,
)
from tests.published.walks import shipped
from triage.check import unsure, urgency
from triage.check.search.searched import Searched, search
from triage.facts import Value
from triage.guide.model import Act, Ask, End, Guide, Node

ASKED_FOR = os.environ.get("TWO_ENGINES_GUIDES")
RICH = settings(
    max_examples=int(ASKED_FOR or 2000),
    derandomize=not ASKED_FOR,
    deadline=None,
    database=None,
    suppress_health_check=list(HealthCheck),
)
"""The same guides in every run, unless a number of others is asked for."""

MOST_POINTS = 2500
"""A guide with more to replay than this is left out, for the sake of time; few are."""


def agree(replay: Replay) -> None:
    """Hold the search of a guide to the replay of all its walks."""
    searched = search(replay.guide)
    assert searched.states.complete
    assert found_by_search(searched) == found_by_replay(replay)
    if not replay.stuck:
        assert urgent_by_search(searched) == urgent_by_replay(replay)
        assert set(searched.longest().values()) <= screens(replay)
        assert set(easy_by_search(searched).items()) <= easy_by_replay(replay)
        walks_show_what_is_told(replay, searched)


def walks_show_what_is_told(replay: Replay, searched: Searched) -> None:
    """Hold the walks told with problems to them: each shows its problem, and no shorter walk breaks a claim."""
    least = least_moves(replay)
    for key, problem in broken_by_search(searched).items():
        walk = walked(replay.guide, problem)
        assert least_moves(walk).get(key) == least[key], problem.walk
        blamed = re.findall(r"\(by the branch at (\S+)\)$", problem.what)
        assert {*blamed} <= {*map(str, branches_taken(walk))}, problem.what
    for problem in urgency.danger_signs(searched):
        assert problem.place in slighted(walked(replay.guide, problem)), problem.walk
    for problem in urgency.late(searched):
        assert problem.place in untold_at(walked(replay.guide, problem), urgency_in(problem)), problem.walk
    for problem in urgency.understated(searched):
        [end] = walked(replay.guide, problem).finished
        assert end.node.place == problem.place
    for problem in unsure.too_easy(searched):
        node, (place, mine, _) = easy_in(problem)
        assert (node, (place, mine)) in settled(walked(replay.guide, problem)), problem.walk


@RICH
@given(rich_guides())
def test_both_engines_agree_on_any_guide(guide: Guide) -> None:
    """Whatever a guide says, searching its merged states finds just what replaying each of its walks finds."""
    try:
        replay = Replay(guide, most=MOST_POINTS)
    except TooManyWalks:
        reject()
    agree(replay)


@pytest.mark.parametrize("guide", RARE.values(), ids=RARE)
def test_both_engines_agree_where_merging_is_delicate(guide: Guide) -> None:
    """Where few guides would show it, what is merged or told by search is what replaying all walks finds too."""
    agree(Replay(guide))


def slice_of(guide: Guide, way_in: str, size: int, dice: Random) -> Guide:
    """Return a guide of so many nodes of another, from one on, with ends where it is cut, and some rules."""
    kept: list[str] = []
    cut = [way_in]
    for _ in range(size):
        if cut:
            kept.append(cut.pop(dice.randrange(len(cut))))
            cut += [to for to in _targets(guide.nodes[kept[-1]]) if to not in {*kept, *cut}]
    nodes = {name: _as_end(guide.nodes[name], dice.choice(URGENCIES)) for name in cut}
    for name in kept:
        node = guide.nodes[name]
        nodes[name] = replace(node, at_most=1) if isinstance(node, Act) and node.at_most else node
    rules = {name: guide.rules[name] for name in dice.sample(sorted(guide.rules), 12)}
    return replace(guide, nodes=nodes, rules=rules, front=replace(guide.front, way_in=way_in, unless_told={}))


def _targets(node: Node) -> list[str]:
    """Return the nodes that one leads to, each once."""
    if isinstance(node, Ask):
        return list(dict.fromkeys(branch.go for branch in node.branches))
    return list(dict.fromkeys(filter(None, (node.then, node.else_)))) if isinstance(node, Act) else []


def _as_end(node: Node, urgency: str) -> Node:
    """Return an end in place of a node, with its steps."""
    if isinstance(node, End):
        return node
    steps, lamb = (node.steps, node.for_) if isinstance(node, Act) else ((), {})
    return End(node.name, node.topic, urgency, "Cut", steps, (), "Phone.", for_=lamb, place=node.place)


def slices(guide: Guide, dice: Random) -> Iterator[Replay]:
    """Yield a slice from each question on, replayed: half as large until it is small enough for that."""
    for name, node in guide.nodes.items():
        size = dice.randint(2, 24) if isinstance(node, Ask) else 0
        while size:
            try:
                yield Replay(slice_of(guide, name, size, dice), most=MOST_POINTS)
                break
            except TooManyWalks:
                size //= 2


def test_both_engines_agree_on_slices_of_the_shipped_guide() -> None:
    """From whatever question of the shipped guide on, the search finds what replaying all walks finds."""
    count = 0
    for replay in slices(shipped(), Random(20260301)):
        agree(replay)
        count += 1
    assert count > 100


def at_random(values: Mapping[str, Sequence[Value]], dice: Random) -> Pick:
    """Return what picks one of the telling answers each time."""
    return lambda walk, node: [dice.choice(values[node.finding])]


def test_no_walk_at_random_through_the_shipped_guide_surprises_the_search() -> None:
    """No walk breaks a rule that is proved, takes a branch called dead, or is longer than the longest."""
    guide = shipped()
    searched = search(guide)
    found, longest = found_by_search(searched), searched.longest()
    pick = at_random(telling_answers(guide), Random(20260302))
    for _ in range(3000):
        walk = Replay(guide, pick)
        [shown] = screens(walk)
        assert not least_moves(walk)
        assert branches_taken(walk).isdisjoint(found.dead_branches)
        assert {point.node.name for point in walk.points} <= found.met
        assert len(shown) <= len(longest[shown[-1]])
