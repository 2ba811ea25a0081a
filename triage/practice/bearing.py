"""Which rules of the guide bear on a lamb at a page: their `when` is true of what is known of it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from triage.check.search.pages import Page, pages_of
from triage.check.search.telling import Telling
from triage.guide.model import Guide, Rule
from triage.walk import Walk


class Bearing:
    """The rules of a guide, ready to be held against made-up lambs."""

    def __init__(self, guide: Guide, telling: Telling) -> None:
        self.guide = guide
        self.telling = telling

    @cached_property
    def pages(self) -> Mapping[str, Page]:
        """Every act and end, as rules see it."""
        return pages_of(self.guide)

    @cached_property
    def _spoken_of(self) -> Mapping[str, tuple[Rule, ...]]:
        """For each page the rules that speak of it."""
        rules = self.guide.rules.values()
        return {
            name: tuple(rule for rule in rules if page.spoken_of(rule)) for name, page in self.pages.items()
        }

    def on(self, walk: Walk) -> tuple[Rule, ...]:
        """Return the rules that bear on the lamb of a walk, at the page where the walk is.

        The proof counts what was not asked as if a forbidding rule held. A made-up lamb has only what was
        answered, so that nobody is asked to guess what it is that nobody looked at.
        """
        known = walk.state.known
        spoken_of = self._spoken_of.get(walk.node.name, ())
        return tuple(rule for rule in spoken_of if self.telling.describes(rule.when, known))
