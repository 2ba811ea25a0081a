"""A batch of milk, worked by hand with a powder that takes up 0.8 ml a gram."""

from __future__ import annotations

import pytest

from tests.amounts.made import summed
from triage.amounts.sums import Figure
from triage.facts import UNSURE, Value

BAG: dict[str, Value] = {"batch": 500.0, "bag-powder": 150.0, "bag-water": 880.0}
"""150 g take up 120 ml: added to 880 ml they make a litre, of which half a litre holds 75 g."""


def test_powder_added_to_water_makes_more_than_the_water() -> None:
    """Half a litre of 150 g in 880 ml is 75 g and 440 ml."""
    result = summed("milk-batch", {**BAG, "bag-way": "added-to"})

    assert result.figures == (Figure(75, "g", "powder"), Figure(440, "ml", "water"))
    assert result.working == (
        "The bag: 150 g powder added to 880 ml",
        "That makes 1000 ml of milk, 15% powder",
        "For 500 ml of milk: 75 g powder",
        "and 440 ml water, as powder takes up room too",
    )
    assert result.guessed == ""


def test_powder_made_up_to_a_volume_makes_that_volume() -> None:
    """150 g made up to 880 ml are 17 %: half a litre is 85.2 g, which leave room for 431.8 ml."""
    result = summed("milk-batch", {**BAG, "bag-way": "made-up-to"})

    assert result.figures == (Figure(85, "g", "powder"), Figure(432, "ml", "water"))
    assert result.working == (
        "The bag: 150 g powder made up to 880 ml",
        "That makes 880 ml of milk, 17% powder",
        "For 500 ml of milk: 85 g powder",
        "and 432 ml water, as powder takes up room too",
    )
    assert result.guessed == ""


def test_a_batch_in_ounces() -> None:
    """150 g are 5.3 oz by weight and 75 g 2.6; 880 ml are 29.8 oz, a litre 33.8, 500 ml 16.9, 440 ml 14.9."""
    result = summed("milk-batch", {**BAG, "bag-way": "added-to"}, "us")

    assert result.working == (
        "The bag: 5.3 oz by weight powder added to 29.8 oz",
        "That makes 33.8 oz of milk, 15% powder",
        "For 16.9 oz of milk: 2.6 oz by weight powder",
        "and 14.9 oz water, as powder takes up room too",
    )
    assert result.words("us") == "2.6 oz by weight powder and 14.9 oz water"


def test_a_share_of_powder_is_shown_to_a_tenth() -> None:
    """160 g made up to 900 ml are 17.78 %, shown as 17.8."""
    result = summed(
        "milk-batch", {"batch": 900.0, "bag-powder": 160.0, "bag-water": 900.0, "bag-way": "made-up-to"}
    )

    assert result.working[1] == "That makes 900 ml of milk, 17.8% powder"


@pytest.mark.parametrize("known", [BAG, {**BAG, "bag-way": UNSURE}])
def test_a_bag_not_read_is_taken_as_the_weaker_milk(known: dict[str, Value]) -> None:
    """With the bag's wording not known the powder is taken as added, which is the weaker, and marked."""
    result = summed("milk-batch", known)

    assert result.figures == (Figure(75, "g", "powder"), Figure(440, "ml", "water"))
    assert result.guessed == "Taken as powder added to the water. Read the bag."


@pytest.mark.parametrize("lacking", ["batch", "bag-powder", "bag-water"])
def test_a_rate_is_never_assumed(lacking: str) -> None:
    """With the size of the batch or either half of the bag's rate unknown there is no sum, and it says which."""
    with pytest.raises(LookupError, match=f"^{lacking}$"):
        summed("milk-batch", {**BAG, lacking: UNSURE})
