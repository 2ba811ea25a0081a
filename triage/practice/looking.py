"""What can be looked at in a case, and what the guide looks at."""

from __future__ import annotations

from collections.abc import Mapping

from triage.facts import Value
from triage.guide.model import Ask, Finding, Guide, Lamb
from triage.practice.case import Case
from triage.ways_in import about

MOST_LISTED = 9
"""A digit looks at one of them, as long as there are no more; what the guide needs is always listed."""


def danger_findings(guide: Guide) -> frozenset[str]:
    """Return the findings that danger signs are choices of."""
    return frozenset(guide.front.danger_signs)


def signs_of(case: Case) -> tuple[tuple[str, str], ...]:
    """Return the danger signs that a made-up lamb has, as finding and choice."""
    signs = case.walk.guide.front.danger_signs
    return tuple(
        (name, value)
        for name, value in case.now.items()
        if isinstance(value, str) and value in signs.get(name, ())
    )


def listed(case: Case) -> tuple[Finding, ...]:
    """Return what can be looked at, by its label: what this lamb needs and what one would look at anyway.

    Sorted by label, so that the order tells nothing.
    """
    guide = case.walk.guide
    names = list(case.hidden)
    for name in (*_usual(case), *_near(case)):
        if len(names) < MOST_LISTED and name not in names and ordinary(case, name) is not None:
            names.append(name)
    return tuple(sorted((guide.findings[name] for name in names), key=lambda each: each.label))


def ordinary(case: Case, finding: str) -> str | None:
    """Return how something is that the guide never asks of this lamb: as it should be.

    None where the case has an answer of its own, where no answer is the normal one, and where a lamb that
    is otherwise so can't be normal in this.
    """
    asked = case.walk.guide.findings[finding]
    if finding in case.asked or finding in case.told or asked.normal is None or not asked.normal.is_:
        return None
    value = asked.normal.is_[0]
    lamb = {**case.now, finding: value}
    farm = case.walk.guide.farm
    clashes = (*farm.clashes, *farm.odd_together) if farm else ()
    return None if any(_is(lamb, clash) for clash in clashes if finding in clash) else value


def _is(lamb: Mapping[str, Value], meant: Lamb) -> bool:
    """Whether a lamb is what a clash of choices says."""
    return all(
        any(lamb.get(name) in condition.is_ for condition in conditions) for name, conditions in meant.items()
    )


def _usual(case: Case) -> tuple[str, ...]:
    """Return what a vet would ask of any such lamb; of a ewe or a flock nothing of the kind."""
    return () if about(case.walk) else case.walk.guide.front.vet_asks


def _near(case: Case) -> tuple[str, ...]:
    """Return what the same topic asks of other lambs."""
    nodes = case.walk.guide.by_topic.get(case.page.topic, ())
    return tuple(dict.fromkeys(node.finding for node in nodes if isinstance(node, Ask)))


def is_needless(case: Case, finding: str) -> bool:
    """Whether a look was no use here, and is none that a careful person takes of any lamb."""
    return finding not in case.now and finding not in _usual(case)
