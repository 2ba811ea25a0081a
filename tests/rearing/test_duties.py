"""Duties with dates: for whom, from when to when, and under whose law."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.rearing.lambs import at, basis, lamb, now, shipped, weighed
from triage.clock import Now
from triage.facts import UNSURE, Value
from triage.holding.fields import LAWS
from triage.rearing import Plan, plan_of
from triage.rearing.blocks import MOST, NEXT, UNBORN, chosen, growth_lines, is_due, milk_lines
from triage.rearing.duties import NO_LAW, Task, tasks_of

WHOLE_DAY = datetime(2026, 3, 22, tzinfo=UTC)
"""The first day on which no hour is in the first 24 of a lamb born at 2:00 on 20 March."""


def tasks(law: str = "", **known: Any) -> dict[str, Task]:
    answers: dict[str, Value] = {name.replace("_", "-"): value for name, value in known.items()}
    return {task.key: task for task in tasks_of(basis(lamb(known=answers, law=law), 1))}


def test_the_order_is_that_of_the_days() -> None:
    """What begins first stands first."""
    begins = [task.begins for task in tasks_of(basis(lamb(), 1))]

    assert begins == sorted(begins)


def test_the_first_milk_deadline() -> None:
    """First milk is due until four hours old, and then the call to open the guide, as long as it can help."""
    due = tasks()

    assert (due["first-milk"].begins, due["first-milk"].ends) == (at(0), at(0) + timedelta(hours=4))
    assert (due["first-milk-last-call"].begins, due["first-milk-last-call"].ends) == (
        at(0) + timedelta(hours=4),
        at(0) + timedelta(hours=24),
    )
    assert due["first-milk"].do[0].startswith("Give 200 ml of first milk within 2 hours.")
    assert due["first-milk"].timed


@pytest.mark.parametrize(("known", "first"), [
    ({"dam_vaccine": "covered"}, 42),
    ({"dam_vaccine": "uncovered"}, 21),
    ({"dam_vaccine": UNSURE}, 21),
    ({}, 21),
])  # fmt: skip
def test_vaccine_by_the_mother(known: dict[str, Any], first: int) -> None:
    """Without sure cover from its mother it is vaccinated sooner, and asked about before any ring."""
    due = tasks(**known)
    name = "vaccine-covered" if first == 42 else "vaccine-uncovered"

    assert due[name].begins == at(first)
    assert ("tetanus-cover" in due) == (first == 21)
    assert len([key for key in due if key.startswith("vaccine")]) == 2


@pytest.mark.parametrize(("keep", "keys"), [
    ("ram", {"ram-lamb", "ram-decide"}),
    ("wether", {"castrate"}),
    ("ewe", set()),
    (None, set()),
])  # fmt: skip
def test_what_it_is_kept_as(keep: str | None, keys: set[str]) -> None:
    """Only a ram lamb has the word on rams, only a wether is castrated; nobody is by default."""
    due = tasks(**({"keep_as": keep} if keep else {}))

    assert keys == due.keys() & {"ram-lamb", "ram-decide", "castrate"}


@pytest.mark.parametrize(("keep", "keys"), [
    ("ram", {"stones", "rams-apart"}),
    ("wether", {"castrate-late", "stones"}),
    ("ewe", set()),
    (UNSURE, {"decide", "stones", "rams-apart"}),
    (None, {"decide", "stones"}),
])  # fmt: skip
def test_what_a_male_needs(keep: Value | None, keys: set[str]) -> None:
    """Stones are minded in every male and in one not told of; who has not decided is told of the short window."""
    due = tasks(keep_as=keep) if keep else tasks()

    assert keys == due.keys() & {"castrate-late", "stones", "decide", "rams-apart"}


@pytest.mark.parametrize("law", LAWS)
def test_the_plan_is_stricter_than_any_law(law: str) -> None:
    """Where a law gives rings a longer time the plan still ends at six days, and what comes later shows the law."""
    due = tasks(law, keep_as="wether", tail="dock")

    assert due["castrate"].ends == due["dock"].ends == at(6)
    assert due["castrate-late"].begins == at(6)
    assert due["castrate-late"].law == due["castrate"].law


def test_no_dung_test_before_grass() -> None:
    """Dung is tested from six weeks on, every three; by the calendar alone nothing is drenched."""
    due = [task for task in tasks().values() if task.duty.name == "dung-test"]

    assert [task.begins for task in due] == [at(42), at(63), at(84)]
    assert any("calendar alone" in text for text in due[0].cautions)


def test_nothing_is_ringed_in_the_first_day() -> None:
    """Under every law, and under none, a ring begins on the first day that comes whole after 24 hours."""
    for law in ("", *LAWS):
        due = tasks(law, keep_as="wether", tail="dock")
        assert due["castrate"].begins == WHOLE_DAY
        assert due["dock"].begins == WHOLE_DAY


@pytest.mark.parametrize("law", ["", *LAWS])
def test_the_law_is_shown_and_to_be_checked(law: str) -> None:
    """Both duties say to check the law; where none is set that is said, and the strictest dates hold."""
    due = tasks(law, keep_as="wether", tail="dock")

    for task in (due["castrate"], due["dock"]):
        assert task.law[0].startswith("Check your law")
        assert task.ends is not None
        assert task.ends <= at(7)
        assert (shipped().laws[law].read in task.law[0]) if law else (task.law == (NO_LAW,))


@pytest.mark.parametrize(("law", "said"), [
    ("england-wales", "no ring at all for castration, not even with an anaesthetic"),
    ("scotland", "a ring only with a local anaesthetic"),
    ("northern-ireland", "We did not read the rule for castration"),
    ("ireland", "from memory only"),
    ("netherlands", "not even with pain relief"),
    ("canada", "an anaesthetic and pain relief past 42 days old"),
    ("new-zealand", "by a ring or a hot iron only"),
    ("australia", "differs by state"),
    ("united-states", "no federal law"),
])  # fmt: skip
def test_what_each_law_turns_on(law: str, said: str) -> None:
    """What would be broken by a keeper who read less: each law's own line on pain relief, or that it was not read."""
    assert said in " ".join(tasks(law, keep_as="wether")["castrate"].law)


def test_where_rings_are_forbidden() -> None:
    """In the Netherlands nothing is told of how a ring is put on, but that there is none; elsewhere nothing is."""
    dutch = tasks("netherlands", keep_as="wether", tail="dock")

    for task in (dutch["castrate"], dutch["dock"]):
        assert len(task.do) == 1
        assert task.do[0].startswith("No ring")
        assert task.cautions == ()
        assert any("Netherlands" in line for line in task.law)
    assert not any(text.startswith("No ring") for text in tasks("scotland", keep_as="wether")["castrate"].do)


def test_the_laws_of_a_holding_are_those_of_the_guide() -> None:
    """A holding can name each law that the guide tells of, and no other."""
    assert set(LAWS) == set(shipped().laws)


def test_a_duty_that_comes_again() -> None:
    """It is weighed at three days and then each week, each time under a key of its own."""
    due = [task for task in tasks().values() if task.duty.name == "weigh"]

    assert [task.key for task in due][:3] == ["weigh-1", "weigh-2", "weigh-3"]
    assert [task.begins for task in due] == [at(3 + 7 * week) for week in range(len(due))]
    assert at(83) < due[-1].begins <= at(90)


def test_amounts_are_those_of_the_lamb_at_that_age() -> None:
    """A heavier lamb has more in its first feed, and every name in braces is filled in."""
    heavy = tasks_of(basis(replace(lamb(), weighed=((at(0), 5.0),)), 1))

    assert next(task for task in heavy if task.key == "first-milk").do[0].startswith("Give 250 ml")
    for task in heavy:
        assert "{" not in "".join((task.title, *task.do, *task.cautions, task.why, *task.law))


def test_every_duty_has_what_stands_behind_it() -> None:
    """Each duty names its sources and how sure it is; what is dangerous has a caution."""
    duties = shipped().duties

    assert all(duty.sources and duty.certainty for duty in duties.values())
    assert all(
        duties[name].cautions for name in ("castrate", "dock", "ram-lamb", "creep", "first-milk", "wean")
    )
    assert all(duty.law for duty in duties.values() if duty.ring)


@pytest.mark.parametrize("days", [0.3, 3.0, 10.0, 22.0, 45.0, 75.0])
def test_what_has_few_days_left_stands_first(days: float) -> None:
    """Of what is due that which ends first is first, and two that come are never crowded out by daily ones."""
    plan = plan_of(shipped(), lamb(known={"keep-as": "wether", "tail": "dock"}), now(days), "metric")
    shown = chosen(plan)
    later = [task for task in shown if task.begins > plan.made]
    ends = [task.ends for task in shown[: len(shown) - len(later)] if task.ends]

    assert len(shown) <= MOST
    assert ends == sorted(ends)
    assert len(later) >= min(NEXT, sum(task.begins > plan.made for task in plan.tasks))


def test_the_first_vaccine_is_in_view_on_its_days() -> None:
    """At 22 days the vaccine of a lamb without cover has a digit, however much is done each day."""
    plan = plan_of(shipped(), lamb(known={"keep-as": "wether"}), now(22), "metric")

    assert "vaccine-uncovered" in [task.key for task in chosen(plan)][:5]


def test_unmeasured_dry_feed_is_no_hunger() -> None:
    """At six weeks milk alone keeps no lamb growing: it is asked what it eats, and not fed more milk."""
    known = lamb(weighed=weighed((45, 13.0)))
    lines = growth_lines(plan_of(shipped(), known, now(45), "metric"), now(45), "metric")

    assert any("measure what it eats in a day" in line for line in lines)
    assert not any("more feeds" in line for line in lines)


def test_before_its_birth_the_clock_is_doubted() -> None:
    """A clock that was set back makes a lamb unborn, and never one that is past its milk."""
    plan = plan_of(shipped(), lamb(), now(-1), "metric")

    assert milk_lines(plan, "metric") == [UNBORN]


@pytest.mark.parametrize("zone", ["Europe/London", "Pacific/Auckland", "America/New_York"])
def test_no_hour_of_the_day_of_a_ring_is_in_the_first_day_of_life(zone: str) -> None:
    """It is told by its day, and a phone rings at eight: a lamb born at night must be a day old by then."""
    here = ZoneInfo(zone)
    for hour in range(24):
        born = datetime(2026, 3, 28, hour, 30, tzinfo=here).astimezone(UTC)
        reared = lamb(born=born, known={"keep-as": "wether", "tail": "dock"})
        made = plan_of(shipped(), reared, Now(born, here), "metric")
        for task in (each for each in made.tasks if each.duty.ring):
            day = task.begins.astimezone(here).date()
            morning = datetime(day.year, day.month, day.day, tzinfo=here).astimezone(UTC)
            assert morning - born >= timedelta(hours=24), (task.key, hour)
            assert morning - born < timedelta(hours=49)


def planned(days: float) -> Plan:
    return plan_of(shipped(), lamb(), now(days), "metric")


def test_a_weighing_ends_the_call_for_it_until_the_next() -> None:
    """Weighed on its day, or the day before, it is not asked for again; a week later it is."""
    told = {
        day: [
            task.key for task in chosen(planned(day)) if task.duty.name == "weigh" and is_due(task, at(day))
        ]
        for day in (8, 15)
    }
    after, just, early = (
        plan_of(shipped(), lamb(weighed=weighed((0, 4.0), (day, 5.2))), now(8), "metric")
        for day in (3.5, 2, 1.9)
    )

    assert told == {8: ["weigh-1"], 15: ["weigh-2"]}
    asked = [any(task.key == "weigh-1" for task in chosen(plan)) for plan in (after, just, early)]
    assert asked == [False, False, True]
    assert [task for task in after.tasks if task.key == "weigh-2"]


def test_the_navel_is_still_asked_for_at_two_hours() -> None:
    """Past its best time it is due all the same, until the second dip takes its place."""
    born = next(task for task in planned(0).tasks if task.duty.name == "dry-and-navel")

    assert is_due(born, at(2 / 24))
    assert not is_due(born, at(7 / 24))
