"""The longest walk to each end, against every combination of answers replayed through the real walk."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from hypothesis import given, settings

from tests.published.guides import FINDINGS, MANY, TRIED, act, ask, end, guide_of, walkable_guides
from tests.published.walks import shipped
from triage.check.search.searched import search
from triage.check.structure import endless_loops
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Guide
from triage.walk import Walk

SAME_EACH_TIME = settings(MANY, derandomize=True)
"""The same guides in every run, as the rare shapes below have a check of their own."""


def answers(finding: str) -> tuple[Value, ...]:
    """Return every answer that can make a difference: choices, one value in each band, and not sure."""
    what = FINDINGS[finding]
    told: tuple[Value, ...] = TRIED[finding] if what.measure else tuple(what.choices)
    return told if what.never_unsure else (*told, UNSURE)


def all_walks(walk: Walk) -> Iterator[Walk]:
    """Yield every walk to an end, by answering each question in every way."""
    node = walk.node
    if isinstance(node, Ask):
        for value in answers(node.finding):
            yield from all_walks(walk.answer(value))
    elif isinstance(node, Act):
        yield from all_walks(walk.done())
    else:
        yield walk


def screens(walk: Walk) -> tuple[str, ...]:
    """Return the screens that a finished walk shows: each question and act met, and the end."""
    return (*walk.state.met, walk.node.name)


def branch_taken(guide: Guide, node: Ask, value: float) -> int:
    """Return which branch of a node a measurement takes: the first band that holds it."""
    unit = guide.findings[node.finding].measure
    for at, branch in enumerate(node.branches):
        if branch.unsure:
            continue
        if branch.otherwise:
            return at
        line = guide.numbers[branch.below or branch.up_to].quantity.to(unit).value
        if value < line or (branch.up_to and value == line):
            return at
    raise AssertionError(f"{node.name} has no branch for {value}")


def telling_answers(guide: Guide, finding: str) -> list[Value]:
    """Return one answer for each way in which a finding can matter in a guide."""
    what = guide.findings[finding]
    told: list[Value] = list(what.choices)
    if what.measure:
        asking = [node for node in guide.nodes.values() if isinstance(node, Ask) and node.finding == finding]
        names = {branch.below or branch.up_to for node in asking for branch in node.branches} - {""}
        lines = {guide.numbers[name].quantity.to(what.measure).value for name in names}
        edges = sorted({*what.plausible, *lines})
        between = [(low + high) / 2 for low, high in pairwise(edges)]
        kinds = {
            tuple(branch_taken(guide, node, value) for node in asking): value for value in (*edges, *between)
        }
        told = list(kinds.values())
    return told if what.never_unsure else [*told, UNSURE]


def check_by_replay(guide: Guide) -> None:
    """Compare the longest walks with those found by replaying everything.

    A screen that comes round again is a repeat and counts once, so a walk is as long as the different
    screens on it, in the order in which they are first met.
    """
    replayed: dict[str, set[tuple[str, ...]]] = {}
    for walk in all_walks(Walk(guide)):
        different = tuple(dict.fromkeys(screens(walk)))
        replayed.setdefault(walk.node.name, set()).add(different)
    found = search(guide).longest()
    assert set(found) == set(replayed), "an end that answers lead to has no longest walk"
    for name, longest in found.items():
        assert len(longest) == max(map(len, replayed[name])), name
        assert longest in replayed[name], f"no answers lead by {longest}"


@SAME_EACH_TIME
@given(walkable_guides())
def test_longest_walk_is_the_longest_of_all(guide: Guide) -> None:
    """On any small guide the longest walk to each end is the longest that replaying every answer finds."""
    check_by_replay(guide)


@SAME_EACH_TIME
@given(walkable_guides(most=6, rounds=2))
def test_ends_are_those_that_answers_lead_to(guide: Guide) -> None:
    """An end has a longest walk just when some answers lead to it, repeats or not."""
    assert set(search(guide).longest()) == {walk.node.name for walk in all_walks(Walk(guide))}


def test_act_without_a_count_inside_a_counted_loop_is_gone_through_again() -> None:
    """An act without `at_most`, in a loop that a counted act ends, does not hide the end behind it."""
    guide = guide_of(
        {
            "n0": act("n0", "n1"),
            "n1": act("n1", "n0", "n2", at_most=1),
            "n2": end("n2"),
        }
    )
    assert not [*endless_loops(guide)]
    assert [screens(walk) for walk in all_walks(Walk(guide))] == [("n0", "n1", "n0", "n2")]
    check_by_replay(guide)


def test_what_the_second_round_asks_for_the_first_time_counts() -> None:
    """A question asked in the first round of a loop, and another in the second, both count."""
    guide = guide_of(
        {
            "n0": act("n0", "n1", "n4", at_most=2, forget=("warmth",)),
            "n1": ask("n1", "warmth", ["n2", "n3"]),
            "n2": ask("n2", "side", ["n0"]),
            "n3": ask("n3", "sure", ["n4"]),
            "n4": end("n4"),
        }
    )
    assert not [*endless_loops(guide)]
    assert ("n0", "n1", "n2", "n0", "n1", "n3", "n4") in {screens(walk) for walk in all_walks(Walk(guide))}
    check_by_replay(guide)


def test_shipped_guide_agrees() -> None:
    """In the shipped guide too the longest walks are those that replaying every telling answer finds."""
    guide = shipped()
    once = {
        name: replace(node, at_most=1) if isinstance(node, Act) and node.at_most else node
        for name, node in guide.nodes.items()
    }
    tried = {name: telling_answers(guide, name) for name in guide.findings}
    longest: dict[str, int] = {}
    waiting = [Walk(replace(guide, nodes=once))]
    while waiting:
        walk = waiting.pop()
        node = walk.node
        if isinstance(node, Ask):
            waiting += [walk.answer(value) for value in tried[node.finding]]
        elif isinstance(node, Act):
            waiting.append(walk.done())
        else:
            longest[node.name] = max(longest.get(node.name, 0), len(screens(walk)))
    assert {name: len(walk) for name, walk in search(guide).longest().items()} == longest


def test_answer_once_given_is_not_asked_again() -> None:
    """A question whose answer is known adds no screen, so the longest walk is not the longest path."""
    guide = guide_of(
        {
            "n0": ask("n0", "sure", ["n1", "n3"]),
            "n1": ask("n1", "sure", ["n3", "n2"]),
            "n2": ask("n2", "side", ["n3"]),
            "n3": end("n3"),
        }
    )
    assert search(guide).longest() == {"n3": ("n0", "n3")}
    check_by_replay(guide)


def test_forgotten_answer_is_asked_again() -> None:
    """A question whose answer an act makes forgotten is asked again, and counts again."""
    guide = guide_of(
        {
            "n0": ask("n0", "sure", ["n1"]),
            "n1": act("n1", "n2", forget=("sure",)),
            "n2": ask("n2", "sure", ["n3"]),
            "n3": end("n3"),
        }
    )
    assert search(guide).longest() == {"n3": ("n0", "n1", "n2", "n3")}
    check_by_replay(guide)
