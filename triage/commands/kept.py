"""The commands about kept lambs: list them, tell one's story, hand it over, its looks, move it."""

from __future__ import annotations

import argparse
import os
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain, open_guide, say, units_of

if TYPE_CHECKING:
    from triage.casebook.book import Casebook
    from triage.casebook.rows import Lamb, Look
    from triage.clock import Now
    from triage.guide.model import Guide
    from triage.session import Session


MOST_LOOKS = 1000

SHORT = 8
"""Signs of a lamb's number that are shown; as many as tell it from the others may be typed."""


def add_kept(
    commands: argparse._SubParsersAction[argparse.ArgumentParser], shared: Callable[..., None]
) -> None:
    """Add the commands about kept lambs."""
    for name, help_text, run in (
        ("lambs", "list the lambs in care, and what is due", run_lambs),
        ("lamb", "tell a lamb's whole story", run_lamb),
        ("handover", "tell what to say to the vet about a lamb", run_handover),
        ("looks", "list the looks that are set, or write them to a calendar", run_looks),
        ("export", "write a lamb with all that is kept of it to a file", run_export),
        ("import", "take a lamb from such a file into the casebook", run_import),
    ):
        command = commands.add_parser(name, help=help_text)
        shared(command)
        command.set_defaults(run=run)
        _arguments(name, command)


def _arguments(name: str, command: argparse.ArgumentParser) -> None:
    if name in ("lamb", "handover", "export"):
        command.add_argument("lamb", help="its name, or the beginning of it")
    if name == "lambs":
        command.add_argument("--all", action="store_true", help="those that need no more care, too")
    if name == "handover":
        command.add_argument("--paper", type=Path, metavar="FILE", help="write a page to print to FILE")
    if name == "looks":
        command.add_argument("--calendar", type=Path, metavar="FILE", help="write them to FILE as iCalendar")
    if name == "export":
        command.add_argument("--out", type=Path, metavar="FILE", required=True, help="the file to write")
    if name == "import":
        command.add_argument("file", type=Path, help="a file that `triage export` wrote")


def _book(parsed: argparse.Namespace) -> Casebook | None:
    """Open the casebook, or say why that can't be done."""
    from triage.casebook.failing import NotKept
    from triage.commands.house import casebook_at

    opened = casebook_at(parsed.casebook)
    if isinstance(opened, NotKept):
        complain(f"The casebook can't be opened: {opened.why}.")
        return None
    if opened.told:
        complain(opened.told)
    return opened.book


def _lamb(book: Casebook, name: str) -> Lamb | None:
    """Find a lamb by its name, or the beginning of it; say so when there is none, or more than one."""
    from triage.casebook.failing import NotKept
    from triage.page.inert import inert
    from triage.problems import nearest

    lambs = book.lambs()
    if isinstance(lambs, NotKept):
        complain(f"The casebook can't be read: {lambs.why}.")
        return None
    wanted = name.strip().lower()
    exact = [lamb for lamb in lambs if wanted in (lamb.name.strip().lower(), lamb.id)]
    found = exact or [lamb for lamb in lambs if lamb.name.strip().lower().startswith(wanted)]
    if not found and len(wanted) >= SHORT:
        found = [lamb for lamb in lambs if lamb.id.startswith(wanted)]
    if len(found) == 1:
        return found[0]
    if found:
        complain(f"More than one lamb is called that. Give its number instead of '{inert(name, 40)}':")
        for lamb in found:
            begun = f"begun {lamb.added.astimezone():%Y-%m-%d %H:%M}"
            complain(f"  {inert(lamb.id[:SHORT])}  {inert(lamb.name, 40)}, {begun}")
        return None
    meant = nearest(wanted, {inert(lamb.name, 40).lower() for lamb in lambs})
    complain(f"No lamb is called '{inert(name, 40)}'{meant or '.'} `triage lambs --all` lists them.")
    return None


def open_session(parsed: argparse.Namespace, guide: Guide | Exit | None = None) -> Session | Exit:
    """Begin a session on the casebook, so that a command tells what the screen tells.

    `guide` is the one that is open already, where there is one.
    """
    from triage.commands.house import open_house
    from triage.holding.place import Nowhere, casebook_file
    from triage.session import Session
    from triage.walk import Walk

    guide = guide or open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    place = casebook_file()
    if parsed.casebook is None and not isinstance(place, Nowhere):
        parsed.casebook = place  # a kept lamb is told whole, also by another guide
    parsed.unkept = False
    house = open_house(parsed)
    for note in house.notes:
        complain(note)
    if house.keeping.book is None:
        complain(f"The casebook can't be opened: {house.keeping.why_not}.")
        return Exit.UNREADABLE
    vet = parsed.vet or os.environ.get("TRIAGE_VET", "")
    return Session(Walk(guide), units_of(parsed, house.holding), vet, house=house)


def at_lamb(parsed: argparse.Namespace, guide: Guide | None = None) -> Session | Exit:
    """Begin a session at the last walk of the lamb that was named."""
    from triage.session.resuming import take_up_last

    session = open_session(parsed, guide)
    if isinstance(session, Exit):
        return session
    book = session.desk.keeping.book
    lamb = _lamb(book, parsed.lamb) if book else None
    if lamb is None:
        return Exit.PROBLEMS
    take_up_last(session, lamb)
    return session


def _print(session: Session) -> None:
    from triage.page.lines import lay_out

    for line in lay_out(session.page(), 76):
        say(line.text)


def run_lambs(parsed: argparse.Namespace) -> int:
    """List the lambs in care as the opening list does, or all lambs."""
    from triage.session.lambs import every_line, lines_in_care

    session = open_session(parsed)
    if isinstance(session, Exit):
        return session
    for line in every_line(session) if parsed.all else lines_in_care(session):
        say(line)
    return Exit.FINE


def run_lamb(parsed: argparse.Namespace) -> int:
    """Tell a lamb's whole story."""
    session = at_lamb(parsed)
    if isinstance(session, Exit):
        return session
    session.open("lamb")
    _print(session)
    return Exit.FINE


def run_handover(parsed: argparse.Namespace) -> int:
    """Tell what to say to the vet, or write it as a page to print."""
    from triage.handover.paper import paper_of
    from triage.handover.text import text_of
    from triage.session.vet import VetRoom
    from triage.whole_file import write_whole

    session = at_lamb(parsed)
    if isinstance(session, Exit):
        return session
    room = VetRoom(session)
    if parsed.paper:
        write_whole(paper_of(room.handover(), *room.heads()), parsed.paper)
        say(f"Written to {parsed.paper}.")
    else:
        say(text_of(room.handover(), room.heads()[0]).rstrip())
    return Exit.FINE


def run_looks(parsed: argparse.Namespace) -> int:
    """List the looks that are set, the first due first, or write them as a calendar."""
    from triage.casebook.failing import NotKept
    from triage.clock import Now
    from triage.looks import look_words
    from triage.page.inert import inert

    book = _book(parsed)
    if book is None:
        return Exit.UNREADABLE
    looks, now = book.looks(MOST_LOOKS), Now.read()
    if isinstance(looks, NotKept):
        complain(f"The casebook can't be read: {looks.why}.")
        return Exit.UNREADABLE
    for _, name, look in looks:
        say(f"{inert(name, 40)}: {look_words(look, now)}")
    if not looks:
        say("No look is set.")
    if parsed.calendar:
        _write_calendar(looks, now, parsed.calendar)
    return Exit.FINE


def _write_calendar(looks: tuple[tuple[str, str, Look], ...], now: Now, file: Path) -> None:
    from triage.calendars import WARNING, calendar_of
    from triage.whole_file import write_bytes_whole

    if not looks:
        say("So no calendar is written.")
        return
    write_bytes_whole(calendar_of(looks, now.moment), file)
    say(f"Written to {file}. {WARNING}")


def run_export(parsed: argparse.Namespace) -> int:
    """Write a lamb with all that is kept of it to a file."""
    from triage.casebook.failing import NotKept
    from triage.moving.export import exported
    from triage.whole_file import write_whole

    session = at_lamb(parsed)
    if isinstance(session, Exit):
        return session
    desk = session.desk
    assert desk.keeping.book is not None
    assert desk.keeping.lamb is not None
    edition, now = desk.guide.front.edition, desk.clock().moment
    text = exported(desk.keeping.book, desk.keeping.lamb, edition, now)
    if isinstance(text, NotKept):
        complain(f"The casebook can't be read: {text.why}.")
        return Exit.UNREADABLE
    write_whole(text, parsed.out)
    say(f"Written to {parsed.out}.")
    return Exit.FINE


def run_import(parsed: argparse.Namespace) -> int:
    """Take a lamb from a file into the casebook, whole or not at all."""
    from triage.casebook.failing import NotKept
    from triage.moving.reading import BIGGEST, Refused, read_moved
    from triage.moving.taking import take_in
    from triage.page.inert import inert

    with parsed.file.open("rb") as file:
        moved = read_moved(file.read(BIGGEST + 1))
    if isinstance(moved, Refused):
        complain(f"{parsed.file} was not taken: {inert(moved.why, 300)}. The casebook is as it was.")
        return Exit.PROBLEMS
    book = _book(parsed)
    if book is None:
        return Exit.UNREADABLE
    taken = take_in(book, moved)
    if isinstance(taken, NotKept):
        complain(f"It could not be kept: {taken.why}. The casebook is as it was.")
        return Exit.UNREADABLE
    who = inert(moved.lamb.name, 40)
    walks = f"{taken.cases} walk{'' if taken.cases == 1 else 's'}"
    notes = f"{taken.observations} note{'' if taken.observations == 1 else 's'}"
    there = f" {taken.there} were there already, and stay as they are." if taken.there else ""
    card = "" if taken.new_lamb else " Its card here stays as it is."
    say(f"{who}: {walks} and {notes} taken in.{there}{card}")
    return Exit.FINE
