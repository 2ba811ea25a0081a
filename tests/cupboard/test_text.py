"""The list as text: narrow, in both unit systems, each thing with its reason and what needs it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.cupboard.made import TODAY, shelf
from triage.cupboard.listing import cupboard_of
from triage.cupboard.lots import read_lots
from triage.cupboard.shelf import Shelf
from triage.cupboard.text import WIDTH, amount_words, item_lines, list_lines, stock_lines
from triage.guide.model import Guide
from triage.units import System


def said(lines: Iterator[str]) -> str:
    return " ".join(" ".join(lines).split())


@pytest.mark.parametrize("system", ["metric", "us"])
def test_every_thing_is_told_with_its_reason(guide: Guide, system: System) -> None:
    """Each thing stands in the list, what is to be bought with its amount, its reason and what needs it."""
    cupboard = cupboard_of(guide, Shelf(), TODAY, 5)
    lines = list(list_lines(guide, cupboard, system))
    text = said(iter(lines))

    assert max(map(len, lines)) <= WIDTH
    assert "{" not in text
    for item in guide.cupboard.values():
        assert f"{item.title} ({item.name})" in text
    assert text.count("For: ") == sum(1 for item in guide.cupboard.values() if not item.at_hand)
    assert "(milk-powder): 65 kg, and there is none" in text or system == "us"
    assert "(first-milk): 5 litres, and there is none" in text or system == "us"
    assert "(first-milk): 5.3 qt, and there is none" in text or system == "metric"


def test_with_show_nodes_every_page_is_named(guide: Guide) -> None:
    """Each page and how-to that needs a thing stands under it, by name and title."""
    cupboard = cupboard_of(guide, Shelf(), TODAY, 5)
    text = said(list_lines(guide, cupboard, "metric", every=True))

    for entry in cupboard.entries:
        for name in entry.needed.how_tos:
            assert f"how-to {name}: {guide.how_tos[name].title}" in text
        for name in entry.needed.nodes:
            assert f"{guide.nodes[name].topic}, {name}: " in text


def test_one_thing_is_told_whole(guide: Guide) -> None:
    """How much and why so much, with what each source says; how it keeps; what to mind; and what needs it."""
    packs = read_lots("10 kg, 2027-03; 1 kg, 2026-01", "kg")
    assert not isinstance(packs, str)
    cupboard = cupboard_of(guide, Shelf(5, {"milk-powder": packs}), TODAY)
    text = said(item_lines(guide, cupboard, "milk-powder", "metric"))
    item = guide.cupboard["milk-powder"]

    assert "It takes 65 kg: 13 kg for each of 5 lambs. There is 10 kg." in text
    assert "Past its date: 1 kg, 2026-01" in text
    assert "Buy first: 55 kg." in text
    assert "Published: 5 kg to 13 kg." in text
    for told in (item.why, item.keeps, *item.cautions, "North Dakota State University", "mix-and-warm-milk"):
        assert told in text


def test_a_change_is_told_in_a_few_lines(guide: Guide) -> None:
    """What was set is told with what is still to be bought, or that it is enough."""
    cupboard = cupboard_of(guide, shelf(1, thermometer="2", tube="1"), TODAY)

    assert said(stock_lines(guide, cupboard, "thermometer", "metric")).endswith(
        "There is 2. On the shelf: 2 That is enough."
    )
    assert "Buy first: 1." in said(stock_lines(guide, cupboard, "tube", "metric"))


def test_the_vet_comes_before_glucose(guide: Guide) -> None:
    """Glucose is never on the list of what to buy: it stands under the vet."""
    lines = list(list_lines(guide, cupboard_of(guide, Shelf(), TODAY, 5), "metric"))
    at = next(number for number, line in enumerate(lines) if "(glucose)" in line)
    titles = [line for line in lines[:at] if line and not line.startswith(" ")]

    assert titles[-1] == "Ask your vet."


@pytest.mark.parametrize(
    ("value", "unit", "system", "words"),
    [
        (0, "kg", "metric", "none"),
        (2, "count", "us", "2"),
        (500, "ml", "metric", "500 ml"),
        (1000, "ml", "metric", "1 litre"),
        (2500, "ml", "metric", "2.5 litres"),
        (5000, "ml", "us", "5.3 qt"),
        (500, "ml", "us", "16.9 oz"),
        (65, "kg", "metric", "65 kg"),
        (13, "kg", "us", "28 lb 11 oz"),
    ],
)
def test_amounts_are_what_one_asks_for_in_a_shop(value: float, unit: str, system: System, words: str) -> None:
    """Litres and quarts where there is much of it, and the reader's own units."""
    assert amount_words(value, unit, system) == words
