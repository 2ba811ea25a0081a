"""A lamb grows older while its walk waits, and what is right for it can change with its age.

Cold at four hours it is warmed; cold at seven it needs glucose first. So a walk that is gone on with later
goes by the age of now, never by the one that was answered.
"""

from __future__ import annotations

from datetime import datetime, timedelta

from triage.units import show
from triage.walk import KEPT, Answer, Changed, Walk, fits

DRIFT = timedelta(minutes=15)
"""A smaller difference of age is finer than anybody knows it."""


def aged(walk: Walk, now: datetime) -> Changed:
    """Return the walk with the age as it now is, and the moves that no longer have a place in it."""
    for index in reversed(range(len(walk.moves))):
        move = walk.moves[index]
        if isinstance(move, Answer) and move.finding == "age":
            return _with_age(walk, index, move, now)
    return Changed(walk, ())


def _with_age(walk: Walk, index: int, move: Answer, now: datetime) -> Changed:
    if not isinstance(move.value, float) or move.at is None or now - move.at < DRIFT:
        return Changed(walk, ())
    hours = round(move.value + (now - move.at).total_seconds() / 3600, 2)
    if not fits(walk.guide.findings["age"], hours):
        return Changed(walk, ())
    # A time of birth says the same of any moment; an age that was reckoned on is marked as such.
    return walk.change(index, hours, move.said if move.said.startswith("born") else KEPT, now)


def changes_place(walk: Walk, changed: Changed) -> bool:
    """Whether another page is right for the lamb at its age of now."""
    return bool(changed.dropped) or changed.walk.node.name != walk.node.name


def told_age(walk: Walk) -> str:
    """Return the sentence that tells why the page is another one."""
    hours = walk.facts.measured("age")
    return f"It is {show(round(hours or 0, 1), 'h')} old by now. That changes what is right: read this page."
