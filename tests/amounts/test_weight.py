"""A weight that was not measured: a low guess, and marked as one."""

from __future__ import annotations

import pytest

from triage.amounts import AMOUNTS
from triage.amounts.weight import weight_of
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Guide


def kg(guide: Guide, **known: Value) -> tuple[float, str]:
    named = {name.replace("_", "-"): value for name, value in known.items()}
    heavy = weight_of(Facts(guide.values(), named), "metric")
    return heavy.kg, heavy.guessed


def test_a_measured_weight_is_taken_as_it_is(guide: Guide) -> None:
    """What the scale says is not a guess, and the birth type changes nothing."""
    assert kg(guide, weight=4.2, birth_type="triplet", age=240.0) == (4.2, "")


@pytest.mark.parametrize(("born_as", "at_birth"), [("single", 3.6), ("twin", 3.2), ("triplet", 2.5)])
def test_a_guess_goes_by_birth_type(guide: Guide, born_as: str, at_birth: float) -> None:
    """A newborn is guessed at the lowest published weight of its kind."""
    guessed, why = kg(guide, weight=UNSURE, birth_type=born_as, age=3.0)

    assert guessed == pytest.approx(at_birth, abs=0.02)
    assert "Weight is a guess" in why


def test_an_unknown_birth_type_counts_as_the_smallest(guide: Guide) -> None:
    """With nothing known the lamb is taken for a triplet, so that no amount is too large."""
    assert kg(guide, weight=UNSURE, birth_type=UNSURE)[0] == 2.5
    assert kg(guide, weight=UNSURE)[0] == 2.5


def test_a_guess_grows_with_the_age(guide: Guide) -> None:
    """Ten days at the guess's growth of 100 g a day add a kilogram."""
    assert kg(guide, weight=UNSURE, birth_type="twin", age=240.0)[0] == pytest.approx(4.2)


def test_a_first_feed_after_warming_is_small_for_a_small_lamb(guide: Guide) -> None:
    """15 ml for each kg: 30 ml for a lamb of 2 kg, and never above 60 ml."""
    small = AMOUNTS["small-first-feed"]
    for weight, ml in ((2.0, 30), (4.0, 60), (9.0, 60)):
        given = small.work_out(Facts(guide.values(), {"weight": weight}), "metric").figures[0].value
        assert given == ml
