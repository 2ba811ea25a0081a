"""One of two guides by index, as the search of the proof takes it, with the answers of both.

What the walk itself counts is numbered for both guides alike: an act that both have is counted under one
number.
"""

from __future__ import annotations

from dataclasses import dataclass

from triage.check.search.live import Live
from triage.check.search.ways import NOWHERE, ActWays, AskWays, EndWays, Ways
from triage.compare.asked import Asked
from triage.compare.scale import Scale
from triage.compare.twins import Twins
from triage.guide.model import Act, Ask, End, Guide
from triage.walk import branch_for, fits


class Counted:
    """The acts that are done so many times at most, in either guide: a number for each pair of twins."""

    def __init__(self, old: Guide, new: Guide, twins: Twins) -> None:
        self.at: dict[int, int] = {}
        self.most: list[int] = []
        for guide, twin in zip((old, new), twins.at, strict=True):
            for name, node in guide.nodes.items():
                if isinstance(node, Act) and node.at_most:
                    at = self.at.setdefault(twin[name], len(self.most))
                    if at == len(self.most):
                        self.most.append(0)
                    self.most[at] = max(self.most[at], node.at_most)


@dataclass(frozen=True)
class Shared:
    """What two guides have in common: findings, nodes, a scale of urgency, and what is counted."""

    asked: Asked
    twins: Twins
    scale: Scale
    counted: Counted


class Paths(Ways):
    """The ways of one guide; `side` 0 is the old one. Urgency is kept beside what is known, by `Scale`."""

    def __init__(self, guide: Guide, side: int, shared: Shared) -> None:
        # What `Ways` itself would set, in numbers that both guides share.
        self.guide, self.side, self.scale = guide, side, shared.scale
        self.names = list(guide.nodes)
        self.node_at = {name: at for at, name in enumerate(self.names)}
        self.finding_at = shared.asked.at[side]
        self.findings = shared.asked.names[side]
        self.told = shared.asked.values[side]
        self._counts = shared.counted
        self._twin = shared.twins.at[side]
        self.counted = len(shared.asked) + len(shared.counted.most)
        self.nobody = 0
        self.nodes = [self._ways(name) for name in self.names]
        self.start = self.node_at[guide.front.way_in]
        self.twin = [self._twin[name] for name in self.names]
        self.order = [shared.twins.order[at] for at in self.twin]
        self.live = Live(self, ())

    @property
    def matter(self) -> tuple[int, int]:
        """The finding that tells what a walk is about, and the answer taken as known; 0 without one."""
        for name, taken in self.guide.front.unless_told.items():
            finding = self.finding_at[name]
            return finding, self.told[finding].index(taken)
        return 0, 0

    def answers(self, finding: int) -> int:
        """Return how many answers a finding has; what the walk counts has one more than it counts."""
        if finding < len(self.told):
            return max(len(self.told[finding]), 1)
        return self._counts.most[finding - len(self.told)] + 1

    def _ways(self, name: str) -> AskWays | ActWays | EndWays:
        node = self.guide.nodes[name]
        if isinstance(node, Ask):
            return self._ask(node)
        if isinstance(node, End):
            return EndWays(self.scale.rank(self.side, node.urgency))
        at = self._counts.at.get(self._twin[name])
        to = [node.then, *([node.else_] if node.else_ else [])]
        return ActWays(
            0 if at is None or not node.at_most else len(self.told) + at,
            node.at_most,
            tuple(self.node_at[each] for each in to),
            frozenset(self.finding_at[each] for each in node.forget),
            0,
        )

    def _ask(self, node: Ask) -> AskWays:
        finding = self.guide.findings[node.finding]
        index = {id(branch): at for at, branch in enumerate(node.branches)}
        taken: list[int] = []
        for value in self.told[self.finding_at[node.finding]]:
            branch = branch_for(self.guide, node, value) if fits(finding, value) else None
            taken.append(NOWHERE if branch is None else index[id(branch)])
        masks = [0] * len(node.branches)
        for at, branch_at in enumerate(taken):
            if branch_at != NOWHERE:
                masks[branch_at] |= 1 << at
        return AskWays(
            self.finding_at[node.finding],
            tuple(taken),
            tuple(masks),
            tuple(self.node_at[branch.go] for branch in node.branches),
            tuple(self.scale.rank(self.side, branch.at_least) for branch in node.branches),
            0,
        )
