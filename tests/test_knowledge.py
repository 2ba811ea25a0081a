"""The shipped texts: signs every terminal can show, names that exist, sums that can be worked out."""

from __future__ import annotations

from pathlib import Path

from triage.amounts import AMOUNTS
from triage.amounts.expects import NUMBER_UNITS
from triage.guide.find import knowledge_root
from triage.guide.model import Act, Ask, End, Guide

FOLDER = knowledge_root()


def test_every_sign_is_one_cell_wide() -> None:
    """The texts are plain ASCII, so that each sign is one cell in every terminal."""
    assert isinstance(FOLDER, Path)
    for path in FOLDER.rglob("*.yaml"):
        assert path.read_text(encoding="utf-8").isascii(), path


def test_the_shipped_guide_reads_without_a_warning() -> None:
    """Reading the shipped guide finds nothing, not even a text cut short by a comment sign."""
    from triage.guide.read import read_guide

    assert read_guide(FOLDER).problems == ()


def test_every_sum_can_be_worked_out(guide: Guide) -> None:
    """Each sum's numbers and findings exist in the shipped guide, in the units it expects."""
    for amount in AMOUNTS.values():
        assert set(amount.numbers) <= set(guide.numbers), amount.name
        assert set(amount.needs) | set(amount.uses) <= set(guide.findings), amount.name
    assert {number for amount in AMOUNTS.values() for number in amount.numbers} == set(NUMBER_UNITS)


def test_every_first_milk_end_warns_of_heat_and_of_sick_ewes(guide: Guide) -> None:
    """Where first milk is given, the page says not to cook it and not to take it from a sick ewe."""
    for node in guide.nodes.values():
        if isinstance(node, End) and any("{first-milk}" in step.do for step in node.do):
            cautions = " ".join(node.cautions)
            assert "microwave" in cautions, node.name
            assert "aborted" in cautions, node.name


def test_every_needle_is_for_a_taught_hand_and_after_the_phone(guide: Guide) -> None:
    """Needle work stands only where the vet is phoned first, and says whose hands may do it."""
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            continue
        steps = node.steps if isinstance(node, Act) else node.do
        needles = [step for step in steps if "vet-injection" in step.tag]
        for step in needles:
            assert "vet-taught" in step.do
            assert "phone" in steps[0].tag
            assert isinstance(node, End)
            assert node.urgency == guide.top
