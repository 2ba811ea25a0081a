"""What is there of one thing: amounts in both unit systems, packs, and dates."""

from __future__ import annotations

from datetime import date

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.cupboard.lots import Lot, read_lots

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()


def one(text: str, unit: str) -> Lot:
    came = read_lots(text, unit)
    assert not isinstance(came, str), came
    (lot,) = came
    return lot


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("2", "count", 2),
        ("1 box", "count", 1),
        ("3 x 2 packs", "count", 6),
        ("10 kg", "kg", 10),
        ("2 x 10 kg", "kg", 20),
        ("2x500ml", "ml", 1000),
        ("1,5 kg", "kg", 1.5),
        ("1.5 l", "ml", 1500),
        ("500 g", "kg", 0.5),
    ],
)
def test_an_amount_is_read(text: str, unit: str, value: float) -> None:
    """Whole things are counted, and packs are multiplied; a comma may part a number."""
    assert one(text, unit) == Lot(value, text)


@pytest.mark.parametrize(
    ("text", "unit", "published"),
    [
        ("22 lb", "kg", "22 lb"),
        ("9 lb 4 oz", "kg", "148 oz"),
        ("1 qt", "ml", "1 quart"),
        ("32 oz", "ml", "32 floz"),
    ],
)
def test_us_amounts_are_what_they_are_elsewhere(text: str, unit: str, published: str) -> None:
    """Pounds, ounces and quarts come out as the `pint` library has them."""
    number, name = published.split()
    known = REGISTRY.Quantity(float(number), name).to({"kg": "kg", "ml": "ml"}[unit]).magnitude

    assert one(text, unit).value == pytest.approx(known, abs=1e-3)


@pytest.mark.parametrize("text", ["10 kg, 2027-03", "10 kg,2027-03", "10 kg , 03/2027", "10 kg, Mar 2027"])
def test_a_date_goes_with_its_pack(text: str) -> None:
    """The date behind a comma is that of the pack."""
    lot = one(text, "kg")

    assert lot.value == 10
    assert lot.until is not None
    assert lot.until.day == date(2027, 3, 31)
    assert str(lot) == "10 kg, 2027-03"


def test_several_packs_are_parted_by_a_semicolon() -> None:
    """Each pack has its own date, or none; a comma in a number is no date."""
    came = read_lots("1,5 kg, 2027-03; 2 x 5 kg; 3,5 kg", "kg")

    assert not isinstance(came, str)
    assert [(lot.value, lot.until and lot.until.said) for lot in came] == [
        (1.5, "2027-03"),
        (10, None),
        (3.5, None),
    ]


def test_a_count_and_a_year_need_no_space() -> None:
    """`3,2027-03` is three of that month: no number has a year behind its comma."""
    assert str(one("3,2027-03", "count")) == "3, 2027-03"


@pytest.mark.parametrize("text", ["", " ", "0", "-", "none", "; ;"])
def test_nothing_is_no_pack(text: str) -> None:
    """An empty value, a nought and a dash all mean that there is none."""
    assert read_lots(text, "kg") == ()


@pytest.mark.parametrize(
    ("text", "unit", "why"),
    [
        ("10", "kg", "'10' of what?"),
        ("10 ml", "kg", "is no mass"),
        ("4 sachets", "ml", "is no volume"),
        ("2 kg", "count", "This is counted"),
        ("1.5", "count", "is no whole number"),
        ("1 dozen", "count", "is no whole number"),
        ("half a box", "count", "is no whole number"),
        ("99999", "count", "can't be right"),
        ("9 x 9999 kg", "kg", "can't be right"),
        ("99999 kg", "kg", "can't be right"),
        ("0 x 5 kg", "kg", "can't be right"),
        ("10 kg, soon", "kg", "'soon' is not a date"),
        ("10 kg, 3/4/2027", "kg", "could be two dates"),
        ("; ".join(["1 kg"] * 21), "kg", "more than 20 packs"),
    ],
)
def test_what_can_not_be_used_gets_a_sentence(text: str, unit: str, why: str) -> None:
    """A wrong amount is told, with what would be right."""
    came = read_lots(text, unit)

    assert isinstance(came, str)
    assert why in came
    assert came.endswith(".")


@given(st.text(max_size=60), st.sampled_from(("count", "kg", "ml")))
def test_whatever_is_typed_is_read_back(text: str, unit: str) -> None:
    """Anything typed is refused in a sentence, or reads the same from what is written down of it."""
    came = read_lots(text, unit)
    if isinstance(came, str):
        assert came.endswith(".")
        return
    assert read_lots("; ".join(map(str, came)), unit) == came
