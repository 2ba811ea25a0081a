"""Ceilings that no lamb's feed passes, however heavy it is said to be."""

from __future__ import annotations

import pytest

from triage.amounts import AMOUNTS
from triage.facts import Facts
from triage.guide.model import Guide
from triage.units import System


@pytest.mark.parametrize("name", ["first-milk", "milk-feed"])
@pytest.mark.parametrize("system", ["metric", "us"])
def test_no_feed_is_above_the_most_in_any_lamb(guide: Guide, name: str, system: System) -> None:
    """A lamb of 40 kg is given no more in one feed than the most for any lamb."""
    facts = Facts(guide.values(), {"weight": 40.0, "age": 24.0 * 20})

    result = AMOUNTS[name].work_out(facts, system)

    assert result.figures[0].value <= guide.numbers["feed-most"].value
    assert any("The most in one feed" in line for line in result.working)
