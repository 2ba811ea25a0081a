"""A session: what each line typed does, and that no wrong one does harm."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from triage.clock import Now
from triage.guide.model import Guide
from triage.session import Session
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)


def session(guide: Guide, *lines: str) -> Session:
    held = Session(Walk(guide), clock=lambda: NOW)
    for line in lines:
        held.take(line)
    return held


def test_answers_move_the_walk_on(guide: Guide) -> None:
    """A digit chooses, a number measures, n is not sure, and d carries an act out."""
    held = session(guide, "5", "36.2", "3h", "d")

    assert held.walk.state.times == {"warm-by-thermometer": 1}
    assert held.page().title == "Cold, limp or flat out"


def test_back_takes_one_step(guide: Guide) -> None:
    """b drops the last answer; at the first question it says so."""
    held = session(guide, "6", "39.2", "b")

    assert [type(move).__name__ for move in held.walk.moves] == ["Answer"]
    assert session(guide, "b").told == "This is the first question."


@pytest.mark.parametrize(
    ("key", "heading"),
    [("?", "Why it matters"), ("v", "Phone the vet"), ("a", "Answers so far")],
)
def test_side_pages_open_and_close(guide: Guide, key: str, heading: str) -> None:
    """One key opens a side page, b or Enter closes it, and the walk has not moved."""
    held = session(guide, "6")
    before = held.walk

    held.take(key)
    shown = held.page()
    held.take("b")

    assert shown.blocks[0].text == heading
    assert (held.walk, held.side) == (before, "")
    held.take(key)
    held.take("")
    assert held.side == ""


def test_the_phone_page_shows_the_number_and_what_was_found(guide: Guide) -> None:
    """The page to phone from holds the vet's number and every answer so far."""
    held = Session(Walk(guide), vet="01632 960111", clock=lambda: NOW)
    for line in ("5", "36.2", "v"):
        held.take(line)

    texts = [block.text for block in held.page().blocks]

    assert "01632 960111" in texts
    assert "Temperature 36.2 °C at 02:10" in texts
    assert any("Limp, or can't stand" in text for text in texts)


def test_the_phone_page_keeps_every_reading_and_what_was_done(guide: Guide) -> None:
    """The vet asks what it was before: each reading and each act stays on the page, in order."""
    held = session(guide, "5", "36.2", "3h", "d", "38.1", "v")

    texts = [block.text for block in held.page().blocks]

    assert "Temperature 38.1 °C at 02:10, before that 36.2 °C at 02:10" in texts
    assert texts[texts.index("Given and done, the latest first") + 1] == "Dry it and warm it at 02:10"
    assert "Age 3 hours at 02:10" in texts


def test_an_act_says_until_when_to_wait(guide: Guide) -> None:
    """After an act with a wait the time to look again is told, by the clock."""
    held = session(guide, "5", "36.2", "3h", "d")

    assert held.told == "Wait 20 minutes, till 02:30. Then answer this."
    assert any("Last time: 36.2 °C" in block.text for block in held.page().blocks)


def test_leaving_in_mid_walk_takes_two_keys(guide: Guide) -> None:
    """One q in mid-walk asks, a second one leaves, and any other key between forgets it."""
    held = session(guide, "6", "q")
    assert (held.left, held.told) == (False, "Press q once more to leave.")

    held.take("39.2")
    held.take("q")
    assert not held.left

    held.take("q")
    assert held.left
    assert session(guide, "q").left


def test_a_technique_is_picked_from_a_list(guide: Guide) -> None:
    """Where a page needs several techniques, ? lists them and a number opens one."""
    held = session(guide, "6", "39.3", "1", "5", "2h", "6", "4kg", "?")
    listed = [block.text for block in held.page().blocks if block.role == "choice"]
    assert "Feed by bottle" in " ".join(listed) or len(listed) > 1

    held.take("2")
    assert held.page().blocks[1].text == listed[1]

    held.take("b")
    assert [block.text for block in held.page().blocks if block.role == "choice"] == listed


def test_an_odd_weight_is_asked_again_and_then_kept(guide: Guide) -> None:
    """A weight that is odd for the age is kept only when the same is typed once more."""
    held = session(guide, "6", "39.2", "1", "5", "3h", "6", "42 lb")
    assert held.told.startswith("19.1 kg is unusual")
    assert "weight" not in held.walk.state.known

    held.take("42 lb")

    assert held.walk.state.known["weight"] == 19.0509


def test_another_odd_weight_is_asked_again_too(guide: Guide) -> None:
    """Insisting counts only for the very same words."""
    held = session(guide, "6", "39.2", "1", "5", "3h", "6", "42 lb", "43 lb")

    assert "weight" not in held.walk.state.known


def test_an_earlier_answer_can_be_changed(guide: Guide) -> None:
    """From the page of answers a number goes back to that question; the rest is kept."""
    held = session(guide, "6", "39.2", "1", "5", "a", "2", "38.9")

    assert held.walk.state.known["temperature"] == 38.9
    assert held.walk.state.known["swallows"] == "sucks"
    assert held.told == "Taken as 38.9 °C. Changed. All other answers still fit."


def test_what_no_longer_fits_is_named(guide: Guide) -> None:
    """Answers that the changed walk never asks for are named, not lost in silence."""
    held = session(guide, "6", "39.2", "1", "5", "a", "2", "36")

    assert held.told == (
        "Taken as 36 °C. Changed. No longer used: Suck and swallow: Holds its head up and sucks hard; "
        "Reason: It has had no first milk."
    )


def test_changing_can_be_given_up(guide: Guide) -> None:
    """An empty line, or b, keeps the old answer and the whole walk."""
    for key in ("", "b"):
        held = session(guide, "6", "39.2", "1", "5")
        before = held.walk
        for line in ("a", "2", key):
            held.take(line)
        assert (held.walk, held.changing) == (before, False)


def test_nothing_is_lost_while_an_answer_is_changed(guide: Guide) -> None:
    """In the middle of a change the whole walk is still there, for the record and for leaving."""
    held = session(guide, "6", "39.2", "1", "5")
    before = held.walk
    for line in ("a", "1", "a"):
        held.take(line)
    assert held.told == "First give the new answer, or press b to keep the old one."
    assert held.whole == before

    held.take("q")
    assert not held.left


def test_units_can_be_switched_at_any_time(guide: Guide) -> None:
    """u shows the same facts in the other unit system."""
    held = session(guide, "6", "39.2", "u")

    assert held.page().lamb == "102.6 °F"


def test_wrong_keys_do_no_harm(guide: Guide) -> None:
    """A key that means nothing here leaves the walk where it is and says so."""
    held = session(guide, "6", "39.2", "x")
    assert (held.walk.node.name, held.told) == (
        "suck",
        "'x' is not one of the answers. Type 1 to 3, or n for not sure.",
    )

    act = session(guide, "5", "36.2", "3h", "x")
    assert (act.walk.node.name, act.told) == (
        "warm-by-thermometer",
        "Read it all, and press d when it is done.",
    )


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.sampled_from(
            [
                "1",
                "2",
                "3",
                "4",
                "6",
                "n",
                "",
                "b",
                "a",
                "?",
                "v",
                "w",
                "u",
                "36.2",
                "39",
                "2 days",
                "4kg",
                "zzz",
                "[/]",
            ]
        ),
        max_size=40,
    )
)
def test_any_keys_at_all_leave_a_sound_session(guide: Guide, lines: list[str]) -> None:
    """Whatever is typed, the session can always show its page and its moves can be replayed."""
    held = session(guide, *lines)

    assert held.page().blocks
    assert Walk(guide, held.walk.moves).state.node == held.walk.node
