"""Lambs drawn from the graph itself: answers that lead somewhere, found by trying them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from random import Random

from triage.facts import Value
from triage.guide.model import Act, Ask, End, Guide, Lamb, Node
from triage.practice.likely import Likely
from triage.rules.telling import Telling
from triage.walk import Walk, branch_for
from triage.ways_in import begin, matter, other_ways

TRIES = 60
"""Walks begun for one lamb at most. Nearly every one arrives: it keeps to branches that can."""


class Drawing:
    """Draws walks over a guide."""

    def __init__(self, guide: Guide, telling: Telling | None = None) -> None:
        self.guide = guide
        self.telling = telling or Telling(guide)
        self.likely = Likely(guide, self.telling)

    @cached_property
    def goals(self) -> tuple[str, ...]:
        """Every page that a made-up lamb can be for."""
        return tuple(name for name, node in self.guide.nodes.items() if not isinstance(node, Ask))

    @cached_property
    def _acts(self) -> list[Act]:
        return [node for node in self.guide.nodes.values() if isinstance(node, Act)]

    @cached_property
    def _before(self) -> dict[str, list[str]]:
        """The nodes that lead to each node in one step."""
        before: dict[str, list[str]] = {}
        for node in self.guide.nodes.values():
            for to in _onward(node):
                before.setdefault(to, []).append(node.name)
        return before

    def leading_to(self, goal: str) -> frozenset[str]:
        """Return the nodes from which a node can be reached, itself among them."""
        found, waiting = {goal}, [goal]
        while waiting:
            for each in self._before.get(waiting.pop(), ()):
                if each not in found:
                    found.add(each)
                    waiting.append(each)
        return frozenset(found)

    def draw(self, rng: Random, goal: str = "", serves: Callable[[Walk], bool] | None = None) -> Walk | None:
        """Return a walk to a page, or to any end without a `goal`; None where none was found in time.

        With `serves` it is one that serves: the lamb is under a rule, or whatever else is asked for.
        """
        way = self.leading_to(goal) if goal else None
        for _ in range(TRIES):
            walk = self._try(rng, goal, way, self._meant(goal))
            if walk is not None and not self.clashes(walk) and (serves is None or serves(walk)):
                return walk
        return None

    def clashes(self, walk: Walk) -> bool:
        """Whether it is a lamb that there is not, though the questions could be answered so."""
        clashes = self.guide.farm.clashes if self.guide.farm else ()
        return any(self.telling.describes(clash, walk.state.known) for clash in clashes)

    def _meant(self, goal: str) -> Lamb:
        """Return for which lambs a page says that it is, which spares most of the tries."""
        node = self.guide.nodes.get(goal)
        return node.for_ if isinstance(node, Act | End) else {}

    def _try(self, rng: Random, goal: str, way: frozenset[str] | None, meant: Lamb) -> Walk | None:
        walk = self._begin(rng, way)
        while walk.node.name != goal:
            node = walk.node
            if isinstance(node, End):
                return None if goal else walk
            if isinstance(node, Act):
                walk = walk.done()
                continue
            value = self._answer(walk, node, rng, way, meant)
            if value is None:
                return None
            walk = walk.answer(value)
        return walk

    def _begin(self, rng: Random, way: frozenset[str] | None) -> Walk:
        about = matter(self.guide)
        start = self.guide.nodes[self.guide.front.way_in]
        if about is None or not isinstance(start, Ask):
            return Walk(self.guide)
        taken = self.guide.front.unless_told[about.name]
        ways = [each for each in (taken, *other_ways(self.guide)) if _open(self.guide, start, each, way)]
        return begin(self.guide, rng.choice(ways) if ways else "")

    def _answer(
        self, walk: Walk, node: Ask, rng: Random, way: frozenset[str] | None, meant: Lamb
    ) -> Value | None:
        """Return an answer from which the goal can still be reached, None where there seems to be none."""
        finding = self.guide.findings[node.finding]
        wanted = meant.get(finding.name, ())
        # What an act makes forgotten is asked anew, and only the last answer is the page's.
        last = not any(finding.name in act.forget for act in self._acts)
        for _ in range(TRIES):
            value = self.likely.draw(finding, walk.state.known, rng)
            if last and wanted and not self.telling.meets(finding.name, wanted, value):
                continue
            if way is None or _open(self.guide, node, value, way):
                return value
        return None


def _onward(node: Node) -> Iterable[str]:
    if isinstance(node, Ask):
        return [branch.go for branch in node.branches]
    return [to for to in (node.then, node.else_) if to] if isinstance(node, Act) else []


def _open(guide: Guide, node: Ask, value: Value, way: frozenset[str] | None) -> bool:
    if way is None:
        return True
    branch = branch_for(guide, node, value)
    return branch is not None and branch.go in way
