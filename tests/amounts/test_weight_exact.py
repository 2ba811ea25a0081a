"""The weight a sum goes by and the lines that tell of it, to the last digit."""

from __future__ import annotations

import pytest

from tests.amounts.made import LB, OZ, made, summed
from triage.amounts import AMOUNTS
from triage.amounts.sums import Figure
from triage.amounts.weight import Heavy, days_old, times, weight_line, weight_of
from triage.facts import UNSURE, Value

UNKNOWN = "a small lamb, as its birth type is not known"


@pytest.mark.parametrize(
    ("known", "kg", "told"),
    [
        ({"weight": UNSURE}, 2.0, f"2 kg, as for {UNKNOWN}"),
        ({"weight": UNSURE, "birth-type": UNSURE, "age": UNSURE}, 2.0, f"2 kg, as for {UNKNOWN}"),
        ({"birth-type": "triplet", "age": 12.0}, 2.05, "2.05 kg, as for a triplet"),
        ({"birth-type": "twin", "age": 24.0}, 3.1, "3.1 kg, as for a twin, 1 day old"),
        ({"birth-type": "single", "age": 36.0}, 4.15, "4.15 kg, as for a single, 1.5 days old"),
        ({"birth-type": "single", "age": 240.0}, 5.0, "5 kg, as for a single, 10 days old"),
    ],
)
def test_a_guess_is_the_birth_weight_and_a_tenth_of_a_kilo_a_day(
    known: dict[str, Value], kg: float, told: str
) -> None:
    """A guess adds 100 g for each day to 4, 3 or 2 kg, and says of what lamb, with its age from one day on."""
    assert weight_of(made(known), "metric") == Heavy(kg, f"Weight is a guess: {told}. Weigh it when you can.")


def test_a_guess_is_told_in_pounds() -> None:
    """4 kg are 141 oz, told as 8 lb 13 oz to a reader of pounds."""
    told = "Weight is a guess: 8 lb 13 oz, as for a single. Weigh it when you can."
    assert weight_of(made({"birth-type": "single"}), "us") == Heavy(4.0, told)


def test_a_guess_is_kept_to_ten_grams() -> None:
    """2 kg and 111 g a day for 3.5 days are 2.3885 kg, kept as 2.39."""
    assert weight_of(made({"age": 84.0}, guess_growth=0.111), "metric").kg == 2.39


def test_the_age_in_a_guess_is_rounded_once() -> None:
    """2.346 days are 2.3 days, not 2.35 first and then 2.4."""
    assert ", 2.3 days old." in weight_of(made({"age": 2.346 * 24}), "metric").guessed


def test_a_measured_weight_has_no_guess_to_tell() -> None:
    """A lamb on the scale has its own weight, and nothing to mark."""
    assert weight_of(made({"weight": 4.2, "birth-type": "single", "age": 240.0}), "us") == Heavy(4.2)


@pytest.mark.parametrize(("hours", "days"), [(36.0, 1.5), (UNSURE, None)])
def test_age_in_days(hours: Value, days: float | None) -> None:
    """36 hours are a day and a half, and an age not known is not a number."""
    assert days_old(made({"age": hours})) == days


def test_the_weight_line_says_when_it_is_a_guess() -> None:
    """The first line of working names the weight in the reader's units, and marks a guess."""
    assert weight_line(Heavy(4.2), "metric") == "Weight 4.2 kg"
    assert weight_line(Heavy(4.0, "a guess"), "metric") == "Weight guessed as 4 kg"
    assert weight_line(Heavy(4.0), "us") == "Weight 8 lb 13 oz"


def test_the_multiplication_is_shown_in_the_readers_units() -> None:
    """4.234 kg times 50.24 ml is 212.72 ml; 10 lb times 50 ml/kg (0.7669 oz a pound) is 7.669 oz."""
    assert times(Heavy(4.234), 50.24, 4.234 * 50.24, "metric") == "4.23 kg x 50.2 ml = 212.7 ml"
    assert times(Heavy(10 * LB), 50.0, 500 * LB, "us") == "10 lb x 0.767 oz = 7.67 oz"
    assert times(Heavy(10.126 * LB), 50.24, 7.806 * OZ, "us") == "10.13 lb x 0.771 oz = 7.81 oz"


BY_WEIGHT = [name for name, amount in AMOUNTS.items() if "weight" in amount.needs]


@pytest.mark.parametrize("name", BY_WEIGHT)
def test_every_amount_by_weight_marks_a_guess_in_the_readers_units(name: str) -> None:
    """An amount for a lamb that was not weighed says so in its working and in its note, in pounds too."""
    result = summed(name, {"weight": UNSURE}, "us")

    assert result.working[0] == "Weight guessed as 4 lb 7 oz"
    assert result.guessed == f"Weight is a guess: 4 lb 7 oz, as for {UNKNOWN}. Weigh it when you can."


@pytest.mark.parametrize("name", BY_WEIGHT)
def test_no_amount_by_a_measured_weight_is_marked(name: str) -> None:
    """An amount for a weighed lamb carries no note of a guess."""
    assert summed(name, {"weight": 4.0}).guessed == ""


def test_a_guess_can_be_asked_for_though_the_lamb_was_weighed() -> None:
    """The guess of a twin of ten days is 4 kg, whatever the scale said, and shows how it came about."""
    result = summed("weight-guess", {"weight": 6.0, "birth-type": "twin", "age": 240.0})

    assert result.figures == (Figure(4.0, "kg"),)
    assert result.working == (
        "Weight guessed as 4 kg",
        "A small lamb of its kind at birth,",
        "and 100 g a day since",
    )
    assert result.guessed == "Weight is a guess: 4 kg, as for a twin, 10 days old. Weigh it when you can."


def test_a_guess_is_worked_in_pounds() -> None:
    """4 kg are 8 lb 13 oz, and 100 g a day 3.5 oz."""
    result = summed("weight-guess", {"birth-type": "twin", "age": 240.0}, "us")

    assert result.working == (
        "Weight guessed as 8 lb 13 oz",
        "A small lamb of its kind at birth,",
        "and 3.5 oz by weight a day since",
    )
    assert result.guessed.startswith("Weight is a guess: 8 lb 13 oz, as for a twin, 10 days old.")


def test_the_age_is_told_in_hours() -> None:
    """An age is kept to a hundredth of an hour, as 36 seconds are enough."""
    result = summed("lamb-age", {"age": 10.256})

    assert result.figures == (Figure(10.26, "h", "old"),)
    assert result.working == ("Counted in real hours, whatever the clocks did",)
    assert result.guessed == ""


def test_an_unknown_age_is_told_as_unknown() -> None:
    """With no age there is no figure to trust, and the note says so."""
    result = summed("lamb-age", {"age": UNSURE})

    assert result.figures == (Figure(0, "h"),)
    assert (result.working, result.guessed) == (("Age is not known",), "Age is not known.")
