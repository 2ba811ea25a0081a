"""What must never, or always, hold of a lamb. A walk goes by no rule, so it is spared the loading."""

from __future__ import annotations

from dataclasses import dataclass, field

from triage.guide.model import Lamb
from triage.problems import Place

_SOMEWHERE = Place("")


@dataclass(frozen=True)
class Trait:
    """What a page or a walk can be found to have; a rule's target has one of these set."""

    tag: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()
    says: tuple[str, ...] = ()
    urgency: str = ""
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Pages:
    """Which pages a rule is about: any of these tags, sums or numbers shown, or urgencies of an end."""

    tag: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()
    end: tuple[str, ...] = ()
    place: Place = field(default=_SOMEWHERE, compare=False)


@dataclass(frozen=True)
class Rule:
    """What must never, or always, hold of every lamb that `when` describes."""

    name: str
    because: str
    sources: tuple[str, ...]
    never: Trait | None = None
    always: Trait | None = None
    on: Pages | None = None
    when: Lamb = field(default_factory=dict)
    where_asked: bool = False
    place: Place = field(default=_SOMEWHERE, compare=False)
