"""What goes into a handover, and what comes out."""

from __future__ import annotations

from dataclasses import dataclass, field

from triage.casebook.rows import Lamb, Observation
from triage.clock import Now
from triage.holding.holding import Holding
from triage.units import System
from triage.walk import Move, Walk

Rest = Move | Observation | Lamb | Holding | str
"""What a line rests on: an answer or act, an observation, the lamb's card, the holding, or the guide."""

GUIDE = "the guide"


@dataclass(frozen=True)
class Situation:
    """All that is known when the keeper takes up the phone."""

    walk: Walk
    now: Now
    system: System = "metric"
    lamb: Lamb | None = None
    observations: tuple[Observation, ...] = ()
    earlier: tuple[Move, ...] = ()
    """The moves of the lamb's earlier walks."""
    holding: Holding = field(default_factory=Holding)


@dataclass(frozen=True)
class Told:
    """One line, and everything that it rests on."""

    text: str
    rests_on: tuple[Rest, ...]


@dataclass(frozen=True)
class Handover:
    """A handover: what is said, and under it everything in full."""

    spoken: tuple[Told, ...]
    """At most 150 words in all. The first line says who calls, which lamb, and why now."""
    found: tuple[Told, ...]
    """What is not normal, with every reading and its time."""
    normal: tuple[Told, ...]
    not_checked: tuple[Told, ...]
    other: tuple[Told, ...]
    """Circumstances, which are neither normal nor a worry."""
    given: tuple[Told, ...]
    """Feeds, treatments and acts."""
    seen: tuple[Told, ...]
    """Everything else that was written down."""
    read_back: tuple[str, ...]
    to_write: tuple[str, ...]
    """Lines with room to write down what the vet says."""
