"""`triage plan`: how a lamb is raised from its first hour until it is weaned, with dates and amounts."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from triage.commands.kept import at_lamb
from triage.commands.shared import Exit, complain, open_guide, say, units_of

if TYPE_CHECKING:
    from triage.clock import Now
    from triage.guide.model import Guide
    from triage.rearing import Plan
    from triage.units import System


OWN_CALENDAR = (
    "Bring it into a calendar of its own. A later file changes what is there and doubles nothing, but it "
    "takes nothing out: where the plan now goes another way, as with vaccines, empty that calendar first."
)


class Made(NamedTuple):
    """A plan, and all that it was made by."""

    plan: Plan
    guide: Guide
    now: Now
    system: System


def add_plan(command: argparse.ArgumentParser) -> None:
    """Add the arguments of `triage plan`."""
    command.add_argument(
        "told", nargs="*", metavar="LAMB or finding=value", help="a kept lamb, or age=10d ..."
    )
    command.add_argument("--calendar", type=Path, metavar="FILE", help="write it to FILE as iCalendar")
    command.add_argument(
        "--missed", type=int, default=0, metavar="N", help="so many feeds in a row were missed"
    )
    command.set_defaults(run=run_plan)


def run_plan(parsed: argparse.Namespace) -> int:
    """Print the plan of a kept lamb, or of one that is told of on the line."""
    made = made_for(parsed, parsed.told)
    if isinstance(made, Exit):
        return made
    status = _missed(made, parsed.missed) if parsed.missed else _told_whole(made)
    if parsed.calendar:
        _calendar(made, parsed.calendar)
    return status


def _told_whole(made: Made) -> Exit:
    """Print the whole plan."""
    from triage.page.lines import lay_out
    from triage.page.page import Page
    from triage.rearing.blocks import whole_blocks

    for line in lay_out(Page("side", "Raising it", whole_blocks(made.plan, made.now, made.system)), 76):
        say(line.text)
    return Exit.FINE


def made_for(parsed: argparse.Namespace, told: list[str]) -> Made | Exit:
    """Return the plan of the lamb that words on the line tell of."""
    if told and "=" not in told[0]:
        if len(told) > 1:
            complain("A kept lamb has its own answers: write them down on its page, and leave them out here.")
            return Exit.UNREADABLE
        parsed.lamb = told[0]
        return _kept(parsed)
    return _told(parsed, told)


def _kept(parsed: argparse.Namespace) -> Made | Exit:
    session = at_lamb(parsed)
    if isinstance(session, Exit):
        return session
    from triage.session.plan import PlanRoom, with_duties

    plan = PlanRoom(session).plan()
    if isinstance(plan, str):
        complain(plan)
        return Exit.PROBLEMS
    desk = session.desk
    return Made(plan, with_duties(desk.guide), desk.clock(), desk.system)


def _told(parsed: argparse.Namespace, told: list[str]) -> Made | Exit:
    guide = open_guide(parsed.guide, also={"rearing"})
    if isinstance(guide, Exit):
        return guide
    from triage.clock import Now
    from triage.holding.found import find_holding
    from triage.holding.holding import Holding
    from triage.rearing import plan_of
    from triage.rearing.telling import lamb_told

    read = find_holding().read
    holding = read.holding if read else Holding()
    now, system = Now.read(), units_of(parsed, holding)
    lamb = lamb_told(guide, told, holding, now, system)
    if isinstance(lamb, str):
        complain(lamb)
        return Exit.UNREADABLE
    if not guide.duties:
        complain("This guide has no raising plan.")
        return Exit.PROBLEMS
    for note in lamb[1]:
        say(note)
    return Made(plan_of(guide, lamb[0], now, system), guide, now, system)


def _missed(made: Made, missed: int) -> Exit:
    """Say what to do after missed feeds."""
    from triage.rearing.missed import after_missed
    from triage.rearing.reared import Basis

    row = made.plan.milk_now
    if row is None or missed < 0:
        complain(
            "It has no milk feeds now by its plan." if row is None else "Give how many feeds were missed."
        )
        return Exit.PROBLEMS
    for line in after_missed(Basis(made.guide, made.plan.lamb, made.now, made.system), row, missed):
        say(line)
    return Exit.FINE


def _calendar(made: Made, file: Path) -> None:
    from triage.calendars import WARNING
    from triage.rearing.calendar import calendar_of_plan
    from triage.whole_file import write_bytes_whole

    write_bytes_whole(calendar_of_plan(made.plan, made.now), file)
    say(f"Written to {file}. {WARNING}")
    say(OWN_CALENDAR)
