"""Few items: what is too long a list is not read to its end at night."""

from __future__ import annotations

from collections.abc import Iterator, Sized

from triage.guide.model import Ask, Guide
from triage.problems import Place, Problem

MOST_CAUTIONS = 4
MOST_STEPS = 7
"""In a technique, and in one duty of the raising plan."""


def too_many(guide: Guide) -> Iterator[Problem]:
    """At most four cautions anywhere, and seven steps in a technique or in a duty of the raising plan."""
    for node in guide.nodes.values():
        if not isinstance(node, Ask):
            yield from _counted(node.name, node.place, node.cautions)
    for how_to in guide.how_tos.values():
        yield from _counted(how_to.name, how_to.place, how_to.cautions, how_to.steps)
    for duty in guide.duties.values():
        yield from _counted(duty.name, duty.place, duty.cautions, duty.do)
    for item in guide.cupboard.values():
        yield from _counted(item.name, item.place, item.cautions)


def _counted(name: str, place: Place, cautions: Sized, steps: Sized = ()) -> Iterator[Problem]:
    if len(cautions) > MOST_CAUTIONS:
        what = f"'{name}' has {len(cautions)} cautions; {MOST_CAUTIONS} at most are minded"
        yield Problem(place, what, "too-many-items")
    if len(steps) > MOST_STEPS:
        yield Problem(place, f"'{name}' has {len(steps)} steps; {MOST_STEPS} at most", "too-many-items")
