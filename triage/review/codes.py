"""The code of a topic as printed: who has read it on paper signs it with this code, and no other wording."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from functools import lru_cache

from triage.guide.model import Guide
from triage.review.same import Same
from triage.review.statements import Statement

SHOWN = ("node", "finding", "number", "how-to", "sum", "urgency")
"""Kinds that the pages of a topic show, beside the topic itself."""


def keys_of(statements: Mapping[str, Statement], guide: Guide, topic: str) -> tuple[str, ...]:
    """Return the keys of what a topic says: its nodes, and all that they lean on and show."""
    waiting = [f"topic/{topic}", *(f"node/{node.name}" for node in guide.by_topic.get(topic, ()))]
    found: dict[str, None] = {}
    while waiting:
        key = waiting.pop(0)
        if key in found or key not in statements:
            continue
        found[key] = None
        waiting += [each for each in statements[key].leans_on if each.partition("/")[0] in SHOWN]
    return tuple(key for key in statements if key in found)


def code_of(guide: Guide, topic: str) -> str:
    """Return the code of a topic as it now is, as `3f2a-91c4`. The guide must have been read whole."""
    return _codes(Same(guide))[topic]


@lru_cache(maxsize=4)
def _codes(same: Same) -> dict[str, str]:
    from triage.review.statements import seals_of, statements_of

    statements = statements_of(same.guide)
    seals = seals_of(statements)
    return {topic: code(keys_of(statements, same.guide, topic), seals) for topic in same.guide.topics}


def code(keys: tuple[str, ...], seals: Mapping[str, str]) -> str:
    """Return the code of some statements: eight hexadecimal digits."""
    lines = "\n".join(f"{key} {seals[key]}" for key in sorted(keys))
    digits = hashlib.sha256(lines.encode()).hexdigest()[:8]
    return f"{digits[:4]}-{digits[4:]}"
