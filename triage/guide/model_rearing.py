"""What the raising plan is made of: duties, each due by a lamb's age, and what the law of a place allows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from triage.problems import Place

if TYPE_CHECKING:
    from triage.guide.model import Condition

_SOMEWHERE = Place("")


@dataclass(frozen=True)
class Duty:
    """One thing that is done in raising a lamb, and the ages between which it is done.

    `from_`, `until` and `every` are names of numbers of time; without `from_` it begins at birth. Without
    `until` it is done once, or goes on to the end of the plan where `every` is given.
    """

    name: str
    about: str
    title: str
    do: tuple[str, ...]
    sources: tuple[str, ...]
    certainty: str
    from_: str = ""
    until: str = ""
    every: str = ""
    for_: Mapping[str, tuple[Condition, ...]] = field(default_factory=dict)
    """Which lambs it is for, in the findings of the plan; a finding left open counts as unasked."""
    law: bool = False
    """Whether the law of the place limits it; the plan then shows that law beside it."""
    ring: bool = False
    """Whether it is done with a ring, which many laws allow only for a few days."""
    from_event: str = ""
    """What happens to the lamb and begins it, whatever its age then: `weaned`, or nothing."""
    until_event: str = ""
    """What happens to the lamb and ends it: `weaned`, or `weighed`; the next time of it is due again."""
    why: str = ""
    cautions: tuple[str, ...] = ()
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Law:
    """What one place allows of castration and docking, as it was read on a date. To be checked again."""

    name: str
    where: str
    says: tuple[str, ...]
    read: str
    sources: tuple[str, ...]
    certainty: str
    ring_until: str = ""
    """The number of time up to which a ring may be put on without an anaesthetic."""
    no_ring: bool = False
    """Whether rings are forbidden at any age."""
    place: Place = field(default=_SOMEWHERE, compare=False)
