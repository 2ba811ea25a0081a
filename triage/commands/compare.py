"""`triage compare OLD NEW`: what changed between two guides, what is less safe first."""

from __future__ import annotations

import argparse
import gc
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.reporting import give_report
from triage.commands.shared import Exit, complain, units_here

if TYPE_CHECKING:
    from triage.compare.report import Edition
    from triage.guide.find import Folder
    from triage.guide.model import Guide

REPORTS = ("text", "json", "page")
"""Named here as well as where they are made, so that no other command loads them."""

SHIPPED = "shipped"


def add_compare(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command to its parser."""
    what = f"a knowledge folder, or '{SHIPPED}' for the guide that ships with the program"
    parser.add_argument("old", metavar="OLD", help=what)
    parser.add_argument("new", metavar="NEW", help=what)
    parser.add_argument("--report", choices=REPORTS, default="text", help="how to tell what differs")
    parser.add_argument("--out", type=Path, metavar="FILE", help="write the report to FILE")
    parser.set_defaults(run=run_compare)


def run_compare(parsed: argparse.Namespace) -> int:
    """Compare two guides: 0 when nothing differs, 1 when anything does, 2 when that can't be told."""
    from triage.compare import compare
    from triage.compare.reasons import reasons_in
    from triage.compare.report import REPORTS, Compared

    gc.disable()  # nothing is thrown away until the report is out, so there is nothing to collect
    folders = [_folder(name) for name in (parsed.old, parsed.new)]
    editions = [
        _edition(name, folder) for name, folder in zip((parsed.old, parsed.new), folders, strict=True)
    ]
    if editions[0] is None or editions[1] is None:
        complain("Nothing was compared.")
        return Exit.UNREADABLE
    old, new = editions[0], editions[1]
    came = compare(old.guide, new.guide)
    reasons = reasons_in(folders[1], new.guide.front.edition)
    text = REPORTS[parsed.report](Compared(old, new, came, reasons, units_here(parsed)))
    if not give_report(text, parsed.report, parsed.out):
        return Exit.UNREADABLE
    return Exit.FINE if came.same else Exit.PROBLEMS


def _folder(name: str) -> Folder:
    from triage.guide.find import knowledge_root

    return knowledge_root() if name == SHIPPED else Path(name)


def _edition(name: str, folder: Folder) -> Edition | None:
    """Return a guide ready to be compared, or complain why it can't be."""
    from triage.check.structure import endless_loops, rounds
    from triage.compare.report import Edition
    from triage.guide.read import read_guide
    from triage.problems import errors

    read = read_guide(folder)
    if read.unreadable:
        complain(f"{name}: {read.unreadable}.")
        return None
    if read.guide is None:
        for problem in errors(read.problems):
            complain(f"{name}: {problem}")
        complain(f"{name}: this guide has mistakes and can't be read whole; mend what is above first.")
        return None
    endless = [*endless_loops(read.guide), *rounds(read.guide)]
    if endless:
        for problem in endless:
            complain(f"{name}: {problem}")
        complain(f"{name}: some walks through this guide never end, or nearly so, so it can't be compared.")
        return None
    return Edition(read.guide, name, _standing(folder, read.guide), _mistakes(name, read.guide))


def _mistakes(name: str, guide: Guide) -> int:
    """Return how many mistakes a guide has; the shipped one was checked before it was shipped."""
    if name == SHIPPED:
        return 0
    from triage.check import check
    from triage.problems import errors

    return len(errors(check(guide)))


def _standing(folder: Folder, guide: Guide) -> str:
    """Return how a guide stands with vets, in one sentence."""
    from triage.review.sittings import read_sittings
    from triage.review.standing import Review
    from triage.review.statements import seals_of, statements_of

    sittings, _ = read_sittings(folder)
    return Review(seals_of(statements_of(guide)) if sittings else {}, sittings).words
