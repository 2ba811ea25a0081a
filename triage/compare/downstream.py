"""Where two guides are the same from a node on: nothing that a lamb can answer there makes a difference.

Each node gets a colour from all that it leads to. A loop is closed by the number of the node that it comes
back to; where the twins of that number turn out to have two colours, it is closed by the guide as well, and
all is coloured again. So equal colours mean that both guides go on alike for ever.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence

from triage.check.search.ways import NOWHERE, ActWays, AskWays
from triage.compare.pages import Marks
from triage.compare.paths import Paths


def colours(paths: Sequence[Paths], marks: Sequence[Marks]) -> tuple[list[int], list[int]]:
    """Return for each guide the colour of each node, by index; -1 where no walk comes."""
    orders = [ends_first(each) for each in paths]
    apart: set[int] = set()
    while True:
        found = _coloured(paths, marks, orders, apart)
        by_twin = [
            {each.twin[at]: colour for at, colour in enumerate(mine)}
            for each, mine in zip(paths, found, strict=True)
        ]
        closing = {
            each.twin[at] for each, (_, closes) in zip(paths, orders, strict=True) for at in closes
        } - apart
        wrong = {twin for twin in closing if by_twin[0].get(twin) != by_twin[1].get(twin)}
        if not wrong:
            return found
        apart |= wrong


def _coloured(
    paths: Sequence[Paths],
    marks: Sequence[Marks],
    orders: Sequence[tuple[list[int], set[int]]],
    apart: set[int],
) -> tuple[list[int], list[int]]:
    numbers: dict[Hashable, int] = {}
    found: list[list[int]] = []
    for side, (each, (order, _)) in enumerate(zip(paths, orders, strict=True)):
        mine = [-1] * len(each.nodes)
        for at in order:
            to = [_target(each, target, mine, apart) for target in each.nodes[at].targets]
            signature = _signature(each, at, to, marks[side])
            mine[at] = numbers.setdefault(signature, len(numbers))
        found.append(mine)
    return found[0], found[1]


def _target(each: Paths, at: int, mine: list[int], apart: set[int]) -> Hashable:
    """Return the colour of a node; one that has none yet is one that a loop comes back to."""
    if mine[at] >= 0:
        return mine[at]
    twin = each.twin[at]
    return "back", twin, each.side if twin in apart else None


def _signature(each: Paths, at: int, to: list[Hashable], marks: Marks) -> Hashable:
    """Return all that a node is and leads to, by the colours of its targets."""
    ways = each.nodes[at]
    if isinstance(ways, AskWays):
        led: dict[Hashable, int] = {}
        for mask, rank, colour in zip(ways.masks, ways.ranks, to, strict=True):
            if mask:
                led[rank, colour] = led.get((rank, colour), 0) | mask
        stops = sum(1 << answer for answer, branch in enumerate(ways.branch_at) if branch == NOWHERE)
        return "ask", ways.finding, frozenset(led.items()), stops
    if isinstance(ways, ActWays):
        return "act", marks[each.names[at]], ways.counter, ways.at_most, ways.forget, tuple(to)
    return "end", marks[each.names[at]], ways.rank


def ends_first(each: Paths) -> tuple[list[int], set[int]]:
    """Return the nodes that are reached, each after what it leads to, and those that loops come back to."""
    order: list[int] = []
    seen = {each.start}
    done: set[int] = set()
    closes: set[int] = set()
    stack = [(each.start, iter(each.nodes[each.start].targets))]
    while stack:
        at, targets = stack[-1]
        for to in targets:
            if to not in seen:
                seen.add(to)
                stack.append((to, iter(each.nodes[to].targets)))
                break
            if to not in done:
                closes.add(to)
        else:
            stack.pop()
            done.add(at)
            order.append(at)
    return order, closes
