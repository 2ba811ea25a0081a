"""`triage print`: its arguments; the work is loaded when it is asked for."""

from __future__ import annotations

import argparse
from pathlib import Path

PAGES = {
    "plan": "the plan of one lamb, with boxes to tick: triage print plan blue",
    "danger": "the danger signs, with your vet's numbers and your place",
    "topic": "the sheet of one topic: triage print topic scours",
    "tables": "first milk and milk by weight",
    "cupboard": "what to have in the house",
    "record": "an empty record of a lamb, to write on",
    "all": "all of those, into a folder: triage print all --out pages",
    "leader": "cases to play aloud, answers on the back: triage print leader scours",
    "readiness": "who has met the pass mark in practice",
}
"""What can be printed."""


def add_print(command: argparse.ArgumentParser) -> None:
    """Add what `triage print` takes."""
    command.add_argument("what", nargs="?", help=", ".join(PAGES))
    command.add_argument(
        "name", nargs="?", help="the lamb of a plan, the topic of a sheet, or the topic or case to play"
    )
    command.add_argument(
        "--out", type=Path, metavar="FILE", help="the file to write, .html or .pdf; for all, the folder"
    )
    command.add_argument(
        "--paper", choices=("a4", "letter"), help="the paper; Letter where units are US, if not said"
    )
    command.set_defaults(run=run_print)


def run_print(parsed: argparse.Namespace) -> int:
    """Write one page, or all of them."""
    from triage.commands.shared import Exit, complain, say
    from triage.page.inert import inert
    from triage.problems import nearest

    if not parsed.what:
        say("What should be printed?")
        for name, about in PAGES.items():
            say(f"  {name}: {about}")
        return Exit.FINE
    if parsed.what not in PAGES:
        complain(f"There is no page '{inert(parsed.what, 40)}'{nearest(parsed.what, PAGES) or '.'}")
        complain(f"The pages are {', '.join(PAGES)}.")
        return Exit.UNREADABLE
    from triage.commands.pages import print_pages

    return print_pages(parsed)
