"""Electrolyte, the fluid of a day and glucose, worked by hand line by line."""

from __future__ import annotations

import pytest

from tests.amounts.made import LB, OZ, summed
from triage.amounts.sums import Figure
from triage.facts import UNSURE, Value

ROUNDED = "Rounded down to what a bottle shows:"


@pytest.mark.parametrize(
    ("kg", "ml", "working"),
    [
        (4.25, 210, ("Weight 4.25 kg", "4.25 kg x 50 ml = 212.5 ml", f"{ROUNDED} 210 ml")),
        (5.0, 250, ("Weight 5 kg", "5 kg x 50 ml = 250 ml", f"{ROUNDED} 250 ml")),
        (
            5.1,
            250,
            (
                "Weight 5.1 kg",
                "5.1 kg x 50 ml = 255 ml",
                "The most in one dose: 250 ml",
                f"{ROUNDED} 250 ml",
            ),
        ),
    ],
)
def test_a_dose_of_electrolyte_stops_at_its_most(kg: float, ml: float, working: tuple[str, ...]) -> None:
    """50 ml for each kg, and above 5 kg the 250 ml of any lamb, which is then named."""
    result = summed("electrolyte-dose", {"weight": kg})

    assert result.figures == (Figure(ml, "ml"),)
    assert result.working == working


def test_a_dose_of_electrolyte_in_ounces() -> None:
    """At 12 lb 50 ml/kg are 9.2 oz; the most is 8.45 oz, of which a bottle shows 8.25."""
    result = summed("electrolyte-dose", {"weight": 12 * LB}, "us")

    assert result.figures == (Figure(8.25 * OZ, "ml"),)
    assert result.working == (
        "Weight 12 lb",
        "12 lb x 0.767 oz = 9.2 oz",
        "The most in one dose: 8.45 oz",
        f"{ROUNDED} 8.25 oz",
    )


def test_a_days_fluid_is_deficit_upkeep_and_loss() -> None:
    """4.1 kg at 9.24 % lack 378.84 ml; upkeep is 217.3 and loss 164: 760.14 in all."""
    result = summed("fluid-day", {"weight": 4.1, "dryness": 9.24})

    assert result.figures == (Figure(760, "ml", "in a day"),)
    assert result.working == (
        "Weight 4.1 kg",
        "As told: 9.2% of its weight is missing, 379 ml",
        "Upkeep: 217 ml",
        "Still being lost: 164 ml",
        "Together 760 ml in a day, milk included",
    )


def test_a_days_fluid_in_ounces() -> None:
    """At 10 lb: 5 % is 7.67 oz, upkeep 8.13 and loss 6.14; 648.6 ml in all, or 21.9 oz."""
    result = summed("fluid-day", {"weight": 10 * LB}, "us")

    assert result.figures == (Figure(649, "ml", "in a day"),)
    assert result.working == (
        "Weight 10 lb",
        "No sign of drying shows, but this much can hide: 5% of its weight is missing, 7.67 oz",
        "Upkeep: 8.13 oz",
        "Still being lost: 6.14 oz",
        "Together 21.9 oz in a day, milk included",
    )


HIDDEN = "No sign of drying shows, but this much can hide: 5%"


@pytest.mark.parametrize(
    ("known", "line"),
    [
        ({}, HIDDEN),
        ({"skin": UNSURE, "eyes": UNSURE, "gums": UNSURE, "dry-signs": UNSURE, "dryness": UNSURE}, HIDDEN),
        ({"skin": 0.0, "eyes": "bright", "gums": "wet", "dry-signs": "none"}, HIDDEN),
        ({"skin": 1.9}, HIDDEN),
        ({"skin": 2.0}, "Skin fold is slow: 8%"),
        ({"skin": 5.9}, "Skin fold is slow: 8%"),
        ({"skin": 6.0}, "Skin fold stays up: 10%"),
        ({"dry-signs": "some"}, "Some sign of drying: 8%"),
        ({"dry-signs": "bad"}, "A bad sign of drying: 10%"),
        ({"eyes": "sunken"}, "Eyes a little sunken: 8%"),
        ({"eyes": "gap"}, "A gap at the eye: 10%"),
        ({"gums": "tacky"}, "Gums tacky: 8%"),
        ({"gums": "dry"}, "Gums dry: 10%"),
        ({"skin": 2.0, "eyes": "bright", "gums": "dry"}, "Gums dry: 10%"),
        ({"skin": 6.0, "eyes": "sunken", "gums": "tacky"}, "Skin fold stays up: 10%"),
        ({"skin": 6.0, "gums": "dry", "dryness": 3.0}, "As told: 3%"),
    ],
)
def test_the_worst_sign_names_the_share(known: dict[str, Value], line: str) -> None:
    """A fold of 2 s and a lesser sign are 8 %, one of 6 s and a bad sign 10 %, and a share told goes first."""
    working = summed("fluid-day", {"weight": 4.0, **known}).working

    assert working[1].startswith(f"{line} of its weight is missing, ")


def test_glucose_is_whole_millilitres_made_of_stock_and_water() -> None:
    """3.47 kg at 10 ml are 34.7 ml, given as 34: 6.8 g, from 17 ml of 40 % stock and 17 ml of water."""
    result = summed("glucose-dose", {"weight": 3.47})

    assert result.figures == (Figure(34, "ml", "of 20% glucose (10 ml for each kg)"),)
    assert result.working == (
        "Weight 3.47 kg",
        "20% glucose at 10 ml for each kg",
        "3.47 kg x 10 ml = 34.7 ml",
        "Given as 34 ml",
        "That is 6.8 g of glucose",
        "From 40% stock: 17 ml, and 17 ml sterile water",
    )


def test_glucose_is_shown_to_a_tenth() -> None:
    """Each figure of the working is rounded to a tenth, whatever digits the guide's numbers have."""
    # 3.454 x 10.04 = 34.678; 34 x 20.04 / 100 = 6.814; 34 x 20.04 / 42.04 = 16.207, and 17.793 to make 34.
    result = summed(
        "glucose-dose",
        {"weight": 3.454},
        glucose_rate=10.04,
        glucose_strength=20.04,
        glucose_stock=42.04,
    )

    assert result.figures == (Figure(34, "ml", "of 20% glucose (10 ml for each kg)"),)
    assert result.working == (
        "Weight 3.45 kg",
        "20% glucose at 10 ml for each kg",
        "3.45 kg x 10 ml = 34.7 ml",
        "Given as 34 ml",
        "That is 6.8 g of glucose",
        "From 42% stock: 16.2 ml, and 17.8 ml sterile water",
    )


def test_glucose_stays_in_millilitres_for_a_reader_of_ounces() -> None:
    """A vet's dose is read out in millilitres in both unit systems; only the weight is told in pounds."""
    working = summed("glucose-dose", {"weight": 10 * LB}, "us").working

    assert working[0] == "Weight 10 lb"
    assert working[2:4] == ("4.54 kg x 10 ml = 45.4 ml", "Given as 45 ml")
