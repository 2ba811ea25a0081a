"""A lamb's card: what its walks tell of it for good, and what it can answer in a later walk."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from triage.casebook.rows import Lamb
from triage.clock import Now, hhmm
from triage.entry import Understood
from triage.guide.model import Finding, Guide
from triage.holding.holding import Holding
from triage.units import System, show
from triage.walk import KEPT, Answer, Move
from triage.weighings import Weighing

FRESH = timedelta(hours=24)
"""A weight older than this is not offered: a young lamb gains or loses too much in a day."""


def card_from(lamb: Lamb, moves: Iterable[Move]) -> Lamb:
    """Return a lamb's card with what a walk told of its birth. A time of birth outranks an age."""
    for move in moves:
        if not isinstance(move, Answer) or move.said == KEPT:
            continue
        if move.finding == "birth-type" and isinstance(move.value, str):
            lamb = replace(lamb, birth_type=move.value)
        if move.finding == "age" and isinstance(move.value, float) and move.at is not None:
            exact = move.said.startswith("born")
            if exact or lamb.born is None or lamb.born_guessed:
                lamb = replace(lamb, born=hours_before(move.at, move.value), born_guessed=not exact)
    return lamb


def hours_before(moment: datetime, hours: float) -> datetime:
    """Return the moment so many hours earlier, on the minute: an age is never known better."""
    born = moment - timedelta(hours=hours)
    return (born + timedelta(seconds=30)).replace(second=0, microsecond=0)


@dataclass(frozen=True)
class Known:
    """What is kept of a lamb and of the holding that can answer a question."""

    guide: Guide
    lamb: Lamb | None
    weighed: Callable[[], Sequence[Weighing]]
    holding: Holding
    now: Now
    system: System

    def of(self, finding: str) -> tuple[Understood, str] | None:
        """Return the answer kept for a finding, with words to offer it by; None where there is none.

        Only what time does not change unseen is offered; a temperature is always taken anew.
        """
        match finding:
            case "age":
                return self._age(self.guide.findings[finding])
            case "weight":
                return self._weight()
            case "birth-type" if self.lamb and self.lamb.birth_type in self.guide.findings[finding].choices:
                words = self.guide.findings[finding].choices[self.lamb.birth_type]
                return Understood(self.lamb.birth_type, KEPT), words
        return None

    def _age(self, finding: Finding) -> tuple[Understood, str] | None:
        lamb, now = self.lamb, self.now
        if lamb is None or lamb.born is None:
            return None
        hours = round((now.moment - lamb.born).total_seconds() / 3600, 2)
        if not finding.plausible[0] <= hours <= finding.plausible[1]:
            return None
        born = f"{'about ' if lamb.born_guessed else ''}{hhmm(lamb.born, now)}"
        return Understood(hours, KEPT), f"{show(round(hours, 1), 'h', self.system)} old, born {born}"

    def _weight(self) -> tuple[Understood, str] | None:
        last = self.weighed()[-1:]
        if not last or not timedelta(0) <= self.now.moment - last[0][0] <= FRESH:
            return None
        at, kilos = last[0]
        return Understood(kilos, KEPT), f"{show(kilos, 'kg', self.system)}, weighed {hhmm(at, self.now)}"
