"""The milk tables: every figure is what the sum of the night says, in either unit system."""

from __future__ import annotations

import pytest

from tests.conftest import small_guide
from tests.paper.made import parsed, rows, texts, words
from tests.rearing.lambs import BAG, shipped
from triage.amounts import AMOUNTS
from triage.facts import Facts, Value
from triage.page.wall import Wall
from triage.paper.sheets import Foot, sheets_of
from triage.paper.tables import KILOS, NEWBORN, POUNDS, ages, lacking, table_parts, weights
from triage.rearing.reared import Bag
from triage.units import KG_PER_LB, System, show

SYSTEMS: tuple[System, ...] = ("metric", "us")


def made(system: System, bag: Bag | None = None) -> object:
    parts = table_parts(Wall(shipped(), system), bag)
    return parsed(sheets_of("Milk tables", parts, Foot("2026.1", "3 April 2026"), "a4"))


def worked(system: System, name: str, **known: Value) -> str:
    figure = AMOUNTS[name].work_out(Facts(shipped().values(), known), system).figures[0]
    return show(figure.value, figure.unit, system)


def test_the_weights_go_by_half_kilos_or_whole_pounds() -> None:
    """From 2 to 12 kg, or from 4 to 26 lb, with nothing left out."""
    assert weights("metric") == KILOS == tuple(2 + half / 2 for half in range(21))
    assert weights("us") == tuple(pounds * KG_PER_LB for pounds in POUNDS)
    assert (POUNDS[0], POUNDS[-1]) == (4, 26)


@pytest.mark.parametrize("system", SYSTEMS)
def test_first_milk_is_that_of_the_night(system: System) -> None:
    """One feed, the day indoors, the day out in the cold, and a weak lamb's first feed, for each weight."""
    found = [row for row in rows(made(system)) if len(row) == 5]
    expected = [
        [
            show(kg, "kg", system),
            *(
                worked(system, name, weight=kg)
                for name in ("first-milk", "first-milk-day", "first-milk-day-cold", "small-first-feed")
            ),
        ]
        for kg in weights(system)
        if kg <= NEWBORN
    ]

    assert found[1:] == expected
    assert found[0][0] == "It weighs"


def one_more(system: System, kg: float, age: float) -> str:
    """What is said beside the day's milk of a lamb so light that it has a feed more than its age says."""
    feeds = worked(system, "milk-count", weight=kg, age=age)
    return "" if feeds == worked(system, "milk-count", age=age) else f" in {feeds}"


@pytest.mark.parametrize("system", SYSTEMS)
def test_milk_by_age_is_that_of_the_night(system: System) -> None:
    """One feed with its day beside it for each weight and age, and one dose of electrolyte."""
    found = [row for row in rows(made(system)) if len(row) == 6]
    expected = [
        [
            show(kg, "kg", system),
            *(
                f"{worked(system, 'milk-feed', weight=kg, age=age)} "
                f"{worked(system, 'milk-day', weight=kg, age=age)}{one_more(system, kg, age)}"
                for _, age in ages(shipped())
            ),
            worked(system, "electrolyte-dose", weight=kg),
        ]
        for kg in weights(system)
    ]

    assert found[1:] == expected
    assert len(expected) == len(weights(system))


def test_the_ages_are_those_at_which_the_number_of_feeds_differs() -> None:
    """Each stage begins the day after the last one ended, and its head says its feeds."""
    stages = ages(shipped())
    head = next(row for row in rows(made("metric")) if len(row) == 6)

    assert [said for said, _ in stages] == ["Days 1 to 7", "Days 8 to 21", "Days 22 to 35", "From day 36"]
    for (said, age), title in zip(stages, head[1:5], strict=True):
        feeds = AMOUNTS["milk-count"].work_out(Facts(shipped().values(), {"age": age}), "metric")
        assert title == f"{said}: {feeds.words('metric')}"


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("way", ["added-to", "made-up-to"])
def test_mixing_goes_by_the_bag_of_the_holding(system: System, way: str) -> None:
    """Powder and water are those of the sum; without a bag there is a line to write its rate on."""
    bag = Bag(210, 790, way)
    found = [row for row in rows(made(system, bag)) if len(row) == 3][1:]
    assert len(found) == 4
    for (_, powder, water), ml in zip(found, (250.0, 500.0, 1000.0, 2000.0), strict=True):
        batch = ml if system == "metric" else ml / 1000 * 946.353
        known: dict[str, Value] = {"batch": batch, "bag-powder": 210.0, "bag-water": 790.0, "bag-way": way}
        mix = AMOUNTS["milk-batch"].work_out(Facts(shipped().values(), known), system)
        assert [powder, water] == [figure.words(system) for figure in mix.figures]
    bare = made(system)
    assert not [row for row in rows(bare) if len(row) == 3]
    assert any("Write it here" in each for each in texts(bare, "p"))


def test_where_published_tables_disagree_both_are_shown() -> None:
    """Each published figure of each week stands in the small print, with who says it."""
    guide, said = shipped(), words(made("metric"))
    weeks = [number for name, number in guide.numbers.items() if name.startswith("milk-week-")]

    assert len(weeks) == 5
    for number in weeks:
        for source, (low, high) in number.published.items():
            told = guide.sources[source].by or guide.sources[source].title
            span = show(low, "ml") if low == high else f"{show(low, 'ml')} to {show(high, 'ml')}"
            assert f"{span} ({told})" in said
        assert number.note.partition(" is taken. ")[2] in said


def test_no_table_stands_without_what_must_be_seen_first() -> None:
    """Above the first table is what the guide asks before any feed, each sign in its own words."""
    guide, said = shipped(), words(made("metric"))
    before = guide.findings["before-feed"]

    assert said.index(before.ask) < said.index("It weighs")
    for name, choice in before.choices.items():
        assert (choice in said) == (name != "none")


def test_a_guide_without_the_numbers_is_told_of(tmp_path: object) -> None:
    """Nothing is worked out from numbers that are not there."""
    from pathlib import Path

    assert isinstance(tmp_path, Path)
    assert lacking(shipped()) == ()
    assert "first-milk-rate" in lacking(small_guide(tmp_path))
    assert BAG.way == "added-to"
