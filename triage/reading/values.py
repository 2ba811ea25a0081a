"""What a key names in a guide."""

from __future__ import annotations

from typing import Any

from triage.amounts import AMOUNTS
from triage.guide.model import Guide
from triage.reading.kinds import parted

_MAPS = {
    "topic": "topics",
    "node": "nodes",
    "finding": "findings",
    "number": "numbers",
    "how-to": "how_tos",
    "rule": "rules",
    "duty": "duties",
    "law": "laws",
    "item": "cupboard",
    "term": "glossary",
    "source": "sources",
    "deed": "deeds",
    "case": "cases",
}
"""Where a guide keeps each kind."""


def names_in(guide: Guide) -> dict[str, tuple[str, ...]]:
    """Return the names of each kind of statement, in reading order; no kind that there is nothing of."""
    found = {kind: tuple(getattr(guide, where)) for kind, where in _MAPS.items()}
    found["node"] = tuple(node.name for topic in guide.topics for node in guide.by_topic.get(topic, ()))
    found["guide"] = ("front", "farm") if guide.farm else ("front",)
    found["urgency"] = tuple(each.name for each in guide.front.urgencies)
    found["sum"] = tuple(
        amount.name
        for amount in AMOUNTS.values()
        if set(amount.numbers) <= guide.numbers.keys() and set(amount.needs) <= guide.findings.keys()
    )
    return {kind: names for kind, names in found.items() if names}


def value_of(guide: Guide, key: str) -> Any:
    """Return what a key names: a node, a number; of a sum its name; KeyError where there is none."""
    kind, name = parted(key)
    if kind == "guide":
        return guide.front if name == "front" else guide.farm
    if kind == "urgency":
        return {each.name: each for each in guide.front.urgencies}[name]
    return name if kind == "sum" else getattr(guide, _MAPS[kind])[name]
