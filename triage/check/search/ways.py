"""The guide by index: where each answer leads, worked out once so that the search is plain look-ups."""

from __future__ import annotations

from dataclasses import dataclass

from triage.check.search.claims import URGENCY
from triage.guide.graph import coming_round
from triage.guide.model import Act, Ask, End, Guide
from triage.rules.telling import Telling
from triage.walk import branch_for

NOWHERE = -1


@dataclass(frozen=True)
class AskWays:
    """A question: for each answer its branch, and for each branch its answers, target and urgency."""

    finding: int
    branch_at: tuple[int, ...]
    masks: tuple[int, ...]
    targets: tuple[int, ...]
    ranks: tuple[int, ...]
    met: int


@dataclass(frozen=True)
class ActWays:
    """Something to do: `counter` is what counts how often, 0 when nothing does."""

    counter: int
    at_most: int
    targets: tuple[int, ...]
    forget: frozenset[int]
    met: int


@dataclass(frozen=True)
class EndWays:
    """An outcome and its rank of urgency."""

    rank: int
    targets: tuple[int, ...] = ()
    met: int = 0


class Ways:
    """Nodes and findings by index. What the walk itself keeps count of counts as findings too:
    the urgency so far (index 0), how often an act was done, and which screens of a loop were met.
    """

    def __init__(self, guide: Guide, telling: Telling) -> None:
        self.guide = guide
        self.telling = telling
        self.names = list(guide.nodes)
        self.node_at = {name: at for at, name in enumerate(self.names)}
        round_again = coming_round(guide)
        counted = [name for name, node in guide.nodes.items() if isinstance(node, Act) and node.at_most]
        kept = [URGENCY, *guide.findings]
        self.finding_at = {name: at for at, name in enumerate(kept)}
        self.findings = kept
        self._counter = {name: len(kept) + at for at, name in enumerate(counted)}
        met_from = len(kept) + len(counted)
        self._met = {name: met_from + at for at, name in enumerate(sorted(round_again))}
        self.counted = met_from + len(self._met)
        """How many things are known or counted at most, the urgency among them."""
        self._most = {
            self._counter[name]: node.at_most
            for name, node in guide.nodes.items()
            if isinstance(node, Act) and node.at_most
        }
        self.nobody = len(guide.front.urgencies)
        self.nodes = [self._ways(name) for name in self.names]
        self.start = self.node_at[guide.front.way_in]
        self.taken = self._taken()

    def _taken(self) -> int:
        """Return the answer that the way in is passed with in silence, NOWHERE when it is asked."""
        for finding, taken in self.guide.front.unless_told.items():
            return self.telling.values[finding].index(taken)
        return NOWHERE

    def answers(self, finding: int) -> int:
        """Return how many answers a finding has; what the walk counts has one more than it counts."""
        if finding == 0:
            return self.nobody + 1
        if finding < len(self.findings):
            return len(self.telling.values[self.findings[finding]])
        return self._most.get(finding, 0) + 1

    def _ways(self, name: str) -> AskWays | ActWays | EndWays:
        node = self.guide.nodes[name]
        if isinstance(node, Ask):
            return self._ask(node)
        if isinstance(node, End):
            return EndWays(self.guide.rank(node.urgency))
        to = [node.then, *([node.else_] if node.else_ else [])]
        return ActWays(
            self._counter.get(name, 0),
            node.at_most,
            tuple(self.node_at[each] for each in to),
            frozenset(self.finding_at[each] for each in node.forget),
            self._met.get(name, 0),
        )

    def _ask(self, node: Ask) -> AskWays:
        index = {id(branch): at for at, branch in enumerate(node.branches)}
        taken = [
            NOWHERE if (branch := branch_for(self.guide, node, value)) is None else index[id(branch)]
            for value in self.telling.values[node.finding]
        ]
        masks = [0] * len(node.branches)
        for at, branch_at in enumerate(taken):
            if branch_at != NOWHERE:
                masks[branch_at] |= 1 << at
        return AskWays(
            self.finding_at[node.finding],
            tuple(taken),
            tuple(masks),
            tuple(self.node_at[branch.go] for branch in node.branches),
            tuple(self.guide.rank(branch.at_least) for branch in node.branches),
            self._met.get(node.name, 0),
        )
