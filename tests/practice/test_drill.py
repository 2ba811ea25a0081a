"""The drill: each line is right or wrong by the guide alone."""

from __future__ import annotations

from random import Random

from triage.guide.model import Guide
from triage.practice.drill import HALF, LINES, calm_lines, drill, grave_lines


def test_every_danger_sign_is_among_the_grave_lines(guide: Guide) -> None:
    """And each other one has a rule that calls for the vet now by itself."""
    lines = list(grave_lines(guide))
    signs = {(finding, choice) for finding, choices in guide.front.danger_signs.items() for choice in choices}
    assert signs <= {(line.finding, line.choice) for line in lines}
    for line in lines:
        if (line.finding, line.choice) not in signs:
            rule = guide.rules[line.card.removeprefix("rule:")]
            assert rule.always is not None
            assert rule.always.urgency == guide.top
            assert list(rule.when) == [line.finding]


def test_no_calm_line_is_a_grave_one(guide: Guide) -> None:
    """What the guide calls normal is no reason to phone by itself."""
    grave = {(line.finding, line.choice) for line in grave_lines(guide)}
    calm = list(calm_lines(guide))
    assert len(calm) > HALF
    for line in calm:
        normal = guide.findings[line.finding].normal
        assert normal is not None
        assert line.choice in normal.is_
        assert (line.finding, line.choice) not in grave


def test_half_the_lines_are_for_now(guide: Guide) -> None:
    """In an order that tells nothing, another one each time."""
    seen = {drill(guide, Random(seed)) for seed in range(20)}
    assert len(seen) == 20
    for lines in seen:
        assert len(lines) == LINES
        assert sum(line.now for line in lines) == HALF
        assert all(line.words(guide, "metric") for line in lines)
