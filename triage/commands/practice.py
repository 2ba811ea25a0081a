"""`triage practice`: made-up lambs to try the guide on, on a full screen or in plain lines."""

from __future__ import annotations

import argparse
import os
from typing import TYPE_CHECKING

from triage.commands.shared import add_plain

if TYPE_CHECKING:
    from triage.commands.shared import Exit
    from triage.guide.model import Guide
    from triage.session import Session
    from triage.session.desk import House

MOST_MINUTES = 600.0


def add_practice(command: argparse.ArgumentParser) -> None:
    """Add the arguments of `triage practice`."""
    command.add_argument("helper", nargs="?", default="", help="who practises; asked for if not said")
    add_plain(command)
    command.add_argument(
        "--minutes", type=float, default=0.0, metavar="N", help="say so after so many minutes"
    )
    command.add_argument("--ready", action="store_true", help="print what each helper has shown")
    command.set_defaults(run=run_practice, unkept=False, about="", record=None)


def run_practice(parsed: argparse.Namespace) -> int:
    """Open practice, or print what each helper has shown."""
    from triage.commands.shared import Exit, open_guide
    from triage.commands.walk import full_screen, in_lines, on_screen

    if parsed.ready:
        from triage.commands.ready import print_ready

        return print_ready(parsed)
    if full_screen() and not parsed.plain:
        came = on_screen(parsed, {"proof", "practice"}, _nothing_to_practise, open_practice)
        return came if isinstance(came, Exit) else _leave(came, Exit.FINE)
    guide = open_guide(parsed.guide, also={"proof", "practice"})
    if isinstance(guide, Exit):
        return guide
    if wrong := _nothing_to_practise(guide):
        return wrong
    from triage.commands.house import open_house

    session = open_practice(guide, parsed, open_house(parsed))
    return _leave(session, Exit.FINE if in_lines(session) else Exit.INTERRUPTED)


def _leave(session: Session, status: Exit) -> Exit:
    """Write what could not be written before, and say what is lost if that fails again."""
    from triage.commands.shared import complain
    from triage.session.practice.who import WhoRoom

    for room in session.desk.rooms:
        if isinstance(room, WhoRoom) and room.school.learner:
            room.school.learner.flush()
            if told := room.school.unkept():
                complain(told)
    return status


def _nothing_to_practise(guide: Guide) -> Exit:
    from triage.commands.shared import Exit, complain

    if guide.farm and guide.deeds:
        return Exit.FINE
    complain("This guide has no practice: it lacks farm.yaml or deeds.yaml.")
    return Exit.PROBLEMS


def open_practice(guide: Guide, parsed: argparse.Namespace, house: House) -> Session:
    """Begin a session in the rooms of practice. A real lamb's look still rings."""
    from triage.commands.house import practice_book
    from triage.commands.shared import units_of
    from triage.session import Session
    from triage.session.practice.who import School, WhoRoom
    from triage.walk import Walk

    vet = parsed.vet or os.environ.get("TRIAGE_VET", "")
    house.ask = False
    book, told = practice_book(parsed)
    house.notes += [told] if told else []
    session = Session(Walk(guide), units_of(parsed, house.holding), vet, house=house)
    school = School(session, book, max(0.0, min(parsed.minutes, MOST_MINUTES)))
    if parsed.helper.strip():
        session.told = f"{session.told} {school.named(parsed.helper)}".strip()
    session.desk.open(WhoRoom(school))
    return session
