"""Weaning by three signs, and what to do when only two of them are there."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.rearing.lambs import at, basis, lamb, now, shipped, weighed
from triage.rearing import plan_of
from triage.rearing.weaning import LACKS, LATE, NOT_WELL, NOT_YET, READY, Weaning, weaning_of
from triage.weighings import Weighing


def ate(*pairs: tuple[float, float]) -> tuple[Weighing, ...]:
    return tuple((at(day), kilos) for day, kilos in pairs)


ENOUGH = ((41, 0.25), (42, 0.26), (43, 0.3))


def stands(days: float, kilos: float, *eaten: tuple[float, float]) -> Weaning:
    known = lamb(weighed=weighed((0, 4.0), (days - 0.5, kilos)), eaten=ate(*eaten))
    return weaning_of(basis(known, days))


def test_all_three_signs() -> None:
    """Forty-two days, twelve kilos, and enough feed on three days running: it is ready."""
    weaning = stands(43.5, 12.0, *ENOUGH)

    assert weaning.ready
    assert weaning.line == READY


@pytest.mark.parametrize(("days", "kilos", "eaten", "lacks"), [
    (41.9, 12.0, ((39, 0.25), (40, 0.25), (41, 0.25)), ("age", False)),
    (43.5, 11.9, ENOUGH, ("weight", False)),
    (43.5, 12.0, ((41, 0.25), (42, 0.24), (43, 0.3)), ("feed", False)),
    (43.5, 12.0, ((42, 0.25), (43, 0.3)), ("feed", False)),
    (43.5, 12.0, ((40, 0.25), (41, 0.25), (43, 0.3)), ("feed", False)),
    (43.5, 12.0, (), ("feed", None)),
])  # fmt: skip
def test_two_of_three(
    days: float, kilos: float, eaten: tuple[tuple[float, float], ...], lacks: tuple[str, bool]
) -> None:
    """Right at each line, with one sign lacking, it says what to do about that one."""
    weaning = stands(days, kilos, *eaten)

    assert not weaning.ready
    assert weaning.line == LACKS[lacks]


def test_an_old_weight_is_no_weight() -> None:
    """A weight of more than a week ago says nothing of today."""
    known = lamb(weighed=weighed((0, 4.0), (36, 13.0)), eaten=ate(*ENOUGH))

    assert weaning_of(basis(known, 43.5)).line == LACKS["weight", None]


def test_none_or_one_of_three() -> None:
    """A lamb of three weeks goes on with its milk."""
    assert stands(21, 8.0).line == NOT_YET


def test_three_months_is_the_end_of_milk() -> None:
    """At three months it comes off milk in any case, with a word to the vet; a day before, it is by the signs."""
    assert stands(90, 9.0).line == LATE
    assert stands(89.9, 9.0).line != LATE


def test_every_lack_has_its_words() -> None:
    """Age is always known; the other two signs may be lacking or not known."""
    assert set(LACKS) == {
        ("age", False),
        ("weight", False),
        ("weight", None),
        ("feed", False),
        ("feed", None),
    }


def test_a_lamb_that_loses_weight_or_is_ill_is_not_weaned() -> None:
    """All three signs are met, and the plan sends it to the guide: it can't say to stop the milk as well."""
    falling = lamb(weighed=weighed((0, 4.0), (36, 14.0), (42, 13.0)), eaten=ate(*ENOUGH))
    growing = lamb(weighed=weighed((0, 4.0), (36, 12.0), (42, 13.0)), eaten=ate(*ENOUGH))

    assert weaning_of(basis(growing, 43.5)).line == READY
    assert weaning_of(basis(falling, 43.5)).line == NOT_WELL
    assert weaning_of(basis(replace(growing, ill="Phone the vet now."), 43.5)).line == NOT_WELL
    old = lamb(weighed=weighed((0, 4.0), (84, 24.0), (90, 23.0)), eaten=ate((88, 0.5), (89, 0.5), (90, 0.5)))
    assert weaning_of(basis(old, 91)).line == LATE


def test_a_weight_that_can_not_be_weans_no_lamb() -> None:
    """From 8.6 to 12.4 kg in a week is a slip of the scale or the pen: the weight counts as not known."""
    known = lamb(weighed=weighed((0, 4.0), (36, 8.6), (43, 12.4)), eaten=ate(*ENOUGH))
    weaning = weaning_of(basis(known, 43.5))

    assert not weaning.ready
    assert weaning.line == LACKS["weight", None]


def test_not_well_is_never_called_ready() -> None:
    """One page can't say at once that it may be weaned and that it is not well."""
    growing = lamb(weighed=weighed((0, 4.0), (36, 12.0), (42, 13.0)), eaten=ate(*ENOUGH))
    ill = replace(growing, ill="Phone the vet now.")

    assert weaning_of(basis(growing, 43.5)).ready
    assert not weaning_of(basis(ill, 43.5)).ready


def test_a_weaned_lamb_has_no_milk_in_its_plan() -> None:
    """Its energy counts dry feed alone, nothing of milk or weaning is due, and the weeks after begin that day."""
    known = lamb(weighed=weighed((0, 4.0), (44, 12.4)), eaten=ate((44, 0.4)))
    before, after = (
        plan_of(shipped(), replace(known, weaned=weaned), now(46), "metric") for weaned in (None, at(45))
    )

    assert after.energy.given == pytest.approx(0.4 * shipped().values()["energy-creep"])
    assert before.energy.given > after.energy.given
    gone = {task.duty.name for task in before.tasks} - {task.duty.name for task in after.tasks}
    assert gone == {"clean-kit", "onto-milk", "feeds-fewer", "cooler-milk", "wean"}
    assert {task.duty.name: task.begins for task in after.tasks}["after-weaning"] == at(45)
