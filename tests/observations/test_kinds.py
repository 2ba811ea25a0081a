"""The kinds of observation: what is asked, by which keys, and under which guide."""

from __future__ import annotations

import pytest

from triage.guide.model import Guide
from triage.observations import DIGITS, KINDS, KindOf
from triage.observations.kinds import PartOf
from triage.observations.wording import _NAMED


def test_each_kind_has_a_key_but_the_vets_words() -> None:
    """The keys are 1 to 9 in order; what the vet said, and weaning, are written from other pages."""
    assert list(DIGITS) == list("123456789")
    assert [name for name, kind in KINDS.items() if not kind.digit] == ["weaned", "vet-said"]


@pytest.mark.parametrize("kind", KINDS.values(), ids=KINDS)
def test_a_kind_asks_little(guide: Guide, kind: KindOf) -> None:
    """Each kind is one to three questions, and no question has more than seven answers."""
    assert 1 <= len(kind.parts) <= 3
    for part in kind.parts:
        assert len(part.under(guide).choices) <= 7
        assert part.ask.endswith("?") or "?" in part.ask or part.words


@pytest.mark.parametrize("kind", KINDS.values(), ids=KINDS)
def test_a_line_tells_every_part_once(kind: KindOf) -> None:
    """The line of a kind names each of its parts, and nothing else."""
    assert sorted(_NAMED.findall(kind.line)) == sorted(part.name for part in kind.parts)


def test_dung_is_told_in_the_guides_words(guide: Guide) -> None:
    """The choices of the guide keep the keys that they have in a walk, and `none seen` stands last."""
    part = KINDS["passed"].parts[0].under(guide)

    assert list(part.choices) == [*guide.findings["dung"].choices, "none"]
    assert part.choices["bloody"] == guide.findings["dung"].choices["bloody"]


def test_a_measurement_is_kept_in_its_findings_unit(guide: Guide) -> None:
    """Temperature and weight have the units of the findings of the same name."""
    for name in ("temperature", "weight"):
        part = KINDS[name].parts[0]
        assert part.under(guide).measure == part.measure == guide.findings[name].measure


def test_what_a_kind_looks_at_is_in_the_guide(guide: Guide) -> None:
    """Each finding that a part names is one of the shipped guide."""
    named = {
        name
        for kind in KINDS.values()
        for part in kind.parts
        for name in (part.finding, part.looks_at)
        if name
    }

    assert named == {"temperature", "weight", "dung", "passing", "manner", "keep-as", "tail", "dam-vaccine"}
    assert named <= set(guide.findings)


def test_a_guide_without_the_finding_takes_words(small: Guide) -> None:
    """A guide that has no dung to ask of takes it in words."""
    assert KINDS["passed"].parts[0].under(small).words


def test_a_finding_of_another_sort_takes_words(small: Guide) -> None:
    """Where a guide asks in choices what is measured here, or the other way round, words are taken."""
    measured = PartOf("mouth", "How warm?", "degC", finding="mouth")
    chosen = PartOf("weight", "How heavy?", finding="weight", choices={"light": "Light"})

    assert measured.under(small).words
    assert chosen.under(small).words
