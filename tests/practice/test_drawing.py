"""Drawn cases: lambs that real answers describe, for any page there is."""

from __future__ import annotations

from random import Random

import pytest

from tests.practice.helpers import by_the_guide
from triage.facts import UNSURE
from triage.guide.model import Act, Ask, End, Guide
from triage.practice.dealing import Dealer
from triage.practice.drawn import draw_case
from triage.practice.scoring import score
from triage.walk import Answer, Walk, fits

SEEDS = range(60)


def test_every_page_can_be_drawn(dealer: Dealer, guide: Guide) -> None:
    """A few tries bring a lamb to each act and each end."""
    for node in guide.nodes.values():
        if not isinstance(node, Ask):
            found = [draw_case(dealer.drawing, Random(seed), node.name) for seed in range(25)]
            assert any(case and case.page.name == node.name for case in found), node.name


@pytest.mark.parametrize("seed", SEEDS)
def test_a_drawn_case_is_a_walk(seed: int, dealer: Dealer, guide: Guide) -> None:
    """Its answers fit their questions and replay to its page, and it is no lamb that there can't be."""
    case = next(filter(None, (draw_case(dealer.drawing, Random(1000 * again + seed)) for again in range(9))))
    assert isinstance(case.page, Act | End)
    assert Walk(guide, case.walk.moves).node is case.page
    for move in case.walk.moves:
        if isinstance(move, Answer):
            assert fits(guide.findings[move.finding], move.value)
    assert not dealer.drawing.clashes(case.walk)
    assert guide.farm is not None
    assert case.story in {each for openings in guide.farm.openings.values() for each in openings}


@pytest.mark.parametrize("seed", SEEDS)
def test_a_drawn_case_can_be_played(seed: int, dealer: Dealer) -> None:
    """Who follows the guide through it, and through what is supposed otherwise, makes no mistake."""
    posed = next(filter(None, (dealer.draw(Random(1000 * again + seed)) for again in range(9))))
    assert score(by_the_guide(posed)).faults == ()


def test_a_case_can_be_drawn_under_a_rule(dealer: Dealer) -> None:
    """For a weak spot another lamb of the same kind is found, under the same rule."""
    cases = (
        (posed.case, rule.name) for posed, _ in dealer.written for rule in dealer.bearing.on(posed.case.walk)
    )
    page, rule = next((case.page.name, rule) for case, rule in cases if rule.startswith("no-feed"))
    posed = next(filter(None, (dealer.draw(Random(seed), page, [rule]) for seed in range(20))))

    assert posed.case.page.name == page
    assert rule in {each.name for each in dealer.bearing.on(posed.case.walk)}


def test_figures_are_such_as_people_read_off(dealer: Dealer, guide: Guide) -> None:
    """A temperature to a tenth, an age in whole hours, days or weeks, a weight that goes with the age."""
    rng = Random(3)
    likely, findings = dealer.drawing.likely, guide.findings
    for _ in range(500):
        warmth = likely.draw(findings["temperature"], {}, rng)
        age = likely.draw(findings["age"], {}, rng)
        assert warmth is UNSURE or warmth == round(warmth, 1)  # type: ignore[arg-type]
        if isinstance(age, float):
            assert age % 0.5 == 0
            assert age < 72 or age % 24 == 0
            weight = likely.draw(findings["weight"], {"age": age}, rng)
            assert weight is UNSURE or 2 <= weight <= 12 + age / 24 * 0.6  # type: ignore[operator]
