"""Every line of a handover can be traced to what was answered, done, seen or kept."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.handover.made import HOSTILE, NOW, answered, full, lamb, noted, walks
from tests.handover.traced import lines_of, untraced
from triage.guide.model import Guide
from triage.handover import Situation, Told, handover_of
from triage.handover.situation import FORM, GUIDE
from triage.units import System
from triage.walk import Answer


def _check(situation: Situation) -> None:
    for line in lines_of(handover_of(situation)):
        assert not untraced(line, situation), (line.text, untraced(line, situation))


@pytest.mark.parametrize("system", ["metric", "us"])
@pytest.mark.parametrize("text", ["", HOSTILE[:60]])
def test_every_figure_and_answer_is_in_what_its_line_rests_on(
    guide: Guide, system: System, text: str
) -> None:
    """On hundreds of walks with a full night of notes, no line says a figure or an answer of its own."""
    for walk in walks(guide, 250, 11):
        _check(full(walk, text, system=system))


def test_it_holds_for_bare_walks_too(guide: Guide) -> None:
    """With no card, no notes and no holding the same is true on hundreds of other walks."""
    for walk in walks(guide, 800, 12):
        _check(Situation(walk, NOW))


@settings(deadline=None)
@given(
    st.floats(25, 43).map(lambda value: round(value, 1)),
    st.floats(0.8, 60).map(lambda value: round(value, 2)),
    st.integers(-3000, 50),
    st.sampled_from(["metric", "us"]),
)
def test_it_holds_for_any_reading_at_any_time(
    guide: Guide, degrees: float, kilos: float, after: int, system: System
) -> None:
    """Whatever is measured, and whenever, the line says the reading and the time that it rests on."""
    seen = (noted("temperature", after, temperature=degrees), noted("weight", after - 7, weight=kilos))
    walk = answered(guide, "none", 38.0, "sucks")
    _check(Situation(walk, NOW, system, lamb(), seen))


def test_the_check_itself_sees_a_figure_or_an_answer_that_nothing_vouches_for(guide: Guide) -> None:
    """A line whose rests were lost, or that says another value, another time or another answer, is told."""
    walk = answered(guide, "none", 36.2)
    situation = Situation(walk, NOW)
    first = handover_of(situation).spoken[0]

    assert not untraced(first, situation)
    assert untraced(replace(first, rests_on=()), situation)
    assert untraced(replace(first, rests_on=(FORM,)), situation) == ["36.2", "02:11"]
    assert untraced(replace(first, text=first.text.replace("36.2", "36.3")), situation) == ["36.3"]
    other = Told("Danger sign at 02:10: Gasping, or blue or grey gums", (GUIDE, walk.moves[0]))
    assert untraced(other, situation) == ["Gasping, or blue or grey gums"]
    assert untraced(Told("Found: 3 more, below.", (GUIDE, walk.moves[0])), situation) == ["3"]


def test_nothing_that_is_known_is_lost(guide: Guide) -> None:
    """Of every walk each answer, each act and each note stands behind some line of the lists."""
    for walk in walks(guide, 200, 13):
        situation = full(walk)
        told = handover_of(situation)
        lists = (told.found, told.normal, told.not_checked, told.other, told.given, told.before, told.seen)
        behind = {id(rest) for lines in lists for line in lines for rest in line.rests_on}
        for known in (*walk.moves, *situation.observations):
            assert id(known) in behind or _settled_later(walk.moves, known), known


def _settled_later(moves: tuple[object, ...], known: object) -> bool:
    """Whether a "not sure" was followed by an answer, which is what counts."""
    later = moves[moves.index(known) + 1 :] if known in moves else ()
    return isinstance(known, Answer) and any(
        isinstance(move, Answer) and move.finding == known.finding for move in later
    )
