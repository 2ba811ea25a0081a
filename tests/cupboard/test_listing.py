"""The list as values: how much, what is past its date, and what to buy first."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cupboard.made import TODAY, shelf, stocked
from triage.cupboard.listing import Cupboard, Entry, cupboard_of, how_much, unit_of, units_of
from triage.cupboard.lots import read_lots
from triage.cupboard.shelf import Shelf
from triage.guide.items import HowMany
from triage.guide.model import Guide


@pytest.fixture
def made(tmp_path: Path) -> Guide:
    return stocked(tmp_path)


def entry(cupboard: Cupboard, name: str) -> Entry:
    return next(each for each in cupboard.entries if each.item.name == name)


def names(entries: tuple[Entry, ...]) -> list[str]:
    return [each.item.name for each in entries]


def test_it_is_counted_for_the_lambs(made: Guide) -> None:
    """What each lamb takes is multiplied, and shared things are one for so many lambs, rounded up."""
    for lambs, powder, drink, heaters in (
        (1, 13, 260, 1),
        (4, 52, 1040, 1),
        (5, 65, 1300, 2),
        (9, 117, 2340, 3),
    ):
        cupboard = cupboard_of(made, Shelf(), TODAY, lambs)
        needs = {each.item.name: each.need for each in cupboard.entries}
        assert needs == {
            "probe": 2,
            "powder": powder,
            "drink": drink,
            "heater": heaters,
            "needle": None,
            "phone": None,
        }
    assert units_of(made) == {
        "probe": "count",
        "powder": "kg",
        "drink": "ml",
        "heater": "count",
        "needle": "count",
        "phone": "count",
    }


def test_the_lambs_are_those_asked_for_or_those_kept(made: Guide) -> None:
    """What is asked for now goes before what was kept; with neither it is counted for one, and said so."""
    kept = shelf(3)

    assert (cupboard_of(made, kept, TODAY, 7).lambs, cupboard_of(made, kept, TODAY).lambs) == (7, 3)
    assert cupboard_of(made, kept, TODAY).told
    assert (cupboard_of(made, Shelf(), TODAY).lambs, cupboard_of(made, Shelf(), TODAY).told) == (1, False)


def test_what_is_past_its_date_does_not_count(made: Guide) -> None:
    """A pack counts to the last day on its label and not after; near it, it is told."""
    kept = shelf(1, powder="13 kg, 2026-11-28; 3 kg, 2026-11-29; 2 kg, 2026-11; 1 kg, 2027-06; 4 kg")
    powder = entry(cupboard_of(made, kept, TODAY), "powder")

    assert [str(lot) for lot in powder.gone] == ["13 kg, 2026-11-28"]
    assert powder.have == 10
    assert powder.short == 3
    assert [str(lot) for lot in powder.soon] == ["3 kg, 2026-11-29", "2 kg, 2026-11"]
    assert [str(lot) for lot in powder.undated] == ["4 kg"]


def test_near_its_date_is_within_sixty_days(made: Guide) -> None:
    """Sixty days from today is near, the day after is not."""
    near, far = (
        entry(cupboard_of(made, shelf(powder=f"1 kg, {day}"), date(2026, 11, 1)), "powder")
        for day in ("2026-12-31", "2027-01-01")
    )

    assert (len(near.soon), len(far.soon)) == (1, 0)


def test_what_is_missing_is_bought_by_its_rank(made: Guide) -> None:
    """Each thing stands under the time by which it has to be there."""
    cupboard = cupboard_of(made, Shelf(), TODAY, 5)

    assert {when: names(cupboard.to_buy(when)) for when in ("tonight", "this-week", "season")} == {
        "tonight": ["probe", "powder"], "this-week": ["drink"], "season": ["heater"],
    }  # fmt: skip
    assert (names(cupboard.vet), names(cupboard.at_hand), cupboard.enough) == (["needle"], ["phone"], ())


def test_what_is_enough_for_one_lamb_waits_a_step(made: Guide) -> None:
    """With enough to begin with, the rest may come later; with less, or for things that serve all, it may not."""
    begun = cupboard_of(made, shelf(5, powder="13 kg", drink="260 ml", heater="1", probe="1"), TODAY)

    assert names(begun.to_buy("tonight")) == ["probe"]
    assert names(begun.to_buy("this-week")) == ["powder"]
    assert sorted(names(begun.to_buy("season"))) == ["drink", "heater"]
    assert names(cupboard_of(made, shelf(5, powder="12.9 kg"), TODAY).to_buy("tonight")) == [
        "probe",
        "powder",
    ]


def test_what_there_is_nothing_of_comes_first(made: Guide) -> None:
    """Of two things for tonight, the one that is not there at all is bought first."""
    assert names(cupboard_of(made, shelf(5, probe="1"), TODAY).to_buy("tonight")) == ["powder", "probe"]


def test_a_full_shelf_buys_nothing(made: Guide) -> None:
    """With all that is needed nothing is left to buy."""
    cupboard = cupboard_of(made, shelf(2, probe="2", powder="26 kg", drink="520 ml", heater="1"), TODAY)

    assert not any(cupboard.to_buy(when) for when in ("tonight", "this-week", "season"))
    assert names(cupboard.enough) == ["probe", "powder", "drink", "heater"]


@given(st.integers(1, 200), st.integers(0, 3000), st.integers(0, 3000))
def test_more_lambs_never_need_less(guide: Guide, lambs: int, there: int, more: int) -> None:
    """A lamb more never takes less of anything, and a kilogram more on the shelf never asks for more."""
    for item in guide.cupboard.values():
        if item.how_many:
            assert how_much(guide, item.how_many, lambs) <= how_much(guide, item.how_many, lambs + 1)
    less, richer = (
        entry(cupboard_of(guide, shelf_of(guide, kilos), TODAY, lambs), "milk-powder").short
        for kilos in (there, there + more)
    )
    assert less >= richer >= 0


def shelf_of(guide: Guide, kilos: int) -> Shelf:
    came = read_lots(f"{kilos} kg" if kilos else "", unit_of(guide, guide.cupboard["milk-powder"]))
    return Shelf(None, {} if isinstance(came, str) else {"milk-powder": came})


def test_a_shelf_of_another_edition_is_no_trouble(made: Guide) -> None:
    """What the guide does not list is passed over."""
    cupboard = cupboard_of(made, replace(shelf(1, probe="2"), lots={"gone": ()}), TODAY)

    assert "gone" not in names(cupboard.entries)


def test_least_holds_for_few_lambs(made: Guide) -> None:
    """One for three lambs, two at least: two up to six lambs, then three."""
    shared = HowMany(least=2, one_for=3)

    assert [how_much(made, shared, lambs) for lambs in (1, 3, 6, 7, 10)] == [2, 2, 2, 3, 4]
