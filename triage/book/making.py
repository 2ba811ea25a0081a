"""What a book is made by: the guide, who reads it, the day, and what is told of its review."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from triage.guide.model import Guide
from triage.units import System


@dataclass(frozen=True)
class Told:
    """What a book says of its own review. An empty text is left out."""

    whole: str = ""
    """How the whole guidance stands with vets, as one sentence."""
    overdue: str = ""
    """A sentence where the guidance is past the day by which it was to be read again."""
    each: Mapping[str, str] = field(default_factory=dict)
    """How single statements stand, by their keys, as `node/chilled-feed`; only where that is worth saying."""
    codes: Mapping[str, str] = field(default_factory=dict)
    """For each topic the code of its wording, which a vet signs."""


@dataclass(frozen=True)
class Making:
    """Everything that a book follows from: the same values give the same bytes."""

    guide: Guide
    day: date
    """The day that it says it was written on."""
    system: System = "metric"
    """The units that come first; the others stand in brackets."""
    phone: tuple[str, str] = ("", "")
    """The vet's numbers by day and at night."""
    told: Told = Told()
    maps: bool = True
    """Whether the map of each topic is drawn; they are a quarter of a book, and for a screen alone."""

    @property
    def written(self) -> str:
        """The day in words."""
        return f"{self.day.day} {self.day:%B %Y}"
