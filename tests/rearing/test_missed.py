"""A missed feed: caught up safely, never doubled."""

from __future__ import annotations

from tests.rearing.lambs import basis, lamb
from triage.rearing.feeding import milk_of
from triage.rearing.missed import after_missed


def told(missed: int, days: float = 3.0) -> str:
    ground = basis(lamb(), days)
    row = next(each for each in milk_of(ground) if each.begins <= ground.now.moment < each.ends)
    return " ".join(after_missed(ground, row, missed))


def test_one_missed_feed() -> None:
    """The next feed is the usual 120 ml; those after it may go to the ceiling, 50 ml for each kg."""
    line = told(1)

    assert "the usual 120 ml" in line
    assert "Never give two feeds in one" in line
    assert "up to 200 ml" in line
    assert "all of the day no more than 720 ml" in line


def test_two_missed_feeds_are_a_sick_lamb() -> None:
    """Two in a row: look before you feed, nothing above the usual, and the vet if it would not drink."""
    line = told(2)

    assert line.startswith("2 feeds in a row are too many to miss.")
    assert "phone the vet today" in line
    assert "up to" not in line
    assert "let go" in line


def test_no_room_is_said() -> None:
    """At three feeds a day each is near the most for one feed; what was missed is let go."""
    line = told(1, 88.0)

    assert "up to" not in line
    assert "What was missed is let go." in line
    assert "Never give two feeds in one" in line


def test_nothing_missed_says_nothing() -> None:
    """With nothing missed there is nothing to say."""
    assert told(0) == ""


def test_a_look_comes_before_the_feed() -> None:
    """Hungry lambs cool: warmth, belly and suck are looked at before any catching up."""
    assert told(1).startswith("Is it up, with a warm mouth and a soft belly, and does it suck?")


def test_no_first_milk_is_let_go() -> None:
    """In its first day one missed feed asks for the thermometer and the guide, and is made up by one feed more."""
    line = told(1, 0.4)

    assert "Take its temperature first" in line
    assert "When the guide lets you feed it, give the usual 200 ml" in line
    assert "one more feed later" in line
    assert "let go: give" in line
    assert "up to" not in line


def test_a_lamb_that_waits_for_a_vet_is_not_caught_up() -> None:
    """Its walk calls the vet: the amounts of the plan are not for it, however many feeds it missed."""
    ground = basis(lamb(ill="Phone the vet now. The page of the guide comes first."), 3.0)
    lines = after_missed(ground, milk_of(ground)[1], 1)

    assert lines[0].startswith("Phone the vet now.")
    assert "ml" not in " ".join(lines)
