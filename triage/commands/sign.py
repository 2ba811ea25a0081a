"""`triage sign`: read the guidance, statement by statement, and stand behind it or object to it."""

from __future__ import annotations

import argparse
from itertools import groupby
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, add_plain, complain, say

if TYPE_CHECKING:
    from triage.commands.reviewed import Reviewed
    from triage.review.queue import Due
    from triage.review.signing import Signer, Signing
    from triage.session import Session
    from triage.session.desk import House
    from triage.session.signing import SigningRoom, Telling


def add_sign(command: argparse.ArgumentParser) -> None:
    """Add the arguments of `triage sign`."""
    from triage.review.queue import EVENING
    from triage.review.sittings import ROLES

    command.add_argument(
        "what", nargs="*", help="topics, or statements such as number/severe-chill; else what is most due"
    )
    command.add_argument("--by", default="", metavar="NAME", help="who signs")
    command.add_argument("--as", dest="role", choices=ROLES, default="", help="as what")
    command.add_argument("--licence", default=None, metavar="NUMBER", help="licence or registration, if any")
    command.add_argument(
        "--minutes", type=float, default=EVENING, metavar="N", help="how long this sitting is"
    )
    command.add_argument(
        "--queue", action="store_true", help="print what is to be read next, and sign nothing"
    )
    command.add_argument("--code", default="", metavar="CODE", help="sign one topic as it was read on paper")
    add_plain(command)
    command.set_defaults(run=run_sign, unkept=True, about="", record=None)


def run_sign(parsed: argparse.Namespace) -> int:
    """Sign in a sitting, by the code of a printed topic, or print what is due."""
    from triage.commands.reviewed import read_reviewed

    reviewed = read_reviewed(parsed)
    if isinstance(reviewed, Exit):
        return reviewed
    if parsed.code:
        return _sign_paper(parsed, reviewed)
    queue = _queue(parsed, reviewed)
    if isinstance(queue, Exit):
        return queue
    if parsed.queue or not queue:
        return _print_queue(queue, reviewed, parsed.minutes)
    return _sit(parsed, reviewed, queue)


def _queue(parsed: argparse.Namespace, reviewed: Reviewed) -> tuple[Due, ...] | Exit:
    """Return what is to be read: what was asked for, or as much of what is due as fits an evening."""
    from triage.problems import nearest
    from triage.review.codes import keys_of
    from triage.review.queue import evening

    due = reviewed.queue
    if not parsed.what:
        return evening(due, parsed.minutes)
    wanted: set[str] = set()
    for name in parsed.what:
        if name in reviewed.guide.topics:
            wanted.update(keys_of(reviewed.statements, reviewed.guide, name))
        elif name in reviewed.statements:
            wanted.add(name)
        else:
            known = [*reviewed.guide.topics, *reviewed.statements]
            complain(f"There is no topic or statement '{name[:60]}'{nearest(name, known)}.")
            return Exit.UNREADABLE
    return tuple(each for each in due if each.key in wanted)


def _print_queue(queue: tuple[Due, ...], reviewed: Reviewed, minutes: float) -> Exit:
    from triage.review.queue import RISKS
    from triage.review.standing import counted

    say(reviewed.review.words)
    for (why, risk), grouped in groupby(queue, key=lambda each: (each.why, each.risk)):
        say(f"\n{why.capitalize()}; {RISKS[risk]}:")
        for each in grouped:
            title = reviewed.statements[each.key].title
            say(f"  {each.key}: {title if len(title) < 70 else f'{title[:68]}..'}")
    asked, rest = sum(each.minutes for each in queue), sum(each.minutes for each in reviewed.queue)
    due = f"{len(reviewed.queue):,} are due in all, about {rest / 60:.0f} hours."
    say(f"\n{counted(len(queue))}, about {max(1, asked):.0f} min. {due}")
    return Exit.FINE


def _sit(parsed: argparse.Namespace, reviewed: Reviewed, queue: tuple[Due, ...]) -> Exit:
    """Show the queue, statement by statement, on a full screen or in lines."""
    from triage.commands.house import open_house
    from triage.commands.walk import full_screen, in_lines
    from triage.session.signing import told

    room = _room(parsed, reviewed, queue, open_house(parsed))
    if full_screen() and not parsed.plain:
        from triage.screens.app import run_app

        run_app(room.session, lambda walk: None)
        status = Exit.FINE
    else:
        status = Exit.FINE if in_lines(room.session) else Exit.INTERRUPTED
    if room.signing:
        say(told(room.signing))
        if room.signing.why_not:
            complain(
                f"NOT written: {room.signing.why_not}. What was decided since the last writing is not signed."
            )
            return Exit.UNREADABLE
    return status


def _room(
    parsed: argparse.Namespace, reviewed: Reviewed, queue: tuple[Due, ...], house: House
) -> SigningRoom:
    from datetime import date

    from triage.commands.shared import units_of
    from triage.review.signing import Signing, plain
    from triage.session import Session
    from triage.session.signing import SigningRoom
    from triage.walk import Walk

    house.ask = False
    house.notes.clear()  # nothing of a walk is kept here, as there is none
    session = Session(Walk(reviewed.guide), units_of(parsed, house.holding), parsed.vet or "", house=house)

    def begin(signer: Signer) -> Signing:
        edition, today = reviewed.guide.front.edition, date.today().isoformat()
        return Signing(reviewed.review, queue, signer, reviewed.folder, today, edition)

    licence = plain(parsed.licence) if parsed.licence is not None else None
    room = SigningRoom(session, begin, _teller(reviewed), plain(parsed.by), parsed.role, licence)
    session.desk.open(room)
    return room


def _teller(reviewed: Reviewed) -> Telling:
    """Return what tells a statement: its page, why its editor changed it, and what was there before."""
    from triage.page.page import Block
    from triage.page.wall import Wall
    from triage.reading.pages import statement_blocks

    why = reviewed.reasons

    def tell(key: str, session: Session) -> tuple[Block, ...]:
        told = [Block("caution", f"Why it was changed: {why[key]}", "!")] if key in why else []
        told += [Block("caution", line, "!") for line in reviewed.differing.get(key, ())]
        return (*statement_blocks(Wall(reviewed.guide, session.system), key), *told)

    return tell


def _sign_paper(parsed: argparse.Namespace, reviewed: Reviewed) -> Exit:
    """Sign one topic as it was printed, by the code that stands on it."""
    from datetime import date

    from triage.review.codes import code, keys_of
    from triage.review.signing import plain, write_sitting
    from triage.review.sittings import Sitting, file_of

    by, topic = plain(parsed.by), parsed.what[0] if len(parsed.what) == 1 else ""
    if topic not in reviewed.guide.topics or not by or not parsed.role:
        complain("Say which topic, who, and as what: triage sign cold --code 1a2b-3c4d --by NAME --as vet")
        return Exit.UNREADABLE
    keys = keys_of(reviewed.statements, reviewed.guide, topic)
    now = code(keys, reviewed.review.seals)
    if parsed.code.strip().lower() != now:
        complain(f"What was printed with the code {parsed.code[:20]} is not what '{topic}' says now ({now}).")
        complain("Nothing is signed. Print it anew, and read what has changed.")
        return Exit.PROBLEMS
    seals = {key: reviewed.review.seals[key] for key in keys}
    edition, today = reviewed.guide.front.edition, date.today().isoformat()
    sitting = Sitting(by, parsed.role, today, edition, seals, licence=plain(parsed.licence or ""))
    file = file_of(sitting, reviewed.folder)
    if why := write_sitting(sitting, file):
        complain(f"It could not be written: {why}. Nothing is signed.")
        return Exit.UNREADABLE
    say(f"{sitting.who}: {len(keys)} statements of '{topic}' signed as printed. It is in {file}.")
    return Exit.FINE
