"""`triage walk`: the guide for one lamb, on a full screen, in plain lines, or by a file of answers."""

from __future__ import annotations

import gc
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain, open_guide, read_for_use, say, units_here, units_of
from triage.page.ascii import can_show, to_ascii

if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable
    from collections.abc import Set as AbstractSet

    from triage.guide.model import Guide
    from triage.guide.wanted import Part
    from triage.session import Session
    from triage.session.desk import House
    from triage.units import System
    from triage.walk import Walk


def run_walk(parsed: argparse.Namespace) -> int:
    """Open the guide: full screen where there is one, plain lines elsewhere."""
    if full_screen() and not parsed.plain and not parsed.answers:
        return walk_screen(parsed)
    guide = open_guide(parsed.guide, replay=parsed.answers is not None)
    if isinstance(guide, Exit):
        return guide
    if wrong := no_such_way(guide, parsed):
        return wrong
    if parsed.answers:
        return walk_answers(guide, parsed, units_here(parsed))
    return walk_plain(guide, parsed)


def open_session(guide: Guide, parsed: argparse.Namespace, house: House) -> Session:
    """Begin a session: at the lambs in care where there are any, else at the danger signs."""
    from triage.clock import Now
    from triage.commands.house import anyone_in_care
    from triage.session import Session
    from triage.ways_in import begin

    vet = parsed.vet or os.environ.get("TRIAGE_VET", "")
    walk = begin(guide, parsed.about or "", Now.read().moment)
    session = Session(walk, units_of(parsed, house.holding), vet, house=house)
    if anyone_in_care(house) and not parsed.about:
        session.open("lambs")
    return session


def no_such_way(guide: Guide, parsed: argparse.Namespace) -> int:
    """Complain of a matter that the guide can't begin with; 0 where there is nothing wrong."""
    from triage.ways_in import matter

    finding = matter(guide)
    if not parsed.about or (finding and parsed.about in finding.choices):
        return Exit.FINE
    ways = f"It begins with: {', '.join(finding.choices)}." if finding else "It has one way in."
    complain(f"This guide has nothing about '{parsed.about[:40]}'. {ways}")
    return Exit.UNREADABLE


def full_screen() -> bool:
    """Whether a full screen can be drawn: all three streams are a terminal that can move its cursor."""
    streams = (sys.stdin, sys.stdout, sys.__stderr__)  # the screen library draws on the last one
    return all(each is not None and each.isatty() for each in streams) and os.environ.get("TERM") not in (
        None,
        "",
        "dumb",
    )


def walk_screen(parsed: argparse.Namespace) -> int:
    """Walk on the full screen."""
    came = on_screen(parsed, frozenset(), lambda guide: no_such_way(guide, parsed), open_session)
    if isinstance(came, Exit):
        return came
    return keep_record(came.whole, parsed.record, came.system)


def on_screen(
    parsed: argparse.Namespace,
    also: AbstractSet[Part],
    wrong_with: Callable[[Guide], int],
    opened: Callable[[Guide, argparse.Namespace, House], Session],
) -> Session | Exit:
    """Show a session on the full screen; a child process reads the guide and the holding meanwhile.

    What is not to be opened, `wrong_with` complains of. The session comes back as the person left it.
    """
    from triage.guide.ahead import read_ahead
    from triage.holding.found import find_holding

    gc.disable()  # nothing is thrown away on the way to the first question, so there is nothing to collect
    from triage.commands.house import open_house  # what the child needs as well is loaded once

    taken = read_ahead(lambda: (read_for_use(parsed.guide, also), find_holding()))
    from triage.screens.app import run_app

    read, found = taken()
    guide = open_guide(parsed.guide, read)
    if isinstance(guide, Exit):
        return guide
    if wrong := wrong_with(guide):
        return Exit(wrong)
    session = opened(guide, parsed, open_house(parsed, found))
    run_app(session, lambda walk: keep_record(walk, parsed.record, session.system))
    return session


def walk_plain(guide: Guide, parsed: argparse.Namespace) -> int:
    """Walk in plain lines, from a terminal or a pipe."""
    from triage.commands.house import open_house

    session = open_session(guide, parsed, open_house(parsed))
    session.desk.house.ask &= sys.stdin.isatty()
    if not in_lines(session):
        keep_record(session.whole, parsed.record, session.system)
        return Exit.INTERRUPTED
    if not session.whole.finished:
        complain(f"Stopped before an end was reached. {_still_to_do(session.whole)}")
    return keep_record(session.whole, parsed.record, session.system)


def _still_to_do(walk: Walk) -> str:
    """Return what holds where a walk was left half way: a call that was given stands."""
    urgency = walk.guide.urgency(walk.state.urgency) if walk.state.urgency else None
    if urgency and urgency.opens:
        return f"{urgency.say}: that still stands."
    return "If the lamb gets worse, phone your vet."


def in_lines(session: Session) -> bool:
    """Show a session as lines of text until the person leaves; whether it was not cut off."""
    from triage import plain

    def read(prompt: str) -> str:
        # input() itself may put its prompt on stderr, where nobody may be looking.
        print(prompt if can_show(sys.stdout.encoding) else to_ascii(prompt), end="", flush=True)
        _wait_for_a_line(lambda: plain.ring(session, say))
        typed = input()
        if not sys.stdin.isatty():
            say(typed)
        return typed

    width = (os.get_terminal_size().columns if sys.stdout.isatty() else 0) or 76
    try:
        plain.run(session, read, say, width)
    except KeyboardInterrupt:
        say()
        return False
    say()
    return True


def _wait_for_a_line(meanwhile: Callable[[], None]) -> None:
    """Wait until a person has typed a line, and look at the clock each second; at once for a pipe."""
    import select

    if sys.platform == "win32" or not sys.stdin.isatty():
        return
    while not select.select([sys.stdin], [], [], 1.0)[0]:
        meanwhile()


def walk_answers(guide: Guide, parsed: argparse.Namespace, system: System) -> int:
    """Walk by a file of answers and print where it ends."""
    from datetime import date

    from triage.answers import Stopped, follow, read_answers
    from triage.clock import Now
    from triage.entry import AnswerReader
    from triage.page.lines import lay_out
    from triage.page.page import page_of
    from triage.ways_in import begin

    try:
        text = parsed.answers.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", "") or "it is not UTF-8 text"
        complain(f"The answers can't be read: {parsed.answers}: {why}.")
        return Exit.UNREADABLE
    answers = read_answers(text, str(parsed.answers), guide)
    if isinstance(answers, list):
        for problem in answers:
            complain(str(problem))
        return Exit.PROBLEMS
    start, reader = begin(guide, parsed.about or ""), AnswerReader(guide, system, Now.read())
    came = follow(start, answers, reader, parsed.unsure_rest, complain)
    if isinstance(came, Stopped):
        complain(came.why)
        return Exit.PROBLEMS
    page = page_of(came, system, today=date.today())
    if page.urgency:
        say(f"** {page.urgency.say}" + (f" ({page.because})" if page.because else ""))
    for line in lay_out(page, 76):
        say(line.text)
    return keep_record(came, parsed.record, system)


def keep_record(walk: Walk, path: Path | None, system: System) -> int:
    """Write the record if one was asked for; when the disk refuses, print it so nothing is lost."""
    if path is None:
        return Exit.FINE
    from triage.record import as_text, write_record

    try:
        write_record(walk, system, path)
    except OSError as error:
        complain(f"The record could not be written to {path}: {error.strerror or error}. Here it is:")
        print(as_text(walk, system), end="")
        return Exit.UNREADABLE
    return Exit.FINE
