"""Taking a kept walk up again, exactly where it was, or telling what no longer fits."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import timedelta
from typing import TYPE_CHECKING

from triage.casebook.failing import NotKept
from triage.casebook.rows import Case, Lamb
from triage.clock import Now, hhmm
from triage.guide.model import Act, Ask, Guide
from triage.page.inert import inert
from triage.page.words import Reader
from triage.units import System
from triage.walk import Done, Move, Walk, replay

if TYPE_CHECKING:
    from triage.session.session import Session

STALE = timedelta(minutes=20)
"""Longer ago than this, the answers are told to be old: a lamb can turn in that time."""


@dataclass(frozen=True)
class Resumed:
    """A walk taken up again, the moves that the present guide has no place for, and what to tell."""

    walk: Walk
    dropped: tuple[Move, ...]
    told: str


def resume(guide: Guide, case: Case, now: Now, system: System) -> Resumed:
    """Replay a case's moves over the guide as it is now."""
    changed = replay(Walk(guide), case.moves)
    told = []
    if changed.dropped or case.edition != guide.front.edition:
        told.append(_difference(guide, case, changed.walk, changed.dropped, system))
    if case.moves and now.moment - case.touched > STALE:
        told.append(f"You left it at {hhmm(case.touched, now)}. The answers are from then.")
    return Resumed(changed.walk, changed.dropped, " ".join(told))


def _difference(guide: Guide, case: Case, walk: Walk, dropped: tuple[Move, ...], system: System) -> str:
    editions = f"edition {inert(case.edition, 20)}, now {guide.front.edition}"
    changed = f"The guidance has changed since ({editions})." if case.edition != guide.front.edition else ""
    if not dropped:
        return f"{changed} Your answers still fit. {where(walk, system)}"
    lost = "; ".join(_words(guide, move, system) for move in dropped)
    return f"{changed} No longer used: {lost}. {where(walk, system)}".strip()


def _words(guide: Guide, move: Move, system: System) -> str:
    """Return a move in words, also one that the guide has no name for any more."""
    if isinstance(move, Done):
        node = guide.nodes.get(move.act)
        return f"done: {node.title if isinstance(node, Act) else inert(move.act, 40)}"
    finding = guide.findings.get(move.finding)
    known = finding is not None and (not isinstance(move.value, str) or move.value in finding.choices)
    if finding is None or not known:
        value = move.value if isinstance(move.value, str) else f"{move.value}"
        return f"{inert(move.finding, 40)}: {inert(move.said or value, 40)}"
    return f"{finding.label}: {Reader(guide, Walk(guide).facts, system).answer(finding, move.value)}"


def where(walk: Walk, system: System) -> str:
    """Return where a walk is, as the heading of its page."""
    reader = Reader(walk.guide, walk.facts, system)
    node = walk.node
    if isinstance(node, Ask):
        return f"Next: {reader.fill(walk.guide.findings[node.finding].ask)}"
    return f"{reader.fill(node.title)}."


def take_up_last(session: Session, lamb: Lamb) -> None:
    """Take up a lamb's latest walk: an open one before a closed one."""
    desk = session.desk
    cases = desk.keeping.book.cases_of(lamb.id) if desk.keeping.book else ()
    if isinstance(cases, NotKept):
        cases = ()
    case = max(cases, key=lambda each: (each.closed is None, each.touched), default=None)
    desk.keeping.take_up(lamb, case, session.whole, desk.clock())
    resumed = resume(desk.guide, case, desk.clock(), desk.system) if case else None
    session.take_up(resumed.walk if resumed else Walk(desk.guide))
    desk.told = resumed.told if resumed else ""
