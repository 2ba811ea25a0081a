"""Situations made for the tests: walks at random, and everything else that a handover can be made of."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from random import Random

from triage.casebook.rows import Lamb, Observation, Part
from triage.clock import Now
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Finding, Guide
from triage.handover.situation import Situation
from triage.holding.holding import Holding
from triage.observations import KINDS
from triage.walk import Answer, Move, Walk

AT = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)
"""When a made walk begins."""

NOW = Now(AT + timedelta(minutes=50), UTC)

HOSTILE = (
    '<script>alert(1)</script> & "\x1b[2J\u202e\u2066' + "\r\n[red]{name}\u05d0\u05d1 7\t" + "x" * 10_000
)
"""An invented name that tries everything: markup, control codes, direction, lines, braces, length."""

WORDY = "a b c d e f g h i j k l m n o p " * 320


def minutes(count: float) -> datetime:
    """Return the moment so many minutes after a made walk began."""
    return AT + timedelta(minutes=count)


def noted(kind: str, after: float, **parts: Part) -> Observation:
    """Return something written down so many minutes after the walk began."""
    return Observation(f"{kind}{after}", "lamb", kind, minutes(after), minutes(after), parts)


def answered(guide: Guide, *answers: Value | None, apart: float = 1) -> Walk:
    """Return a walk with these answers, so many minutes apart; None carries out the act that is shown."""
    walk = Walk(guide)
    for index, value in enumerate(answers):
        at = minutes(index * apart)
        walk = walk.done(at) if value is None else walk.answer(value, at=at)
    return walk


def values_for(guide: Guide, finding: Finding) -> list[Value]:
    """Return every choice, or measurements at and around every number that fits, and "not sure"."""
    unsure: list[Value] = [] if finding.never_unsure else [UNSURE]
    if finding.choices:
        return [*finding.choices, *unsure]
    low, high = finding.plausible
    found = {low, high, round((low + high) / 2, 2)}
    for number in guide.numbers.values():
        try:
            at = number.quantity.to(finding.measure).value
        except ValueError:
            continue
        found |= {round(each, 4) for each in (at - 0.1, at, at + 0.1) if low <= each <= high}
    return [*sorted(found), *unsure]


def walks(guide: Guide, count: int, seed: int) -> Iterator[Walk]:
    """Yield walks at random, to their ends or to anywhere on the way there."""
    rng = Random(seed)
    tried = {name: values_for(guide, finding) for name, finding in guide.findings.items()}
    for _ in range(count):
        walk, at, stop = Walk(guide), AT, rng.choice((99, 99, 99, rng.randrange(14)))
        while isinstance(walk.node, Ask | Act) and len(walk.moves) < stop:
            at += timedelta(minutes=rng.choice((0, 1, 5, 20)))
            if isinstance(walk.node, Act):
                walk = walk.done(at)
                continue
            walk = walk.answer(_picked(rng, tried[walk.node.finding]), at=at)
        yield walk


def _picked(rng: Random, values: list[Value]) -> Value:
    """Pick one value; "not sure" as often as all others together."""
    return values[-1] if rng.random() < 0.4 else rng.choice(values)


def lamb(name: str = "Bramble", **changes: object) -> Lamb:
    """Return the card of an invented lamb, nine hours old when its walk begins."""
    made: dict[str, object] = {"born": AT - timedelta(hours=9), "birth_type": "twin", "sex": "ewe"}
    return Lamb("lamb", name, AT, **{**made, **changes})  # type: ignore[arg-type]


HOLDING = Holding(
    caller="Ann Field",
    place="Hill Farm, Upper Example",
    found_by="second gate after the church",
    taught={"Ann": "stomach tube"},
)

NIGHT = (
    noted("temperature", -310, temperature=38.9),
    noted("temperature", -40 * 60, temperature=39.2),
    noted("weight", -200, weight=3.4),
    noted("feed", -150, what="first-milk", amount=120.0, how="some"),
    noted("feed", -400, what="first-milk", amount=100.0, how="all"),
    noted("feed", -60, what="electrolytes", amount=60.0, how="tubed"),
    noted("passed", -20, dung="loose", urine="seen"),
    noted("manner", 30, manner="dull"),
    noted("treatment", 40, what="Meloxicam under the skin", amount="0.2 ml", ordered="Dr Field"),
    noted("vet-said", 35, who="Dr Field", said="Keep warming, phone at four"),
    noted("note", -10, note="The ewe butted it"),
)
"""A night of notes about an invented lamb."""


def full(walk: Walk, text: str = "", **changes: object) -> Situation:
    """Return a situation with everything in it; all that a person could have typed is `text`."""
    seen = NIGHT if not text else tuple(typed(each, text) for each in NIGHT)
    held = HOLDING if not text else Holding(text, text, text, text, text, taught={text: text})
    made: dict[str, object] = {
        "lamb": lamb(text or "Bramble"),
        "observations": seen,
        "earlier": EARLIER,
        "holding": held,
    }
    return Situation(walk, NOW, **{**made, **changes})  # type: ignore[arg-type]


def typed(seen: Observation, text: str) -> Observation:
    """Return an observation in which every part that takes words holds this text."""
    words = {part.name for part in KINDS[seen.kind].parts if part.words}
    parts = {name: text if name in words else value for name, value in seen.parts.items()}
    return Observation(seen.id, seen.lamb, seen.kind, seen.at, seen.written, parts)


EARLIER: tuple[Move, ...] = (
    Answer("danger", "none", at=minutes(-900)),
    Answer("temperature", 36.4, at=minutes(-899)),
    Answer("swallows", "no-swallow", at=minutes(-898)),
    Answer("glucose", "given", at=minutes(-890)),
    Answer("temperature", 38.4, at=minutes(-860)),
    Answer("weight", 3.2, at=minutes(-3000)),
)
"""The moves of an earlier walk, as far as they matter here."""
