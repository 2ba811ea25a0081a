"""What every command needs: exit statuses, lines for people, the unit system, a guide that may be used."""

from __future__ import annotations

import os
import sys
from enum import IntEnum
from pathlib import Path
from typing import TYPE_CHECKING

from triage.page.ascii import can_show, to_ascii
from triage.page.inert import inert

if TYPE_CHECKING:
    import argparse
    from collections.abc import Set as AbstractSet

    from triage.guide.model import Guide, Read
    from triage.guide.wanted import Part
    from triage.holding.holding import Holding
    from triage.units import System


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


def add_plain(parser: argparse.ArgumentParser) -> None:
    """Let `--plain` be given, before a command or behind it: what a command lacks is as it was before."""
    from argparse import SUPPRESS

    parser.add_argument("--plain", action="store_true", default=SUPPRESS, help="lines of text only")


def say(text: str = "", end: str = "\n") -> None:
    """Print a line for people, in ASCII where the output has no more."""
    print(text if can_show(sys.stdout.encoding) else to_ascii(text), end=end, flush=end != "\n")


def complain(text: str) -> None:
    """Print a line about what went wrong, on stderr."""
    print(text if can_show(sys.stderr.encoding) else to_ascii(text), file=sys.stderr)


def units_of(parsed: argparse.Namespace, holding: Holding | None = None) -> System:
    """Return the unit system asked for, or the holding's, or the one the locale uses."""
    if parsed.units:
        return "us" if parsed.units == "us" else "metric"
    if holding and holding.units:
        return holding.units
    place = os.environ.get("LC_ALL") or os.environ.get("LC_MEASUREMENT") or os.environ.get("LANG") or ""
    return "us" if place.startswith("en_US") else "metric"


def units_here(parsed: argparse.Namespace) -> System:
    """Return the unit system for a command that needs nothing else of the holding."""
    from triage.holding.found import find_holding

    read = None if parsed.units else find_holding().read
    return units_of(parsed, read.holding if read else None)


def open_guide(
    folder: Path | None, read: Read | None = None, replay: bool = False, also: AbstractSet[Part] = frozenset()
) -> Guide | Exit:
    """Read a guide for use; a folder of the person's own must also pass the check.

    `read` is what was read ahead, where that was done. With `replay` a guide that can be read is
    opened all the same, with a warning: a file of answers shows its maker where it goes wrong. `also`
    names what is read beside what a walk goes by.
    """
    ahead = read is not None
    read = read or read_for_use(folder, also)
    if read.unreadable:
        complain(f"The guide can't be opened: {read.unreadable}.")
        complain("If a lamb is in danger, phone your vet now.")
        return Exit.UNREADABLE
    problems = list(read.problems)
    if read.guide and folder:
        from triage.check import check

        problems += check(read.guide)
    if read.guide is None or (folder and any(each.weight == "error" for each in problems)):
        if read.guide and replay:
            complain("This guide has mistakes; 'triage check' tells them. Not for a lamb in need.")
            return read.guide
        for problem in problems:
            complain(str(problem))
        complain("This guide has mistakes and is not safe to use until they are mended.")
        complain("If a lamb is in danger, phone your vet now.")
        return Exit.PROBLEMS
    known = read.guide.known
    if known and known.notice and not ahead:  # a full screen shows it on every page
        complain(inert(known.notice, 1000))
    return read.guide


def read_for_use(folder: Path | None, also: AbstractSet[Part] = frozenset()) -> Read:
    """Read the shipped guide, or a folder of the person's own."""
    if folder is not None:
        from triage.guide.known import Known, known_as
        from triage.guide.read import read_guide

        # A folder of the person's own is checked before it is used, and that goes by all of it.
        read = read_guide(folder)
        return known_as(read, Known(reviews_in=(folder,)))
    from triage.shipped import read_shipped

    return read_shipped(also)
