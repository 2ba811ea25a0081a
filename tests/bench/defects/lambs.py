"""What damage does to lambs: the same made-up lambs walked through the sound guide and the damaged one."""

from __future__ import annotations

import random
from functools import cache

from triage.facts import Value
from triage.guide.model import Act, Ask, Guide
from triage.rules.telling import Telling
from triage.walk import NotNow, Walk

LAMBS = 3_000
ROUNDS = 4
"""How often a finding may be asked again, each time with an answer of its own."""

Lamb = dict[str, list[Value]]


@cache
def lambs(count: int = LAMBS) -> tuple[Lamb, ...]:
    """Return made-up lambs: for each finding some telling answers, those at the very lines among them."""
    from tests.published.walks import shipped

    chance = random.Random(count)
    values = Telling(shipped()).values
    return tuple(
        {name: [chance.choice(each) for _ in range(ROUNDS)] for name, each in values.items()}
        for _ in range(count)
    )


def outcome(guide: Guide, lamb: Lamb) -> tuple[int, tuple[object, ...]]:
    """Return the rank of urgency that a lamb comes to, and the pages of things to do that it sees."""
    walk, used = Walk(guide), dict[str, int]()
    pages: list[object] = []
    try:
        while not walk.finished:
            node = walk.node
            if isinstance(node, Act):
                pages.append(node)
                walk = walk.done()
            elif isinstance(node, Ask):
                at = used.get(node.finding, 0)
                used[node.finding] = at + 1
                walk = walk.answer(lamb[node.finding][min(at, ROUNDS - 1)])
    except NotNow:
        return len(guide.front.urgencies) + 1, ("stuck",)
    return guide.rank(walk.state.urgency), (*pages, walk.node)


def effect(sound: Guide, damaged: Guide) -> str:
    """Return what some lamb sees of the damage: a milder call, another page, a stricter call, or nothing."""
    seen: set[str] = set()
    for lamb in lambs():
        was, is_ = _sound(sound, lamb), outcome(damaged, lamb)
        if is_[0] > was[0]:
            return "milder"
        if is_[1] != was[1]:
            seen.add("another page")
        elif is_[0] < was[0]:
            seen.add("stricter")
    return "another page" if "another page" in seen else "stricter" if seen else "nothing"


_KNOWN: dict[int, tuple[int, tuple[object, ...]]] = {}


def _sound(sound: Guide, lamb: Lamb) -> tuple[int, tuple[object, ...]]:
    if id(lamb) not in _KNOWN:
        _KNOWN[id(lamb)] = outcome(sound, lamb)
    return _KNOWN[id(lamb)]
