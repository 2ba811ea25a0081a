"""The entries of a lamb's story, each with what it rests on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from triage.casebook.rows import Case, Observation
from triage.facts import Facts
from triage.guide.model import PLACEHOLDER, Act, End, Guide
from triage.observations import words_of
from triage.observations.wording import filled
from triage.page.inert import inert
from triage.units import System, show
from triage.walk import KEPT, Answer, Done, Move, Walk, replay

Rests = Move | Observation

WORDS = 1000
"""Signs of typed words that the story shows: an order of the vet is not to lose its end."""

OTHER_WAY = "The guide has changed since this walk, and now asks other questions."


@dataclass(frozen=True)
class Entry:
    """One line of the story: when (aware, UTC), in words, and the answer or observation behind it."""

    at: datetime
    words: str
    rests_on: Rests
    sure: bool = True
    """Whether this time was kept. If not, the last one known before it in its walk stands for it."""


def timeline(
    cases: Iterable[Case], observations: Iterable[Observation], guide: Guide, system: System
) -> tuple[Entry, ...]:
    """Return all that is known of a lamb, the oldest first."""
    entries = [entry for case in cases for entry in _of_case(case, guide, system)]
    entries += [Entry(seen.at, words_of(seen, guide, system, WORDS), seen) for seen in observations]
    return tuple(sorted(entries, key=lambda entry: entry.at))


def _of_case(case: Case, guide: Guide, system: System) -> Iterator[Entry]:
    at = case.begun
    for index, move in enumerate(case.moves):
        at = move.at or at
        words = _words(guide, case.moves[: index + 1], system)
        yield Entry(at, words, move, sure=move.at is not None)
    if case.moves:
        yield from _end(case, guide, system)


def _end(case: Case, guide: Guide, system: System) -> Iterator[Entry]:
    """Yield what the walk came to, at the time of the answer that led there; never one that nobody saw."""
    last = max(case.moves, key=lambda move: move.at or case.begun)
    at, sure = last.at or case.begun, last.at is not None
    changed = replay(Walk(guide), case.moves)
    walk, edition = changed.walk, guide.front.edition
    if changed.dropped:
        yield Entry(at, OTHER_WAY, last, sure)
    elif isinstance(walk.node, End):
        title = filled(walk.node.title, guide, system, walk.facts).rstrip(".")
        led = "The guide came to" if case.edition == edition else "By the present guide this comes to"
        yield Entry(at, f"{led}: {title}. {guide.urgency(walk.state.urgency).say}.", last, sure)


def _words(guide: Guide, moves: Sequence[Move], system: System) -> str:
    """Return the last of these moves in words; a sum in them is that of the lamb as it was known then."""
    move = moves[-1]
    facts = None
    if isinstance(move, Done) and _has_sum(guide, move):
        facts = replay(Walk(guide), moves[:-1]).walk.facts
    return move_words(guide, move, system, facts)


def _has_sum(guide: Guide, move: Done) -> bool:
    node = guide.nodes.get(move.act)
    return isinstance(node, Act) and any(
        name not in guide.numbers for name in PLACEHOLDER.findall(node.title)
    )


def move_words(guide: Guide, move: Move, system: System, facts: Facts | None = None) -> str:
    """Return a move in words, also one that the present guide has no name for."""
    if isinstance(move, Done):
        return f"Done: {act_words(guide, move, system, facts)}"
    finding = guide.findings.get(move.finding)
    label = finding.label if finding else inert(move.finding, 40)
    again = ", taken from what was kept" if move.said == KEPT else ""
    return f"{label}: {_value(guide, move, system)}{again}"


def _value(guide: Guide, move: Answer, system: System) -> str:
    finding, value = guide.findings.get(move.finding), move.value
    if isinstance(value, str):
        known = finding.choices.get(value) if finding else None
        return filled(known, guide, system) if known else inert(value, 40)
    if isinstance(value, float):
        return show(value, finding.measure, system) if finding and finding.measure else f"{value:g}"
    return "not sure"


def act_words(guide: Guide, move: Done, system: System, facts: Facts | None = None) -> str:
    """Return what was carried out, as the title of its page."""
    node = guide.nodes.get(move.act)
    return filled(node.title, guide, system, facts) if isinstance(node, Act) else inert(move.act, 40)
