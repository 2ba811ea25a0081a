"""Texts of the guide as they stand on a wall, for no one lamb: numbers are filled in, sums are not."""

from __future__ import annotations

from dataclasses import dataclass

from triage.guide.model import PLACEHOLDER, Condition, Finding, Guide
from triage.units import System, show

FIRST_THE_GUIDE = "Any of them: open the guide before you feed."

MEASURE = "its measure"
"""Stands for an amount that goes by weight, which the tables hold."""

SAID = {
    "milk-count": "its feeds a day",
    "first-milk-count": "its feeds",
    "first-milk-day": "its day's measure",
    "first-milk-day-cold": "its cold day's measure",
    "milk-day": "its day's measure",
    "fluid-day": "its day's measure",
    "glucose-dose": "the vet's dose",
    "first-milk-good-time": "the time left",
    "first-milk-window": "the time left",
}
"""Other words for a sum than that it is a measure."""


@dataclass(frozen=True)
class Wall:
    """The guide, and the unit system in which it is read."""

    guide: Guide
    system: System = "metric"

    def fill(self, text: str) -> str:
        """Return a text with its numbers; a sum is told as the measure that the tables hold."""
        filled = PLACEHOLDER.sub(lambda match: self._named(match[1]), text)
        return filled[:1].upper() + filled[1:]

    def _named(self, name: str) -> str:
        if name in self.guide.numbers:
            return self.number(name)
        return SAID.get(name, MEASURE)

    def number(self, name: str) -> str:
        """Return a number of the guide with its unit."""
        number = self.guide.numbers[name]
        return show(number.value, number.unit, self.system)

    def before_feed(self) -> tuple[str, tuple[str, ...]]:
        """Return what the guide asks before any feed, and the answers to it that are not normal."""
        finding = self.guide.findings.get("before-feed")
        if finding is None or finding.normal is None:
            return "", ()
        choices = finding.choices.items()
        signs = tuple(self.fill(said) for name, said in choices if name not in finding.normal.is_)
        return self.fill(finding.ask), signs

    def conditions(self, finding: Finding, conditions: tuple[Condition, ...]) -> str:
        """Return which answers a page is for, without "not sure": on a wall only what was seen counts."""
        said = [self._condition(finding, each) for each in conditions if not each.unsure and not each.unasked]
        return " or ".join(said)

    def _condition(self, finding: Finding, condition: Condition) -> str:
        if condition.is_:
            said = (self.fill(finding.choices[each]) for each in condition.is_)
            return " or ".join(each[:1].lower() + each[1:] for each in said)
        limits = (
            ("above", condition.above),
            ("from", condition.from_),
            ("below", condition.below),
            ("up to", condition.up_to),
        )
        return ", ".join(f"{word} {self.number(name)}" for word, name in limits if name)
