"""The raising plan on a lamb's own page, from what is written down of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from tests.session.conftest import Night, texts, typed
from triage.casebook.rows import Observation
from triage.rearing.plan import OVERFED
from triage.rearing.weaning import WEANED
from triage.session import Session
from triage.session.plan import NO_PLAN, UNFINISHED, PlanRoom, worry_noted
from triage.session.resuming import take_up_last
from triage.walk import Answer

COLD = ("5", "36.2", "3h", "d")


def test_the_plan_is_one_key_from_the_lamb(night: Night) -> None:
    """`p` shows today's milk, what is due and what comes; `b` goes back to the lamb."""
    session = night.open(*COLD, "l", "2", "4.2 kg", "p")
    shown = texts(session)

    assert any(line.startswith("Plan for ") for line in shown)
    assert any("First day" in line and "4 feeds of 210 ml" in line for line in shown)
    assert any("First milk must be in by now" in line for line in shown)
    typed(session, "b")
    assert session.page().kind == "lamb"


def titles(session: Session) -> set[str]:
    room = session.room
    assert isinstance(room, PlanRoom)
    plan = room.plan()
    assert not isinstance(plan, str)
    return {task.title for task in plan.tasks}


def test_what_is_written_down_bends_it(night: Night) -> None:
    """How it is to be raised is asked on its page and changes what is due."""
    session = night.open(*COLD, "l")
    typed(session, "2", "4.2 kg", "9", "4", "1", "2", "p")
    shown = titles(session)

    assert "No games with a ram lamb" in shown
    assert "Dock its tail, if it is to be done" in shown
    assert "Ask the vet about lockjaw cover before any ring" in shown


def test_first_milk_that_was_written_down_is_no_longer_called_for(night: Night) -> None:
    """Before, the first feed stands first; after it nothing says that it must be in by now."""
    session = night.open("6", "39.3", "1", "6", "1 h", "l", "p")
    first = next(block.text for block in session.page().blocks if block.role == "choice")
    assert first.startswith("First milk, the first feed: now")
    typed(session, "b", "3", "1", "200 ml", "1", "p")
    assert not {title for title in titles(session) if title.startswith("First milk")}
    assert any("Written down for the last day: 200 ml in 1 feed." in line for line in texts(session))


def test_far_too_much_milk_is_told(night: Night) -> None:
    """A litre into a lamb of four kilos is told on its plan, with what to look for."""
    session = night.open("6", "39.3", "1", "6", "3 days", "l")
    typed(session, "2", "4.2 kg", "3", "3", "1000 ml", "1", "p")

    assert any("That is too much." in line for line in texts(session))


def test_a_feed_that_is_too_large_is_told_at_once(night: Night) -> None:
    """Nobody has to open the plan to learn of it; a feed as it should be says nothing more."""
    session = night.open("6", "39.3", "1", "6", "3 days", "l")
    typed(session, "2", "4.2 kg", "3", "3", "120 ml", "1")
    assert OVERFED not in session.told
    typed(session, "3", "3", "450 ml", "1")
    assert session.told.endswith(OVERFED)


def test_a_cold_lamb_that_was_fed_is_not_sent_back_to_feeds(night: Night) -> None:
    """Seven hours old, cold, no glucose: nothing by mouth. Its plan names no feeds to go back to."""
    cold = night.open("5", "36.2", "7h", "3", "l", "3", "3", "450 ml", "1", "p")
    told = [line for line in texts(cold) if OVERFED in line]

    assert [line.endswith(OVERFED) for line in told] == [True]
    assert cold.page().blocks[1].text.startswith("Phone the vet now.")


def test_feeds_of_first_milk_are_not_too_much_a_day_later(night: Night) -> None:
    """Its first day has larger feeds and more in a day than its second: each is held to what it was then."""
    session = night.open("6", "39.3", "1", "6", "1 h", "l")
    typed(session, "2", "4.2 kg")
    for _ in range(4):
        typed(session, "3", "1", "210 ml", "1")
        night.passes(6 * 60)
    typed(session, "p")
    assert any("Written down for the last day" in line for line in texts(session))
    assert not any("too much" in line for line in texts(session))


def test_a_weight_that_can_not_be_is_told_at_once(night: Night) -> None:
    """9.3 typed for 3.9 after 3.5: said at once, said on its plan, and its milk stays that of before."""
    session = night.open("6", "39.3", "1", "6", "3 days", "l")
    typed(session, "2", "3.5 kg", "p")
    milk = [line for line in texts(session) if line.startswith("Days 2")]
    typed(session, "b", "2", "9.3 kg", "9.3 kg")

    assert session.told.endswith("Weigh it again.")
    typed(session, "p")
    assert [line for line in texts(session) if line.startswith("Days 2")] == milk
    assert any("9.3 kg can't be right" in line for line in texts(session))


def test_weaned_is_written_down_from_its_plan(night: Night) -> None:
    """Once weaning is near a digit writes it down, and from then on the plan gives no milk."""
    session = night.open("6", "39.3", "1", "6", "44 days", "l")
    typed(session, "2", "12.4 kg", "p")
    last = [block for block in session.page().blocks if block.role == "choice"][-1]
    assert last.text.startswith("It has had its last milk")
    typed(session, last.mark, "1")
    assert session.told.startswith("Written down: Weaned")
    shown = texts(session)
    assert WEANED in shown
    assert not any("last milk: write" in line or "to stay alive" in line for line in shown)
    assert not titles(session) & {
        "Clean bottles and teats, at each feed",
        "May be weaned, if all three signs are there",
    }


def test_what_is_not_decided_counts_as_not_decided(night: Night) -> None:
    """The last choice of each question is none: nobody is castrated by default, and cover is not taken for sure."""
    session = night.open(*COLD, "l")
    typed(session, "2", "4.2 kg", "9", "5", "3", "3", "p")
    shown = titles(session)

    assert not any(title.startswith("Castrate") for title in shown)
    assert "Ask the vet about lockjaw cover before any ring" in shown


def test_a_digit_opens_a_duty(night: Night) -> None:
    """A digit shows a duty in full, with its cautions and sources; a wrong one says so and does nothing."""
    session = night.open(*COLD, "l", "p")
    typed(session, "1")
    assert any(block.role == "step" for block in session.page().blocks)
    assert any("Sources: " in line for line in texts(session))
    typed(session, "7")
    assert session.told == "'7' does nothing here."
    typed(session, "b")
    assert any(line.startswith("Plan for ") for line in texts(session))


def test_without_an_age_it_says_what_is_lacking(night: Night) -> None:
    """A lamb of unknown age has no dates, and the page says where to give it."""
    session = night.open("6", "n", "1", "l", "p")

    assert any("Its age is not known" in line for line in texts(session))
    typed(session, "1")
    assert "does nothing" in session.told


def test_a_guide_without_duties_says_so(night: Night) -> None:
    """A folder of one's own may have no raising plan; the page says it, and nothing fails."""
    session = night.open(*COLD, "l", "p")
    room = session.room
    assert isinstance(room, PlanRoom)
    room._guide = replace(session.walk.guide, duties={})

    assert room.plan() == NO_PLAN


def test_a_lamb_in_danger_is_fed_by_the_guide_and_not_by_the_plan(night: Night) -> None:
    """A cold lamb's plan says first that the vet and the guide's page come before it."""
    session = night.open(*COLD, "l", "2", "4.2 kg", "p")
    first = session.page().blocks[1]

    assert (first.role, first.text.startswith("Phone the vet now.")) == ("caution", True)


def test_a_walk_without_an_end_comes_first_too(night: Night) -> None:
    """While nobody knows how it is, the plan says to go on with the walk; for a lamb that is well it says nothing."""
    session = night.open("6", "39.3", "1", "l", "p")
    assert session.page().kind == "side"
    typed(session, "b", "c")

    session = night.open("1", "6", "39.3", "1", "6", "3 days", "l", "p")
    assert UNFINISHED in texts(session)


@pytest.mark.parametrize(
    ("noted", "said"),
    [
        (("1", "36.0"), "Temperature: 36 °C. Open the guide for that first."),
        (("1", "41.2"), "Temperature: 41.2 °C. Open the guide for that first."),
        (("5", "4"), "How it is: dull, gets up only when lifted. Open the guide"),
        (("5", "5"), "How it is: limp, or can't stand. Open the guide"),
        (("1", "39.4"), ""),
        (("5", "1"), ""),
    ],
)
def test_a_worry_that_was_only_written_down_comes_first_too(
    night: Night, noted: tuple[str, str], said: str
) -> None:
    """No walk was begun for it: a cold, hot, dull or limp lamb is not fed by the plan; a day later nobody knows."""
    session = night.open("l", "c", "2", "yesterday 10:00", "b", *noted, "p")
    cautions = [block.text for block in session.page().blocks if block.role == "caution"]

    assert [each.startswith(said) for each in cautions] == ([True] if said else [])
    night.passes(25 * 60)
    assert not [block for block in session.page().blocks if block.role == "caution"]


def test_a_later_note_or_walk_outranks_a_worry(night: Night) -> None:
    """Warm again by the last note: the plan holds. A walk after the note says what is to be done by itself."""
    session = night.open("l", "c", "2", "yesterday 10:00", "b", "1", "36.0")
    night.passes(60)
    typed(session, "1", "39.4", "p")
    assert not [block for block in session.page().blocks if block.role == "caution"]

    guide, now = session.walk.guide, night.moment
    cold = Observation("1", "x", "temperature", now - timedelta(hours=3), now, {"temperature": 36.0})
    later = Answer("danger", "none", at=now - timedelta(hours=1))
    assert worry_noted(guide, [cold], [], now) == cold
    assert worry_noted(guide, [cold], [later], now) is None


def test_a_walk_whose_care_was_ended_holds_up_no_plan(night: Night) -> None:
    """It was cold at birth and it was called about; ten days after its care was ended nobody is to phone for that."""
    session = night.open(*COLD, "l", "2", "4.2 kg")
    typed(session, "p")
    assert session.page().blocks[1].role == "caution"
    typed(session, "b")
    typed(session, "x", "x")
    night.passes(10 * 24 * 60)

    session = night.open()
    book = session.desk.keeping.book
    assert book is not None
    [lamb] = book.lambs()  # type: ignore[misc]
    take_up_last(session, lamb)
    session.open("plan")
    assert any(line.startswith("Plan for ") for line in texts(session))
    assert not [block for block in session.page().blocks if block.role == "caution"]


def test_a_page_that_is_looked_at_again_comes_before_the_plan(night: Night) -> None:
    """Until its look is done a lamb has the feeds of its last page: its plan says so, and no longer after that."""
    session = night.open("6", "39.3", "1", "5", "2h", "6", "4.2kg", "l", "p")
    assert session.walk.state.urgency == "watch"
    assert any(text.startswith("Its last page still holds: First milk now") for text in texts(session))

    typed(session, "b", "k", "p")
    assert not any(text.startswith("Its last page") for text in texts(session))
