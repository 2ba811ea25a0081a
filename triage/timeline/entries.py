"""The entries of a lamb's story, each with what it rests on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime

from triage.casebook.rows import Case, Observation
from triage.guide.model import Act, End, Guide
from triage.observations import words_of
from triage.page.inert import inert
from triage.page.words import Reader
from triage.units import System, show
from triage.walk import Done, Move, Walk, replay

Rests = Move | Observation


@dataclass(frozen=True)
class Entry:
    """One line of the story: when (aware, UTC), in words, and the answer or observation behind it."""

    at: datetime
    words: str
    rests_on: Rests


def timeline(
    cases: Iterable[Case], observations: Iterable[Observation], guide: Guide, system: System
) -> tuple[Entry, ...]:
    """Return all that is known of a lamb, the oldest first; moves without a time are left out."""
    entries = [entry for case in cases for entry in _of_case(case, guide, system)]
    entries += [Entry(seen.at, words_of(seen, guide, system, 120), seen) for seen in observations]
    return tuple(sorted(entries, key=lambda entry: entry.at))


def _of_case(case: Case, guide: Guide, system: System) -> Iterator[Entry]:
    for move in case.moves:
        if move.at is not None:
            yield Entry(move.at, move_words(guide, move, system), move)
    walk = replay(Walk(guide), case.moves).walk
    last = case.moves[-1] if case.moves else None
    if isinstance(walk.node, End) and last and last.at:
        say = guide.urgency(walk.state.urgency).say
        title = Reader(guide, walk.facts, system).fill(walk.node.title)
        yield Entry(last.at, f"The guide came to: {title}. {say}.", last)


def move_words(guide: Guide, move: Move, system: System) -> str:
    """Return a move in words, also one that the present guide has no name for."""
    if isinstance(move, Done):
        return f"Done: {act_words(guide, move, system)}"
    finding = guide.findings.get(move.finding)
    label = finding.label if finding else inert(move.finding, 40)
    if isinstance(move.value, str):
        known = finding.choices.get(move.value) if finding else None
        words = Reader(guide, Walk(guide).facts, system).fill(known) if known else inert(move.value, 40)
    elif isinstance(move.value, float):
        words = (
            show(move.value, finding.measure, system) if finding and finding.measure else f"{move.value:g}"
        )
    else:
        words = "not sure"
    return f"{label}: {words}"


def act_words(guide: Guide, move: Done, system: System) -> str:
    """Return what was carried out, as the title of its page."""
    node = guide.nodes.get(move.act)
    title = node.title if isinstance(node, Act) else inert(move.act, 40)
    return Reader(guide, Walk(guide).facts, system).fill(title)
