"""What lies ahead of each node, whatever is known: the sure urgency, what is asked, what is done."""

from __future__ import annotations

from triage.check.search.ways import NOWHERE, ActWays, AskWays, EndWays
from triage.compare.paths import Paths


class Ahead:
    """Folds over the nodes of one guide, those first that nothing leads on from."""

    def __init__(self, paths: Paths, order: list[int]) -> None:
        self.paths = paths
        self.sure = self._sure(order)
        """For each node the rank of urgency that every walk from it on comes to at least."""
        self.asks = self._gathered(order, [_asks(paths, at) for at in range(len(paths.nodes))])
        """For each node the findings that it or something ahead asks, as bits."""
        self.acts = self._gathered(order, [_acts(paths, at) for at in range(len(paths.nodes))])
        """For each node the acts that it is or that lie ahead, as bits by their twins' numbers."""

    def _sure(self, order: list[int]) -> list[int]:
        nobody = self.paths.scale.nobody
        sure = [-1] * len(self.paths.nodes)
        changed = True
        while changed:
            changed = False
            for at in order:
                ways = self.paths.nodes[at]
                least = sure[at]
                if isinstance(ways, EndWays):
                    least = ways.rank
                elif isinstance(ways, ActWays):
                    least = max(sure[to] for to in ways.targets)
                else:
                    led = zip(ways.masks, ways.ranks, ways.targets, strict=True)
                    least = max((min(rank, sure[to]) for mask, rank, to in led if mask), default=-1)
                    if NOWHERE in ways.branch_at:
                        least = nobody
                if least > sure[at]:
                    sure[at], changed = least, True
        return [nobody if rank < 0 else rank for rank in sure]

    def _gathered(self, order: list[int], own: list[int]) -> list[int]:
        found = list(own)
        changed = True
        while changed:
            changed = False
            for at in order:
                more = found[at]
                for to in self.paths.nodes[at].targets:
                    more |= found[to]
                if more != found[at]:
                    found[at], changed = more, True
        return found


def _asks(paths: Paths, at: int) -> int:
    ways = paths.nodes[at]
    return 1 << ways.finding if isinstance(ways, AskWays) else 0


def _acts(paths: Paths, at: int) -> int:
    return 1 << paths.twin[at] if isinstance(paths.nodes[at], ActWays) else 0
