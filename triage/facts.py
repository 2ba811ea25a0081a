"""What is known of one lamb, in the form the sums take it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum


class Unsure(Enum):
    """The answer "not sure, or can't measure"; it is an answer, and counts as known."""

    UNSURE = "unsure"


UNSURE = Unsure.UNSURE

Value = float | str | Unsure
"""A measurement in its finding's unit, the name of a choice, or UNSURE."""


@dataclass(frozen=True)
class Facts:
    """The guide's numbers (each in its own unit) and what is known of the lamb."""

    numbers: Mapping[str, float]
    known: Mapping[str, Value]

    def number(self, name: str) -> float:
        """Return a number of the guide in the unit it is written in."""
        return self.numbers[name]

    def measured(self, finding: str) -> float | None:
        """Return a measurement in its finding's unit, or None when it was not measured."""
        value = self.known.get(finding)
        return value if isinstance(value, float) else None

    def chosen(self, finding: str) -> str | None:
        """Return the choice made, or None when it is not known."""
        value = self.known.get(finding)
        return value if isinstance(value, str) else None
