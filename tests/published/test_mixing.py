"""Mixing milk powder: the published example, in both of its wordings.

Volac, in Agriland: 200 g of powder with 800 ml of water make a litre at 20 %; 200 g put into a litre of
water make about 1.2 litres at 16.7 %.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.published.walks import lamb, worked_out
from triage.amounts.sums import Sum

ADDED, MADE_UP = "added-to", "made-up-to"


def batch(millilitres: float, powder: float, water: float, way: str) -> Sum:
    """Return the sum for a batch at a bag's rate."""
    return worked_out(
        "milk-batch", lamb({"batch": millilitres, "bag-powder": powder, "bag-water": water, "bag-way": way})
    )


def strength(result: Sum) -> float:
    """Return the share of powder in percent that the working names."""
    found = re.search(r"([0-9.]+)% powder", "\n".join(result.working))
    assert found is not None
    return float(found[1])


def figures(result: Sum) -> list[tuple[float, str]]:
    """Return powder and water with their units."""
    return [(figure.value, figure.unit) for figure in result.figures]


@pytest.mark.parametrize(("water", "way"), [(800, ADDED), (1000, MADE_UP)])
def test_litre_at_twenty_percent(water: float, way: str) -> None:
    """200 g added to 800 ml, and 200 g made up to a litre, are the same litre at 20 %."""
    # Volac, in Agriland.
    result = batch(1000.0, 200.0, float(water), way)
    assert figures(result) == [(200, "g"), (800, "ml")]
    assert strength(result) == 20


def test_litre_of_water_makes_more_and_weaker() -> None:
    """200 g added to a litre of water make 1.2 litres at 16.7 %."""
    # Volac, in Agriland.
    result = batch(1200.0, 200.0, 1000.0, ADDED)
    assert figures(result) == [(200, "g"), (1000, "ml")]
    assert strength(result) == pytest.approx(16.7)
    assert any("makes 1200 ml" in line for line in result.working)


def test_wordings_are_not_mixed_up() -> None:
    """A litre by the weaker wording holds 167 g, and by the stronger one 200 g."""
    # Volac, in Agriland: 16.7 % and 20 % of a litre.
    assert figures(batch(1000.0, 200.0, 1000.0, ADDED)) == [(167, "g"), (833, "ml")]
    assert figures(batch(1000.0, 200.0, 1000.0, MADE_UP)) == [(200, "g"), (800, "ml")]


@pytest.mark.parametrize(("water", "printed"), [(4500, 18.0), (5000, 16.7)])
def test_other_published_rates(water: float, printed: float) -> None:
    """A kilo of powder to 4.5 litres of water is 18 %, and to 5 litres 16.7 %."""
    # Hanrahan (Teagasc), Farmers Weekly, 26 January 1996; Heaney, Shrestha and Peters, Canadian Journal of
    # Animal Science.
    assert strength(batch(5000.0, 1000.0, float(water), ADDED)) == pytest.approx(printed, abs=0.2)


@settings(deadline=None)
@given(st.floats(50, 50_000), st.floats(1, 500), st.floats(600, 5_000), st.sampled_from([ADDED, MADE_UP]))
def test_powder_and_water_fill_the_batch(millilitres: float, powder: float, water: float, way: str) -> None:
    """Powder and water together fill the batch, a gram of powder taking up a millilitre."""
    # Volac, in Agriland: 200 g and 800 ml make a litre. Both figures are whole, so one may be lost.
    (grams, _), (poured, _) = figures(batch(millilitres, powder, water, way))
    assert grams + poured == pytest.approx(millilitres, abs=1.01)
