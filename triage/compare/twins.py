"""Nodes of two guides that stand for one another: by name, by what they say, or by the way there.

Which nodes are twins decides what is called another page, and in which order two walks are followed. What two
walks come to is never taken from it.
"""

from __future__ import annotations

from collections.abc import Hashable

from triage.guide.model import Act, Ask, End, Guide, Node
from triage.guide.texts import texts_of


def content(node: Act | End) -> Hashable:
    """Return all that a page says and does, its name and the places of its ways out left aside."""
    texts = tuple((each.kind, each.text) for each in texts_of(node))
    steps = node.steps if isinstance(node, Act) else node.do
    how = tuple((step.tag, step.how) for step in steps)
    if isinstance(node, Act):
        return "act", texts, how, node.wait, node.forget, node.at_most
    return "end", texts, how, node.urgency, node.look_again


def targets_of(node: Node) -> tuple[str, ...]:
    """Return the nodes that a node leads to, in the order of its ways out."""
    if isinstance(node, Ask):
        return tuple(branch.go for branch in node.branches)
    if isinstance(node, Act):
        return (node.then, node.else_) if node.else_ else (node.then,)
    return ()


class Twins:
    """One number for each node of the old guide, and for each of the new one that has no twin there."""

    def __init__(self, old: Guide, new: Guide) -> None:
        self.old_name = _paired(old, new)
        """The old name of each node of the new guide that has a twin: new -> old."""
        self.at: tuple[dict[str, int], dict[str, int]] = ({name: at for at, name in enumerate(old.nodes)}, {})
        self.count = len(old.nodes)
        for name in new.nodes:
            if name in self.old_name:
                self.at[1][name] = self.at[0][self.old_name[name]]
            else:
                self.at[1][name] = self.count
                self.count += 1
        self.order = self._order(old, new)
        """For each number its place in an order in which nodes come before what they lead to, loops aside."""

    def _order(self, old: Guide, new: Guide) -> list[int]:
        ways: list[list[int]] = [[] for _ in range(self.count)]
        for at, guide in zip(self.at, (old, new), strict=True):
            for name, node in guide.nodes.items():
                ways[at[name]] += [at[to] for to in targets_of(node)]
        starts = [self.at[0][old.front.way_in], self.at[1][new.front.way_in]]
        order = [0] * self.count
        for place, number in enumerate(reversed(_ends_first(ways, starts))):
            order[number] = place
        return order


def _ends_first(ways: list[list[int]], starts: list[int]) -> list[int]:
    found: list[int] = []
    seen: set[int] = set()
    for start in starts:
        if start in seen:
            continue
        seen.add(start)
        stack = [(start, iter(ways[start]))]
        while stack:
            at, targets = stack[-1]
            for to in targets:
                if to not in seen:
                    seen.add(to)
                    stack.append((to, iter(ways[to])))
                    break
            else:
                stack.pop()
                found.append(at)
    return found


def _paired(old: Guide, new: Guide) -> dict[str, str]:
    pairs = {name: name for name, node in new.nodes.items() if type(old.nodes.get(name)) is type(node)}
    if len(pairs) < len(new.nodes):
        _Renamed(old, new, pairs).pair()
    return pairs


class _Renamed:
    """Finds what the nodes without a twin of their name are called in the other guide."""

    def __init__(self, old: Guide, new: Guide, pairs: dict[str, str]) -> None:
        self.old, self.new, self.pairs = old, new, pairs
        self.taken = set(pairs.values())

    def pair(self) -> None:
        """Pair what the same ways lead to, and then what pages are left that say the same."""
        self._by_way()
        same: dict[Hashable, list[str]] = {}
        for name, node in self.old.nodes.items():
            if name not in self.taken and not isinstance(node, Ask):
                same.setdefault(content(node), []).append(name)
        for name, node in self.new.nodes.items():
            if name not in self.pairs and not isinstance(node, Ask) and (alike := same.get(content(node))):
                self.pairs[name] = alike.pop(0)

    def _by_way(self) -> None:
        waiting = [(self.old.front.way_in, self.new.front.way_in)]
        seen = set(waiting)
        while waiting:
            was, name = waiting.pop()
            if self.pairs.get(name) != was:
                if was in self.taken or name in self.pairs or not self._like(was, name):
                    continue
                self.pairs[name] = was
                self.taken.add(was)
            ways = zip(targets_of(self.old.nodes[was]), targets_of(self.new.nodes[name]), strict=False)
            for pair in ways:
                if pair not in seen:
                    seen.add(pair)
                    waiting.append(pair)

    def _like(self, was: str, name: str) -> bool:
        """Whether two nodes to which the same way leads can be one: both ask, or both say the same."""
        before, after = self.old.nodes[was], self.new.nodes[name]
        if isinstance(before, Ask) or isinstance(after, Ask):
            return type(before) is type(after)
        return content(before) == content(after)
