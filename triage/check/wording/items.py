"""Few items: what is too long a list is not read to its end at night."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import Ask, Guide
from triage.problems import Problem

MOST_CAUTIONS = 4
MOST_HOW_TO_STEPS = 7


def too_many(guide: Guide) -> Iterator[Problem]:
    """At most four cautions on a page or at a thing, and seven steps and four cautions in a technique."""
    for node in guide.nodes.values():
        if not isinstance(node, Ask) and len(node.cautions) > MOST_CAUTIONS:
            what = f"'{node.name}' has {len(node.cautions)} cautions; {MOST_CAUTIONS} at most are minded"
            yield Problem(node.place, what, "too-many-items")
    for how_to in guide.how_tos.values():
        if len(how_to.cautions) > MOST_CAUTIONS:
            what = f"'{how_to.name}' has {len(how_to.cautions)} cautions; {MOST_CAUTIONS} at most are minded"
            yield Problem(how_to.place, what, "too-many-items")
        if len(how_to.steps) > MOST_HOW_TO_STEPS:
            what = f"'{how_to.name}' has {len(how_to.steps)} steps; {MOST_HOW_TO_STEPS} at most"
            yield Problem(how_to.place, what, "too-many-items")
    for item in guide.cupboard.values():
        if len(item.cautions) > MOST_CAUTIONS:
            what = f"'{item.name}' has {len(item.cautions)} cautions; {MOST_CAUTIONS} at most are minded"
            yield Problem(item.place, what, "too-many-items")
