"""Short ways: few screens to any end, few steps in view, few keys from a danger sign to the phone."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.danger import starts
from triage.check.search.searched import Searched
from triage.guide.model import Act, Ask, End, Guide, Node
from triage.problems import Problem

MOST_SCREENS = 12
MOST_CHOICES = 7
MOST_STEPS = 7
MOST_STEPS_VET_NOW = 5
MOST_DANGER_KEYS = 3
KEYS_TO_ANOTHER_WAY = 2


def too_many_steps(guide: Guide) -> Iterator[Problem]:
    """At most seven choices or steps in view, and five when the vet is needed now."""
    for name, node in guide.nodes.items():
        if isinstance(node, Ask):
            finding = guide.findings[node.finding]
            shown = len(finding.choices) + (0 if finding.never_unsure else 1)
            if shown > MOST_CHOICES:
                what = f"'{node.finding}' shows {shown} answers; {MOST_CHOICES} at most are read at night"
                yield Problem(finding.place, what, "too-many-items")
            continue
        steps = len(node.steps if isinstance(node, Act) else node.do)
        now = isinstance(node, End) and node.urgency == guide.top
        most = MOST_STEPS_VET_NOW if now else MOST_STEPS
        if steps > most:
            yield Problem(node.place, f"'{name}' has {steps} steps; {most} at most", "too-many-items")


def too_long(searched: Searched) -> Iterator[Problem]:
    """At most twelve screens to any end, repeats of a timed act aside."""
    for end, walk in searched.longest().items():
        if len(walk) > MOST_SCREENS:
            what = f"{len(walk)} screens lead to '{end}', {MOST_SCREENS} at most: {' > '.join(walk)}"
            yield Problem(searched.guide.nodes[end].place, what, "too-many-screens")


def danger_keys(guide: Guide) -> Iterator[Problem]:
    """A danger sign raises the top urgency within three keys of opening the guide, whichever way one goes in.

    Two keys go before the first page of a way that is not taken as known: to the list, and to the way.
    """
    for choice, start in starts(guide).items():
        spent = KEYS_TO_ANOTHER_WAY if choice not in ("", *guide.front.unless_told.values()) else 0
        if not _asks_danger(guide, guide.nodes[start], spent):
            on = f" of the way in '{choice}'" if choice else ""
            what = f"the danger signs{on} are not asked within {MOST_DANGER_KEYS} keys of the way in"
            yield Problem(guide.front.place, what, "danger-keys")


def _asks_danger(guide: Guide, node: Node, keys: int) -> bool:
    while isinstance(node, Ask) and keys < MOST_DANGER_KEYS:
        keys += 1
        if node.finding in guide.front.danger_signs:
            return True
        targets = {branch.go for branch in node.branches}
        node = guide.nodes[targets.pop()] if len(targets) == 1 else node
    return False
