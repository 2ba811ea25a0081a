"""What a reader may have answered already: a book remembers nothing, so it says where that is so.

A walk passes in silence over what is known. Here the graph alone is looked at, so a way that no real answers
take counts as well: what is always known on it is known on every walk.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from triage.guide.model import Act, Ask, Guide, Node


@dataclass(frozen=True)
class Memory:
    """For each node that can be come to, what is known there on some way, and what on every way."""

    may: dict[str, frozenset[str]]
    must: dict[str, frozenset[str]]
    asks: tuple[Ask, ...]

    def maybe(self, node: Ask) -> bool:
        """Whether the question of a node may have been answered before."""
        return node.finding in self.may.get(node.name, ())

    def surely(self, node: Ask) -> bool:
        """Whether it has been answered before, whichever way one came."""
        return node.finding in self.must.get(node.name, ())

    def often(self, least: int) -> frozenset[str]:
        """Return the findings that at least so many questions may ask for once more."""
        again = Counter(node.finding for node in self.asks if self.maybe(node))
        return frozenset(name for name, count in again.items() if count >= least)


def memory_of(guide: Guide, start: str) -> Memory:
    """Return what may be known and what must be known at each node, from a first node on."""
    opened = frozenset(guide.front.unless_told)
    may: dict[str, frozenset[str]] = {start: opened, guide.front.way_in: frozenset()}
    must = dict(may)
    waiting = [*may]
    while waiting:
        name = waiting.pop()
        node = guide.nodes[name]
        some, all_ = _after(node, may[name]), _after(node, must[name])
        for target in targets(node):
            more = may.get(target, frozenset()) | some
            less = must[target] & all_ if target in must else all_
            if more != may.get(target) or less != must.get(target):
                may[target], must[target] = more, less
                waiting.append(target)
    return Memory(may, must, tuple(node for node in guide.nodes.values() if isinstance(node, Ask)))


def _after(node: Node, known: frozenset[str]) -> frozenset[str]:
    if isinstance(node, Ask):
        return known | {node.finding}
    return known - frozenset(node.forget) if isinstance(node, Act) else known


def targets(node: Node) -> Iterator[str]:
    """Yield where the ways out of a node lead."""
    if isinstance(node, Ask):
        yield from (branch.go for branch in node.branches)
    elif isinstance(node, Act):
        yield node.then
        if node.else_:
            yield node.else_
