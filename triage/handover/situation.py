"""What goes into a handover, and what comes out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from triage.casebook.rows import Lamb, Observation
from triage.clock import Now
from triage.holding.holding import Holding
from triage.page.inert import inert
from triage.units import System
from triage.walk import Move, Walk

Rest = Move | Observation | Lamb | Holding | str
"""What a line rests on: an answer or act, an observation, the lamb's card, the holding, or one of these."""

GUIDE = "the guide"
"""The words or numbers of the guide itself."""

FORM = "the form"
"""Words that are the same for every lamb, or that say that nothing is written down."""


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


def told(text: str, rests: Iterable[Rest]) -> Told:
    """Return a line that is shown as one line, whatever was typed into it; no rest stands in it twice."""
    kept: list[Rest] = []
    for rest in rests:
        if not any(rest is each for each in kept):
            kept.append(rest)
    return Told(inert(text), tuple(kept))


@dataclass(frozen=True)
class Handover:
    """A handover: what is said, and under it everything in full."""

    spoken: tuple[Told, ...]
    """At most 150 words in all. The first line says who calls, which lamb, and why now."""
    found: tuple[Told, ...]
    """What is not normal, with every reading and its time, the latest first."""
    normal: tuple[Told, ...]
    not_checked: tuple[Told, ...]
    """What a vet would ask and nobody looked at, and what was looked at and is not sure."""
    other: tuple[Told, ...]
    """Circumstances, which are neither normal nor a worry."""
    given: tuple[Told, ...]
    """Feeds, treatments and acts, the latest first."""
    before: tuple[Told, ...]
    """Temperatures and weights of the days before, the latest first."""
    seen: tuple[Told, ...]
    """Everything else that was written down, the latest first."""
    here: tuple[Told, ...]
    """Who calls, where the place is, and what people here were taught by a vet."""
    read_back: tuple[Told, ...]
    """What to say so that the vet's words are read back."""
    to_write: tuple[Told, ...]
    """What to write down of what the vet says, each with room behind it."""
