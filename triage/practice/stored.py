"""Rounds and cards as the practice book holds them."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import datetime
from typing import Any

from triage.casebook.practice import KeptCard, KeptRound
from triage.casebook.rows import Part
from triage.facts import UNSURE, Unsure, Value
from triage.guide.model import Act, End, Guide
from triage.practice.case import Case
from triage.practice.faults import Score
from triage.practice.memory import Remembered
from triage.practice.questions import supposed_walk
from triage.practice.readiness import Shown
from triage.practice.round import Given, Round
from triage.walk import Answer, Done, Move, NotNow, Walk

_TEXTS = ("name", "story", "remember", "trap")


def case_parts(case: Case) -> dict[str, Part]:
    """Return a case as texts, so that it can be played on whatever becomes of its author's file."""
    told: dict[str, Part] = {name: str(getattr(case, name)) for name in _TEXTS}
    return told | {
        "told": json.dumps(case.told),
        "moves": json.dumps([_move(move) for move in case.walk.moves]),
        "vet_if": json.dumps(_move(case.vet_if) if case.vet_if else None),
        "right_if": json.dumps(_move(case.right_if) if case.right_if else None),
    }


def case_from(guide: Guide, parts: Mapping[str, Part]) -> Case | None:
    """Return a kept case, None where it has no page in this guide any more."""
    try:
        texts = {name: str(parts[name]) for name in _TEXTS}
        walk = Walk(guide, tuple(_move_from(each) for each in json.loads(str(parts["moves"]))))
        ifs = [_supposed(json.loads(str(parts[name]))) for name in ("vet_if", "right_if")]
        told = tuple(str(each) for each in json.loads(str(parts["told"])))
        if not isinstance(walk.node, Act | End) or any(name not in guide.findings for name in told):
            return None
        case = Case(texts["name"], walk, texts["story"], told, texts["remember"], texts["trap"], *ifs)
        for each in ifs:
            if each and supposed_walk(case, each) is None:
                return None
    except (NotNow, LookupError, ValueError, TypeError):
        return None
    return case


def given_text(played: Round) -> str:
    """Return what was given in a round as JSON."""
    return json.dumps([[each.what, each.value] for each in played.given])


def given_from(stored: str) -> tuple[Given, ...]:
    """Return what was given; what can't be read is left out."""
    try:
        return tuple(Given(str(what), str(value)) for what, value in json.loads(stored))
    except (ValueError, TypeError):
        return ()


def score_parts(came: Score) -> dict[str, Part]:
    """Return what came of a round, as it is counted later."""
    return {
        "urgency": came.urgency,
        "said": came.said,
        "fails": float(came.fails),
        "asked": " ".join(sorted(came.asked)),
        "missed": " ".join(sorted(came.missed)),
    }


def shown_by(kept: KeptRound) -> Shown | None:
    """Return what a finished round has shown; None for one of which that can't be read."""
    parts = kept.parts
    if kept.ended is None or not {"urgency", "said", "fails"} <= parts.keys():
        return None
    missed = tuple(str(parts.get("missed", "")).split())
    asked = tuple(str(parts.get("asked", "")).split())
    return Shown(
        kept.ended, str(parts.get("name", "")), str(parts["urgency"]), str(parts["said"]),
        bool(parts["fails"]), missed, asked, str(parts.get("page", "")), kept.edition,
    )  # fmt: skip


def card_row(card: Remembered) -> KeptCard:
    """Return a card as it is kept."""
    state = {f"fsrs_{name}": value for name, value in card.state.items()}
    return KeptCard(card.card, card.due, {"knew": float(card.knew), "last": card.last.isoformat(), **state})


def card_from(kept: KeptCard) -> Remembered | None:
    """Return a kept card; None where it can't be read, so that it begins anew."""
    parts = kept.parts
    state = {name.removeprefix("fsrs_"): part for name, part in parts.items() if name.startswith("fsrs_")}
    try:
        last = datetime.fromisoformat(str(parts["last"]))
        if not {"state", "due"} <= state.keys() or last.tzinfo is None:
            return None
        return Remembered(kept.about, kept.due, last, bool(parts["knew"]), state)
    except (KeyError, ValueError):
        return None


def _move(move: Move) -> list[Any]:
    if isinstance(move, Done):
        return ["act", move.act]
    return ["answer", move.finding, None if isinstance(move.value, Unsure) else move.value]


def _move_from(stored: list[Any]) -> Move:
    kind, name, *value = stored
    return Done(str(name)) if kind == "act" else Answer(str(name), _value(value[0]))


def _supposed(stored: list[Any] | None) -> Answer | None:
    return Answer(str(stored[1]), _value(stored[2])) if stored else None


def _value(stored: object) -> Value:
    if stored is None:
        return UNSURE
    return stored if isinstance(stored, str) else float(str(stored))
