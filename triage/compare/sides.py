"""Two guides made ready to be walked side by side."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import count

from triage.compare.ahead import Ahead
from triage.compare.asked import Asked
from triage.compare.downstream import colours, ends_first
from triage.compare.joint import Search
from triage.compare.pages import Pages
from triage.compare.paths import Counted, Paths, Shared
from triage.compare.scale import Scale
from triage.compare.states import Found, Task, most_states
from triage.compare.twins import Twins
from triage.guide.model import Act, Guide

NONE: tuple[frozenset[str], frozenset[str]] = (frozenset(), frozenset())


@dataclass(frozen=True)
class Sides:
    """The old guide and the new one, with everything that they share."""

    guides: tuple[Guide, Guide]
    asked: Asked
    twins: Twins
    scale: Scale
    paths: tuple[Paths, Paths]
    pages: Pages

    @classmethod
    def of(cls, old: Guide, new: Guide) -> Sides:
        """Return two guides side by side."""
        twins = Twins(old, new)
        shared = Shared(Asked(old, new), twins, Scale(old, new), Counted(old, new, twins))
        paths = Paths(old, 0, shared), Paths(new, 1, shared)
        return cls((old, new), shared.asked, twins, shared.scale, paths, Pages(old, new, twins))

    def act(self, side: int, twin: int) -> str:
        """Return the name of an act by its number, empty where the guide has none of that number."""
        names = (name for name, at in self.twins.at[side].items() if at == twin)
        name = next(names, "")
        return name if isinstance(self.guides[side].nodes.get(name), Act) else ""

    def search(
        self,
        most: int = 0,
        looked_for: tuple[frozenset[str], frozenset[str]] = NONE,
        leave_aside: bool = True,
    ) -> Found:
        """Search all that any lamb can come to; `looked_for` are nodes by which lambs are told apart.

        With `leave_aside` off nothing is taken as alike, for tests.
        """
        orders = ends_first(self.paths[0])[0], ends_first(self.paths[1])[0]
        marked = colours(self.paths, self.pages.marks())
        if not leave_aside:
            fresh = count()
            marked = [next(fresh) for _ in marked[0]], [next(fresh) for _ in marked[1]]
        task = Task(
            self.paths,
            (Ahead(self.paths[0], orders[0]), Ahead(self.paths[1], orders[1])),
            marked,
            self._watched(),
            (self._numbered(0, looked_for[0]), self._numbered(1, looked_for[1])),
            most or most_states(sum(len(guide.nodes) for guide in self.guides)),
        )
        return Search(task).run()

    def _numbered(self, side: int, names: frozenset[str]) -> frozenset[int]:
        return frozenset(self.paths[side].node_at[name] for name in names)

    def _watched(self) -> frozenset[int]:
        """Return the acts of both guides that have other steps now, or fewer cautions."""
        at = self.twins.at[0]
        return frozenset(
            at[before]
            for after, before in self.twins.old_name.items()
            if isinstance(self.guides[0].nodes[before], Act)
            and (self.pages.lost(before, after) or self.pages.other_steps(before, after))
        )
