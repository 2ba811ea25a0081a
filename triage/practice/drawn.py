"""Drawn cases: a state that real answers can reach, told in the findings' own words."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from triage.guide.model import Guide
from triage.practice.case import Case
from triage.practice.drawing import Drawing
from triage.walk import Walk
from triage.ways_in import about, matter

BEGINS = "drawn-"


def draw_case(
    drawing: Drawing, rng: Random, goal: str = "", serves: Callable[[Walk], bool] | None = None
) -> Case | None:
    """Return a case drawn from the graph: for a page where one is named, and one that serves.

    None where no such lamb was found in time.
    """
    walk = drawing.draw(rng, goal or rng.choice(list(drawing.goals)), serves)
    if walk is None:
        return None
    farm = drawing.guide.farm
    told = tuple(name for name in (farm.told if farm else ()) if name in walk.state.known)
    return Case(f"{BEGINS}{rng.getrandbits(64):016x}", walk, _opening(drawing.guide, walk, rng), told)


def _opening(guide: Guide, walk: Walk, rng: Random) -> str:
    finding = matter(guide)
    what = about(walk) or (guide.front.unless_told[finding.name] if finding else "lamb")
    openings = guide.farm.openings.get(what, ()) if guide.farm else ()
    return rng.choice(openings) if openings else ""
