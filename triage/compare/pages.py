"""What it means for two pages to be the same one: what a lamb comes to is held page against page by this."""

from __future__ import annotations

from collections.abc import Hashable
from functools import cache

from triage.compare.twins import Twins, content
from triage.guide.model import Act, Ask, End, Guide, Step

Shown = Act | End

Marks = dict[str, tuple[Hashable, ...]]
"""For each page of a guide what tells it from the pages that differ from it."""


class Pages:
    """The acts and ends of two guides, page against page."""

    def __init__(self, old: Guide, new: Guide, twins: Twins) -> None:
        self.guides = old, new
        self.twins = twins
        self.same = cache(self._same)

    def _same(self, before: str, after: str) -> bool:
        """Whether two pages are one: twins, or alike in all that they say and do."""
        if self.twins.at[0][before] == self.twins.at[1][after]:
            return True
        old, new = self.shown(0, before), self.shown(1, after)
        return content(old) == content(new)

    def shown(self, side: int, name: str) -> Shown:
        """Return a page of one of the guides."""
        node = self.guides[side].nodes[name]
        assert not isinstance(node, Ask)
        return node

    def lost(self, before: str, after: str) -> tuple[str, ...]:
        """Return the cautions of an old page that a new one does not have."""
        kept = set(self.shown(1, after).cautions)
        return tuple(text for text in self.shown(0, before).cautions if text not in kept)

    def other_steps(self, before: str, after: str) -> bool:
        """Whether what is to be done differs: its words, its tags, the techniques, or their order."""
        old, new = self.shown(0, before), self.shown(1, after)
        return _done(_steps(old)) != _done(_steps(new)) or _again(old) != _again(new)

    def marks(self) -> tuple[Marks, Marks]:
        """Return for each page of either guide a mark, the same for two of which nothing has to be told.

        An end that has a twin shares its mark where a lamb that comes to one and now to the other gets no
        other steps and loses no caution. Its urgency is told by the walk.
        """
        found: tuple[Marks, Marks] = ({}, {})
        for side, guide in enumerate(self.guides):
            for name, node in guide.nodes.items():
                if not isinstance(node, Ask):
                    found[side][name] = "page", side, name
        for after, before in self.twins.old_name.items():
            if after in found[1] and not self.other_steps(before, after) and not self.lost(before, after):
                found[0][before] = found[1][after] = "twins", before
        same: dict[Hashable, tuple[Hashable, ...]] = {}
        for side, guide in enumerate(self.guides):
            for name, node in guide.nodes.items():
                if isinstance(node, End) and found[side][name][0] == "page":
                    found[side][name] = same.setdefault(content(node), ("alike", len(same)))
        return found


def _steps(page: Shown) -> tuple[Step, ...]:
    return page.steps if isinstance(page, Act) else page.do


def _done(steps: tuple[Step, ...]) -> tuple[Hashable, ...]:
    return tuple((step.do, step.tag, step.how) for step in steps)


def _again(page: Shown) -> str:
    return page.wait if isinstance(page, Act) else page.look_again
