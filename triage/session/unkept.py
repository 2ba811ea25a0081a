"""Walks that could not be kept and are not in hand: they stay within reach while the guide is open."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from triage.casebook.rows import Case, Lamb, Look
from triage.clock import Now
from triage.looks import look_of
from triage.walk import Walk


@dataclass(frozen=True)
class SetDown:
    """A walk set down for another one: whose, and the case it is in the file, if it is there."""

    lamb: Lamb
    case: Case | None
    walk: Walk


@dataclass
class Unkept:
    """The walks that were set down, and the looks that somebody called done."""

    walks: list[SetDown] = field(default_factory=list)
    settled: list[Look] = field(default_factory=list)

    def look(self, walk: Walk) -> Look | None:
        """Return the look that a walk has set, unless somebody said that it is done."""
        look = look_of(walk)
        return None if look in self.settled else look

    def looks(self) -> list[tuple[str, Look]]:
        """Return the looks that the walks have set, each with the lamb's name."""
        return [(each.lamb.name, look) for each in self.walks if (look := self.look(each.walk))]

    def cases(self, now: Now) -> tuple[tuple[Lamb, Case], ...]:
        """Return the walks as cases, each with its lamb."""
        return tuple(
            (each.lamb, replace(as_case(each.lamb, each.case, each.walk, now), look=self.look(each.walk)))
            for each in self.walks
        )


def as_case(lamb: Lamb | None, case: Case | None, walk: Walk, now: Now) -> Case:
    """Return a walk as the case it is, or would be, with its moves as they now are."""
    edition = walk.guide.front.edition
    known = case or Case("", lamb.id if lamb else "", now.moment, now.moment, edition, look=look_of(walk))
    return replace(known, moves=walk.moves)


def name_by(now: Now, called: str = "lamb") -> str:
    """Return what a lamb, or whatever a walk is about, is called until somebody names it."""
    return f"{called.capitalize()} of {now.moment.astimezone(now.zone):%H:%M}"
