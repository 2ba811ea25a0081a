"""The story's entries: everything once, in the order of time, in the words of the present guide."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.timeline.conftest import NIGHT, case, seen, temperature, utc, walked
from triage.facts import UNSURE
from triage.guide.model import Act, Guide
from triage.timeline import Entry, timeline
from triage.timeline.entries import WORDS, move_words
from triage.walk import KEPT, Answer, Done, Walk

LATER = NIGHT + timedelta(hours=3)


def words(entries: tuple[Entry, ...]) -> list[str]:
    """Return what the entries say."""
    return [entry.words for entry in entries]


def test_a_walk_is_told_move_by_move_with_its_end(small: Guide) -> None:
    """Each answer and act stands at its own time, and the end with its urgency at the last one's."""
    walk = walked(small, NIGHT, "none", 36.0, 38.0)

    entries = timeline([case(*walk.moves)], (), small, "metric")

    assert [(entry.at.minute, entry.words) for entry in entries] == [
        (10, "Danger: Not limp"),
        (11, "Temperature: 36 °C"),
        (12, "Done: Warm it"),
        (13, "Temperature: 38 °C"),
        (13, "The guide came to: Warm enough. Phone the vet now."),
    ]
    assert [entry.rests_on for entry in entries] == [*walk.moves, walk.moves[-1]]
    assert all(entry.sure for entry in entries)


def test_an_unfinished_walk_has_no_end(small: Guide) -> None:
    """A walk that was left on the way tells its answers only."""
    walk = walked(small, NIGHT, "none")

    assert words(timeline([case(*walk.moves)], (), small, "metric")) == ["Danger: Not limp"]


def test_walks_and_notes_are_one_list(small: Guide) -> None:
    """Moves of several walks and notes between them stand in the order of time, however they come."""
    first, second = walked(small, NIGHT, "none"), walked(small, LATER, "limp")
    notes = (
        seen(NIGHT + timedelta(hours=1), "note", note="Moved indoors"),
        seen(NIGHT - timedelta(hours=1), "weight", weight=4.2),
    )

    told = timeline([case(*second.moves, begun=LATER), case(*first.moves)], notes, small, "us")

    assert words(told) == ["Weight: 9 lb 4 oz", "Danger: Not limp", "Note: Moved indoors", "Danger: Limp"]


def test_a_move_without_a_time_stands_where_it_was_made(small: Guide) -> None:
    """A move whose time was not kept is not left out: it stands after the one before it, and is unsure."""
    moves = (Answer("danger", "none"), temperature(36.0, LATER), Done("warm-it"))

    told = timeline([case(*moves)], (), small, "metric")

    assert [(entry.at, entry.words, entry.sure) for entry in told] == [
        (NIGHT, "Danger: Not limp", False),
        (LATER, "Temperature: 36 °C", True),
        (LATER, "Done: Warm it", False),
    ]


@pytest.mark.parametrize("lost", [Done("act-of-an-older-guide", LATER), Answer("lost", "grey", at=LATER)])
@pytest.mark.parametrize("after", [True, False])
def test_what_the_guide_lacks_is_told_by_its_name(small: Guide, lost: Done | Answer, after: bool) -> None:
    """A move of an act or a finding that is gone is told by its name, and no end is claimed for its walk."""
    walk = walked(small, NIGHT, "none", 39.5)
    moves = (*walk.moves, lost) if after else (lost, *walk.moves)

    told = words(timeline([case(*moves)], (), small, "metric"))

    assert "Done: act-of-an-older-guide" in told or "lost: grey" in told
    assert "The guide has changed since this walk, and now asks other questions." in told
    assert not any("came to" in each for each in told)


def test_the_end_of_an_older_edition_is_told_as_the_present_guides(small: Guide) -> None:
    """Where the edition changed, the end is what the present guide makes of the answers, and says so."""
    walk = walked(small, NIGHT, "none", 39.5)

    told = words(timeline([case(*walk.moves, edition="before")], (), small, "metric"))

    assert told[-1] == "By the present guide this comes to: Warm enough. Care for it here."


def test_an_answer_changed_later_ends_the_walk_then(small: Guide) -> None:
    """An early answer changed last stands last, and so does the end that it led to."""
    walk = walked(small, NIGHT, "none", 39.5).change(0, "limp", at=LATER).walk

    told = timeline([case(*walk.moves)], (), small, "metric")

    assert [(entry.at, entry.words) for entry in told[1:]] == [
        (LATER, "Danger: Limp"),
        (LATER, "The guide came to: Warm enough. Phone the vet now."),
    ]


@pytest.mark.parametrize(
    ("move", "told"),
    [
        (Answer("temperature", UNSURE), "Temperature: not sure"),
        (Answer("weight", 4.2, KEPT), "Weight: 4.2 kg, taken from what was kept"),
        (Answer("danger", "sleepy"), "Danger: sleepy"),
        (Answer("mouth", 3.0), "Mouth: 3"),
        (Answer("a\nb\x1b[2J", "c\u202ed"), "a b[2J: cd"),
        (Done("x" * 100), f"Done: {'x' * 38}.."),
    ],
)
def test_odd_moves_are_told(small: Guide, move: Answer | Done, told: str) -> None:
    """A move that does not fit the guide, or is not sure, is told in safe words."""
    assert move_words(small, move, "metric") == told


def test_a_sum_in_a_title_is_that_of_the_lamb_then(guide: Guide) -> None:
    """An act whose title has an amount tells the one for this lamb, as it was known when it was done."""
    walk = walked(guide, NIGHT, "none", 36.2, 3.0)
    act = walk.node
    assert isinstance(act, Act)
    nodes = {**guide.nodes, act.name: replace(act, title="Lamb, {lamb-age}, below {normal-low}")}
    changed = replace(guide, nodes=nodes)
    done = walk.done(LATER)

    assert Walk(changed, done.moves).node == walk.done().node
    told = words(timeline([case(*done.moves, edition=guide.front.edition)], (), changed, "metric"))

    assert "Done: Lamb, 3 hours old, below 39 °C" in told
    assert move_words(changed, done.moves[-1], "metric") == "Done: Lamb, lamb age, below 39 °C"


def test_the_vets_order_does_not_lose_its_end(small: Guide) -> None:
    """Words of the length of an order stand whole in the story; a book is shortened with a sign."""
    order = "Tube 50 ml. " * 60
    told = words(timeline((), [seen(NIGHT, "vet-said", who="Dr X", said=order)], small, "metric"))
    book = words(timeline((), [seen(NIGHT, "note", note="x " * 5000)], small, "metric"))

    assert told == [f"The vet said: Dr X, {order.strip()}"]
    assert book[0].endswith("..")
    assert len(book[0]) <= WORDS + len("Note: ")


MOMENTS = st.integers(-30 * 1440, 0).map(lambda minutes: NIGHT + timedelta(minutes=minutes))
MOVES = st.one_of(
    st.builds(Done, st.sampled_from(["warm-it", "gone"]), st.none() | MOMENTS),
    st.builds(
        Answer,
        st.sampled_from(["danger", "temperature", "mouth", "gone"]),
        st.sampled_from(["none", "warm", UNSURE, 36.0, 39.5]),
        st.just(""),
        st.none() | MOMENTS,
    ),
)
NOTES = st.builds(seen, MOMENTS, st.sampled_from(["note", "gone"]), note=st.text(max_size=20))


@given(st.lists(st.lists(MOVES, max_size=8).map(lambda moves: case(*moves)), max_size=3), st.lists(NOTES))
def test_nothing_is_lost_and_time_never_goes_back(small_for_all: Guide, cases: list, notes: list) -> None:  # type: ignore[type-arg]
    """Whatever was kept, fitting the guide or not, each move and note is told once, in the order of time."""
    told = timeline(cases, notes, small_for_all, "metric")

    times = [entry.at for entry in told]
    assert times == sorted(times)
    ends = ("The guide came to", "By the present guide", "The guide has changed")
    once = [id(entry.rests_on) for entry in told if not entry.words.startswith(ends)]
    assert sorted(once) == sorted(id(each) for each in [*notes, *(m for c in cases for m in c.moves)])


def test_summer_time_changes_nothing_in_the_order(small: Guide) -> None:
    """Across the change of the clocks, the order is that of the moments and not of the wall clock."""
    notes = [
        seen(utc(2026, 10, 25, 1, 10), "note", note="third"),
        seen(utc(2026, 10, 25, 0, 30), "note", note="second"),
        seen(utc(2026, 10, 24, 23, 50), "note", note="first"),
    ]

    assert words(timeline((), notes, small, "metric")) == ["Note: first", "Note: second", "Note: third"]
