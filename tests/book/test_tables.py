"""Amounts of the book: each cell is what the walk's own sum comes to for such a lamb."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from tests.book.reader import Book, words_of
from triage.amounts import AMOUNTS
from triage.book.tables import LIGHTER, VET_ONLY, tables_of, weights
from triage.facts import Facts, Value
from triage.guide.model import PLACEHOLDER, Guide
from triage.guide.texts import all_texts
from triage.units import System, show


def cells(book: Book, name: str) -> tuple[list[str], list[list[str]]]:
    """The heads and the rows of a table."""
    table = next(book.by_id[f"table-{name}"].iter("table"))
    rows = [[words_of(cell) for cell in row] for row in table.iter("tr")]
    return rows[0], rows[1:]


def worked(guide: Guide, name: str, known: dict[str, Value], system: System) -> str:
    """What a sum comes to, in words."""
    return AMOUNTS[name].work_out(Facts(guide.values(), known), system).words(system)


def test_every_sum_that_a_page_shows_has_a_table(guide: Guide, metric: Book) -> None:
    """And every mention of it on a page is a link there."""
    named = {
        name for passage in all_texts(guide) for name in PLACEHOLDER.findall(passage.text)
    } & AMOUNTS.keys()

    assert named <= set(tables_of(guide))
    assert {"weight-guess", "milk-batch"} <= set(tables_of(guide))
    node = next(node for node in guide.nodes.values() if node.name == "glucose-first")
    assert "#table-glucose-dose" in [
        link.attrib["href"] for link in metric.by_id[f"node-{node.name}"].iter("a")
    ]


ONE = (
    "first-milk",
    "first-milk-day",
    "first-milk-day-cold",
    "small-first-feed",
    "electrolyte-dose",
    "glucose-dose",
)


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("name", ONE)
def test_a_sum_by_weight(guide: Guide, metric: Book, us: Book, name: str, system: System) -> None:
    """A row for each weight, in the reader's units."""
    _, rows = cells(us if system == "us" else metric, name)
    kilos = weights(system, name != "electrolyte-dose")

    assert rows == [
        [show(kg, "kg", system), " ".join(worked(guide, name, {"weight": kg}, system).split())]
        for kg in kilos
    ]


def stages() -> Iterator[float]:
    """An age, in hours, within each column of the milk tables."""
    yield from (3 * 24.0, 15 * 24.0, 30 * 24.0, 50 * 24.0)


@pytest.mark.parametrize("name", ["milk-feed", "milk-day", "milk-count"])
def test_milk_by_weight_and_age(guide: Guide, metric: Book, name: str) -> None:
    """A column for each age at which the feeds change, true of any lamb of that age."""
    heads, rows = cells(metric, name)

    assert len(heads) == 5
    for row, kg in zip(rows, weights("metric", False), strict=True):
        known = [{"weight": kg, "age": age} for age in stages()]
        assert row[1:] == [worked(guide, name, {**each}, "metric") for each in known]


def test_fluid_goes_by_the_signs_of_drying(guide: Guide, metric: Book) -> None:
    """No sign, some sign, a bad sign: more, the drier."""
    _, rows = cells(metric, "fluid-day")

    for row, kg in zip(rows, weights("metric", False), strict=True):
        ml = [int(re.match(r"(\d+) ml", cell)[1]) for cell in row[1:] if "litres" not in cell]  # type: ignore[index]
        assert row[1:] == [
            worked(guide, "fluid-day", {"weight": kg, "dry-signs": sign}, "metric")
            for sign in ("none", "some", "bad")
        ]
        assert ml == sorted(ml)


def test_no_table_lets_a_lighter_lamb_have_more(metric: Book) -> None:
    """Between two rows the lighter one is taken, so each row must be the smaller."""
    for name in (*ONE, "milk-feed", "milk-day"):
        _, rows = cells(metric, name)
        first = [float(re.match(r"([\d.]+) (ml|litres)", row[1])[1]) for row in rows if "ml" in row[1]]  # type: ignore[index]
        assert first == sorted(first), name


def test_a_guess_of_the_weight_is_the_walks_own(guide: Guide, metric: Book) -> None:
    """By birth and age; not known is taken as the smallest."""
    _, rows = cells(metric, "weight-guess")

    assert rows[0][1:] == [
        worked(guide, "weight-guess", {"birth-type": born, "age": 0.0}, "metric")
        for born in ("single", "twin", "triplet")
    ] + [rows[0][3]]


def test_what_only_a_vet_gives_says_so(metric: Book) -> None:
    """And every table by weight says what to do between its rows and without a scale."""
    assert VET_ONLY in metric.text("table-glucose-dose")
    assert VET_ONLY not in metric.text("table-first-milk")
    assert all(
        LIGHTER in metric.text(f"table-{name}") for name in (*ONE, "milk-feed", "milk-day", "fluid-day")
    )
