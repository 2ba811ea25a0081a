"""The handover as blocks and as plain text."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import small_guide
from tests.handover.made import HOSTILE, NIGHT, NOW, answered, full, noted
from triage.guide.model import Guide
from triage.handover import Situation, handover_of
from triage.handover.text import blocks, listed_blocks, lists, spoken_blocks, text_of
from triage.walk import Walk


def test_what_is_said_comes_first_and_numbered(guide: Guide) -> None:
    """A voice at the phone goes from one to the last, then reads back."""
    told = handover_of(full(answered(guide, "none", 36.2)))
    shown = blocks(told)

    assert shown[0].text == "Say"
    steps = [block for block in shown if block.role == "step"]
    assert [block.text for block in steps] == [line.text for line in told.spoken]
    assert [block.mark for block in steps] == [str(each) for each in range(1, len(steps) + 1)]
    assert shown == (*spoken_blocks(told), shown[len(spoken_blocks(told))], *listed_blocks(told))


def test_every_line_of_every_list_is_shown(guide: Guide) -> None:
    """What was counted while speaking is there in full."""
    told = handover_of(full(answered(guide, "none", 36.2, 9.0, "given", None, 37.4, "sucks", apart=5)))
    shown = [block.text for block in listed_blocks(told)]
    whole = (
        *told.found,
        *told.normal,
        *told.not_checked,
        *told.other,
        *told.given,
        *told.before,
        *told.seen,
        *told.here,
    )

    assert len(NIGHT) - 4 <= len(whole)
    assert all(line.text in shown for line in whole)


def test_what_was_not_checked_is_told_even_where_it_is_nothing(guide: Guide, tmp_path: Path) -> None:
    """An empty list of it says so, as silence could mean anything; other empty lists are left out."""
    told = handover_of(Situation(Walk(guide), NOW))
    assert [label for label, _ in lists(told)] == ["Not checked"]

    front = "{urgency: care-here, say: Care for it here, means: No vet now.}"
    asking = small_guide(tmp_path, ("guide.yaml", front, front + "\nvet_asks: [temperature]"))
    told = handover_of(Situation(answered(asking, "none", 39.0), NOW))
    assert dict(lists(told))["Not checked"][0].text == "Nothing that a vet would ask"
    assert "Not checked: nothing that a vet would ask." in [line.text for line in told.spoken]


def test_a_guide_without_a_vets_questions_claims_nothing(small: Guide) -> None:
    """Where no guide says what a vet asks, nobody can say that nothing is missing."""
    told = handover_of(Situation(answered(small, "none", 39.0), NOW))

    assert "Not checked" not in dict(lists(told))
    assert not [line for line in told.spoken if "checked" in line.text]


@pytest.mark.parametrize("width", [76, 44, 20, 5])
@pytest.mark.parametrize("text", ["", HOSTILE])
def test_the_text_keeps_to_its_width(guide: Guide, width: int, text: str) -> None:
    """No line is wider than asked for, and none holds a sign that steers a terminal."""
    told = handover_of(full(answered(guide, "none", 36.2), text))
    lines = text_of(told, "For the vet", width).splitlines()

    assert all(len(line) <= max(width, 1) for line in lines)
    assert all(line.isprintable() for line in lines)


def test_there_is_room_to_write_what_the_vet_said(guide: Guide) -> None:
    """By whom, when, what to do, what to give, what not to do, and when to phone again."""
    told = handover_of(Situation(answered(guide, "none", 36.2), NOW))
    text = text_of(told)

    assert told.to_write[0].text == "Who spoke, and when"
    assert all(f"{line.text}: ____" in text for line in told.to_write)


def test_the_vets_words_are_read_back_once_they_are_written(guide: Guide) -> None:
    """Before that the line waits for them; words from before this walk are not taken for new ones."""
    walk = answered(guide, "none", 36.2)

    def back(after: float) -> str:
        seen = (noted("vet-said", after, who="Dr Field", said="Tube 50 ml, then phone"),)
        return handover_of(Situation(walk, NOW, observations=seen)).read_back[0].text

    assert back(30) == "Let me read that back to you: Tube 50 ml, then phone"
    assert back(-30) == "Let me read that back to you: ..."


def test_where_the_place_is_and_who_was_taught_is_at_hand(guide: Guide) -> None:
    """A vet who comes out must find the place, and one who asks for a tube must know who can."""
    told = handover_of(full(answered(guide, "none", 36.2)))

    assert [line.text for line in told.here] == [
        "Caller: Ann Field",
        "Place: Hill Farm, Upper Example",
        "How to find it: second gate after the church",
        "Taught by a vet: Ann, stomach tube",
    ]
