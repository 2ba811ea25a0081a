"""`triage read`: the guide as pages to read, on a full screen, in plain lines, or one page into a pipe."""

from __future__ import annotations

import argparse
import os
import sys
from typing import TYPE_CHECKING

from triage.commands.shared import add_plain

if TYPE_CHECKING:
    from triage.commands.shared import Exit
    from triage.guide.model import Guide
    from triage.session import Session
    from triage.session.desk import House

WIDE = 76


def add_read(command: argparse.ArgumentParser) -> None:
    """Add the arguments of `triage read`."""
    command.add_argument(
        "words",
        nargs="*",
        metavar="WORD",
        help="what to open or look for: triage read cold; triage read severe-chill",
    )
    add_plain(command)
    command.set_defaults(run=run_read, unkept=False, about="", record=None)


def run_read(parsed: argparse.Namespace) -> int:
    """Open the guide for reading, or print one page of it where nobody sits at a terminal."""
    from triage.commands.shared import Exit, open_guide
    from triage.commands.walk import full_screen, in_lines, on_screen
    from triage.guide.wanted import EVERYTHING

    if full_screen() and not parsed.plain:
        came = on_screen(parsed, EVERYTHING, lambda guide: Exit.FINE, open_reading)
        return came if isinstance(came, Exit) else Exit.FINE
    guide = open_guide(parsed.guide, also=EVERYTHING)
    if isinstance(guide, Exit):
        return guide
    if parsed.words and not parsed.plain and not sys.stdout.isatty():
        return _print(guide, parsed)
    from triage.commands.house import open_house

    return Exit.FINE if in_lines(open_reading(guide, parsed, open_house(parsed))) else Exit.INTERRUPTED


def open_reading(guide: Guide, parsed: argparse.Namespace, house: House) -> Session:
    """Begin a session in the contents, or at what was asked for. A lamb's look still rings."""
    from triage.commands.shared import units_of
    from triage.session import Session
    from triage.session.reading import reading_room
    from triage.walk import Walk

    house.ask = False
    vet = parsed.vet or os.environ.get("TRIAGE_VET", "")
    session = Session(Walk(guide), units_of(parsed, house.holding), vet, house=house)
    room = reading_room(session, alone=True)
    session.desk.open(room)
    if parsed.words and (told := room.look_for(" ".join(parsed.words))):
        session.told = f"{session.told} {told}".strip()
    return session


def _print(guide: Guide, parsed: argparse.Namespace) -> Exit:
    """Print the page of what was asked for, or what a search for it finds."""
    from triage.commands.shared import Exit, complain, say, units_here
    from triage.page.inert import inert
    from triage.reading.collection import Collection
    from triage.reading.search import Index, named
    from triage.reading.told import found_lines, key_lines

    collection, typed, system = Collection(guide), " ".join(parsed.words), units_here(parsed)
    key = named(collection, typed)
    found = () if key else Index(collection).find(typed)
    if not key and not found:
        complain(f"Nothing is found for '{inert(typed, 60)}'. Try another word for it.")
        return Exit.UNREADABLE
    key = key or (found[0] if len(found) == 1 else "")
    lines = (
        key_lines(collection, key, system, WIDE)
        if key
        else found_lines(collection, inert(typed, 60), found, system, WIDE)
    )
    for line in lines:
        say(line)
    return Exit.FINE
