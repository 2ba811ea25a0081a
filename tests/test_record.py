"""The record of a walk: whole or not there at all."""

from __future__ import annotations

import json
import os
from datetime import UTC, datetime
from pathlib import Path

import pytest

from triage.clock import Now
from triage.guide.model import Guide
from triage.record import record_of, write_record
from triage.session import Session
from triage.walk import Walk


def cold_newborn(guide: Guide) -> Walk:
    held = Session(Walk(guide), clock=lambda: Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC))
    for line in ("5", "97.2F", "born 23:10", "d", "38", "1", "6", "4.2kg"):
        held.take(line)
    return held.walk


def test_a_record_holds_all_that_was_said_and_shown(guide: Guide) -> None:
    """Edition, answers in order with units and what was typed, end, urgency, amounts with working."""
    record = record_of(cold_newborn(guide), "metric")

    assert (record["record"], record["edition"], record["finished"]) == (1, guide.front.edition, True)
    assert (record["end"], record["urgency"]) == ("warmed-new-bottle", "vet-now")
    assert record["answers"][:4] == [
        {"finding": "danger", "value": "limp"},
        {"finding": "temperature", "value": 36.2222, "unit": "degC", "said": "97.2F"},
        {"finding": "age", "value": 3.0, "unit": "h", "said": "born 2026-02-10T23:10+00:00"},
        {"act": "warm-by-thermometer", "done": True},
    ]
    amounts = {each["amount"]: each for each in record["amounts"]}
    assert amounts["first-milk"]["figures"] == [{"value": 210, "unit": "ml", "what": ""}]
    assert "4.2 kg x 50 ml = 210 ml" in amounts["first-milk"]["working"]


def test_an_unfinished_walk_is_recorded_as_such(guide: Guide) -> None:
    """A walk that was left is kept with what it had, and says that it has no end."""
    record = record_of(Walk(guide).answer("none"), "metric")

    assert (record["finished"], record["end"], record["urgency"]) == (False, None, None)


def test_writing_replaces_the_file_whole(guide: Guide, tmp_path: Path) -> None:
    """The new record is there, complete, and nothing else is left beside it."""
    path = tmp_path / "night.json"
    path.write_text("old")

    write_record(cold_newborn(guide), "metric", path)

    assert json.loads(path.read_text())["end"] == "warmed-new-bottle"
    assert os.listdir(tmp_path) == ["night.json"]


def test_a_full_disk_leaves_the_old_file(
    guide: Guide, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """When the disk is full nothing has changed: the old record is whole and no scrap is left."""
    path = tmp_path / "night.json"
    path.write_text("old")

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left"):
        write_record(cold_newborn(guide), "metric", path)

    assert (path.read_text(), os.listdir(tmp_path)) == ("old", ["night.json"])
