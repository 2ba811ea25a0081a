"""What is told as found, as normal, as not checked, and as a reading of the days before."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import small_guide
from tests.handover.made import EARLIER, NIGHT, NOW, answered, full, lamb, minutes, noted
from tests.handover.test_words import line
from triage.facts import UNSURE, Unsure
from triage.guide.model import Condition, Guide
from triage.handover import Situation, Told, handover_of
from triage.handover.gathering import meets
from triage.walk import KEPT, Answer, Walk


def texts(lines: tuple[Told, ...]) -> list[str]:
    """Return the words of some lines."""
    return [line.text for line in lines]


def test_an_answer_that_is_not_normal_is_found(guide: Guide) -> None:
    """A chilled lamb is found, with the value and its time; a good suck was looked at and is normal."""
    told = handover_of(Situation(answered(guide, "none", 38.2, "sucks"), NOW))

    assert texts(told.found) == ["Temperature 38.2 °C at 02:11"]
    assert texts(told.normal) == [
        "Suck and swallow at 02:12: Holds its head up and sucks hard",
        "Danger sign at 02:10: None of these",
    ]


@pytest.mark.parametrize(
    ("degrees", "normal"), [(38.9, False), (39.0, True), (39.5, True), (40.0, True), (40.1, False)]
)
def test_a_normal_temperature_lies_where_every_source_calls_it_normal(
    guide: Guide, degrees: float, normal: bool
) -> None:
    """From 39 to 40 degrees is normal at any age; what only some sources call normal is told as found."""
    told = handover_of(Situation(answered(guide, "none", degrees), NOW))

    assert bool(told.found) is not normal
    assert any("Temperature" in text for text in texts(told.normal)) is normal


def test_repeated_readings_are_told_the_latest_first(guide: Guide) -> None:
    """A vet hears how warm it is now, and then how it came there."""
    walk = answered(guide, "none", 36.2, 3.0, None, 37.4, apart=10)
    told = handover_of(Situation(walk, NOW))

    assert texts(told.found) == ["Temperature 37.4 °C at 02:50, before that 36.2 °C at 02:20"]
    assert told.found[0].rests_on[1:] == (walk.moves[4], walk.moves[1])


def test_one_bad_reading_in_a_day_keeps_a_finding_among_the_found(guide: Guide) -> None:
    """A normal temperature after a chill in the same night is not told as normal."""
    seen = (noted("temperature", -300, temperature=36.0),)
    told = handover_of(Situation(answered(guide, "none", 39.5), NOW, observations=seen))

    assert texts(told.found) == ["Temperature 39.5 °C at 02:11, before that 36 °C at 21:10 yesterday"]


def test_readings_of_the_days_before_have_a_list_of_their_own(guide: Guide) -> None:
    """What is older than a day says nothing of now, and is there when the vet asks."""
    told = handover_of(full(answered(guide, "none", 39.5)))

    assert texts(told.before) == [
        "Temperature 39.2 °C at 10:10 on 09 Feb",
        "Weight 3.2 kg at 00:10 on 09 Feb",
    ]
    assert "Temperature 39.5 °C at 02:11, before that 38.9 °C at 21:00 yesterday" in texts(told.found)[1]


def test_what_a_vet_asks_and_nobody_looked_at_is_not_checked(guide: Guide) -> None:
    """At the first question nothing of what a vet asks is known."""
    told = handover_of(Situation(Walk(guide), NOW))

    assert texts(told.not_checked) == [guide.findings[name].label for name in guide.front.vet_asks]


def test_not_sure_is_not_checked(guide: Guide) -> None:
    """An answer of not sure is told as not checked, and rests on that answer."""
    walk = answered(guide, "none", UNSURE, "warm", "sucks", "scours", UNSURE)
    told = {line.text: line.rests_on for line in handover_of(Situation(walk, NOW)).not_checked}

    assert told["Temperature"][1] is walk.moves[1]
    assert told["Dung"][1] is walk.moves[5]
    assert "Danger sign" not in told
    assert "Suck and swallow" not in told


def test_what_was_looked_at_after_all_is_checked(guide: Guide) -> None:
    """A temperature or dung noted after a not sure counts, and one from hours before does not."""
    walk = answered(guide, "none", UNSURE, "warm", "sucks", "scours", UNSURE)

    def missing(after: float) -> list[str]:
        seen = (
            noted("temperature", after, temperature=39.1),
            noted("passed", after, dung="loose", urine="seen"),
        )
        return texts(handover_of(Situation(walk, NOW, observations=seen)).not_checked)

    assert not {"Temperature", "Dung", "Passing"} & set(missing(20))
    assert {"Temperature", "Dung"} < set(missing(-20))
    assert "Passing" not in missing(-20)
    assert "Passing" in missing(-300)


def test_an_old_reading_never_passes_for_one_of_now(guide: Guide) -> None:
    """A temperature of hours ago is told with its time, and still as not checked now."""
    walk = answered(guide, "gasping")
    told = handover_of(Situation(walk, NOW, observations=(noted("temperature", -300, temperature=39.4),)))

    assert "Temperature" in texts(told.not_checked)
    assert "Temperature 39.4 °C at 21:10 yesterday" in texts(told.normal)
    half = handover_of(Situation(walk, NOW, observations=(noted("temperature", -30, temperature=39.4),)))
    assert "Temperature" not in texts(half.not_checked)


def test_a_weight_of_the_day_and_an_age_on_the_card_are_known(guide: Guide) -> None:
    """The card and the scale of this day answer what a vet asks of age and weight."""
    seen = (noted("weight", -600, weight=3.4),)
    told = handover_of(Situation(answered(guide, "gasping"), NOW, "metric", lamb(), seen))

    assert not {"Age", "Weight"} & set(texts(told.not_checked))


def test_a_birth_still_to_come_is_not_known(guide: Guide) -> None:
    """A card that says tomorrow, by a clock that was wrong, answers nothing."""
    card = lamb(born=minutes(3000))
    told = handover_of(Situation(Walk(guide), NOW, lamb=card))

    assert "Age" in texts(told.not_checked)
    assert " old" not in told.spoken[0].text


def test_first_milk_that_was_noted_is_not_told_as_unknown(guide: Guide) -> None:
    """A feed of first milk answers whether it had any; another feed does not."""
    walk = answered(guide, "gasping")

    def missing(what: str) -> list[str]:
        seen = (noted("feed", -3000, what=what, amount=60.0, how="all"),)
        return texts(handover_of(Situation(walk, NOW, observations=seen)).not_checked)

    assert "First milk" not in missing("first-milk")
    assert "First milk" in missing("milk")


def test_circumstances_are_neither_found_nor_normal(guide: Guide) -> None:
    """Age, reason and the like are told apart from what was looked at."""
    walk = answered(guide, "none", 39.5, "sucks", "rejected", 10.0)
    told = handover_of(Situation(walk, NOW))

    assert texts(told.other) == [
        "Age 10 hours at 02:14",
        "Reason at 02:13: An orphan, or its mother refuses it",
    ]
    assert not told.found


def test_what_raised_the_urgency_worries_whatever_it_is(guide: Guide) -> None:
    """A circumstance that raised the urgency is found: being hot with no heat on it."""
    walk = answered(guide, "none", 40.3, "no-heat")
    told = handover_of(Situation(walk, NOW))

    assert walk.state.urgency == "vet-today"
    assert texts(told.found)[0] == "Under heat at 02:12: No"


def test_a_not_sure_that_raised_the_urgency_does_not_make_a_later_answer_a_worry(guide: Guide) -> None:
    """A mouth that could not be told, and is warm after warming, was looked at and is normal."""
    walk = answered(guide, "none", UNSURE, UNSURE, 3.0, None, "warm")
    assert [rise.finding for rise in walk.state.rises] == ["mouth"]
    told = handover_of(Situation(walk, NOW))

    assert "Mouth at 02:15: Warm" in texts(told.normal)
    assert not told.found


def test_a_kept_weight_is_told_once(guide: Guide) -> None:
    """An answer that was taken from the scale's reading does not become a second reading."""
    seen = (noted("weight", -100, weight=3.4),)
    walk = answered(guide, "none", 39.5, "sucks", "no-first-milk", 10.0, "none")
    while getattr(walk.node, "finding", "") != "weight" and not walk.finished:
        finding = guide.findings[walk.node.finding]  # type: ignore[union-attr]
        usual = finding.normal.is_[0] if finding.normal and finding.normal.is_ else [*finding.choices][-1]
        walk = walk.answer(usual, at=minutes(10))
    walk = walk.answer(3.4, KEPT, at=minutes(12))

    with_note = handover_of(Situation(walk, NOW, observations=seen))
    alone = handover_of(Situation(walk, NOW))

    assert "Weight 3.4 kg at 00:30" in texts(with_note.other)
    assert "Weight 3.4 kg" in texts(alone.other), "when it was weighed is not known here"


def test_what_an_earlier_walk_of_the_day_found_is_told(guide: Guide) -> None:
    """Watery dung in the evening stays true of a lamb whose dung is usual at night."""
    walk = answered(guide, "none", 39.5, "sucks", "scours", "usual")

    def found(before: float, value: str | Unsure) -> list[str]:
        earlier = (Answer("dung", value, at=minutes(-before)),)
        return texts(handover_of(Situation(walk, NOW, earlier=earlier)).found)

    assert found(300, "watery") == [
        "Dung at 02:14: Yellow or brown paste, or dark sticky first dung, and a clean tail; "
        "before that at 21:10 yesterday: Runs like water, or soaks the tail"
    ]
    assert found(3000, "watery") == []
    assert found(300, UNSURE) == []
    assert found(300, "a-choice-of-another-edition") == []


def test_what_is_well_again_stands_after_what_is_not(guide: Guide) -> None:
    """A bad sign of now is said before one of the evening that has gone."""
    walk = answered(guide, "none", 39.5, "sucks", "scours", "loose")
    earlier = (Answer("swallows", "no-swallow", at=minutes(-300)),)
    told = handover_of(Situation(walk, NOW, earlier=earlier))

    assert [text.partition(" at ")[0] for text in texts(told.found)] == ["Dung", "Suck and swallow"]
    assert "Why now: dung at 02:14: Looser" in told.spoken[0].text
    assert line(told, "Normal again: ").endswith("yesterday: Its head drops, or it does not swallow.")


def test_what_was_normal_hours_ago_is_not_told_as_normal_now(guide: Guide) -> None:
    """A good suck of the evening says nothing of a lamb that gasps at night; one of just now does."""
    walk = answered(guide, "gasping")

    def told(before: float) -> tuple[list[str], list[str]]:
        earlier = (Answer("swallows", "sucks", at=minutes(-before)),)
        made = handover_of(Situation(walk, NOW, earlier=earlier))
        return texts(made.normal), texts(made.not_checked)

    normal, missing = told(300)
    assert not normal
    assert "Suck and swallow" in missing
    normal, missing = told(20)
    assert normal == ["Suck and swallow at 01:50: Holds its head up and sucks hard"]
    assert "Suck and swallow" not in missing


def test_a_guide_that_says_nothing_of_normal_or_of_vets_is_told_whole(tmp_path: Path) -> None:
    """In someone's own guide without these fields every answer is told as it was given."""
    guide = small_guide(tmp_path)
    walk = answered(guide, "none", 39.0)
    told = handover_of(full(walk))

    assert texts(told.other) == [
        "Danger at 02:10: Not limp",
        "Temperature 39 °C at 02:11, before that 38.9 °C at 21:00 yesterday, "
        "before that 38.4 °C at 11:50 yesterday, before that 36.4 °C at 11:11 yesterday",
        "Weight 3.4 kg at 22:50 yesterday",
    ]
    assert not told.normal
    assert not told.not_checked


def test_a_walk_of_another_edition_is_told_as_far_as_it_is_known(guide: Guide) -> None:
    """Earlier answers that this guide has no finding or no such value for do no harm."""
    earlier = (
        *EARLIER,
        Answer("colour", "blue", at=minutes(-800)),
        Answer("temperature", "warm", at=minutes(-800)),
    )
    told = handover_of(full(answered(guide, "none", 39.5), earlier=earlier, observations=NIGHT))

    assert [text.partition(" at ")[0] for text in texts(told.found)] == [
        "Suck and swallow",
        "Temperature 39.5 °C",
    ]


@pytest.mark.parametrize(
    ("condition", "value", "met"),
    [
        (Condition(from_="normal-low"), 39.0, True),
        (Condition(above="normal-low"), 39.0, False),
        (Condition(up_to="normal-high"), 40.0, True),
        (Condition(below="normal-high"), 40.0, False),
        (Condition(above="normal-low", below="normal-high"), 39.5, True),
        (Condition(is_=("warm",)), 39.5, False),
        (Condition(is_=("warm",)), "warm", True),
        (Condition(unsure=True), UNSURE, True),
        (Condition(is_=("warm",)), UNSURE, False),
        (None, 39.5, False),
    ],
)
def test_a_condition_is_met_as_it_is_written(
    guide: Guide, condition: Condition | None, value: float | str, met: bool
) -> None:
    """The line itself belongs to `from` and `up_to`, and not to `above` and `below`."""
    assert meets(guide, guide.findings["temperature"], condition, value) is met
