"""When a lamb is to be looked at again, and when that rings.

A look is kept in UTC, so a clock change does not move it. While the app is open it is also counted on a
clock that nobody sets; whichever is first rings. A clock that was set back rings at once: early is safe.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from triage.casebook.rows import Look
from triage.clock import Now, hhmm
from triage.guide.model import Act, End
from triage.units import show
from triage.walk import Done, Walk

SLACK = timedelta(minutes=2)
"""A look set so far in the future means that the clock was set back, and not that two clocks differ a bit."""

RING_AGAIN = 300.0
"""Seconds between two rings of a look that stays due."""


def look_of(walk: Walk) -> Look | None:
    """Return the look that a walk has set: the wait of an act just done, or of the end it came to."""
    if not walk.moves or walk.moves[-1].at is None:
        return None
    last, node = walk.moves[-1], walk.node
    wait = ""
    if isinstance(last, Done):
        act = walk.guide.nodes[last.act]
        wait = act.wait if isinstance(act, Act) else ""
    if isinstance(node, End):
        wait = _while_it_rings(walk) or node.look_again or wait
    if not wait or last.at is None:
        return None
    minutes = walk.guide.numbers[wait].quantity.to("min").value
    return Look(last.at, last.at + timedelta(minutes=minutes))


def _while_it_rings(walk: Walk) -> str:
    """Return the guide's shortest wait where the vet is called now: such a lamb needs a look most of all."""
    guide = walk.guide
    if walk.state.urgency != guide.top:
        return ""
    waits = {node.look_again for node in guide.nodes.values() if isinstance(node, End) and node.look_again}
    return min(waits, key=lambda name: guide.numbers[name].quantity.to("min").value, default="")


def is_due(look: Look, now: datetime) -> bool:
    """Whether a look is due by the clock on the wall, or the clock was set back since it was set."""
    return now >= look.due or set_back(look, now)


def look_words(look: Look, now: Now) -> str:
    """Return when a look is due, in words."""
    if set_back(look, now.moment):
        return "look now. The clock was set back since the look was set."
    minutes = (look.due - now.moment).total_seconds() / 60
    if is_due(look, now.moment):
        return f"look now, due {hhmm(look.due, now)}, {_span(-minutes)} ago."
    return f"look at {hhmm(look.due, now)}, in {_span(minutes)}."


def _span(minutes: float) -> str:
    return show(max(1, round(minutes)), "min") if minutes < 90 else show(round(minutes / 60, 1), "h")


def set_back(look: Look, now: datetime) -> bool:
    """Whether the clock now stands before the moment at which the look was set."""
    return now < look.set_at - SLACK


def steady_seconds() -> float:
    """Return seconds on a clock that nobody sets; where there is one, it goes on while the machine sleeps."""
    boot = getattr(time, "CLOCK_BOOTTIME", None)
    return time.clock_gettime(boot) if boot is not None else time.monotonic()


@dataclass
class Alarm:
    """Watches looks while the app is open. Each look is known by the case it belongs to."""

    steady: Callable[[], float] = steady_seconds
    _ends: dict[tuple[str, Look], float] = field(default_factory=dict, init=False)
    _rung: dict[tuple[str, Look], float] = field(default_factory=dict, init=False)

    def due(self, looks: Iterable[tuple[str, Look]], now: datetime) -> Mapping[str, Look]:
        """Return the looks that are due, by case."""
        found: dict[str, Look] = {}
        ends: dict[tuple[str, Look], float] = {}
        counted = self.steady()
        for case, look in looks:
            left = (look.due - now).total_seconds()
            longest = (look.due - look.set_at).total_seconds()
            ends[case, look] = self._ends.get((case, look), counted + min(left, longest))
            if is_due(look, now) or counted >= ends[case, look]:
                found[case] = look
        self._ends = ends
        self._rung = {key: when for key, when in self._rung.items() if key in ends}
        return found

    def rings(self, due: Mapping[str, Look]) -> bool:
        """Whether the bell is to be rung now; asking counts as ringing."""
        counted = self.steady()
        ring = False
        for key in due.items():
            if key not in self._rung or counted - self._rung[key] >= RING_AGAIN:
                self._rung[key] = counted
                ring = True
        return ring
