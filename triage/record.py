"""A finished walk as JSON, and writing it so that a full disk or a killed process loses nothing."""

from __future__ import annotations

import json
import os
import tempfile
from pathlib import Path
from typing import Any

from triage.amounts import AMOUNTS
from triage.facts import Unsure, Value
from triage.guide.model import Ask, End
from triage.guide.texts import said_on
from triage.page.words import Reader
from triage.review.of import words_of
from triage.units import System
from triage.walk import Answer, Move, Walk

VERSION = 1


def record_of(walk: Walk, system: System) -> dict[str, Any]:
    """Return a walk as plain data: edition, answers in order, end, urgency, and the amounts shown."""
    node = walk.node
    reader = Reader(walk.guide, walk.facts, system)
    return {
        "record": VERSION,
        "edition": walk.guide.front.edition,
        "review": words_of(walk.guide),
        "finished": walk.finished,
        "answers": [_move(walk, move) for move in walk.moves],
        "end": node.name if isinstance(node, End) else None,
        "title": reader.fill(node.title) if isinstance(node, End) else None,
        "urgency": walk.state.urgency or None,
        "amounts": _amounts(walk, system),
    }


def _move(walk: Walk, move: Move) -> dict[str, Any]:
    if not isinstance(move, Answer):
        return {"act": move.act, "done": True}
    entry: dict[str, Any] = {"finding": move.finding, "value": plain_value(move.value)}
    unit = walk.guide.findings[move.finding].measure
    if unit and not isinstance(move.value, Unsure):
        entry["unit"] = unit
    if move.said:
        entry["said"] = move.said
    return entry


def plain_value(value: Value) -> float | str:
    """Return a value as JSON holds it."""
    return value.value if isinstance(value, Unsure) else value


def _amounts(walk: Walk, system: System) -> list[dict[str, Any]]:
    node = walk.node
    if isinstance(node, Ask):
        return []
    sums = Reader(walk.guide, walk.facts, system).sums(said_on(node))
    return [
        {
            "amount": name,
            "title": AMOUNTS[name].title,
            "figures": [
                {"value": round(figure.value, 2), "unit": figure.unit, "what": figure.what}
                for figure in result.figures
            ],
            "shown": result.words(system),
            "working": list(result.working),
            "guessed": result.guessed or None,
        }
        for name, result in sums.items()
    ]


def write_record(walk: Walk, system: System, path: Path) -> None:
    """Write a record whole or not at all: beside the target first, made durable, then renamed.

    OSError when it can't be written; then nothing at `path` has changed.
    """
    text = as_text(walk, system)
    handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(beside, path)
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise


def as_text(walk: Walk, system: System) -> str:
    """Return a record as JSON text."""
    return json.dumps(record_of(walk, system), ensure_ascii=False, indent=2) + "\n"
