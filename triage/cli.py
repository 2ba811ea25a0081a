"""The command line: arguments, and one function for each command."""

from __future__ import annotations

import argparse
import gc
import io
import os
import sys
from collections.abc import Callable, Sequence
from enum import IntEnum
from pathlib import Path
from typing import TYPE_CHECKING

from triage.page.ascii import can_show, to_ascii

if TYPE_CHECKING:
    from triage.guide.model import Guide, Read
    from triage.units import System
    from triage.walk import Walk


class Exit(IntEnum):
    """What the exit status says."""

    FINE = 0
    """All is well."""
    PROBLEMS = 1
    """The guide, or a file of answers, has mistakes; each was printed."""
    UNREADABLE = 2
    """Something could not be read, written or understood."""
    INTERRUPTED = 130
    """Ctrl-C."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and return its exit status. No input of any kind gives a traceback."""
    _streams()
    parsed = _parser().parse_args(arguments)
    try:
        status = int(parsed.run(parsed))
        sys.stdout.flush()
    except KeyboardInterrupt:
        return Exit.INTERRUPTED
    except BrokenPipeError:
        # The reader has gone: point stdout at nothing, so that closing it says nothing either.
        _to_nowhere()
        return Exit.FINE
    except OSError as error:
        complain(f"Something could not be read or written: {error.strerror or error}.")
        _to_nowhere()
        return Exit.UNREADABLE
    return status


def _to_nowhere() -> None:
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _streams() -> None:
    """Give every stream something to read or write, and none a sign that it can't show."""
    sys.stdin = sys.stdin or open(os.devnull, encoding="utf-8")  # noqa: SIM115
    sys.stdout = sys.stdout or open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115
    sys.stderr = sys.stderr or open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115
    for stream in (sys.stdin, sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="triage",
        description="A guide for a bummer lamb in trouble. First aid and care; not a diagnosis.",
        epilog="With no command it opens the guide at the danger signs.",
    )
    parser.add_argument("--version", action="store_true", help="print the version and the edition")
    _shared(parser)
    parser.set_defaults(run=run_walk, plain=False, answers=None, unsure_rest=False, record=None)
    commands = parser.add_subparsers(title="commands", metavar="")
    walk = commands.add_parser("walk", help="walk the guide for one lamb")
    _shared(walk)
    walk.add_argument("--plain", action="store_true", help="lines of text only, one question at a time")
    walk.add_argument("--answers", type=Path, metavar="FILE", help="take answers from a YAML or JSON map")
    walk.add_argument("--unsure-rest", action="store_true", help="answer 'not sure' to what FILE lacks")
    walk.add_argument("--record", type=Path, metavar="FILE", help="write the walk to FILE as JSON")
    walk.set_defaults(run=run_walk)
    findings = commands.add_parser("findings", help="list everything the guide can ask")
    _shared(findings)
    findings.set_defaults(run=run_findings)
    amounts = commands.add_parser("amounts", help="list the sums, or work one out")
    _shared(amounts)
    amounts.add_argument("name", nargs="?", help="a sum, such as first-milk")
    amounts.add_argument("known", nargs="*", metavar="finding=value", help="such as weight=4.2kg age=3h")
    amounts.set_defaults(run=run_amounts)
    check = commands.add_parser("check", help="prove that a guide holds together")
    check.add_argument("folder", nargs="?", type=Path, help="a knowledge folder; the shipped one if none")
    check.set_defaults(run=run_check, version=False)
    return parser


def _shared(parser: argparse.ArgumentParser) -> None:
    default = argparse.SUPPRESS if parser.prog != "triage" else None
    parser.add_argument(
        "--units", choices=("metric", "us"), default=default, help="unit system shown; both are understood"
    )
    parser.add_argument(
        "--guide", type=Path, metavar="FOLDER", default=default, help="another knowledge folder"
    )
    parser.add_argument(
        "--vet", metavar="NUMBER", default=default, help="the vet's number, kept in view (or TRIAGE_VET)"
    )
    if parser.prog != "triage":
        parser.set_defaults(version=False)


def say(text: str = "") -> None:
    """Print a line for people, in ASCII where the output has no more."""
    print(text if can_show(sys.stdout.encoding) else to_ascii(text))


def complain(text: str) -> None:
    """Print a line about what went wrong, on stderr."""
    print(text if can_show(sys.stderr.encoding) else to_ascii(text), file=sys.stderr)


def units_of(parsed: argparse.Namespace) -> System:
    """Return the unit system asked for, or the one the locale uses."""
    if parsed.units:
        return "us" if parsed.units == "us" else "metric"
    place = os.environ.get("LC_ALL") or os.environ.get("LC_MEASUREMENT") or os.environ.get("LANG") or ""
    return "us" if place.startswith("en_US") else "metric"


def open_guide(folder: Path | None, taken: Callable[[], Read] | None = None) -> Guide | Exit:
    """Read a guide for use; a folder of the person's own must also pass the check.

    `taken` gives what was read ahead, where that was done.
    """
    read = taken() if taken else _read(folder)
    if read.unreadable:
        complain(f"The guide can't be opened: {read.unreadable}.")
        complain("If a lamb is in danger, phone your vet now.")
        return Exit.UNREADABLE
    problems = list(read.problems)
    if read.guide and folder:
        from triage.check import check

        problems += check(read.guide)
    if read.guide is None or (folder and any(each.weight == "error" for each in problems)):
        for problem in problems:
            complain(str(problem))
        complain("This guide has mistakes and is not safe to use until they are mended.")
        complain("If a lamb is in danger, phone your vet now.")
        return Exit.PROBLEMS
    return read.guide


def _read(folder: Path | None) -> Read:
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide

    return read_guide(folder or knowledge_root())


def run_walk(parsed: argparse.Namespace) -> int:
    """Open the guide: full screen where there is one, plain lines elsewhere."""
    if parsed.version:
        return print_version(parsed)
    system = units_of(parsed)
    vet = parsed.vet or os.environ.get("TRIAGE_VET", "")
    if full_screen() and not parsed.plain and not parsed.answers:
        return walk_screen(parsed, system, vet)
    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    if parsed.answers:
        return walk_answers(guide, parsed, system)
    return walk_plain(guide, parsed, system, vet)


def full_screen() -> bool:
    """Whether a full screen can be drawn: all three streams are a terminal that can move its cursor."""
    streams = (sys.stdin, sys.stdout, sys.__stderr__)  # the screen library draws on the last one
    return all(each is not None and each.isatty() for each in streams) and os.environ.get("TERM") not in (
        None,
        "",
        "dumb",
    )


def walk_screen(parsed: argparse.Namespace, system: System, vet: str) -> int:
    """Walk on the full screen. The guide is read beside the loading of the screen library."""
    from triage.guide.ahead import read_ahead
    from triage.guide.find import knowledge_root

    gc.disable()  # nothing is thrown away on the way to the first question, so there is nothing to collect
    taken = read_ahead(parsed.guide or knowledge_root())
    from triage.screens.app import run_app

    guide = open_guide(parsed.guide, taken)
    if isinstance(guide, Exit):
        return guide

    def keep(walk: Walk) -> int:
        return keep_record(walk, parsed.record, system)

    return keep(run_app(guide, system, vet, keep))


def walk_plain(guide: Guide, parsed: argparse.Namespace, system: System, vet: str) -> int:
    """Walk in plain lines, from a terminal or a pipe."""
    from triage import plain
    from triage.session import Session
    from triage.walk import Walk

    def read(prompt: str) -> str:
        # input() itself may put its prompt on stderr, where nobody may be looking.
        print(prompt if can_show(sys.stdout.encoding) else to_ascii(prompt), end="", flush=True)
        typed = input()
        if not sys.stdin.isatty():
            say(typed)
        return typed

    width = (os.get_terminal_size().columns if sys.stdout.isatty() else 0) or 76
    session = Session(Walk(guide), system, vet)
    try:
        plain.run(session, read, say, width)
    except KeyboardInterrupt:
        say()
        keep_record(session.whole, parsed.record, system)
        return Exit.INTERRUPTED
    say()
    if not session.whole.finished:
        complain("Stopped before an end was reached. If the lamb gets worse, phone your vet.")
    return keep_record(session.whole, parsed.record, system)


def walk_answers(guide: Guide, parsed: argparse.Namespace, system: System) -> int:
    """Walk by a file of answers and print where it ends."""
    from triage.answers import Stopped, follow, read_answers
    from triage.entry import AnswerReader, Now
    from triage.page.lines import lay_out
    from triage.page.page import page_of
    from triage.walk import Walk

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
    came = follow(Walk(guide), answers, AnswerReader(guide, system, Now.read()), parsed.unsure_rest, complain)
    if isinstance(came, Stopped):
        complain(came.why)
        return Exit.PROBLEMS
    page = page_of(came, system)
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


def run_findings(parsed: argparse.Namespace) -> int:
    """List every finding with its choices or its unit."""
    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    from triage.page.listing import finding_lines

    for line in finding_lines(guide, units_of(parsed)):
        say(line)
    return Exit.FINE


def run_amounts(parsed: argparse.Namespace) -> int:
    """List the sums, or work one out from findings given on the line."""
    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    from triage.page.listing import amount_lines, work_out

    if parsed.name is None:
        for line in amount_lines(guide):
            say(line)
        return Exit.FINE
    came = work_out(guide, parsed.name, parsed.known, units_of(parsed))
    if isinstance(came, str):
        complain(came)
        return Exit.UNREADABLE
    for line in came:
        say(line)
    return Exit.FINE


def run_check(parsed: argparse.Namespace) -> int:
    """Check a guide: 0 when sound, 1 with every problem and its place, 2 when it can't be read."""
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide
    from triage.problems import errors

    folder = parsed.folder or parsed.guide or knowledge_root()
    read = read_guide(folder)
    if read.unreadable:
        complain(read.unreadable)
        return Exit.UNREADABLE
    problems = list(read.problems)
    if read.guide:
        from triage.check import check

        problems += check(read.guide)
    for problem in problems:
        say(str(problem))
    wrong = len(errors(problems))
    if wrong or read.guide is None:
        complain(f"{wrong} problem{'' if wrong == 1 else 's'} found.")
        return Exit.PROBLEMS
    from triage.check import Tally

    for line in Tally.of(read.guide).lines():
        say(line)
    return Exit.FINE


def print_version(parsed: argparse.Namespace) -> int:
    """Print the program's version and the guide's edition."""
    import triage

    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    say(f"triage {triage.__version__}, guide edition {guide.front.edition} of {guide.front.date}")
    return Exit.FINE
