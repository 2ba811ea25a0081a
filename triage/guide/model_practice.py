"""What practice is made of: written cases, the farm they are set on, and what people are tempted to do."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, NamedTuple

from triage.problems import Place

if TYPE_CHECKING:
    from triage.guide.model import Lamb

_SOMEWHERE = Place("")


class Typed(NamedTuple):
    """An answer as somebody would type it, and where it stands."""

    text: str
    place: Place


@dataclass(frozen=True)
class WrittenCase:
    """A made-up lamb as its author tells it. What is right for it is never written: the guide is walked."""

    name: str
    story: str
    """A `{finding}` in it stands for the case's own answer."""
    findings: Mapping[str, tuple[Typed, ...]]
    """What is typed for each finding, once for each time that it is asked."""
    remember: str
    told: tuple[str, ...] = ()
    """The findings that the story tells; the others have to be looked at."""
    trap: str = ""
    """What misleads in it, said afterwards."""
    vet_if: Mapping[str, Typed] = field(default_factory=dict)
    """One finding thought otherwise: how soon a vet then?"""
    right_if: Mapping[str, Typed] = field(default_factory=dict)
    """One finding thought otherwise: what is right then?"""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Deed:
    """Something that people are tempted to do: wrong for each lamb on which a rule bears that it breaks."""

    do: str
    tag: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()
    says: tuple[str, ...] = ()
    against: tuple[str, ...] = ()
    """Rules that ask for something, and that this deed goes against."""
    later_than: str = ""
    """An urgency: the call comes later than that, against each rule that asks for as much or more."""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Farm:
    """The invented farm, the names that its stories use, and how a drawn case of each matter begins."""

    farm: str
    names: tuple[str, ...]
    openings: Mapping[str, tuple[str, ...]]
    told: tuple[str, ...]
    """The findings that anybody tells at once; of a drawn case all others have to be looked at."""
    leads_on: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Answers that only bring the next question, and that no story need tell."""
    clashes: tuple[Lamb, ...] = ()
    """What no lamb is at once, though the answers to the guide's questions could say so."""
    odd_together: tuple[Lamb, ...] = ()
    """What can be at once, but is never told as ordinary of a lamb of which it was not asked."""
    first: tuple[str, ...] = ()
    """The written cases that a helper meets first: together they put every rule to the test."""
    place: Place = field(default=_SOMEWHERE, compare=False)
