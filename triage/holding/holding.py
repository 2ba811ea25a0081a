"""What is kept of a holding, as one frozen value; everything may be empty."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from triage.problems import Problem
from triage.units import System


@dataclass(frozen=True)
class Holding:
    """One holding. An empty text, or None, means that it is not kept."""

    caller: str = ""
    """Who phones from here, as they say their name."""
    place: str = ""
    """The name of the place, and the village."""
    found_by: str = ""
    """What the caller should say so that the vet finds the place."""
    vet: str = ""
    """The vet's number by day."""
    out_of_hours: str = ""
    """The vet's number at night, where it is another."""
    units: System | None = None
    theme: str = ""
    """A name among the themes of the full screen."""
    bag_powder: float | None = None
    """Grams of milk powder that the bag of milk replacer names."""
    bag_water: float | None = None
    """Millilitres of water, or of milk, that it names for them."""
    bag_way: str = ""
    """A choice of the finding `bag-way`: how the bag words it."""
    law: str = ""
    """The name of a law among those of the guide, by which rings and docking are dated."""
    taught: Mapping[str, str] = field(default_factory=dict)
    """Who here was taught by a vet, and what they may do, in the holding's own words."""
    pass_mark: tuple[int, float, float] | None = None
    """What practice must have shown: danger cases in a row, and the shares called less and more urgent."""


@dataclass(frozen=True)
class HeldRead:
    """What came of reading: every right value, and each mistake with its place."""

    holding: Holding
    problems: tuple[Problem, ...] = ()
