"""The things that a holding keeps for its lambs, as the guide's cupboard lists them."""

from __future__ import annotations

from dataclasses import dataclass, field

from triage.problems import Place

_SOMEWHERE = Place("")


@dataclass(frozen=True)
class HowMany:
    """How much of a thing there should be: so many for the holding, or so much for each lamb."""

    least: int = 0
    """So many, however few the lambs."""
    one_for: int = 0
    """One for so many lambs."""
    each_lamb: tuple[str, ...] = ()
    """Numbers that, multiplied, are what one lamb takes."""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Item:
    """One thing of the cupboard. What needs it is found by its words, its tags and its sums."""

    name: str
    title: str
    why: str
    sources: tuple[str, ...]
    certainty: str
    first: str = ""
    """By when it has to be there; empty where any house has it."""
    how_many: HowMany | None = None
    ask_vet: str = ""
    """What to ask a vet about it; nothing is counted then."""
    at_hand: bool = False
    words: tuple[str, ...] = ()
    tags: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()
    unless: tuple[str, ...] = ()
    """Tags of steps that speak of it and do not need it: the bottle is taken away."""
    keeps: str = ""
    dated: bool = False
    cautions: tuple[str, ...] = ()
    place: Place = field(default=_SOMEWHERE, compare=False)
