"""`triage check`: prove that a guide holds together, and report what does not, in one of several forms."""

from __future__ import annotations

import argparse
import gc
from typing import TYPE_CHECKING

from triage.commands.reporting import give_report
from triage.commands.shared import Exit, complain

if TYPE_CHECKING:
    from pathlib import Path

    from triage.check.report.checked import Checked
    from triage.guide.find import Folder
    from triage.guide.model import Read

REPORTS = ("text", "json", "sarif")
"""Named here as well as where they are made, so that no other command loads them."""


def run_check(parsed: argparse.Namespace) -> int:
    """Check a guide: 0 when sound, 1 with every problem and its place, 2 when it can't be read."""
    from triage.check.report import REPORTS
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide
    from triage.holding.place import own_folder

    gc.disable()  # nothing is thrown away until the report is out, so there is nothing to collect
    folder = parsed.folder or parsed.guide or knowledge_root()
    own = parsed.own or (None if parsed.folder or parsed.guide else own_folder())
    read = read_guide(folder, own=own)
    if read.unreadable:
        complain(read.unreadable)
        return Exit.UNREADABLE
    checked = checked_folder(folder, read, own)
    text = REPORTS[parsed.report](checked)
    if not give_report(text, parsed.report, parsed.out):
        return Exit.UNREADABLE
    if checked.sound:
        return Exit.FINE
    wrong = len(checked.wrong)
    complain(f"{wrong} problem{'' if wrong == 1 else 's'} found.")
    if read.guide is None:
        complain("No walk was proved: mend what can't be read first, then check again.")
    return Exit.PROBLEMS


def checked_folder(folder: Folder, read: Read, own: Path | None = None) -> Checked:
    """Return what came of checking a guide: the proof, its upkeep, and what an own folder does to it."""
    from datetime import date

    from triage.check import check_parts, prove
    from triage.check.report.checked import Checked
    from triage.review.upkeep import upkeep

    if read.guide is None:
        parts = check_parts(read.part) if read.part else []
        return Checked.of(str(folder), (*read.problems, *parts))
    if own:
        return _checked_with(folder, read, own)
    proof = prove(read.guide, two=True)
    kept = upkeep(folder, read.guide, date.today())
    return Checked.of(str(folder), (*read.problems, *proof.problems, *kept), read.guide, proof.tally)


def _checked_with(folder: Folder, read: Read, own: Path) -> Checked:
    """Return what came of checking a guide that an own folder was laid over."""
    from datetime import date

    from triage.check import prove
    from triage.check.report.checked import Checked
    from triage.guide.kept import in_other_words
    from triage.guide.read import read_guide
    from triage.own.judging import judged
    from triage.review.upkeep import upkeep

    whole, base = in_other_words(read, own, another_language=False).guide, read_guide(folder).guide
    if base is None or whole is None or read.guide is None:
        return Checked.of(f"{folder} with {own}", read.problems)
    proof = prove(whole, two=True)
    kept = upkeep(folder, base, date.today())
    problems = (*read.problems, *proof.problems, *judged(base, read.guide, own), *kept)
    return Checked.of(f"{folder} with {own}", problems, whole, proof.tally)
