"""The plan of one lamb to carry: its milk, what is due with boxes to tick, and room for its weights."""

from __future__ import annotations

from collections.abc import Iterator

from triage.clock import Now
from triage.page.inert import inert
from triage.paper.html import safe
from triage.paper.pieces import (
    BOX,
    INDENT,
    PAD,
    TURN,
    WIDE,
    Part,
    Piece,
    Rows,
    cell,
    head_of,
    listed,
    row,
    text,
    under_row,
    whole,
)
from triage.paper.setting import BODY, CELL, HEAD, LABEL, LEAD, NOTE, SMALL, STRONG, TITLE, lines_in
from triage.rearing import Plan
from triage.rearing.blocks import LATELY, dates_of, growth_lines, milk_lines, once_each
from triage.rearing.duties import Task
from triage.rearing.feeding import Milk
from triage.units import System, show

MILK = (36.0, 32.0, 18.0, 24.0, 26.0, 48.0)
MILK_HEADS = ("Its age", "Weight", "Feeds a day", "One feed", "In a day", "Powder and water for a day")
DUE = (40.0, 144.0)
WEIGHTS = (34.0, 30.0, 34.0, 86.0)
BLANK_ROWS = 8
"""Empty rows to write weights in: as many as there are weeks until it may be weaned, and more."""

MOST_WEIGHED = 6
"""The last weighings that stand above them."""

BLANK_HIGH = 9.0
GUESSED = "A weight with a ? is expected, not weighed. Weigh it, and print the plan again."


def title_of(plan: Plan) -> str:
    """Return the title of a lamb's plan."""
    return f"Plan for {inert(plan.lamb.name, 40)}"


def plan_parts(plan: Plan, now: Now, system: System, phone: str = "") -> Iterator[Part]:
    """Yield the plan: how the lamb stands, its milk, what is due, and room for weights."""
    yield text(title_of(plan), TITLE, "h1")
    yield text(_born(plan, now), LEAD)
    if phone:
        yield text(f"Vet: {phone}", STRONG)
    if plan.lamb.ill:
        yield text(plan.lamb.ill, STRONG)
    yield whole(text(line, STRONG) for line in plan.missing)
    lines = (*milk_lines(plan), *growth_lines(plan, now, system))
    yield from (text(line, BODY) for line in lines)
    yield from _milk(plan)
    yield from _due(plan, now)
    yield from _weaning(plan)
    yield from _weights(plan, now, system)
    yield from _in_full(plan, now)


def _born(plan: Plan, now: Now) -> str:
    born = plan.lamb.born.astimezone(now.zone)
    about = "about " if plan.lamb.born_guessed else ""
    return f"Born {about}{born:%H:%M} on {born.day} {born:%b %Y}."


def _milk(plan: Plan) -> Iterator[Part]:
    """Yield the milk of each week from now on, with what is published under it."""
    ahead = [each for each in plan.milk if each.ends > plan.made]
    if not ahead:
        return
    yield text("Milk", HEAD, "h2", leads=True)
    yield Rows(MILK, head_of(MILK_HEADS, MILK, LABEL), tuple(map(_milk_row, ahead)), "even")
    if any(each.guessed for each in ahead):
        yield text(GUESSED, NOTE)


def _milk_row(milk: Milk) -> Piece:
    said = (
        (f"{milk.ages}", STRONG),
        (f"{milk.weight}{' ?' if milk.guessed else ''}", CELL),
        (str(milk.feeds), CELL),
        (milk.each, STRONG),
        (milk.day, CELL),
        (milk.mix, NOTE),
    )
    made = row([cell(words, style, width) for (words, style), width in zip(said, MILK, strict=True)])
    return under_row(made, text(f"{milk.dates}. {milk.published}".strip(), SMALL), len(MILK))


def _still(plan: Plan) -> tuple[Task, ...]:
    """Return the duties that are not over."""
    return tuple(task for task in plan.tasks if (task.ends or task.begins + LATELY) >= plan.made)


def _due(plan: Plan, now: Now) -> Iterator[Part]:
    """Yield a line for each duty that is not over, with a box for each of its days."""
    still = _still(plan)
    tasks = once_each(still)
    if not tasks:
        return
    yield text("What is due", HEAD, "h2", leads=True)
    rows = tuple(_line(task, [each for each in still if each.duty is task.duty], now) for task in tasks)
    yield Rows(DUE, head_of(("When", "Tick it when it is done"), DUE, LABEL), rows)


def _line(task: Task, again: list[Task], now: Now) -> Piece:
    width = DUE[1] - PAD
    what = [_ticked([task.title], STRONG.name, width)]
    if len(again) > 1:
        what.append(_ticked([dates_of(each, now) for each in again], CELL.name, width))
    when = cell(f"{len(again)} times" if len(again) > 1 else dates_of(task, now), STRONG, DUE[0])
    return row((when, Piece("".join(each.html for each in what), sum(each.high for each in what))))


def _in_full(plan: Plan, now: Now) -> Iterator[Part]:
    """Yield each duty with what to do, what to mind, and what the law says."""
    tasks = once_each(_still(plan))
    if not tasks:
        return
    yield TURN
    yield text("How it is done", HEAD, "h2", leads=True)
    yield Rows(
        DUE,
        head_of(("When", "What to do, and what to mind"), DUE, LABEL),
        tuple(_task(each, now) for each in tasks),
    )


def _task(task: Task, now: Now) -> Piece:
    width = DUE[1] - PAD
    what = [text(task.title, STRONG, width=width), listed(task.do, CELL, "-", width)]
    if task.cautions:
        what.append(listed(task.cautions, CELL, "!", width))
    if task.why:
        what.append(text(f"Why: {task.why}", NOTE, width=width))
    what += [text(line, NOTE, width=width) for line in task.law]
    when = cell(dates_of(task, now), CELL, DUE[0])
    return row((when, Piece("".join(each.html for each in what), sum(each.high for each in what))))


def _ticked(said: list[str], style: str, width: float) -> Piece:
    """Return words with a box before each, one behind the other."""
    html = " &ensp; ".join(f'<span class="tick">{BOX} {safe(each)}</span>' for each in said)
    if len(said) == 1:
        html = f"{BOX}&nbsp; {safe(said[0])}"
        count = lines_in(said[0], STRONG, width - INDENT)
        return Piece(f'<p class="{style}">{html}</p>', count * STRONG.line + STRONG.after)
    count = lines_in(" ".join(f"MMM{each.replace(' ', '_')}" for each in said), CELL, width)
    return Piece(f'<p class="{style}">{html}</p>', count * CELL.line)


def _weaning(plan: Plan) -> Iterator[Part]:
    """Yield the three signs of weaning, each with a box."""
    signs = [sign.line for sign in plan.weaning.signs]
    yield whole(
        (
            text("Ready to be weaned? All three", HEAD, "h2"),
            listed(signs, BODY, "box"),
            text(f"Today: {plan.weaning.line}", NOTE),
        )
    )


def _weights(plan: Plan, now: Now, system: System) -> Iterator[Part]:
    """Yield the last weights, and empty rows for those to come."""
    heads = ("Day", "Weight", "Gained since", "Dung, belly, joints, and what else was seen")
    rows = []
    for when, kilos in plan.lamb.weighed[-MOST_WEIGHED:]:
        here = when.astimezone(now.zone)
        said = (f"{here.day} {here:%b}", show(kilos, "kg", system), "", "")
        rows.append(row([cell(each, CELL, width) for each, width in zip(said, WEIGHTS, strict=True)]))
    empty = row([cell("", CELL, width) for width in WEIGHTS], tall=BLANK_HIGH)
    yield text("Its weights", HEAD, "h2", width=WIDE, leads=True)
    yield Rows(WEIGHTS, head_of(heads, WEIGHTS, LABEL), (*rows, *(empty,) * BLANK_ROWS), "grid")
