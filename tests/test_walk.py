"""The walk: a fold over answers that can go on, go back, and be changed anywhere."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.conftest import small_guide
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, End, Guide
from triage.walk import Answer, Done, NotNow, Walk, replay


def walked(guide: Guide, *values: Value | None) -> Walk:
    """Answer in turn; None carries an act out."""
    walk = Walk(guide)
    for value in values:
        walk = walk.done() if value is None else walk.answer(value)
    return walk


def test_a_walk_begins_at_the_way_in(small: Guide) -> None:
    """With no answers the walk is at the danger signs, knowing nothing and raising nothing."""
    state = Walk(small).state

    assert (state.node.name, dict(state.known), state.urgency) == ("danger", {}, "")


def test_answering_makes_a_new_walk(small: Guide) -> None:
    """A walk never changes: an answer gives another walk and leaves the first as it was."""
    first = Walk(small)

    second = first.answer("none")

    assert (first.moves, second.moves) == ((), (Answer("danger", "none"),))


def test_bands_include_their_upper_edge_with_up_to(small: Guide) -> None:
    """`up_to` takes its edge in: 37.0 is still cold, and 37.1 is not."""
    assert walked(small, "none", 37.0).node.name == "warm-it"
    assert walked(small, "none", 37.1).node.name == "well"


def test_bands_leave_their_upper_edge_out_with_below(tmp_path: Path) -> None:
    """`below` leaves its edge out: 37.0 is no longer below 37."""
    guide = small_guide(tmp_path, ("topics/first.yaml", "up_to: chill", "below: chill"))

    assert walked(guide, "none", 36.9).node.name == "warm-it"
    assert walked(guide, "none", 37.0).node.name == "well"


def test_a_number_in_another_unit_is_compared_in_the_findings_own(tmp_path: Path) -> None:
    """A threshold of 98.6 degrees Fahrenheit cuts a Celsius finding at 37.0."""
    guide = small_guide(
        tmp_path,
        ("numbers.yaml", "value: 37\n  unit: degC\n  published: {a-paper: [36, 37]}", "value: 98.6\n  unit: degF\n  published: {a-paper: 98.6}"),
    )  # fmt: skip

    assert walked(guide, "none", 37.0).node.name == "warm-it"
    assert walked(guide, "none", 37.01).node.name == "well"


def test_urgency_rises_and_never_falls(small: Guide) -> None:
    """A danger sign keeps the top urgency even at an end that alone would be the least urgent."""
    walk = walked(small, "limp", 39.0)

    assert isinstance(walk.node, End)
    assert (walk.node.urgency, walk.state.urgency) == ("care-here", "vet-now")
    assert [(rise.urgency, rise.finding) for rise in walk.state.rises] == [("vet-now", "danger")]


def test_not_sure_is_an_answer_and_is_remembered(small: Guide) -> None:
    """ "Not sure" leads to the stand-in, and is not asked again."""
    walk = walked(small, "none", UNSURE)

    assert walk.node.name == "feel"
    assert walk.state.known["temperature"] is UNSURE


def test_a_known_finding_is_passed_silently(tmp_path: Path) -> None:
    """A second question on the same finding is never shown: its answer is known."""
    guide = small_guide(
        tmp_path,
        ("topics/first.yaml", "      - {is: none, go: warmth}\n", "      - {is: none, go: again}\n"),
        ("topics/first.yaml", "  warmth:\n", "  again:\n    ask: danger\n    branches:\n      - {is: limp, go: well}\n      - {is: none, go: warmth}\n      - {unsure: true, go: well}\n  warmth:\n"),
    )  # fmt: skip

    walk = walked(guide, "none")

    assert walk.node.name == "warmth"
    assert walk.state.met == ("danger",)


def test_an_act_forgets_and_asks_again(small: Guide) -> None:
    """After warming the temperature is asked anew, and the first reading no longer counts."""
    walk = walked(small, "none", 35.0, None)

    assert walk.node.name == "warmth"
    assert "temperature" not in walk.state.known


def test_an_act_is_done_at_most_so_often(small: Guide) -> None:
    """The third arrival at an act of `at_most: 2` goes on to its else."""
    walk = walked(small, "none", 35.0, None, 35.5, None, 36.0)

    assert walk.node.name == "still-cold"
    assert walk.state.times == {"warm-it": 2}


def test_going_back_drops_one_move(small: Guide) -> None:
    """Back is the walk without its last move; at the start it stays where it is."""
    walk = walked(small, "none", 35.0)

    assert walk.back().moves == walk.moves[:1]
    assert Walk(small).back().moves == ()


def test_changing_an_answer_keeps_what_still_fits(small: Guide) -> None:
    """Changing the danger sign keeps the temperature taken since."""
    changed = walked(small, "none", 35.0, None, 38.0).change(0, "limp")

    assert changed.dropped == ()
    assert changed.walk.state.urgency == "vet-now"
    assert changed.walk.node.name == "well"


def test_changing_an_answer_names_what_no_longer_fits(small: Guide) -> None:
    """A lamb that was never cold was never warmed: the act and the second reading fall away."""
    changed = walked(small, "none", 35.0, None, 38.0).change(1, 38.5)

    assert changed.walk.node.name == "well"
    assert changed.dropped == (Done("warm-it"), Answer("temperature", 38.0))


def test_readings_are_kept_in_their_order(small: Guide) -> None:
    """Two temperatures stay first and second when an answer before them is changed."""
    changed = walked(small, "none", 35.0, None, 36.0, None, 38.0).change(0, UNSURE)

    given = [move.value for move in changed.walk.moves if isinstance(move, Answer)]
    assert given == [UNSURE, 35.0, 36.0, 38.0]


@pytest.mark.parametrize("value", ["warm", 12.0, "none "])
def test_an_answer_must_fit_its_question(small: Guide, value: Value) -> None:
    """A value that is no answer to the question is refused, and the walk stays."""
    with pytest.raises(NotNow):
        Walk(small).answer(value)


def test_an_implausible_measurement_is_refused(small: Guide) -> None:
    """A temperature outside the plausible range is not an answer."""
    with pytest.raises(NotNow):
        walked(small, "none", 102.0)


def test_only_an_act_can_be_carried_out(small: Guide) -> None:
    """Done at a question, and an answer at an act, are refused."""
    with pytest.raises(NotNow):
        Walk(small).done()
    with pytest.raises(NotNow):
        walked(small, "none", 35.0).answer("none")


def test_moves_that_do_not_fit_are_refused(small: Guide) -> None:
    """A list of moves from elsewhere is not taken on trust."""
    with pytest.raises(NotNow):
        _ = Walk(small, (Answer("temperature", 38.0),)).state


def test_a_circle_of_known_answers_is_stopped(tmp_path: Path) -> None:
    """A guide that goes round in a circle is refused rather than walked for ever."""
    guide = small_guide(tmp_path, ("topics/first.yaml", "is: none, go: warmth", "is: none, go: danger"))

    with pytest.raises(NotNow, match="round in a circle"):
        _ = walked(guide, "none").state


def test_every_shipped_node_has_a_way_on(guide: Guide) -> None:
    """No node of the shipped guide is a place to be stuck at: asks branch, acts lead on, ends end."""
    for node in guide.nodes.values():
        assert (
            isinstance(node, End)
            or (isinstance(node, Ask) and node.branches)
            or (isinstance(node, Act) and node.then)
        )


def test_answers_are_kept_though_they_are_asked_in_another_order(guide: Guide) -> None:
    """An age that was asked early is used late, when a changed temperature asks for it later."""
    walk = walked(guide, "none", 38.8, "sucks", "refusing", 120.0, "none", "bright", "hollow")
    asked = [move.finding for move in walk.moves if isinstance(move, Answer)]
    assert asked.index("age") < asked.index("manner")

    changed = walk.change(1, 39.3)

    again = [move.finding for move in changed.walk.moves if isinstance(move, Answer)]
    assert changed.dropped == ()
    assert again.index("age") > again.index("manner")


@pytest.mark.parametrize("value", ["cold", 12.0])
def test_a_change_must_fit_its_question(small: Guide, value: Value) -> None:
    """An earlier answer can only be changed to one that its question has."""
    with pytest.raises(NotNow):
        walked(small, "none", 35.0).change(1, value)


def test_only_an_answer_can_be_changed(small: Guide) -> None:
    """An act carried out is no answer, and is not changed."""
    with pytest.raises(NotNow):
        walked(small, "none", 35.0, None).change(2, "none")


def test_a_reading_after_an_act_does_not_stand_for_one_before_it(small: Guide) -> None:
    """A mouth felt after warming says nothing of the lamb as it was found, and is dropped with the act."""
    walk = walked(small, "none", 36.0, None, UNSURE, "warm")

    changed = walk.change(1, UNSURE)

    assert changed.walk.node.name == "feel"
    assert changed.dropped == (Done("warm-it"), Answer("temperature", UNSURE), Answer("mouth", "warm"))


def test_a_reading_before_an_act_does_not_stand_for_one_after_it(small: Guide) -> None:
    """A mouth felt before warming is not taken for the one felt after it."""
    walk = walked(small, "none", UNSURE, "cold", None, UNSURE, "warm")

    changed = walk.change(1, 36.0)

    assert changed.walk.node.name == "well"
    assert changed.dropped == (Answer("mouth", "cold"),)


def test_an_act_that_the_guide_lacks_is_dropped(small: Guide) -> None:
    """A walk kept under an older guide holds an act that is gone: it is dropped, and the rest is replayed."""
    moves = (Answer("danger", "none"), Done("act-of-an-older-guide"), Answer("temperature", 39.5))

    changed = replay(Walk(small), moves)

    assert changed.walk.node.name == "well"
    assert changed.dropped == (Done("act-of-an-older-guide"),)
