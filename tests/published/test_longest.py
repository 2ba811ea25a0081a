"""The longest walk to each end, against every combination of answers replayed through the real walk."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from hypothesis import given, settings

from tests.published.guides import FINDINGS, TRIED, act, ask, end, guide_of, walkable_guides
from triage.check.longest import longest_walks
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Guide
from triage.walk import Walk


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


def counted_once(guide: Guide) -> Guide:
    """Return the guide with each bounded act done at most once, so that nothing is a repeat."""
    once = {
        name: replace(node, at_most=1) if isinstance(node, Act) and node.at_most else node
        for name, node in guide.nodes.items()
    }
    return replace(guide, nodes=once)


def check_by_replay(guide: Guide) -> None:
    """Compare the longest walks with those found by replaying everything."""
    replayed: dict[str, set[tuple[str, ...]]] = {}
    for walk in all_walks(Walk(guide)):
        replayed.setdefault(walk.node.name, set()).add(screens(walk))
    found = longest_walks(guide)
    assert set(found) == set(replayed)
    for name, walk_found in found.items():
        assert len(walk_found) == max(len(each) for each in replayed[name]), name
        assert walk_found in replayed[name], f"no answers lead by {walk_found}"


@settings(deadline=None, max_examples=300)
@given(walkable_guides())
def test_longest_walk_is_the_longest_of_all(guide: Guide) -> None:
    """On any small guide the longest walk to each end is the longest that replaying every answer finds."""
    check_by_replay(guide)


@settings(deadline=None, max_examples=200)
@given(walkable_guides(rounds=3))
def test_repeats_are_not_counted(guide: Guide) -> None:
    """How often a timed act may be done makes the longest walk no longer: repeats stand aside."""
    assert longest_walks(guide) == longest_walks(counted_once(guide))


@settings(deadline=None, max_examples=200)
@given(walkable_guides(most=6, rounds=2))
def test_ends_are_those_that_answers_lead_to(guide: Guide) -> None:
    """An end has a longest walk just when some answers lead to it, repeats or not."""
    assert set(longest_walks(guide)) == {walk.node.name for walk in all_walks(Walk(guide))}


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
    assert longest_walks(guide) == {"n3": ("n0", "n3")}
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
    assert longest_walks(guide) == {"n3": ("n0", "n1", "n2", "n3")}
    check_by_replay(guide)
