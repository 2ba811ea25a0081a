"""The whole story as a page: plots, then what happened, the latest first."""

from __future__ import annotations

from datetime import timedelta

import pytest
from pytest_snapshot.plugin import Snapshot

from tests.timeline.conftest import LONDON, NIGHT, NOW, case, lines_of, measured, seen, utc, walked
from triage.clock import Now
from triage.guide.model import Guide
from triage.timeline import blocks
from triage.walk import Done

HOUR = timedelta(hours=1)


@pytest.mark.parametrize("width", [24, 44, 76])
def test_a_story_reads_as_it_should(guide: Guide, snapshot: Snapshot, width: int) -> None:
    """The story of an invented lamb over three days is what it was when it was last read and approved."""
    snapshot.snapshot_dir = "tests/snapshots/timeline"
    first = walked(guide, NIGHT - 50 * HOUR, "none", 36.2, 3.0, 37.4, "sucks", "none", 4.2, minutes=7)
    notes = (
        seen(NIGHT - 30 * HOUR, "feed", what="first-milk", amount=120.0, how="all"),
        seen(NIGHT - 26 * HOUR, "passed", dung="usual", urine="seen"),
        seen(NIGHT - 5 * HOUR, "vet-said", who="Dr Example", said="Go on with small feeds, and phone at six"),
        seen(NIGHT - 4 * HOUR, "manner", manner="bright"),
        seen(NIGHT - HOUR, "note", note="Moved to the pen by the door [/]\x1b[2J"),
        *measured("temperature", (NIGHT - 26 * HOUR, 38.9), (NIGHT - 4 * HOUR, 39.4)),
        *measured("weight", (NIGHT - 2 * HOUR, 4.45)),
    )
    moves = (*first.moves, Done("act-of-an-older-guide"))

    page = blocks([case(*moves, begun=NIGHT - 50 * HOUR)], notes, guide, "metric", NOW)

    snapshot.assert_match("\n".join(lines_of(page, width)) + "\n", f"story-{width}.txt")


def test_nothing_is_told_of_a_new_lamb(guide: Guide) -> None:
    """A lamb that nothing is known of has a story that says so."""
    assert lines_of(blocks((), (), guide, "metric", NOW), 76) == [
        "What happened, the latest first",
        "Nothing yet.",
    ]


def test_the_days_are_those_of_the_place(guide: Guide) -> None:
    """A day begins at midnight where the lamb is; the hour shown twice is told apart by its zone."""
    now = Now(utc(2026, 10, 25, 6, 0), LONDON)
    notes = [
        seen(utc(2026, 10, 24, 22, 59), "note", note="a"),
        seen(utc(2026, 10, 24, 23, 0), "note", note="b"),
        seen(utc(2026, 10, 25, 0, 30), "note", note="c"),
        seen(utc(2026, 10, 25, 1, 30), "note", note="d"),
    ]

    assert lines_of(blocks((), notes, guide, "metric", now), 76) == [
        "What happened, the latest first",
        "01:30 GMT  Note: d",
        "01:30 BST  Note: c",
        "00:00  Note: b",
        "Saturday 24 October",
        "23:59  Note: a",
    ]


def test_a_story_of_an_earlier_day_has_its_name(guide: Guide) -> None:
    """Where nothing happened today, the first entry stands under its own day."""
    notes = [seen(NIGHT - 48 * HOUR, "note", note="a")]

    assert lines_of(blocks((), notes, guide, "metric", NOW), 76)[1:] == [
        "Monday 9 February",
        "02:10  Note: a",
    ]


def test_a_time_that_was_not_kept_is_about(small: Guide) -> None:
    """A move without a time is shown at the one before it, with a word that says so."""
    page = blocks([case(Done("gone"))], (), small, "metric", NOW)

    assert "about 02:10  Done: gone" in lines_of(page, 76)


def test_a_guide_without_the_finding_draws_no_plot(small: Guide) -> None:
    """What a guide does not ask is not plotted, and its notes are still told."""
    from dataclasses import replace

    bare = replace(small, findings={name: small.findings[name] for name in ("danger",)})
    page = blocks((), measured("temperature", (NIGHT, 39.0)), bare, "metric", NOW)

    assert lines_of(page, 76) == ["What happened, the latest first", "02:10  Temperature: 39 °C"]
