"""Answers as typed: choices, measurements that can be insisted on, times of birth."""

from __future__ import annotations

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest

from triage.clock import Now
from triage.entry import AnswerReader, AskAgain, Understood
from triage.facts import UNSURE, Value
from triage.guide.model import Guide

LONDON = ZoneInfo("Europe/London")
NIGHT = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), LONDON)


def read(
    guide: Guide, finding: str, text: str, known: dict[str, Value] | None = None
) -> Understood | AskAgain:
    return AnswerReader(guide, "metric", NIGHT).read(guide.findings[finding], text, known or {})


@pytest.mark.parametrize("text", ["1", "gasping", "GASPING ", "Gasping, or blue or grey gums"])
def test_a_choice_is_taken_by_number_name_or_words(guide: Guide, text: str) -> None:
    """A choice can be given by its number, its name, or its own words."""
    assert read(guide, "danger", text) == Understood("gasping")


@pytest.mark.parametrize("text", ["n", "N", "unsure", "not sure"])
def test_not_sure_is_always_understood(guide: Guide, text: str) -> None:
    """ "Not sure" is an answer to a choice and to a measurement alike."""
    assert read(guide, "danger", text) == Understood(UNSURE)
    assert read(guide, "temperature", text) == Understood(UNSURE)


def test_a_finding_that_is_never_unsure_says_why(guide: Guide) -> None:
    """Where "not sure" is no answer, the person is told what to choose instead."""
    again = read(guide, "reason", "n")

    assert isinstance(again, AskAgain)
    assert "Something else" in again.why


@pytest.mark.parametrize("text", ["0", "8", "99", "-1", "1.0", "²", "limpp", ""])
def test_what_is_no_choice_is_asked_again(guide: Guide, text: str) -> None:
    """A number or word that is no choice changes nothing and says what to type."""
    again = read(guide, "danger", text)

    assert isinstance(again, AskAgain)
    assert "1 to 6, or n for not sure" in again.why


def test_a_newborn_of_42_lb_is_asked_again_and_can_be_insisted_on(guide: Guide) -> None:
    """42 lb is possible for some lamb and odd for this one: it is asked again, and may be kept."""
    again = read(guide, "weight", "42 lb", {"age": 3.0})

    assert isinstance(again, AskAgain)
    assert again.why.startswith("19.1 kg is unusual; most such lambs are 1.5 kg to 7.1 kg.")
    assert again.insisted == Understood(19.0509, "42 lb")


def test_a_weight_in_the_other_units_is_asked_about(guide: Guide) -> None:
    """8 for a newborn is eight kilograms here, and more likely eight pounds: it is asked."""
    again = read(guide, "weight", "8", {"age": 8.0})

    assert isinstance(again, AskAgain)
    assert "Did you mean 8 lb?" in again.why


def test_a_time_just_ahead_is_asked_about(guide: Guide) -> None:
    """A clock time still to come today may be yesterday's or a slip, so it is asked once more."""
    again = read(guide, "age", "born 02:30")

    assert isinstance(again, AskAgain)
    assert again.why.startswith("That time is still to come today. Yesterday, 23.7 hours ago?")
    assert again.insisted is not None


def test_an_older_lamb_may_weigh_more(guide: Guide) -> None:
    """The usual weight rises with the age, so an eight-week lamb of 19 kg is not questioned."""
    assert read(guide, "weight", "42 lb", {"age": 24.0 * 56}) == Understood(19.0509, "42 lb")


def test_without_an_age_only_the_possible_top_holds(guide: Guide) -> None:
    """When the age is not known a heavy weight is not questioned: it may be an older lamb."""
    assert read(guide, "weight", "42 lb", {"age": UNSURE}) == Understood(19.0509, "42 lb")
    assert isinstance(read(guide, "weight", "1 kg", {"age": UNSURE}), AskAgain)


def test_a_weight_no_lamb_has_cannot_be_insisted_on(guide: Guide) -> None:
    """What is not possible at all is refused outright."""
    again = read(guide, "weight", "420 kg", {"age": 3.0})

    assert isinstance(again, AskAgain)
    assert again.insisted is None


@pytest.mark.parametrize(
    ("text", "hours"),
    [("3 h", 3.0), ("2 days", 48.0), ("2 d 5 h", 53.0), ("1 week", 168.0), ("90 min", 1.5),
     ("born 23:10", 3.0), ("23:10", 3.0), ("yesterday 23:10", 3.0), ("11:10 pm", 3.0), ("11pm", 3.17),
     ("born 2026-02-10 at 2:10", 24.0), ("today 01:10", 1.0)],
)  # fmt: skip
def test_ages_and_times_of_birth_are_understood(guide: Guide, text: str, hours: float) -> None:
    """An age, or the time of birth as a clock shows it, gives the hours since."""
    understood = read(guide, "age", text)

    assert isinstance(understood, Understood)
    assert understood.value == pytest.approx(hours, abs=0.01)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("born 2026-02-11 04:00", "That is still to come: it is 02:10 on 2026-02-11 now."),
        ("tomorrow", "is not a number here"),
        ("3", "Hours or days? Type 3 h or 3 days."),
        ("2 m", "is not a number here"),
        ("born 2026-02-30 04:00", "There is no such date as 2026-02-30."),
        ("0001-01-01 10:00", "The year 0001 can't be right."),
        ("9999-12-31 23:59", "The year 9999 can't be right."),
        ("born 25:00", "is not a time of birth"),
        ("born yesterday", "is not a time of birth"),
        ("born 2024-02-10 02:00", "That is more than a year ago."),
        ("born 2025-06-10 02:00", "This guide is for younger lambs."),
    ],
)
def test_impossible_times_of_birth_are_refused(guide: Guide, text: str, said: str) -> None:
    """A birth still to come, or on no day there is, is told in a sentence."""
    again = read(guide, "age", text)

    assert isinstance(again, AskAgain)
    assert said in again.why


def test_a_time_of_birth_is_kept_as_a_moment(guide: Guide) -> None:
    """What is kept is the moment in UTC, so that no later clock change can move it."""
    understood = read(guide, "age", "born 23:10")

    assert isinstance(understood, Understood)
    assert understood.said == "born 2026-02-10T23:10+00:00"
    assert understood.note == "Taken as born 23:10 on 2026-02-10."


def test_a_temperature_in_the_other_system_is_doubted_unless_it_is_normal(guide: Guide) -> None:
    """`93.8` for 39.8 would be a dying lamb in Fahrenheit: it is asked again; a normal 102.5 is taken at once."""
    reader = AnswerReader(guide, "metric", Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC))

    slip = reader.read(guide.findings["temperature"], "93.8", {})
    assert isinstance(slip, AskAgain)
    assert slip.insisted is not None
    assert "34.3 °C" in slip.why
    assert isinstance(reader.read(guide.findings["temperature"], "102.5", {}), Understood)
    assert isinstance(reader.read(guide.findings["temperature"], "93.8F", {}), Understood)
