"""A look rings when it is due: across clock changes, a clock set back, and a machine that slept."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from triage.casebook.rows import Look
from triage.clock import Now, hhmm
from triage.guide.model import Act, End, Guide
from triage.looks import RING_AGAIN, Alarm, is_due, look_of, look_words, set_back
from triage.walk import Walk

NOW = datetime(2026, 2, 11, 2, 10, tzinfo=UTC)
MINUTE = timedelta(minutes=1)


def look(minutes: int, at: datetime = NOW) -> Look:
    return Look(at, at + minutes * MINUTE)


def test_an_act_with_a_wait_sets_a_look(guide: Guide) -> None:
    """The look is due so long after the act as the guide's own number says."""
    walk = Walk(guide).answer("limp", at=NOW).answer(36.2, at=NOW).answer(3.0, at=NOW)
    node = walk.node
    assert isinstance(node, Act)
    wait = guide.numbers[node.wait].quantity.to("min").value

    assert look_of(walk) is None
    assert look_of(walk.done(NOW)) == look(round(wait))


def test_the_next_answer_takes_the_look_away(guide: Guide) -> None:
    """Once the lamb was looked at, nothing is due any more."""
    walk = Walk(guide).answer("limp", at=NOW).answer(36.2, at=NOW).answer(3.0, at=NOW).done(NOW)

    assert look_of(walk.answer(38.5, at=NOW + 20 * MINUTE)) is None


def test_an_end_that_looks_again_sets_a_look(guide: Guide) -> None:
    """The end's own time counts from the last answer."""
    walk = Walk(guide)
    for value in ("none", 39.3, "sucks", "no-first-milk", 2.0, "none", 4.2):
        walk = walk.answer(value, at=NOW)
    node = walk.node
    assert isinstance(node, End)
    assert node.look_again

    found = look_of(walk)
    assert found is not None
    assert found.due - NOW == timedelta(hours=guide.numbers[node.look_again].quantity.to("h").value)


@pytest.mark.parametrize(
    ("zone", "at", "due"),
    [
        # European summer time ends on the last Sunday of October at 01:00 UTC, and begins on the last of
        # March (Directive 2000/84/EC); in the United States on the first of November and the second of
        # March at 2:00 local time (15 U.S.C. 260a).
        ("Europe/London", datetime(2026, 10, 25, 0, 40, tzinfo=UTC), "01:10 GMT"),
        ("Europe/London", datetime(2026, 10, 25, 0, 20, tzinfo=UTC), "01:50 BST"),
        ("Europe/London", datetime(2026, 3, 29, 0, 50, tzinfo=UTC), "02:20"),
        ("America/Denver", datetime(2026, 11, 1, 7, 40, tzinfo=UTC), "01:10 MST"),
        ("America/Denver", datetime(2026, 3, 8, 8, 50, tzinfo=UTC), "03:20"),
    ],
)  # fmt: skip
def test_a_clock_change_moves_no_look(zone: str, at: datetime, due: str) -> None:
    """Thirty minutes stay thirty minutes, and the hour that the clock shows twice is told apart."""
    set_then = look(30, at)
    alarm = Alarm(steady=lambda: 0.0)

    assert hhmm(set_then.due, Now(at, ZoneInfo(zone))) == due
    assert not alarm.due([("a", set_then)], at + 29 * MINUTE)
    assert alarm.due([("a", set_then)], at + 30 * MINUTE)


def test_the_hours_that_were_slept_count() -> None:
    """After a machine has slept, the wall clock alone makes the look due, though nothing was counted."""
    alarm = Alarm(steady=lambda: 100.0)
    assert not alarm.due([("a", look(20))], NOW)

    assert alarm.due([("a", look(20))], NOW + timedelta(hours=3))


def test_a_clock_set_back_while_open_changes_nothing() -> None:
    """The look is also counted on a clock that nobody sets, so an hour set back does not put it off."""
    counted = [0.0]
    alarm = Alarm(steady=lambda: counted[0])
    set_now = look(90)
    assert not alarm.due([("a", set_now)], NOW + 61 * MINUTE)
    counted[0] = 28 * 60.0
    assert not alarm.due([("a", set_now)], NOW + 29 * MINUTE)
    counted[0] = 29 * 60.0

    assert alarm.due([("a", set_now)], NOW + 30 * MINUTE)


@pytest.mark.parametrize("back", [timedelta(hours=1), timedelta(days=365 * 56)])
def test_a_clock_set_back_before_the_start_rings_at_once(back: timedelta) -> None:
    """Whoever opens the guide with the clock before the time of setting is told to look now: early is safe."""
    assert set_back(look(20), NOW - back)
    assert is_due(look(20), NOW - back)
    assert look_words(look(20), Now(NOW - back, UTC)).startswith("look now. The clock was set back")


def test_two_clocks_that_differ_a_little_ring_nothing() -> None:
    """A minute between two machines is no clock set back."""
    assert not is_due(look(20), NOW - MINUTE)


def test_the_bell_rings_at_once_and_then_now_and_again() -> None:
    """A look that comes due rings; while it stays due it rings again after some minutes, not each second."""
    counted = [0.0]
    alarm = Alarm(steady=lambda: counted[0])
    due = alarm.due([("a", look(20))], NOW + 20 * MINUTE)

    assert alarm.rings(due)
    counted[0] = 1.0
    assert not alarm.rings(alarm.due([("a", look(20))], NOW + 20 * MINUTE))
    counted[0] = RING_AGAIN
    assert alarm.rings(alarm.due([("a", look(20))], NOW + 25 * MINUTE))
    counted[0] = RING_AGAIN + 1
    assert not alarm.rings(alarm.due([], NOW + 25 * MINUTE))


def test_a_second_lamb_rings_by_itself() -> None:
    """Each lamb's look rings, also while another one is due already."""
    alarm = Alarm(steady=lambda: 0.0)
    first = [("a", look(10)), ("b", look(20))]
    assert alarm.rings(alarm.due(first, NOW + 10 * MINUTE))

    assert alarm.rings(alarm.due(first, NOW + 20 * MINUTE))


@pytest.mark.parametrize(
    ("minutes", "words"),
    [(18, "look at 02:28, in 18 minutes."), (-12, "look now, due 01:58, 12 minutes ago."),
     (150, "look at 04:40, in 2.5 hours."), (0, "look now, due 02:10, 1 minute ago.")],
)  # fmt: skip
def test_a_look_in_words(minutes: int, words: str) -> None:
    """When it is due is told by the clock and as a span."""
    due = NOW + minutes * MINUTE

    assert look_words(Look(due - 200 * MINUTE, due), Now(NOW, UTC)) == words
