"""What a walk tells of itself, what it refuses and in which words, and what a replay keeps."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import FrozenInstanceError
from pathlib import Path

import pytest

from tests.conftest import small_guide
from tests.test_walk import walked
from triage.facts import UNSURE
from triage.guide.model import Ask, Guide
from triage.walk import Answer, Done, Move, NotNow, Rise, Walk, bound, branch_for, fits, replay


def test_a_rise_is_told_with_the_answer_that_brought_it(small: Guide) -> None:
    """A danger sign raises the urgency once; a cold reading of the same urgency adds nothing."""
    assert walked(small, "limp", 35.0).state.rises == (Rise("vet-now", "danger", "limp"),)
    assert walked(small, "none", 35.0).state.rises == (Rise("vet-now", "temperature", 35.0),)
    assert walked(small, UNSURE).state.rises == (Rise("vet-now", "danger", UNSURE),)


def test_an_end_has_an_urgency_of_its_own(small: Guide) -> None:
    """A walk that nothing raised has the urgency of its end, told with no finding."""
    state = walked(small, "none", 39.0).state

    assert state.urgency == "care-here"
    assert state.rises == (Rise("care-here", "", UNSURE),)


def test_the_nodes_met_are_told_in_their_order(small: Guide) -> None:
    """What was answered or carried out is named once for each time, and what waits is not."""
    walk = walked(small, "none", 35.0, None, 38.0)

    assert walk.state.met == ("danger", "warmth", "warm-it", "warmth")
    assert walk.node.name == "well"


def test_a_walk_says_whether_it_is_finished(small: Guide) -> None:
    """A question and an act are on the way; only an end is the end."""
    assert not Walk(small).finished
    assert not walked(small, "none", 35.0).finished
    assert walked(small, "none", 39.0).finished


def test_the_facts_are_the_numbers_and_what_is_known(small: Guide) -> None:
    """The sums are handed the guide's numbers in their own unit, and the answers."""
    facts = walked(small, "none", 35.0).facts

    assert dict(facts.numbers) == {"chill": 37.0, "pause": 20.0}
    assert dict(facts.known) == {"danger": "none", "temperature": 35.0}


def test_what_was_typed_is_kept_with_the_answer(small: Guide) -> None:
    """How an answer was typed is kept where it is given, and nothing where it is not; a change likewise."""
    walk = Walk(small).answer("none").answer(35.0, "95 F")
    assert [move.said for move in walk.moves if isinstance(move, Answer)] == ["", "95 F"]

    typed = walk.change(1, 36.0, "96.8 F").walk.moves[1]
    silent = walk.change(1, 36.0).walk.moves[1]
    assert isinstance(typed, Answer)
    assert isinstance(silent, Answer)
    assert (typed.said, silent.said) == ("96.8 F", "")


def test_how_it_was_typed_is_no_part_of_an_answer() -> None:
    """Two answers of one value are the same answer, however they were typed."""
    assert Answer("temperature", 35.0, "95 F") == Answer("temperature", 35.0)


def test_going_back_keeps_all_but_the_last(small: Guide) -> None:
    """Back from the third move leaves two."""
    assert walked(small, "none", 35.0, None).back().moves == (
        Answer("danger", "none"),
        Answer("temperature", 35.0),
    )


@pytest.mark.parametrize(
    ("moves", "why"),
    [
        ((Answer("temperature", 38.0),), "move 1 (Answer(finding='temperature', value=38.0, said='')) does not fit at 'danger'"),
        ((Answer("danger", "none"), Done("warm-it")), "move 2 (Done(act='warm-it')) does not fit at 'warmth'"),
        ((Answer("danger", "none"), Answer("temperature", 35.0), Done("wrap-it")), "move 3 (Done(act='wrap-it')) does not fit at 'warm-it'"),
        ((Answer("danger", "none"), Answer("temperature", 35.0), Answer("temperature", 35.0)), "move 3 (Answer(finding='temperature', value=35.0, said='')) does not fit at 'warm-it'"),
        ((Answer("danger", "none"), Answer("temperature", 39.0), Done("well")), "move 3 (Done(act='well')) does not fit at 'well'"),
    ],
)  # fmt: skip
def test_a_move_that_does_not_fit_is_named_with_its_place(
    small: Guide, moves: tuple[Move, ...], why: str
) -> None:
    """A wrong move is refused by its number, counted from one, and by the node where it stands."""
    with pytest.raises(NotNow) as refused:
        _ = Walk(small, moves).state

    assert str(refused.value) == why


def test_a_refusal_says_what_was_wrong(small: Guide) -> None:
    """Each refused answer, act and change says why, with the name of the node or the finding."""
    act = walked(small, "none", 35.0)
    refusals: dict[str, Callable[[], object]] = {
        "no question is asked at 'warm-it'": lambda: act.answer("none"),
        "'warm' is not an answer to 'danger'": lambda: Walk(small).answer("warm"),
        "there is nothing to carry out at 'danger'": lambda: Walk(small).done(),
        "only an answer can be changed": lambda: act.done().change(2, "none"),
        "12.0 is not an answer to 'temperature'": lambda: act.change(1, 12.0),
    }
    for why, refused in refusals.items():
        with pytest.raises(NotNow) as told:
            refused()
        assert str(told.value) == why


def test_an_answer_without_a_branch_is_refused(tmp_path: Path) -> None:
    """Where a guide leaves out a band of a measurement, the walk stops there and says at what."""
    guide = small_guide(tmp_path, ("topics/first.yaml", "      - {otherwise: true, go: well}\n", ""))

    with pytest.raises(NotNow) as refused:
        _ = walked(guide, "none", 39.0).node

    assert str(refused.value) == "'warmth' has no branch for 39.0"


def test_an_act_of_once_is_shown_once(tmp_path: Path) -> None:
    """With `at_most: 1` the first arrival shows the act, and the second goes on to its else."""
    guide = small_guide(tmp_path, ("topics/first.yaml", "at_most: 2", "at_most: 1"))

    assert walked(guide, "none", 35.0).node.name == "warm-it"
    assert walked(guide, "none", 35.0, None, 35.0).node.name == "still-cold"


def test_plausible_edges_are_answers(small: Guide) -> None:
    """A measurement at either edge of what is plausible fits, and one past it does not."""
    temperature = small.findings["temperature"]

    assert fits(temperature, 25.0)
    assert fits(temperature, 43.0)
    assert not fits(temperature, 24.9)
    assert not fits(temperature, 43.1)
    assert not fits(temperature, "warm")
    assert fits(temperature, UNSURE)


def test_not_sure_does_not_fit_a_finding_that_must_be_chosen(tmp_path: Path) -> None:
    """A finding with a way on of its own is never answered by "not sure"."""
    guide = small_guide(
        tmp_path, ("findings/all.yaml", "choices: {warm: Warm, cold: Cold}", "choices: {warm: Warm, cold: Cold}\n  never_unsure: Choose cold.")
    )  # fmt: skip

    assert not fits(guide.findings["mouth"], UNSURE)
    assert fits(guide.findings["mouth"], "cold")


def test_a_bound_is_read_in_the_findings_unit(tmp_path: Path) -> None:
    """A number of 98.6 degrees Fahrenheit bounds a Celsius finding at 37."""
    guide = small_guide(
        tmp_path,
        ("numbers.yaml", "value: 37\n  unit: degC\n  published: {a-paper: [36, 37]}", "value: 98.6\n  unit: degF\n  published: {a-paper: 98.6}"),
    )  # fmt: skip
    node = guide.nodes["warmth"]
    assert isinstance(node, Ask)

    assert bound(guide, node, "chill") == 37.0


def test_the_first_band_that_holds_is_taken(small: Guide) -> None:
    """A cold reading takes the first band although `otherwise` would hold as well; not sure has its own."""
    node = small.nodes["warmth"]
    assert isinstance(node, Ask)

    ways = [branch_for(small, node, value) for value in (35.0, 39.0, UNSURE)]
    assert [way and way.go for way in ways] == ["warm-it", "well", "feel"]


FORGETS_LESS = ("topics/first.yaml", "forget: [temperature, mouth]", "forget: [temperature]")


def test_a_finding_that_an_act_leaves_known_serves_without_the_act(tmp_path: Path) -> None:
    """Where warming does not make the mouth asked again, a mouth felt after it is kept without it."""
    walk = walked(small_guide(tmp_path, FORGETS_LESS), "none", 36.0, None, UNSURE, "warm")

    changed = walk.change(1, UNSURE)

    assert changed.walk.node.name == "well"
    assert changed.dropped == (Done("warm-it"), Answer("temperature", UNSURE))


TWO_ACTS = (
    ("topics/first.yaml", "      - {is: cold, go: warm-it, at_least: vet-now}\n", "      - {is: cold, go: wrap-it, at_least: vet-now}\n"),
    ("topics/first.yaml", "  still-cold:\n", "  wrap-it:\n    act: [{do: Wrap it., tag: warm}]\n    title: Wrap it\n    then: well\n    sources: [a-paper]\n    certainty: high\n  still-cold:\n"),
)  # fmt: skip


def test_one_act_does_not_stand_for_another(tmp_path: Path) -> None:
    """A lamb that was warmed was not wrapped: the act of the old way is dropped, not done on the new one."""
    walk = walked(small_guide(tmp_path, *TWO_ACTS), "none")

    changed = replay(walk, (Answer("temperature", UNSURE), Answer("mouth", "cold"), Done("warm-it")))

    assert changed.walk.node.name == "wrap-it"
    assert changed.dropped == (Done("warm-it"),)


def test_moves_past_the_end_are_dropped(small: Guide) -> None:
    """A replay stops at an end, and what is left over comes back in its order."""
    left = (Answer("mouth", "warm"), Done("warm-it"), Answer("temperature", 39.0))

    changed = replay(walked(small, "none"), (Answer("temperature", 38.0), *left))

    assert changed.walk.node.name == "well"
    assert changed.dropped == left


def test_nothing_of_a_walk_can_be_written_over(small: Guide) -> None:
    """A walk, its moves, its state and what raised it are values: no part of them can be set."""
    walk = walked(small, "limp", 35.0, None)
    told = (walk, walk.state, walk.state.rises[0], *walk.moves, walk.change(0, "none"))
    for value in told:
        for name in vars(value):
            with pytest.raises(FrozenInstanceError):
                setattr(value, name, None)
    for mapping in (walk.state.known, walk.state.times):
        with pytest.raises(TypeError):
            mapping["danger"] = 1  # type: ignore[index]


def test_a_state_is_worked_out_once(small: Guide) -> None:
    """Asking a walk twice where it is gives the very same state."""
    walk = walked(small, "none")

    assert walk.state is walk.state


def test_an_answer_serves_its_own_finding_alone(small: Guide) -> None:
    """A weight of 30 kg could be a temperature by its size, and is not taken for one."""
    changed = replay(walked(small, "none"), (Answer("weight", 30.0), Answer("temperature", 38.0)))

    assert changed.walk.moves[1:] == (Answer("temperature", 38.0),)
    assert changed.dropped == (Answer("weight", 30.0),)


def test_a_guide_that_begins_at_an_end_has_its_urgency(tmp_path: Path) -> None:
    """Where nothing is asked the walk is finished at once, as urgent as the end says."""
    state = Walk(small_guide(tmp_path, ("guide.yaml", "way_in: danger", "way_in: still-cold"))).state

    assert (state.node.name, state.urgency, state.met) == ("still-cold", "vet-now", ())
