"""Who is ready for a night turn: what a helper has shown, held against the holding's own pass mark.

Under-triage is the share of lambs that were called less urgent than the guide calls them, over-triage the
share called more urgent, each among those with which it could happen (Rehn 2009: 1 - sensitivity, and
van Rein 2018: 1 - specificity, where there are two classes).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cached_property
from itertools import takewhile

from triage.guide.model import Guide

LEAST_OTHERS = 20
"""Cases below the top urgency without which nothing can be said of over-triage."""


@dataclass(frozen=True)
class PassMark:
    """What a holding asks of a helper before the first night."""

    danger: int = 60
    """Danger cases in a row, with no safety miss in them or in any case between them."""
    under: float = 0.01
    over: float = 0.35


@dataclass(frozen=True)
class Shown:
    """What one finished round has shown."""

    at: datetime
    case: str
    urgency: str
    """The guide's."""
    said: str
    """The helper's."""
    fails: bool
    """Whether any safety step was missed."""
    missed: tuple[str, ...] = ()
    """The cards that were not known."""
    asked: tuple[str, ...] = ()
    """All cards that it put to the test."""
    page: str = ""
    edition: str = ""
    """The edition of the guidance by which it was played."""


@dataclass(frozen=True)
class Share:
    """Some of a number of cases."""

    some: int
    of: int

    @property
    def share(self) -> float:
        """Return the share, 0 where there are none."""
        return self.some / self.of if self.of else 0.0


@dataclass(frozen=True)
class Readiness:
    """What a helper has shown up to now. Rounds come in the order in which they were finished."""

    guide: Guide
    rounds: Sequence[Shown]
    mark: PassMark = PassMark()

    @cached_property
    def dangers(self) -> list[Shown]:
        """The danger cases that count, the last ones at the end."""
        return [each for each in self.rounds if each.urgency == self.guide.top][-self.mark.danger :]

    @cached_property
    def window(self) -> list[Shown]:
        """All rounds that count: those since the first danger case that counts."""
        if not self.dangers:
            return list(self.rounds)
        first = next(at for at, each in enumerate(self.rounds) if each is self.dangers[0])
        others = [at for at, each in enumerate(self.rounds) if each.urgency != self.guide.top]
        # Where danger cases came thick, more of the others count, so that over-triage has a number.
        enough = others[-LEAST_OTHERS] if len(others) >= LEAST_OTHERS else 0
        return list(self.rounds[min(first, enough) :])

    @property
    def in_a_row(self) -> int:
        """How many danger cases there were since the last safety miss, in whatever case that was."""
        clean = list(takewhile(lambda each: not each.fails, reversed(self.rounds)))
        return sum(each.urgency == self.guide.top for each in clean)

    @property
    def misses(self) -> int:
        """How many of the rounds that count had a safety miss."""
        return sum(each.fails for each in self.window)

    @property
    def under(self) -> Share:
        """Cases called less urgent than the guide calls them, of those that could be."""
        return under_triage(self.guide, self.window)

    @property
    def over(self) -> Share:
        """Cases called more urgent than the guide calls them, of those that could be."""
        return over_triage(self.guide, self.window)

    @property
    def wanting(self) -> list[str]:
        """What is still wanting, each as a sentence; empty where the helper is ready."""
        mark, told = self.mark, list[str]()
        if self.in_a_row < mark.danger:
            told.append(f"{mark.danger} danger cases since the last safety miss; {self.in_a_row} so far.")
        if self.over.of < LEAST_OTHERS:
            told.append(f"{LEAST_OTHERS} cases that are not for now; {self.over.of} so far.")
        if self.under.share > mark.under:
            told.append(_too_many("less", self.under, mark.under))
        if self.over.share > mark.over:
            told.append(_too_many("more", self.over, mark.over))
        return told

    @property
    def ready(self) -> bool:
        """Whether the pass mark is met."""
        return not self.wanting


def under_triage(guide: Guide, rounds: Sequence[Shown]) -> Share:
    """Return how many were called less urgent than they are, of all but the least urgent."""
    last = len(guide.front.urgencies) - 1
    could = [each for each in rounds if guide.rank(each.urgency) < last]
    return Share(sum(guide.rank(each.said) > guide.rank(each.urgency) for each in could), len(could))


def over_triage(guide: Guide, rounds: Sequence[Shown]) -> Share:
    """Return how many were called more urgent than they are, of all but the most urgent."""
    could = [each for each in rounds if guide.rank(each.urgency) > 0]
    return Share(sum(guide.rank(each.said) < guide.rank(each.urgency) for each in could), len(could))


def per_cent(share: float) -> str:
    """Return a share in per cent, to a tenth where it needs one."""
    return f"{round(share * 100, 1):g} %"


def _too_many(which: str, share: Share, most: float) -> str:
    return (
        f"{share.some} of {share.of} called {which} urgent than the guide, "
        f"{per_cent(share.share)}; {per_cent(most)} at most is asked."
    )
