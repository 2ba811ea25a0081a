"""What a sum is made of, and what each one says it rests on."""

from __future__ import annotations

import itertools
from dataclasses import FrozenInstanceError
from typing import TypeVar

import pytest

from tests.amounts.made import NUMBERS
from triage.amounts import AMOUNTS
from triage.amounts.expects import FINDING_CHOICES, FINDING_UNITS, NUMBER_UNITS
from triage.amounts.sums import Figure, Sum
from triage.amounts.weight import Heavy
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Guide

Held = TypeVar("Held")


def test_a_figure_is_said_in_the_readers_units() -> None:
    """250 ml are 8.45 oz, and a word for what it is follows the figure."""
    assert Figure(250, "ml").words("metric") == "250 ml"
    assert Figure(250, "ml", "a day").words("us") == "8.45 oz a day"


def test_figures_are_said_in_one_phrase() -> None:
    """Two figures are joined by `and`, each in the reader's units."""
    both = Sum((Figure(200, "g", "powder"), Figure(800, "ml", "water")), ())

    assert both.words("metric") == "200 g powder and 800 ml water"
    assert both.words("us") == "7.1 oz by weight powder and 27.1 oz water"


def test_a_result_can_not_be_written_over() -> None:
    """A sum, its figures, its weight and its name are values: no part of them can be set."""
    told = (Figure(200, "g"), Sum((), ()), Heavy(4.2), AMOUNTS["milk-feed"])
    for value in told:
        for name in vars(value):
            with pytest.raises(FrozenInstanceError):
                setattr(value, name, None)


def test_glucose_is_headed_as_a_vets() -> None:
    """Wherever the working of glucose is shown, its heading says whose hand it is for."""
    assert AMOUNTS["glucose-dose"].title == "Glucose dose, for a vet or a vet-taught hand only"


class Noted(dict[str, Held]):
    """A mapping that notes which names were looked up."""

    def __init__(self, held: dict[str, Held]) -> None:
        super().__init__(held)
        self.names: set[str] = set()

    def __getitem__(self, name: str) -> Held:
        self.names.add(name)
        return super().__getitem__(name)

    def get(self, name: str, default: Held | None = None) -> Held | None:  # type: ignore[override]
        self.names.add(name)
        return super().get(name, default)


TRIED: dict[str, tuple[Value, ...]] = {
    "weight": (4.0, UNSURE),
    "age": (48.0, 400.0, 700.0, 2000.0, UNSURE),
    "birth-type": ("single", "twin", "triplet", UNSURE),
    "weather": ("cold-wet-wind", "indoors"),
    "skin": (1.0, 3.0, 7.0),
    "dryness": (8.0, UNSURE),
    "batch": (500.0,),
    "bag-powder": (150.0,),
    "bag-water": (880.0,),
    "bag-way": ("added-to", "made-up-to", UNSURE),
}
"""Answers that lead a sum through each of its ways."""


def looked_up(name: str) -> tuple[set[str], set[str]]:
    """Return the numbers and the findings that a sum looks up over all ways through it."""
    amount = AMOUNTS[name]
    asked = [finding for finding in (*amount.needs, *amount.uses) if finding in TRIED]
    numbers: set[str] = set()
    findings: set[str] = set()
    for values in itertools.product(*(TRIED[finding] for finding in asked)):
        held, known = Noted(NUMBERS), Noted(dict(zip(asked, values, strict=True)))
        amount.work_out(Facts(held, known), "metric")
        numbers |= held.names
        findings |= known.names
    return numbers, findings


@pytest.mark.parametrize("name", AMOUNTS)
def test_a_sum_rests_on_the_numbers_it_names(name: str) -> None:
    """The numbers a page shows as used are those that the sum looks up, no more and no fewer."""
    assert looked_up(name)[0] == set(AMOUNTS[name].numbers)


@pytest.mark.parametrize("name", [name for name in AMOUNTS if name != "weight-guess"])
def test_a_sum_takes_the_findings_it_names(name: str) -> None:
    """What a sum asks to be known, or uses when known, is what it looks up of the lamb."""
    assert looked_up(name)[1] == {*AMOUNTS[name].needs, *AMOUNTS[name].uses}


def test_a_guess_of_the_weight_takes_birth_type_and_age() -> None:
    """The guess needs the birth type and uses the age, and the scale does not come into it."""
    assert (AMOUNTS["weight-guess"].needs, AMOUNTS["weight-guess"].uses) == (("birth-type",), ("age",))


def test_every_number_and_finding_of_a_sum_is_held_to_its_unit() -> None:
    """What the sums look up is what a guide is held to, so that none of it can be rewritten in another unit."""
    numbers = {number for amount in AMOUNTS.values() for number in amount.numbers}
    findings = {finding for amount in AMOUNTS.values() for finding in (*amount.needs, *amount.uses)}

    assert numbers == NUMBER_UNITS.keys()
    assert findings == FINDING_UNITS.keys() | FINDING_CHOICES.keys()
    assert not FINDING_UNITS.keys() & FINDING_CHOICES.keys()


def test_the_shipped_guide_has_the_units_that_the_sums_take(guide: Guide) -> None:
    """Each number and measurement of the sums stands in the shipped guide, in the sums' own unit."""
    assert {name: guide.numbers[name].unit for name in NUMBER_UNITS} == NUMBER_UNITS
    assert {name: guide.findings[name].measure for name in FINDING_UNITS} == FINDING_UNITS


def test_the_choices_a_guide_must_have_are_those_that_change_a_sum(guide: Guide) -> None:
    """Of the choices of the shipped guide, the sums ask for those that they tell from "not sure", and no others."""
    base: dict[str, Value] = {"weight": UNSURE, "age": 48.0, "batch": 500.0, "bag-powder": 150.0, "bag-water": 880.0}  # fmt: skip

    def tells(finding: str, choice: str) -> bool:
        return any(
            amount.work_out(Facts(NUMBERS, {**base, finding: choice}), "metric")
            != amount.work_out(Facts(NUMBERS, {**base, finding: UNSURE}), "metric")
            for amount in AMOUNTS.values()
            if finding in (*amount.needs, *amount.uses)
        )

    for finding, choices in FINDING_CHOICES.items():
        assert {choice for choice in guide.findings[finding].choices if tells(finding, choice)} == {*choices}
