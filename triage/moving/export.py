"""A lamb with its cases and observations as plain data; the format stands in `triage/moving`."""

from __future__ import annotations

import json
from datetime import datetime
from typing import Any

from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept
from triage.casebook.rows import Case, Lamb, Observation
from triage.facts import Unsure
from triage.walk import Done, Move

VERSION = 1


def exported(book: Casebook, lamb: Lamb, edition: str, now: datetime) -> str | NotKept:
    """Return a lamb and all that is kept of it as JSON text."""
    cases, seen = book.cases_of(lamb.id), book.observations_of(lamb.id)
    if isinstance(cases, NotKept):
        return cases
    if isinstance(seen, NotKept):
        return seen
    whole = {
        "moved": VERSION,
        "edition": edition,
        "written": now.isoformat(),
        "lamb": _lamb(lamb),
        "cases": [_case(case) for case in cases],
        "observations": [_observation(each) for each in seen],
    }
    try:
        return json.dumps(whole, ensure_ascii=False, indent=2, allow_nan=False) + "\n"
    except ValueError:
        return NotKept("a number in it is out of all bounds")


def _time(moment: datetime | None) -> str | None:
    return None if moment is None else moment.isoformat()


def _lamb(lamb: Lamb) -> dict[str, Any]:
    return {
        "id": lamb.id,
        "name": lamb.name,
        "added": _time(lamb.added),
        "born": _time(lamb.born),
        "born_guessed": lamb.born_guessed,
        "birth_type": lamb.birth_type,
        "sex": lamb.sex,
    }


def _case(case: Case) -> dict[str, Any]:
    look = case.look
    return {
        "id": case.id,
        "begun": _time(case.begun),
        "touched": _time(case.touched),
        "edition": case.edition,
        "closed": _time(case.closed),
        "look": {"set_at": _time(look.set_at), "due": _time(look.due)} if look else None,
        "moves": [_move(move) for move in case.moves],
    }


def _move(move: Move) -> dict[str, Any]:
    if isinstance(move, Done):
        return {"act": move.act, "at": _time(move.at)}
    told: dict[str, Any] = {"finding": move.finding}
    if isinstance(move.value, Unsure):
        told["unsure"] = True
    else:
        told["value"] = move.value
    return {**told, "said": move.said, "at": _time(move.at)}


def _observation(seen: Observation) -> dict[str, Any]:
    return {
        "id": seen.id,
        "kind": seen.kind,
        "at": _time(seen.at),
        "written": _time(seen.written),
        "parts": dict(seen.parts),
    }
