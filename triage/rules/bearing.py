"""Which rules of the guide bear on a lamb at a page: their `when` is true of what is known of it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property

from triage.guide.model import Guide
from triage.guide.model_rules import Rule
from triage.rules.pages import Page, pages_of
from triage.rules.telling import Telling
from triage.walk import Walk


class Bearing:
    """The rules of a guide, ready to be held against made-up lambs."""

    def __init__(self, guide: Guide, telling: Telling) -> None:
        self.guide = guide
        self.telling = telling
        self._sorted: dict[str, Mapping[str, list[Rule]]] = {}

    @cached_property
    def pages(self) -> Mapping[str, Page]:
        """Every act and end, as rules see it."""
        return pages_of(self.guide)

    def _spoken_of(self, name: str) -> Mapping[str, list[Rule]]:
        """Return the rules that speak of a page, by one finding that has to be known for each."""
        if name not in self._sorted:
            page = self.pages[name]
            found: dict[str, list[Rule]] = {}
            for rule, need in self._needs:
                if page.spoken_of(rule):
                    found.setdefault(need, []).append(rule)
            self._sorted[name] = found
        return self._sorted[name]

    @cached_property
    def _needs(self) -> list[tuple[Rule, str]]:
        return [(rule, _need(rule)) for rule in self.guide.rules.values()]

    def on(self, walk: Walk) -> tuple[Rule, ...]:
        """Return the rules that bear on the lamb of a walk, at the page where the walk is.

        The proof counts what was not asked as if a forbidding rule held. A made-up lamb has only what was
        answered, so that nobody is asked to guess what it is that nobody looked at.
        """
        known = walk.state.known
        spoken_of = self._spoken_of(walk.node.name)
        open_ = (rule for need in ("", *known) for rule in spoken_of.get(need, ()))
        return tuple(rule for rule in open_ if self.telling.describes(rule.when, known))


def _need(rule: Rule) -> str:
    """Return a finding without which a rule can't describe a lamb, or an empty text."""
    needs = (name for name, conditions in rule.when.items() if not any(each.unasked for each in conditions))
    return next(needs, "")
