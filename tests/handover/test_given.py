"""What went into a lamb, and what was done with it."""

from __future__ import annotations

from tests.handover.made import HOLDING, NIGHT, NOW, answered, full, lamb, minutes, noted
from tests.handover.test_words import line
from triage.guide.model import Guide
from triage.handover import Situation, handover_of
from triage.walk import Done


def test_everything_given_is_listed_the_latest_first(guide: Guide) -> None:
    """Feeds, treatments, acts, and what an answer says was given stand in one list by their time."""
    walk = answered(guide, "none", 36.2, 9.0, "given", None, apart=10)
    told = handover_of(Situation(walk, NOW, "metric", lamb(), NIGHT, (), HOLDING))

    assert [each.text for each in told.given] == [
        "Meloxicam under the skin, 0.2 ml, ordered by Dr Field, at 02:50",
        "Dry it and warm it at 02:50",
        "Glucose: Yes, by needle into the belly, for this chill, said at 02:40",
        "Electrolyte drink, 60 ml, by stomach tube, at 01:10",
        "First milk, 120 ml, sucked some, at 23:40 yesterday",
        "First milk, 100 ml, sucked it all, at 19:30 yesterday",
    ]


def test_the_same_thing_given_often_is_said_once(guide: Guide) -> None:
    """How often and the last of them are said; each stands in the list."""
    feeds = tuple(noted("feed", -180 * at, what="milk", amount=100.0 + at, how="all") for at in range(1, 9))
    told = handover_of(Situation(answered(guide, "gasping"), NOW, observations=feeds))

    assert line(told, "Given") == (
        "Given: milk replacer, 8 times, last 101 ml, sucked it all, at 23:10 yesterday."
    )
    assert len(told.given) == 8


def test_what_was_done_is_told_apart_from_what_went_in(guide: Guide) -> None:
    """Warming is done; only what passed the mouth or a needle is given."""
    walk = answered(guide, "none", 36.2, 3.0, None, 36.4, None, apart=10)
    told = handover_of(Situation(walk, NOW))

    assert line(told, "Given") == "Given: nothing that is written down."
    assert line(told, "Done") == "Done: dry it and warm it, 2 times, last at 03:00."


def test_an_answer_that_says_it_was_given_is_said_with_the_time_it_was_said(guide: Guide) -> None:
    """Nobody answers in the minute of the needle: the time is that of the saying."""
    walk = answered(guide, "none", 36.2, 9.0, "given")
    told = handover_of(Situation(walk, NOW))

    assert line(told, "Given") == (
        "Given: glucose: Yes, by needle into the belly, for this chill, said at 02:13."
    )
    assert not line(told, "Also")


def test_an_answer_that_says_it_was_not_given_is_not_told_as_given(guide: Guide) -> None:
    """No glucose is a circumstance, and stands among these."""
    told = handover_of(Situation(answered(guide, "none", 36.2, 9.0, "nobody"), NOW))

    assert line(told, "Given") == "Given: nothing that is written down."
    assert "Glucose at 02:13: No, and nobody here can" in [each.text for each in told.other]


def test_glucose_of_an_earlier_walk_is_told(guide: Guide) -> None:
    """What was given stays given when the walk is a new one."""
    told = handover_of(full(answered(guide, "gasping")))

    assert "glucose: Yes, by needle into the belly, for this chill, said at 11:20 yesterday" in line(
        told, "Given"
    )


def test_an_act_that_the_guide_no_longer_has_counts_as_going_in(guide: Guide) -> None:
    """Nobody can say any more what it was, so it is told where nothing is left out."""
    told = handover_of(Situation(answered(guide, "gasping"), NOW, earlier=(Done("old-act", minutes(-60)),)))

    assert line(told, "Given") == "Given: old-act at 01:10."


def test_a_refused_feed_is_told_as_refused(guide: Guide) -> None:
    """What it did not take stands with its amount, and how it went."""
    feed = noted("feed", -10, what="milk", amount=0.0, how="refused")
    told = handover_of(Situation(answered(guide, "gasping"), NOW, observations=(feed,)))

    assert line(told, "Given") == "Given: milk replacer, 0 ml, refused it, at 02:00."
