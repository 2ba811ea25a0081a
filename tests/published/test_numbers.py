"""The shipped numbers against the table in `figures.py`, which was typed from the sources.

Each is compared in the guide's unit after a conversion by the `pint` library, which shares nothing with
`triage.units`. So a value that moved, a unit that changed, or an entry that no source bears out is noticed,
however well the number's own note defends it.
"""

from __future__ import annotations

import pint

from tests.published.figures import ROWS, Figure
from tests.published.walks import shipped
from triage.guide.model import Number

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
REGISTRY.define("pct_bw = 10 milliliter / kilogram")  # a hundredth of body weight, as milk or water
REGISTRY.define("round_month = 30 day")
REGISTRY.define("round_year = 365 day")

PINT = {"%": "percent"}
"""The guide's units that pint writes in another way."""

ROUNDED = {"degC": 0.05, "cm": 0.5, "ml": 1.5, "ml/kg": 0.5, "ml/kg/day": 0.5, "kg": 0.05}
"""What the guide may round away when it brings a figure to its own unit: half of its last place, or of a
bottle's for an ounce."""

STAND_INS = {"common-practice", "from-memory"}


def in_unit(figure: Figure, unit: str) -> float:
    """Return a figure in one of the guide's units."""
    asked = REGISTRY.Unit(PINT.get(unit, unit))
    return round(float(REGISTRY.Quantity(figure.value, REGISTRY.Unit(figure.unit)).to(asked).magnitude), 9)


def room(figure: Figure, unit: str) -> float:
    """Return how far the guide may stand from a figure: nothing at all where the unit is its own."""
    same = REGISTRY.Unit(figure.unit) == REGISTRY.Unit(PINT.get(unit, unit))
    return 1e-9 if same else ROUNDED.get(unit, 1e-9)


def within(value: float, number: Number) -> bool:
    """Tell whether a value in the number's unit lies between the row's two ends."""
    low, high = ROWS[number.name].low, ROWS[number.name].high
    least, most = in_unit(low, number.unit), in_unit(high, number.unit)
    return least - room(low, number.unit) <= value <= most + room(high, number.unit)


def meets(value: float, figure: Figure, unit: str) -> bool:
    """Tell whether a value is a figure, but for rounding."""
    return abs(value - in_unit(figure, unit)) <= room(figure, unit)


def covers(published: tuple[float, float], figure: Figure, unit: str) -> bool:
    """Tell whether an entry of the guide holds a figure, but for rounding."""
    low, high = published
    return low - room(figure, unit) <= in_unit(figure, unit) <= high + room(figure, unit)


def test_every_number_is_typed_twice() -> None:
    """Each number of the guide has a row in the table, and each row a number."""
    assert set(ROWS) == set(shipped().numbers)


def test_every_source_of_the_table_is_known() -> None:
    """Each figure of the table has a source of the guide, or says that there is none."""
    used = {figure.source for row in ROWS.values() for figure in (row.low, row.high, row.takes)}
    assert used <= set(shipped().sources) | STAND_INS


def test_the_table_agrees_with_itself() -> None:
    """In each row the figure to take lies between the ends, and the low end is not above the high one."""
    wrong = [
        name
        for name, row in ROWS.items()
        for unit in [shipped().numbers[name].unit]
        if not in_unit(row.low, unit) <= in_unit(row.takes, unit) <= in_unit(row.high, unit)
    ]
    assert not wrong


def test_values_are_published_ones() -> None:
    """Each value lies within what the sources print for it, brought to its unit by `pint`."""
    wrong = [
        f"{name}: {number.value} {number.unit}"
        for name, number in shipped().numbers.items()
        if not within(number.value, number)
    ]
    assert not wrong


def test_values_are_the_expected_ones() -> None:
    """Each value is the figure that the table would take, whatever its note says."""
    wrong = [
        f"{name}: {number.value} {number.unit}, not {ROWS[name].takes}"
        for name, number in shipped().numbers.items()
        if not meets(number.value, ROWS[name].takes, number.unit)
    ]
    assert not wrong


def test_listed_figures_are_published_ones() -> None:
    """What the guide lists for each source lies within what the sources print."""
    wrong = [
        f"{name}: {value} {number.unit} of {source}"
        for name, number in shipped().numbers.items()
        for source, both in number.published.items()
        for value in both
        if not within(value, number)
    ]
    assert not wrong


def test_typed_figures_are_listed() -> None:
    """The figures of the table stand in the guide's entries for their sources, all but those still owed."""
    owed = {
        f"{name}: {figure.source} prints {in_unit(figure, number.unit):g}"
        for name, number in shipped().numbers.items()
        for figure in (ROWS[name].low, ROWS[name].high, ROWS[name].takes)
        if figure.source not in STAND_INS
        and not covers(number.published.get(figure.source, (0.0, -1.0)), figure, number.unit)
    }
    assert owed == set()


def test_the_safer_side_is_agreed() -> None:
    """The guide and the table name the same side as safer for the lamb."""
    assert [name for name, row in ROWS.items() if shipped().numbers[name].safer != row.safer] == []


def test_a_value_short_of_the_safest_has_a_note() -> None:
    """Each value is the safest published figure, or its note says why it is not, all but those still owed."""
    short = {
        name
        for name, number in shipped().numbers.items()
        for row in [ROWS[name]]
        if not number.note
        and not meets(number.value, row.high if row.safer == "higher" else row.low, number.unit)
    }
    assert short == set()
