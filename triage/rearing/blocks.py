"""A plan as blocks of a page: what counts today first, then what comes, then all of it."""

from __future__ import annotations

from datetime import datetime, timedelta

from triage.clock import Now, at_clock
from triage.page.inert import inert
from triage.page.page import CERTAINTY_WORDS, Block
from triage.rearing.duties import Task, done
from triage.rearing.feeding import Milk
from triage.rearing.plan import DAY, OVERFED, Plan
from triage.units import System, show

LATELY = timedelta(days=7)
"""A duty without an end stays in view for so long after it began."""

MOST = 9
"""Duties that have a digit on the page of today; more stand in the whole plan."""

NEXT = 2
"""Of these so many are kept for what is not due yet, however much is due."""

WAIT = "These wait until it is well, unless a vet or its page of the guide says otherwise."

BACK = "Go back to these feeds."

UNBORN = "By this clock it is not born yet. Put right the clock, or its time of birth on its card."

WARNING = "Care, not a diagnosis. Your vet, the law and the label come first."


def today_blocks(plan: Plan, now: Now, system: System) -> tuple[Block, ...]:
    """Return what counts today: milk, what is due or next, then growth and weaning, and what lacks."""
    shown = [Block("heading", f"Plan for {inert(plan.lamb.name, 40)}"), *_ill(plan)]
    shown += [Block("body", text) for text in milk_lines(plan, system)]
    shown += [Block("blank", ""), Block("label", "Due now, and next")]
    shown += [Block("body", WAIT)] if plan.lamb.ill else []
    shown += [
        Block("choice", f"{task.title}: {when(task, now)}", str(number))
        for number, task in enumerate(chosen(plan), 1)
    ]
    shown.append(Block("blank", ""))
    shown += [Block("body", text) for text in growth_lines(plan, now, system)]
    if may_wean(plan):
        digit = str(len(chosen(plan)) + 1)
        shown.append(Block("choice", "It has had its last milk: write down that it is weaned", digit))
    shown += [Block("label", text) for text in plan.missing]
    return (*shown, Block("blank", ""), Block("quiet", WARNING))


def may_wean(plan: Plan) -> bool:
    """Whether weaning is near enough to be written down: the digit after those of the duties does it."""
    return plan.weaning_near and bool(plan.weaning.signs)


def _ill(plan: Plan) -> list[Block]:
    return [Block("caution", plan.lamb.ill, "!")] if plan.lamb.ill else []


def milk_lines(plan: Plan, system: System) -> list[str]:
    """Return today's milk as sentences."""
    row = plan.milk_now
    if plan.made < plan.lamb.born:
        return [UNBORN]
    if plan.lamb.weaned:
        return [plan.weaning.line]
    if row is None:
        return ["It is past the milk of this plan."]
    ready = ["It may be weaned: see below. Until you stop, its milk is this."] if plan.weaning.ready else []
    return [*ready, milk_line(row), *_drunk(plan, system), *([row.published] if row.published else [])]


def _drunk(plan: Plan, system: System) -> list[str]:
    """Return what it drank in the last day, as it was written down, and whether that is too much."""
    fed = [ml for at, ml in plan.lamb.fed if plan.made - at < DAY]
    if not fed:
        return []
    feeds = f"{len(fed)} feed{'' if len(fed) == 1 else 's'}"
    told = f"Written down for the last day: {show(sum(fed), 'ml', system)} in {feeds}."
    if not plan.overfed:
        return [told]
    # A sick lamb may be one that must have nothing by mouth: its page alone says how it is fed.
    return [f"{told} {OVERFED}" if plan.lamb.ill else f"{told} {OVERFED} {BACK}"]


def growth_lines(plan: Plan, now: Now, system: System) -> list[str]:
    """Return how it grows, what its feed is enough for, and how it stands to weaning once that is near."""
    lines = [plan.growth.line(now, system)] if plan.growth else []
    # First milk is not milk powder: its day is fed by the clock and the scale, and not by this sum.
    if plan.lamb.hours(plan.made) >= 24 and plan.energy.given and not plan.lamb.weaned:
        lines.append(plan.energy.line(system, milk_alone=plan.weaning_near and not plan.lamb.eaten))
        # The figures for wet and wind are those of small lambs with little wool.
        young = not plan.weaning_near
        if young and plan.energy_outside.only_alive and not plan.energy.only_alive:
            lines.append("Out in cold wet wind all day this would not keep it going. Bring it in.")
    if plan.weaning_near and plan.weaning.signs:
        lines += [sign.line for sign in plan.weaning.signs]
        lines.append(plan.weaning.line)
    return lines


def milk_line(row: Milk) -> str:
    """Return the milk of some days as a sentence."""
    weight = f"{'expected ' if row.guessed else ''}weight {row.weight}"
    mix = f": {row.mix}" if row.mix else ""
    return f"{row.ages}, {weight}: {row.feeds} feeds of {row.each}, {row.day} a day{mix}."


def chosen(plan: Plan) -> tuple[Task, ...]:
    """Return the duties that are due now, those first that end first, and what comes next.

    What is done on every day for weeks would else stand before a vaccine that has days, and hide what comes.
    """
    now, most = plan.made, MOST - 1 if may_wean(plan) else MOST
    tasks = [task for task in plan.tasks if not done(task, plan.lamb.weighed)]
    due = sorted((task for task in tasks if is_due(task, now)), key=_over)
    later = [task for task in tasks if task.begins > now]
    shown = due[: most - min(len(later), NEXT)]
    return (*shown, *later[: most - len(shown)])


def _over(task: Task) -> datetime:
    return task.ends or task.begins + LATELY


def is_due(task: Task, now: datetime) -> bool:
    """Whether a duty has begun and is not over."""
    return task.begins <= now <= _over(task)


def when(task: Task, now: Now) -> str:
    """Return when a duty is due, in words as short as can be."""
    if task.ends and is_due(task, now.moment):
        return f"now, until {_when(task.ends, task, now)}"
    return f"{'from ' if is_due(task, now.moment) else ''}{dates_of(task, now)}"


def dates_of(task: Task, now: Now) -> str:
    """Return the dates of a duty: `18 Dec`, or `18 Dec to 19 Feb`."""
    begins = _when(task.begins, task, now)
    if not task.ends:
        return begins
    ends = _when(task.ends, task, now)
    same_day = task.timed and begins.rpartition(" ")[0] == ends.rpartition(" ")[0]
    return f"{begins} to {ends.rpartition(' ')[2] if same_day else ends}"


def _when(moment: datetime, task: Task, now: Now) -> str:
    here = moment.astimezone(now.zone)
    day = f"{here.day} {here:%b}"
    return f"{day} {at_clock(moment, now.zone)}" if task.timed else day


def _begun(words: str) -> str:
    return words[:1].upper() + words[1:]


def task_blocks(task: Task, now: Now) -> tuple[Block, ...]:
    """Return one duty in full."""
    shown = [Block("heading", task.title), Block("label", _begun(when(task, now)))]
    shown += [Block("step", text, str(number)) for number, text in enumerate(task.do, 1)]
    if task.why:
        shown += [Block("blank", ""), Block("body", task.why)]
    if task.cautions:
        shown += [Block("blank", ""), Block("label", "Take care")]
        shown += [Block("caution", text, "!") for text in task.cautions]
    if task.law:
        shown += [Block("blank", ""), *(Block("body", text) for text in task.law)]
    certain = CERTAINTY_WORDS.get(task.duty.certainty, "")
    return (*shown, Block("blank", ""), Block("quiet", f"{certain} Sources: {', '.join(task.duty.sources)}."))


def whole_blocks(plan: Plan, now: Now, system: System) -> tuple[Block, ...]:
    """Return the whole plan, from the first hour on."""
    lamb = plan.lamb
    born = lamb.born.astimezone(now.zone)
    shown = [Block("heading", f"Plan for {inert(lamb.name, 40)}")]
    about = "about " if lamb.born_guessed else ""
    shown.append(
        Block("body", f"Born {about}{born:%H:%M} on {born.day} {born:%b %Y}. Edition {plan.edition}.")
    )
    shown += _ill(plan)
    shown += [Block("label", text) for text in plan.missing]
    shown += [Block("body", text) for text in (*milk_lines(plan, system), *growth_lines(plan, now, system))]
    shown += [Block("blank", ""), Block("label", "Milk")]
    for row in plan.milk:
        shown.append(Block("body", f"{row.dates}: {milk_line(row)}"))
    for task in once_each(plan.tasks):
        shown += [Block("blank", ""), Block("label", f"{task.title}: {_dates(task, plan, now)}")]
        shown += [Block("body", text) for text in task.do]
        shown += [Block("caution", text, "!") for text in task.cautions]
        shown += [Block("body", text) for text in task.law]
    return (*shown, Block("blank", ""), Block("quiet", WARNING))


def once_each(tasks: tuple[Task, ...]) -> tuple[Task, ...]:
    """Return the first time of each duty: one that comes again is told once, with its other days."""
    first: dict[str, Task] = {}
    for task in tasks:
        first.setdefault(task.duty.name, task)
    return tuple(first.values())


def _dates(task: Task, plan: Plan, now: Now) -> str:
    again = [each for each in plan.tasks if each.duty.name == task.duty.name]
    if len(again) == 1:
        return when(task, now)
    return ", ".join(_when(each.begins, each, now) for each in again)
