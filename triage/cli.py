"""The command line: arguments, and what holds of every command; `commands/` has one module for each."""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any, cast

from triage.commands.shared import Exit, complain
from triage.commands.walk import run_walk

if TYPE_CHECKING:
    import argparse

NOTHING_ASKED: Mapping[str, Any] = {
    "run": run_walk,
    "version": False,
    "units": None,
    "guide": None,
    "vet": None,
    "casebook": None,
    "plain": False,
    "answers": None,
    "unsure_rest": False,
    "record": None,
    "unkept": False,
    "about": "",
}
"""What holds where nothing is given: the guide is opened at the danger signs."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command and return its exit status. No input of any kind gives a traceback."""
    _streams()
    given = list(sys.argv[1:] if arguments is None else arguments)
    parsed = _parsed(given)
    try:
        status = int(_version(parsed) if parsed.version else parsed.run(parsed))
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


def _parsed(given: Sequence[str]) -> argparse.Namespace:
    if given:
        return _parser().parse_args(given)
    # There is nothing to look for, and the guide opens a little sooner.
    return cast("argparse.Namespace", SimpleNamespace(**NOTHING_ASKED))


def _version(parsed: argparse.Namespace) -> int:
    from triage.commands.version import print_version

    return print_version(parsed)


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
    import argparse

    from triage.commands.shared import add_plain

    parser = argparse.ArgumentParser(
        prog="triage",
        description="A guide for a bummer lamb in trouble. First aid and care; not a diagnosis.",
        epilog="With no command it opens the guide at the danger signs.",
    )
    parser.add_argument("--version", action="store_true", help="print the version and the edition")
    _shared(parser)
    add_plain(parser)
    parser.set_defaults(**NOTHING_ASKED)
    _commands(parser.add_subparsers(title="commands", metavar="COMMAND"))
    return parser


def _commands(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    # Loaded where a command is given: the way to the first question needs none of them.
    from triage.commands.amounts import run_amounts
    from triage.commands.check import REPORTS, run_check
    from triage.commands.cupboard import add_cupboard
    from triage.commands.findings import run_findings
    from triage.commands.kept import add_kept
    from triage.commands.plan import add_plan
    from triage.commands.practice import add_practice
    from triage.commands.printing import add_print
    from triage.commands.schema import add_schema
    from triage.commands.setup import add_setup
    from triage.commands.shared import add_plain

    walk = commands.add_parser("walk", help="walk the guide for one lamb")
    _shared(walk)
    walk.add_argument("--about", default="", metavar="WHAT", help="what it is about, such as ewe or flock")
    add_plain(walk)
    walk.add_argument("--answers", type=Path, metavar="FILE", help="take answers from a YAML or JSON map")
    walk.add_argument("--unsure-rest", action="store_true", help="answer 'not sure' to what FILE lacks")
    walk.add_argument("--unkept", action="store_true", help="keep nothing of this walk")
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
    check.add_argument("--report", choices=REPORTS, default="text", help="how to tell what came of it")
    check.add_argument("--own", type=Path, metavar="FOLDER", help="with an own folder laid over it")
    check.add_argument("--out", type=Path, metavar="FILE", help="write the report to FILE")
    check.set_defaults(run=run_check, version=False)
    add_kept(commands, _shared)
    plan = commands.add_parser("plan", help="how a lamb is raised until it is weaned, with dates and amounts")
    _shared(plan)
    add_plan(plan)
    practice = commands.add_parser("practice", help="try the guide on invented lambs, before the first night")
    _shared(practice)
    add_practice(practice)
    printing = commands.add_parser("print", help="write pages to pin up in a store-room or to carry")
    _shared(printing)
    add_print(printing)
    add_setup(commands.add_parser("setup", help="keep your vet's number and the rest of this holding"))
    cupboard = commands.add_parser("cupboard", help="list what to have in the house, and what to buy first")
    add_cupboard(cupboard, _shared)
    add_schema(commands.add_parser("schema", help="write what an editor needs to check a guide as you type"))
    _reviewing(commands)


def _reviewing(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add what the guidance is read, changed and signed with."""
    from triage.commands.book import add_book
    from triage.commands.compare import add_compare
    from triage.commands.cut import add_cut
    from triage.commands.new import add_new
    from triage.commands.read import add_read
    from triage.commands.sign import add_sign

    read = commands.add_parser("read", help="read the guidance: topics, amounts, rules and all they rest on")
    _shared(read)
    add_read(read)
    book = commands.add_parser("book", help="write the whole guidance as one page, to walk without a program")
    _shared(book)
    add_book(book)
    add_compare(commands.add_parser("compare", help="tell what changed between two guides"))
    sign = commands.add_parser("sign", help="read the guidance to sign it, or to object to it")
    _shared(sign)
    add_sign(sign)
    add_new(commands.add_parser("new", help="begin a topic, a number, or a folder of your own"))
    add_cut(commands.add_parser("cut", help="keep what an edition says, once it is checked and explained"))


def _shared(parser: argparse.ArgumentParser) -> None:
    from argparse import SUPPRESS

    default = SUPPRESS if parser.prog != "triage" else None
    parser.add_argument(
        "--units", choices=("metric", "us"), default=default, help="unit system shown; both are understood"
    )
    parser.add_argument(
        "--guide", type=Path, metavar="FOLDER", default=default, help="another knowledge folder"
    )
    parser.add_argument(
        "--vet", metavar="NUMBER", default=default, help="the vet's number, kept in view (or TRIAGE_VET)"
    )
    parser.add_argument(
        "--casebook",
        type=Path,
        metavar="FILE",
        default=default,
        help="keep lambs in FILE, not in the usual place",
    )
    if parser.prog != "triage":
        parser.set_defaults(version=False)
