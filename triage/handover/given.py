"""What a lamb was given and what was done with it: each entry, and gathered by what it was."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime

from triage.casebook.rows import Observation
from triage.guide.model import Act
from triage.handover.gathering import meets
from triage.handover.situation import Rest, Situation
from triage.observations import words_of
from triage.page.words import Reader
from triage.timeline.entries import act_words
from triage.walk import Answer, Done

NEEDLE_OR_MOUTH = frozenset({"feed-by-mouth", "tube-feed", "medicine", "vet-injection"})
"""Act tags of what goes into a lamb; a vet is always told of it."""

GIVEN = ("feed", "treatment")
"""Kinds of observations that tell what went into a lamb."""


@dataclass(frozen=True)
class Gift:
    """One thing given or done: when, what, how much, and what it rests on."""

    at: datetime | None
    what: str
    much: str
    """How much it was, or what was answered."""
    rest: Rest
    into: bool
    """Whether it went in by mouth or needle."""
    said: bool = False
    """Whether `at` is when it was said, and not when it was done."""
    free: bool = False
    """Whether its words were typed freely."""
    way: str = ""
    """How it went down."""
    ordered: str = ""
    """The vet who ordered it."""


def given(situation: Situation) -> tuple[Gift, ...]:
    """Return all that was given or done, the latest first."""
    found = [*_acts(situation), *_answered(situation), *_noted(situation)]
    placed = enumerate(found)

    def when(each: tuple[int, Gift]) -> tuple[bool, float, int]:
        at = each[1].at
        return (at is not None, at.timestamp() if at else 0.0, each[0])

    return tuple(gift for _, gift in sorted(placed, key=when, reverse=True))


def gathered(gifts: tuple[Gift, ...]) -> tuple[tuple[Gift, ...], ...]:
    """Gather gifts of the same thing, so that forty feeds are told in one line; what went in comes first."""
    found: dict[tuple[str, bool, bool], list[Gift]] = {}
    for gift in gifts:
        found.setdefault((gift.what.casefold(), gift.into, gift.said), []).append(gift)
    groups = [tuple(each) for each in found.values()]
    return tuple(sorted(groups, key=lambda group: not group[0].into))


def _acts(situation: Situation) -> Iterator[Gift]:
    guide, system = situation.walk.guide, situation.system
    for move in (*situation.earlier, *situation.walk.moves):
        if not isinstance(move, Done):
            continue
        node = guide.nodes.get(move.act)
        # Of an act that this edition no longer has nobody can say what went in.
        tags = {tag for step in node.steps for tag in step.tag} if isinstance(node, Act) else NEEDLE_OR_MOUTH
        yield Gift(move.at, act_words(guide, move, system), "", move, bool(tags & NEEDLE_OR_MOUTH))


def _answered(situation: Situation) -> Iterator[Gift]:
    """Yield answers which say that something was given; of earlier walks too, as it was given once."""
    guide = situation.walk.guide
    reader = Reader(guide, situation.walk.facts, situation.system)
    for move in (*situation.earlier, *situation.walk.moves):
        finding = guide.findings.get(move.finding) if isinstance(move, Answer) else None
        if isinstance(move, Answer) and finding and meets(guide, finding, finding.given, move.value):
            words = reader.answer(finding, move.value)
            yield Gift(move.at, finding.label, words, move, into=True, said=True)


def _noted(situation: Situation) -> Iterator[Gift]:
    for seen in situation.observations:
        if seen.kind in GIVEN:
            said = {name: _part(situation, seen, name) for name in seen.parts}
            yield Gift(
                seen.at,
                said.get("what", "something"),
                said.get("amount", ""),
                seen,
                into=True,
                free=seen.kind == "treatment",
                way=said.get("how", ""),
                ordered=said.get("ordered", ""),
            )


def _part(situation: Situation, seen: Observation, name: str) -> str:
    """Return one part of an observation in words."""
    alone = replace(seen, parts={name: seen.parts[name]})
    return words_of(alone, situation.walk.guide, situation.system).partition(": ")[2]
