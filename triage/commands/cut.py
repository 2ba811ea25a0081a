"""`triage cut`: keep what an edition says, once it is checked and each of its changes explained."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain, say

if TYPE_CHECKING:
    from triage.guide.model import Guide


def add_cut(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command to its parser."""
    parser.add_argument("folder", nargs="?", type=Path, help="a knowledge folder; the shipped one if none")
    parser.set_defaults(run=run_cut, version=False)


def run_cut(parsed: argparse.Namespace) -> int:
    """Cut an edition: 0 when done, 1 with everything that stands against it, 2 when it can't be written."""
    from triage.commands.check import checked_folder
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide
    from triage.problems import errors

    folder = parsed.folder or parsed.guide or knowledge_root()
    if not isinstance(folder, Path):
        complain("No edition was cut: the shipped guide is packed and can't be changed; name a folder.")
        return Exit.UNREADABLE
    read = read_guide(folder)
    if read.unreadable:
        complain(read.unreadable)
        return Exit.UNREADABLE
    checked = checked_folder(folder, read)
    if read.guide is None or errors(checked.problems):
        for problem in checked.problems:
            complain(str(problem))
        complain("No edition was cut. Mend what is above, then cut it again.")
        return Exit.PROBLEMS
    return _cut(folder, read.guide)


def _cut(folder: Path, guide: Guide) -> int:
    from triage.guide.files import digest_of
    from triage.review.editions import moved_since, read_cut, write_cut
    from triage.review.proved import write_proved
    from triage.review.sittings import read_sittings
    from triage.review.standing import Review
    from triage.review.statements import seals_of, statements_of

    statements = statements_of(guide)
    seals, before = seals_of(statements), read_cut(folder)
    digest = digest_of(folder)
    try:
        write_proved(folder, digest or "", seals)
        write_cut(folder, guide.front.edition, statements.values())
    except OSError as error:
        complain(f"The edition could not be written to {folder}: {error.strerror or error}.")
        return Exit.UNREADABLE
    moved = moved_since(before, statements).all if before else ()
    since = f"; {len(moved):,} changed since edition {before.edition}" if before and moved else ""
    say(f"Edition {guide.front.edition} is cut: {len(statements):,} statements{since}.")
    say(Review(seals, read_sittings(folder)[0]).words)
    return Exit.FINE
