"""An observation as one line: readable, inert, and never lost for want of a name."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.casebook.rows import Observation, Part
from triage.facts import Facts
from triage.guide.model import Guide
from triage.observations import words_of
from triage.observations.wording import filled
from triage.page.inert import HIDDEN

AT = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)


def seen(kind: str, **parts: Part) -> Observation:
    """Return an invented observation."""
    return Observation("1", "lamb", kind, AT, AT, parts)


@pytest.mark.parametrize(
    ("observation", "line"),
    [
        (seen("temperature", temperature=39.2), "Temperature: 39.2 °C"),
        (seen("weight", weight=4.2), "Weight: 4.2 kg"),
        (seen("feed", what="milk", amount=120.0, how="all"), "Feed: 120 ml milk replacer, sucked it all"),
        (seen("feed", what="ewes-milk", amount=0.0, how="refused"), "Feed: 0 ml ewe's milk, refused it"),
        (
            seen("passed", dung="bloody", urine="not-seen"),
            "Urine: none seen. Dung: blood, black after its first day, or slime with straining",
        ),
        (seen("manner", manner="dull"), "How it is: dull, gets up only when lifted"),
        (
            seen("treatment", what="An invented drug, into the muscle", amount="1 ml", ordered="Dr Example"),
            "Treatment: An invented drug, into the muscle, 1 ml, ordered by Dr Example",
        ),
        (seen("note", note="{note} and {0}"), "Note: {note} and {0}"),
        (seen("vet-said", who="Dr Example", said="Wait an hour"), "The vet said: Dr Example, Wait an hour"),
    ],
)
def test_each_kind_reads_as_a_line(guide: Guide, observation: Observation, line: str) -> None:
    """Each kind reads as a tired person would say it, with braces in words left alone."""
    assert words_of(observation, guide, "metric") == line


def test_a_line_is_in_the_readers_units(guide: Guide) -> None:
    """What is kept in one unit is told in the reader's own."""
    assert words_of(seen("temperature", temperature=39.2), guide, "us") == "Temperature: 102.6 °F"
    assert words_of(seen("feed", what="milk", amount=118.3, how="some"), guide, "us").startswith("Feed: 4 oz")


@pytest.mark.parametrize(
    ("observation", "line"),
    [
        (seen("hoof", hoof="sound", count=4.0), "hoof: sound, 4"),
        (seen("feed", what="milk"), "A feed: milk replacer"),
        (seen("feed", what="goats-milk", amount=50.0, how="all"), "Feed: 50 ml goats-milk, sucked it all"),
        (seen("passed", dung="black", urine="seen"), "Urine: seen. Dung: black"),
        (seen("temperature", temperature="warm"), "Temperature: warm"),
    ],
)
def test_what_is_not_known_here_is_told_all_the_same(
    guide: Guide, observation: Observation, line: str
) -> None:
    """A kind, a part or a choice of another edition is told by its name."""
    assert words_of(observation, guide, "metric") == line


def test_a_guide_without_the_finding_tells_the_unit(small: Guide) -> None:
    """A measurement is told with its unit also where the guide has no such finding."""
    bare = replace(small, findings={})

    assert words_of(seen("temperature", temperature=39.2), bare, "metric") == "Temperature: 39.2 °C"


def test_long_words_are_shortened_with_a_sign(guide: Guide) -> None:
    """A line shows so many signs of typed words, and two dots tell that there is more."""
    line = words_of(seen("note", note="word " * 2000), guide, "metric", 40)

    assert line.startswith("Note: word word")
    assert line.endswith("..")
    assert len(line) <= len("Note: ") + 40


@given(st.text(max_size=200), st.text(max_size=200), st.text(max_size=20))
def test_no_line_moves_a_cursor(guide: Guide, words: str, who: str, kind: str) -> None:
    """Whatever was typed or brought in, a line is one line without signs that steer a terminal."""
    import unicodedata

    for observation in (seen("vet-said", who=who, said=words), seen(kind, note=words)):
        line = words_of(observation, guide, "metric")
        assert line.splitlines() in ([line], [])
        assert not any(unicodedata.category(sign) in HIDDEN and sign != "\u200d" for sign in line)


def test_a_sum_is_never_that_of_another_lamb(guide: Guide) -> None:
    """A number of the guide stands in a text; a sum is named where it can't be worked out for the lamb."""
    text = "Give {milk-feed} or {milk-batch}, past {severe-chill}"

    assert filled(text, guide, "metric") == "Give milk feed or milk batch, past 37 °C"
    known = Facts(guide.values(), {"weight": 4.0, "age": 100.0})
    assert filled(text, guide, "metric", known) == "Give 120 ml or milk batch, past 37 °C"
