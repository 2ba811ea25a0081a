"""Texts with their numbers and amounts filled in, and answers in words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from triage.facts import Facts, Unsure, Value
from triage.guide.model import PLACEHOLDER, Finding, Guide
from triage.units import System, show

if TYPE_CHECKING:
    from triage.amounts import Sum


@dataclass(frozen=True)
class Reader:
    """Who reads: the guide, the unit system, and what is known of the lamb in hand."""

    guide: Guide
    facts: Facts
    system: System = "metric"

    def fill(self, text: str) -> str:
        """Return a text with each `{name}` as the number or amount it stands for."""
        return PLACEHOLDER.sub(lambda match: self._named(match[1]), text)

    def _named(self, name: str) -> str:
        if name in self.guide.numbers:
            return self.number(name)
        from triage.amounts import AMOUNTS

        return AMOUNTS[name].work_out(self.facts, self.system).words(self.system)

    def number(self, name: str) -> str:
        """Return a number of the guide with its unit."""
        quantity = self.guide.numbers[name].quantity
        return show(quantity.value, quantity.unit, self.system)

    def sums(self, texts: tuple[str, ...]) -> dict[str, Sum]:
        """Return the sums that these texts show, by name, worked out for this lamb."""
        from triage.amounts import AMOUNTS

        names = [name for text in texts for name in PLACEHOLDER.findall(text)]
        wanted = [name for name in dict.fromkeys(names) if name in AMOUNTS]
        return {name: AMOUNTS[name].work_out(self.facts, self.system) for name in wanted}

    def choice(self, finding: Finding, name: str) -> str:
        """Return a choice in its own words."""
        return self.fill(finding.choices[name])

    def answer(self, finding: Finding, value: Value) -> str:
        """Return an answer in words, as `36.4 °C` or `It swallows`."""
        if isinstance(value, Unsure):
            return "not sure"
        if isinstance(value, str):
            return self.choice(finding, value)
        return show(value, finding.measure, self.system)
