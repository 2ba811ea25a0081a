"""`triage book`: the whole guidance as one HTML file, to walk on a phone or on paper."""

from __future__ import annotations

import argparse
import os
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain, open_guide, say, units_of
from triage.page.inert import inert

if TYPE_CHECKING:
    from triage.guide.model import Guide
    from triage.holding.holding import Holding

THEN = "Open it in a browser, on a phone too, or print it. It needs no network."
NUMBERS = "Your vet's number stands in it. For a book that others get, add --no-vet."


def add_book(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command to its parser."""
    parser.add_argument("file", type=Path, metavar="FILE", help="the file to write, such as book.html")
    parser.add_argument("--date", metavar="DAY", help="the day it says it was written on, as 2026-12-01")
    parser.add_argument("--no-vet", action="store_true", help="leave your vet's number out")
    parser.add_argument("--no-maps", action="store_true", help="leave the maps out, for a smaller file")
    parser.set_defaults(run=run_book)


def run_book(parsed: argparse.Namespace) -> int:
    """Write the book; what can't be done is told in a sentence, and spoils nothing."""
    file: Path = parsed.file
    day = _day(parsed.date)
    wrong = day if isinstance(day, str) else _no_place(file)
    if wrong or isinstance(day, str):
        complain(f"No book was written: {wrong}")
        return Exit.UNREADABLE
    from triage.guide.wanted import EVERYTHING

    guide = open_guide(parsed.guide, also=EVERYTHING)
    return guide if isinstance(guide, Exit) else _write(guide, parsed, day)


def _day(said: str | None) -> date | str:
    """Return the day that was asked for, or today; or what is wrong with it."""
    from triage.clock import Now

    if said is None:
        now = Now.read()
        return now.moment.astimezone(now.zone).date()
    try:
        return date.fromisoformat(said)
    except ValueError:
        return f"'{inert(said, 40)}' is no day; write it as 2026-12-01."


def _no_place(file: Path) -> str:
    """Return why a book can't be written to a file, as far as that is seen beforehand."""
    name = inert(str(file), 200)
    try:
        if file.is_dir():
            return f"{name} is a folder. Name a file in it, such as {inert(str(file / 'book.html'), 200)}."
        if not file.parent.is_dir():
            return f"there is no folder {inert(str(file.parent), 200)}. Make it first, or name another."
    except OSError as error:
        return f"{name} can't be a file here: {error.strerror or error}."
    if file.suffix.lower() == ".pdf":
        return (
            f"it is an HTML file. Write {inert(str(file.with_suffix('.html')), 200)}, and print that to PDF."
        )
    return ""


def _write(guide: Guide, parsed: argparse.Namespace, day: date) -> int:
    from triage.book.making import Making
    from triage.book.review import told_of
    from triage.book.whole import book_of
    from triage.holding.found import find_holding
    from triage.holding.holding import Holding
    from triage.whole_file import write_whole

    read = find_holding().read
    holding = read.holding if read else Holding()
    phone = ("", "") if parsed.no_vet else _numbers(holding, parsed.vet)
    told = told_of(guide, day)
    book = book_of(Making(guide, day, units_of(parsed, holding), phone, told, not parsed.no_maps))
    try:
        write_whole(book, parsed.file)
    except OSError as error:
        why = error.strerror or error
        complain(f"{inert(str(parsed.file), 200)} can't be written: {why}. What was there is there still.")
        return Exit.UNREADABLE
    for sentence in (
        f"Written to {inert(str(parsed.file), 200)}. {THEN}",
        NUMBERS if any(phone) else "",
        told.overdue,
    ):
        if sentence:
            say(sentence)
    return Exit.FINE


def _numbers(holding: Holding, vet: str | None) -> tuple[str, str]:
    """Return the vet's numbers by day and at night, as far as they are kept or given."""
    from triage.paper.danger import numbers_of

    return numbers_of(holding, vet or os.environ.get("TRIAGE_VET", ""))
