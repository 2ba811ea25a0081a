"""The plan of a lamb on paper: all that is due, with boxes, and the figures of the plan itself."""

from __future__ import annotations

from typing import Any

import pytest
from pytest_snapshot.plugin import Snapshot

from tests.paper.made import FOOT, of_class, parsed, rows, texts, words
from tests.rearing.lambs import lamb, now, shipped, weighed
from triage.paper.plan import BLANK_ROWS, plan_parts, title_of
from triage.paper.record import ON_CARD, record_parts
from triage.paper.sheets import sheets_of
from triage.rearing import Plan, plan_of
from triage.rearing.blocks import LATELY, dates_of, once_each
from triage.rearing.duties import Task
from triage.units import System

SYSTEMS: tuple[System, ...] = ("metric", "us")
RAM = {"keep-as": "ram", "tail": "dock"}
WETHER = {"keep-as": "wether", "tail": "dock"}


def made(days: float, system: System = "metric", **known: Any) -> tuple[Plan, Any]:
    plan = plan_of(shipped(), lamb(**known), now(days), system)
    return plan, parsed(sheets_of(title_of(plan), plan_parts(plan, now(days), system), FOOT, "a4"))


def still(plan: Plan) -> list[Task]:
    """What is not over; a duty without an end or another day stands for good."""
    return [
        task
        for task in plan.tasks
        if (task.ends or task.begins + LATELY) >= plan.made or not (task.ends or task.duty.every)
    ]


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("days", [0.1, 15.0, 60.0])
def test_everything_that_is_not_over_is_due_on_paper(days: float, system: System) -> None:
    """Each duty with its days, what to do, its cautions, its reason, and the law in full."""
    plan, page = made(days, system, known=WETHER, law="england-wales")
    said = words(page)

    for task in once_each(tuple(still(plan))):
        again = [each for each in still(plan) if each.duty is task.duty]
        assert all(dates_of(each, now(days)) in said for each in again)
        for text in (task.title, *task.do, *task.cautions, task.why, *task.law):
            assert " ".join(text.split()) in said
    over = {task.title for task in plan.tasks} - {task.title for task in still(plan)}
    assert not over & set(texts(page, "p"))


def test_each_duty_has_a_box_for_each_of_its_days() -> None:
    """One for the duty itself, and where it comes again one for each day; three for weaning."""
    plan, page = made(2, known=RAM)
    tasks = once_each(tuple(still(plan)))
    again = sum(1 for task in still(plan) if sum(each.duty is task.duty for each in still(plan)) > 1)

    assert len(of_class(page, "box")) == len(tasks) + again + len(plan.weaning.signs)


@pytest.mark.parametrize("system", SYSTEMS)
def test_the_milk_is_that_of_the_plan(system: System) -> None:
    """Each week from now on: weight, feeds, one feed, the day, the mix, and what is published."""
    plan, page = made(15, system, weighed=weighed((0, 4.0), (14, 6.1)))
    found = [row for row in rows(page) if len(row) == 6][1:]
    ahead = [row for row in plan.milk if row.ends > plan.made]

    assert len(found) == len(ahead) > 3
    for milk, cells in zip(ahead, found, strict=True):
        weight = f"{milk.weight} ?" if milk.guessed else milk.weight
        assert cells == [milk.ages, weight, str(milk.feeds), milk.each, milk.day, milk.mix]
        assert f"{milk.dates}. {milk.published}".strip() in words(page)


def test_what_the_plan_lacks_and_the_law_that_is_not_known_are_told() -> None:
    """A plan made of guesses says so at its top, and that the law is to be checked."""
    plan, page = made(0.5, weighed=(), bag=None, born_guessed=True, known=WETHER)
    said = words(page)

    assert plan.missing
    assert all(line in said for line in plan.missing)
    assert "Born about" in said
    assert "Check your law" in said


def test_growth_and_weaning_stand_on_it() -> None:
    """The growth between weighings in words, and each sign of weaning with a box."""
    plan, page = made(50, weighed=weighed((0, 4.0), (42, 12.5), (49, 13.9)))
    said = words(page)

    assert plan.growth is not None
    assert plan.growth.line(now(50), "metric") in said
    assert all(sign.line in said for sign in plan.weaning.signs)
    assert plan.weaning.line in said


def test_there_is_an_empty_column_for_weights() -> None:
    """The last weighings, and under them empty rows to write in."""
    _, page = made(15, weighed=weighed((0, 4.0), (7, 5.2), (14, 6.1)))
    found = [row for row in rows(page) if len(row) == 4]

    assert [row[1] for row in found[1:4]] == ["4 kg", "5.2 kg", "6.1 kg"]
    assert [row for row in found[4:] if row != found[0]] == [["", "", "", ""]] * BLANK_ROWS


def test_the_plan_reads_as_it_was_approved(snapshot: Snapshot) -> None:
    """Headings, paragraphs, list items and rows of an invented lamb's plan, in their order."""
    _, page = made(15, known=RAM, law="england-wales", weighed=weighed((0, 4.0), (7, 5.2), (14, 6.1)))
    lines = [
        f"{each.tag.rpartition('}')[2]}: {words(each)}".rstrip()
        for each in page.iter()
        if isinstance(each.tag, str) and each.tag.rpartition("}")[2] in ("h1", "h2", "p", "li")
    ]
    snapshot.snapshot_dir = "tests/snapshots/paper"
    snapshot.assert_match("\n".join(lines) + "\n", "plan.txt")


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_record_has_room_for_all_that_a_vet_asks(system: System) -> None:
    """Its card, warmth, weight, feeds and dung in the reader's units, and the vet's words, all empty."""
    page = parsed(sheets_of("Lamb record", record_parts(system), FOOT, "letter"))
    said = words(page)

    assert all(label in said for pair in ON_CARD for label in pair)
    assert ("Warmth, \u00b0F" in said) == (system == "us")
    for label in (
        "Dung, urine",
        "Fed: what, how much",
        "What the vet said",
        "Who spoke, and when",
        "Ordered by",
    ):
        assert label in said
    assert sum(not any(row) for row in rows(page)) >= 20
