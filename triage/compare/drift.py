"""Where two walks of one lamb are no longer abreast: readings that the other has not come to yet.

A finding is answered once, until an act makes it forgotten; the answer after that is another reading. The
lamb has one answer for each reading, and gives it on both walks. As long as both walks have forgotten a
finding equally often they speak of the same reading. Where one is ahead, its readings wait for the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple


class Waiting(NamedTuple):
    """A finding that one walk has forgotten more often: by how much the old one leads, and its answers since.

    `answers` are those of the walk that leads, for each reading after the other's present one; None where
    it was not asked. `lead` is below nought where the new walk leads, and never nought.
    """

    finding: int
    lead: int
    answers: tuple[int | None, ...]


class Drift(NamedTuple):
    """How far two walks are apart, the nodes and what is known left aside."""

    waiting: tuple[Waiting, ...] = ()
    acts: tuple[tuple[int, int], ...] = ()
    """Acts, by their twins' numbers, that one walk has done more often than the other, and how much
    more often the old one."""


ABREAST = Drift()


def waiting_of(drift: Drift, finding: int) -> Waiting | None:
    """Return what waits of a finding, None where both walks speak of the same reading of it."""
    return next((each for each in drift.waiting if each.finding == finding), None)


def with_waiting(drift: Drift, waiting: Waiting) -> Drift:
    """Return a drift with what waits of one finding, or without it where both are abreast again."""
    rest = [each for each in drift.waiting if each.finding != waiting.finding]
    if waiting.lead:
        rest.append(waiting)
    return drift._replace(waiting=tuple(sorted(rest, key=lambda each: each.finding)))


def forgot(drift: Drift, side: int, finding: int) -> tuple[Drift, int | None]:
    """Return the drift when one walk forgets a finding, and the answer that waits for its new reading."""
    step = -1 if side else 1
    was = waiting_of(drift, finding) or Waiting(finding, 0, ())
    lead = was.lead + step
    if was.lead * step >= 0:  # it goes ahead, or further ahead
        return with_waiting(drift, Waiting(finding, lead, (*was.answers, None))), None
    return with_waiting(drift, Waiting(finding, lead, was.answers[1:])), was.answers[0]


def answered(drift: Drift, side: int, finding: int, answer: int) -> Drift:
    """Return the drift when one walk answers a finding of which something waits."""
    was = waiting_of(drift, finding)
    assert was is not None
    if (was.lead > 0) == (side == 0):
        return with_waiting(drift, was._replace(answers=(*was.answers[:-1], answer)))
    return drift


def still_waits(waiting: Waiting, asks: Sequence[int]) -> bool:
    """Whether what waits can still be asked for; `asks` are the findings ahead of each walk, as bits.

    The walk that is behind has to ask for it, and the other one has to have told it, or to tell it still.
    """
    ahead, behind = (0, 1) if waiting.lead > 0 else (1, 0)
    told = any(answer is not None for answer in waiting.answers) or asks[ahead] >> waiting.finding & 1
    return bool(told and asks[behind] >> waiting.finding & 1)


def did(drift: Drift, side: int, act: int) -> tuple[Drift, int]:
    """Return the drift when one walk does an act, and how much more often the old one has done it now."""
    counts = dict(drift.acts)
    more = counts.pop(act, 0) + (-1 if side else 1)
    if more:
        counts[act] = more
    return drift._replace(acts=tuple(sorted(counts.items()))), more


def without_acts(drift: Drift, acts: set[int]) -> Drift:
    """Return the drift with some acts left out of account."""
    return drift._replace(acts=tuple(each for each in drift.acts if each[0] not in acts))
