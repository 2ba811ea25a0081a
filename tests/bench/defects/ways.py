"""Damage to where answers lead."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from tests.bench.defects.damage import (
    Damaged,
    asks,
    branches,
    milder,
    put,
    raising,
    with_branches,
    with_node,
)
from triage.guide.model import Act, Ask, Guide
from triage.units import same_dimension


def retarget_a_branch(guide: Guide) -> Iterator[Damaged]:
    """A branch leads to another node."""
    for node, at, branch in branches(guide):
        for target in guide.nodes:
            if target != branch.go:
                turned = put(node.branches, at, replace(branch, go=target))
                yield Damaged(f"{node.name}: branch {at} to {target}", with_branches(guide, node, turned))


def retarget_within_its_topic(guide: Guide) -> Iterator[Damaged]:
    """A branch leads to another node of the same topic."""
    for node, at, branch in branches(guide):
        for target, there in guide.nodes.items():
            if target not in (branch.go, node.name) and there.topic == node.topic:
                turned = put(node.branches, at, replace(branch, go=target))
                yield Damaged(f"{node.name}: branch {at} to {target}", with_branches(guide, node, turned))


def swap_two_branches(guide: Guide) -> Iterator[Damaged]:
    """Two branches of a question change places, targets and urgency both."""
    for node in asks(guide):
        for one, other in combinations(range(len(node.branches)), 2):
            a, b = node.branches[one], node.branches[other]
            if (a.go, a.at_least) != (b.go, b.at_least):
                turned = put(node.branches, one, replace(a, go=b.go, at_least=b.at_least))
                turned = put(turned, other, replace(b, go=a.go, at_least=a.at_least))
                yield Damaged(f"{node.name}: {one} with {other}", with_branches(guide, node, turned))


def swap_two_targets(guide: Guide) -> Iterator[Damaged]:
    """Two branches of a question change their targets, and keep their urgency."""
    for node in asks(guide):
        for one, other in combinations(range(len(node.branches)), 2):
            a, b = node.branches[one], node.branches[other]
            if a.go != b.go:
                turned = put(put(node.branches, one, replace(a, go=b.go)), other, replace(b, go=a.go))
                yield Damaged(f"{node.name}: {one} with {other}", with_branches(guide, node, turned))


def shift_a_threshold(guide: Guide) -> Iterator[Damaged]:
    """A band ends at another number of the same kind."""
    for node, at, branch in branches(guide):
        name = branch.below or branch.up_to
        for other, number in guide.numbers.items() if name else ():
            kind = guide.numbers[name].unit
            if (
                same_dimension(number.unit, kind)
                and number.quantity.to(kind).value != guide.numbers[name].value
            ):
                moved = replace(branch, below=other) if branch.below else replace(branch, up_to=other)
                turned = put(node.branches, at, moved)
                yield Damaged(f"{node.name}: {name} to {other}", with_branches(guide, node, turned))


def shift_the_line_itself(guide: Guide) -> Iterator[Damaged]:
    """A band takes in its line, or leaves it out: `below` for `up_to`, or the other way."""
    for node, at, branch in branches(guide):
        if branch.below or branch.up_to:
            moved = replace(branch, below=branch.up_to, up_to=branch.below)
            yield Damaged(f"{node.name}: {at}", with_branches(guide, node, put(node.branches, at, moved)))


def drop_at_least(guide: Guide) -> Iterator[Damaged]:
    """A branch no longer raises the urgency, where the next page does not say it either."""
    seen = raising(guide)
    for node, at, branch in branches(guide):
        if branch.at_least and (node.name, at) in seen:
            turned = put(node.branches, at, replace(branch, at_least=""))
            yield Damaged(f"{node.name}: {at} without {branch.at_least}", with_branches(guide, node, turned))


def soften_at_least(guide: Guide) -> Iterator[Damaged]:
    """A branch raises the urgency less."""
    seen = raising(guide)
    for node, at, branch in branches(guide):
        if branch.at_least and (node.name, at) in seen:
            less = milder(guide, branch.at_least)
            turned = put(node.branches, at, replace(branch, at_least=less))
            yield Damaged(f"{node.name}: {at} to {less}", with_branches(guide, node, turned))


def delete_an_unsure_branch(guide: Guide) -> Iterator[Damaged]:
    """A question has no way out for "not sure" any more."""
    for node, at, branch in branches(guide):
        if branch.unsure:
            yield Damaged(node.name, with_branches(guide, node, put(node.branches, at)))


def make_unsure_the_easy_way(guide: Guide) -> Iterator[Damaged]:
    """The answer "not sure" goes the way of another answer of the same question."""
    for node, at, branch in branches(guide):
        for other in node.branches if branch.unsure else ():
            if (other.go, other.at_least) != (branch.go, branch.at_least):
                turned = put(node.branches, at, replace(branch, go=other.go, at_least=other.at_least))
                yield Damaged(f"{node.name}: as {other.go}", with_branches(guide, node, turned))


def delete_a_branch(guide: Guide) -> Iterator[Damaged]:
    """A question loses a branch of a known answer."""
    for node, at, branch in branches(guide):
        if not branch.unsure:
            yield Damaged(f"{node.name}: {at}", with_branches(guide, node, put(node.branches, at)))


def move_a_choice(guide: Guide) -> Iterator[Damaged]:
    """A choice goes the way of another choice."""
    for node in asks(guide):
        for one, branch in enumerate(node.branches):
            for choice in branch.is_:
                for other, taking in enumerate(node.branches):
                    if (
                        other != one
                        and taking.is_
                        and (taking.go, taking.at_least) != (branch.go, branch.at_least)
                    ):
                        rest = replace(branch, is_=tuple(each for each in branch.is_ if each != choice))
                        turned = put(node.branches, other, replace(taking, is_=(*taking.is_, choice)))
                        turned = put(turned, one, rest) if rest.is_ else put(turned, one)
                        yield Damaged(
                            f"{node.name}: {choice} as {taking.go}", with_branches(guide, node, turned)
                        )


def repeat_a_choice(guide: Guide) -> Iterator[Damaged]:
    """A choice stands in two branches."""
    for node in asks(guide):
        for one, branch in enumerate(node.branches):
            for other, taking in enumerate(node.branches):
                if one != other and branch.is_ and taking.is_:
                    twice = replace(taking, is_=(*taking.is_, branch.is_[0]))
                    turned = put(node.branches, other, twice)
                    yield Damaged(f"{node.name}: {branch.is_[0]}", with_branches(guide, node, turned))


def skip_a_question(guide: Guide) -> Iterator[Damaged]:
    """Everything that led to a question leads to where one of its answers goes."""
    for node in asks(guide):
        for target in sorted({branch.go for branch in node.branches} - {node.name}):
            nodes = {
                name: replace(
                    each,
                    branches=tuple(
                        replace(way, go=target) if way.go == node.name else way for way in each.branches
                    ),
                )
                if isinstance(each, Ask)
                else replace(each, then=target if each.then == node.name else each.then)
                if isinstance(each, Act)
                else each
                for name, each in guide.nodes.items()
                if name != node.name
            }
            if guide.front.way_in != node.name:
                yield Damaged(f"{node.name}, on to {target}", replace(guide, nodes=nodes))


def enter_elsewhere(guide: Guide) -> Iterator[Damaged]:
    """The guide opens at another node."""
    for name in guide.nodes:
        if name != guide.front.way_in:
            yield Damaged(name, replace(guide, front=replace(guide.front, way_in=name, unless_told={})))


def drop_a_danger_sign(guide: Guide) -> Iterator[Damaged]:
    """A danger sign is no longer one, and no longer calls."""
    for finding, signs in guide.front.danger_signs.items():
        for sign in signs:
            left = {finding: tuple(each for each in signs if each != sign)}
            yield Damaged(sign, replace(guide, front=replace(guide.front, danger_signs=left)))


def drop_a_forget(guide: Guide) -> Iterator[Damaged]:
    """A reading from before an act is kept after it."""
    for node in guide.nodes.values():
        for finding in node.forget if isinstance(node, Act) else ():
            assert isinstance(node, Act)
            left = tuple(each for each in node.forget if each != finding)
            yield Damaged(f"{node.name}: {finding}", with_node(guide, replace(node, forget=left)))


def turn_an_act(guide: Guide) -> Iterator[Damaged]:
    """An act leads on to another node, or gives up into another one."""
    for node in guide.nodes.values():
        for target in guide.nodes if isinstance(node, Act) else ():
            assert isinstance(node, Act)
            if target != node.then:
                yield Damaged(f"{node.name}: then {target}", with_node(guide, replace(node, then=target)))
            if target != node.else_:
                yield Damaged(f"{node.name}: else {target}", with_node(guide, replace(node, else_=target)))


def uncount_an_act(guide: Guide) -> Iterator[Damaged]:
    """An act of a loop may be done for ever, or far too often."""
    for node in guide.nodes.values():
        if isinstance(node, Act) and node.at_most:
            yield Damaged(f"{node.name}: for ever", with_node(guide, replace(node, at_most=0, else_="")))
            yield Damaged(f"{node.name}: thirty times", with_node(guide, replace(node, at_most=30)))
