"""What a guide says for the vet's ear: which answers are normal, which were given, and what a vet asks."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import read_small, small_guide
from tests.handover.made import walks
from triage.check.run import check
from triage.guide.model import Guide
from triage.guide.texts import all_texts
from triage.handover.gathering import meets

FINDINGS, FRONT = "findings/all.yaml", "guide.yaml"
MOUTH = "  ask: Is its mouth warm?\n"
DEGREES = "  ask: What is its temperature?\n"
CARE = "means: No vet now.}"

CIRCUMSTANCES = {
    "batch", "bag-powder", "bag-water", "bag-way", "reason", "glucose", "dryness", "ewe", "foster", "weather",
    "age", "cord", "weight", "birth-type", "heat", "trouble", "more-trouble",
    "keep-as", "tail", "dam-vaccine",
    "breath-start", "others-chest", "limb-sign", "lame-leg", "bent-legs", "navel-look",
    "strange", "fit", "shakes-since", "went-down", "low-hole", "sex",
    "flock-trouble", "flock-share", "flock-dead", "ewe-trouble", "ewe-labour", "ewe-hanging", "ewe-afterbirth",
    "suffering", "vet-treated",
    "heat-harm", "heat-lately", "burn", "fed-till-now",
    # asked only where something is wrong already
    "wound", "wound-depth", "eaten", "head-part", "eye-seen", "sores-seen", "mouth-seen",
    "about",
}  # fmt: skip
"""Findings of the shipped guide that are neither a worry nor normal, or are asked of ill lambs alone."""


@pytest.mark.parametrize("field", ["normal", "given"])
@pytest.mark.parametrize(
    ("at", "condition", "what"),
    [
        (MOUTH, "{is: wram}", "finding 'mouth' has no choice 'wram'; did you mean 'warm'?"),
        (MOUTH, "{below: chill}", "'mouth' is chosen, not measured; use 'is'"),
        (DEGREES, "{is: warm}", "'temperature' is measured; use below, up_to, from or above"),
        (DEGREES, "{below: pause}", "'pause' is in min; 'temperature' is measured in degC"),
        (DEGREES, "{below: chil}", "there is no number 'chil'; did you mean 'chill'?"),
        (DEGREES, "{from: chill, above: chill}", "a band has one lower and one upper side; keep one of each"),
    ],
)
def test_a_mistake_in_them_is_told(tmp_path: Path, field: str, at: str, condition: str, what: str) -> None:
    """A choice that is not there, a band on a choice, or another unit is a mistake with its place."""
    read = read_small(tmp_path, (FINDINGS, at, f"{at}  {field}: {condition}\n"))

    assert read.guide is None
    assert any(what in str(problem) and FINDINGS in str(problem) for problem in read.problems)


def test_what_a_vet_asks_must_exist(tmp_path: Path) -> None:
    """A finding that a vet is said to ask is a finding of this guide."""
    read = read_small(tmp_path, (FRONT, CARE, f"{CARE}\nvet_asks: [temprature]"))

    assert "there is no finding 'temprature'; did you mean 'temperature'?" in "\n".join(
        map(str, read.problems)
    )


def test_they_are_read_as_they_are_written(tmp_path: Path) -> None:
    """Sound ones come out as values, and a guide may leave all of them out."""
    guide = small_guide(
        tmp_path / "with",
        (FINDINGS, MOUTH, f"{MOUTH}  normal: {{is: warm}}\n  given: {{is: cold}}\n"),
        (FRONT, CARE, "means: No vet now., asks: What now?}\nvet_asks: [mouth, weight]"),
    )
    bare = small_guide(tmp_path / "without")
    mouth = guide.findings["mouth"]

    assert meets(guide, mouth, mouth.normal, "warm")
    assert not meets(guide, mouth, mouth.normal, "cold")
    assert meets(guide, mouth, mouth.given, "cold")
    assert guide.front.vet_asks == ("mouth", "weight")
    assert guide.front.urgencies[-1].asks == "What now?"
    assert bare.front.vet_asks == ()
    assert not any(each.normal or each.given for each in bare.findings.values())


def test_what_is_asked_of_the_vet_is_held_to_the_wording(tmp_path: Path) -> None:
    """It is a text like any other, so a sentence of thirty words in it is refused."""
    long = " ".join(["word"] * 30) + "?"
    guide = small_guide(tmp_path, (FRONT, CARE, f"means: No vet now., asks: {long}}}"))

    assert long in {passage.text for passage in all_texts(guide)}
    assert any("30 words in one sentence" in str(problem) for problem in check(guide))


def test_only_circumstances_have_no_normal_answer(guide: Guide) -> None:
    """Everything that is looked at on the lamb itself has an answer that a vet would call normal."""
    assert {name for name, finding in guide.findings.items() if finding.normal is None} == CIRCUMSTANCES


def test_a_normal_answer_never_calls_a_vet(guide: Guide) -> None:
    """On thousands of walks no answer that is called normal raises the urgency."""
    rises = [
        (guide.findings[rise.finding], rise)
        for walk in walks(guide, 5000, 21)
        for rise in walk.state.rises
        if rise.finding
    ]

    assert len({finding.name for finding, _ in rises}) > 10
    for finding, rise in rises:
        assert not meets(guide, finding, finding.normal, rise.value), rise


def test_the_first_things_a_vet_asks_stand_first(guide: Guide) -> None:
    """Age and temperature lead, and what decides on feeding follows."""
    assert guide.front.vet_asks[:3] == ("age", "temperature", "swallows")
    assert {"first-milk-had", "belly", "dung", "passing", "weight"} <= set(guide.front.vet_asks)
    assert all(urgency.asks.endswith("?") for urgency in guide.front.urgencies)
