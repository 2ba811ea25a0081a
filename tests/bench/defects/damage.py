"""What a damaged guide is, and the small tools that make one from the shipped guide."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import TypeVar

from triage.check.search.searched import search
from triage.guide.model import Act, Ask, Branch, End, Guide, Node, Number, Step

T = TypeVar("T")


@dataclass(frozen=True)
class Damaged:
    """One damaged guide, and what was done to it in a few words."""

    told: str
    guide: Guide


Kind = Callable[[Guide], Iterator[Damaged]]
"""Yields every guide that one kind of damage makes of the sound one."""


def with_node(guide: Guide, node: Node) -> Guide:
    """Return the guide with one node put in the place of the one of its name."""
    return replace(guide, nodes={**guide.nodes, node.name: node})


def with_branches(guide: Guide, node: Ask, branches: tuple[Branch, ...]) -> Guide:
    """Return the guide with other branches at a question."""
    return with_node(guide, replace(node, branches=branches))


def with_steps(guide: Guide, node: Act | End, steps: tuple[Step, ...]) -> Guide:
    """Return the guide with other steps on a page."""
    return with_node(guide, replace(node, steps=steps) if isinstance(node, Act) else replace(node, do=steps))


def with_number(guide: Guide, number: Number) -> Guide:
    """Return the guide with one number put in the place of the one of its name."""
    return replace(guide, numbers={**guide.numbers, number.name: number})


def asks(guide: Guide) -> Iterator[Ask]:
    """Yield the questions."""
    return (node for node in guide.nodes.values() if isinstance(node, Ask))


def pages(guide: Guide) -> Iterator[Act | End]:
    """Yield the acts and ends."""
    return (node for node in guide.nodes.values() if isinstance(node, Act | End))


def ends(guide: Guide) -> Iterator[End]:
    """Yield the ends."""
    return (node for node in guide.nodes.values() if isinstance(node, End))


def steps(node: Act | End) -> tuple[Step, ...]:
    """Return the steps of a page."""
    return node.steps if isinstance(node, Act) else node.do


def put(items: tuple[T, ...], at: int, *new: T) -> tuple[T, ...]:
    """Return the items with the one at a place taken out, and others put there."""
    return (*items[:at], *new, *items[at + 1 :])


def branches(guide: Guide) -> Iterator[tuple[Ask, int, Branch]]:
    """Yield each branch with its question and its place in it."""
    for node in asks(guide):
        for at, branch in enumerate(node.branches):
            yield node, at, branch


def raising(guide: Guide) -> frozenset[tuple[str, int]]:
    """Return the branches (node, place) whose `at_least` some lamb sees before its end says as much.

    Left out are those that every walk comes to with that urgency already, or that lead straight to an end
    which is as urgent: without them nobody would see a difference.
    """
    searched = search(guide)
    onward, found = searched.onward, set[tuple[str, int]]()
    for key, (state, edge) in ((key, way) for key, ways in searched.taken.items() for way in ways):
        there = searched.node(onward.shown_next(edge))
        rank = onward.rank(state, edge)
        ends_so = isinstance(there, End) and guide.rank(there.urgency) <= rank
        if onward.arrive[state] > rank and not ends_so:
            found.add((searched.nodes[key[0]].name, key[1]))
    return frozenset(found)


def milder(guide: Guide, urgency: str) -> str:
    """Return the next milder urgency, or an empty text after the mildest."""
    names = [each.name for each in guide.front.urgencies]
    after = names.index(urgency) + 1
    return names[after] if after < len(names) else ""
