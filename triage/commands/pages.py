"""Making the pages that `triage print` was asked for, and writing them."""

from __future__ import annotations

import argparse
import os
import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from triage.casebook.failing import NotKept
from triage.clock import Now
from triage.commands.kept import at_lamb, open_session
from triage.commands.shared import Exit, complain, open_guide, say, units_of
from triage.cupboard.file import read_shelf
from triage.cupboard.listing import cupboard_of
from triage.cupboard.listing import units_of as units_of_things
from triage.cupboard.shelf import Shelf, ShelfRead
from triage.guide.model import Guide
from triage.holding.found import find_holding
from triage.holding.holding import Holding
from triage.holding.place import Nowhere, shelf_file
from triage.page.inert import inert
from triage.page.wall import Wall
from triage.paper import cupboard, danger, record, tables
from triage.paper.index import FILE, NAME, Entry, index_parts
from triage.paper.pdf import NoPdf, pdf_of
from triage.paper.pieces import Part
from triage.paper.plan import plan_parts, title_of
from triage.paper.sheets import Foot, Size, sheets_of
from triage.paper.stock import groups_of, lead_of
from triage.paper.topics import topic_parts
from triage.problems import nearest
from triage.rearing.gathering import bag_of
from triage.rearing.plan import trusted
from triage.review.of import said_of
from triage.units import System
from triage.whole_file import write_bytes_whole, write_whole

if TYPE_CHECKING:
    from triage.session import Session

FOLDER = Path("pages-to-print")
NO_CUPBOARD = "This guide has no list for the cupboard."
THEN = "Open it in a browser and print it at its full size, or to a PDF file."


@dataclass(frozen=True)
class Making:
    """What every page is made by."""

    guide: Guide
    system: System
    size: Size
    now: Now
    holding: Holding
    vet: str

    @property
    def wall(self) -> Wall:
        """The guide as it stands on a wall."""
        return Wall(self.guide, self.system)

    @property
    def phone(self) -> str:
        """The vet's numbers in one line."""
        return danger.phone_line(self.holding, self.vet)

    @property
    def foot(self) -> Foot:
        """What stands at the foot of each sheet."""
        here = self.now.moment.astimezone(self.now.zone)
        return Foot(self.guide.front.edition, f"{here.day} {here:%B %Y}", said_of(self.guide, here.date()))


@dataclass(frozen=True)
class Sheets:
    """One page: the name of its file without an ending, its title, and what stands on it."""

    file: str
    title: str
    parts: tuple[Part, ...]

    def html(self, making: Making) -> str:
        """Return it as HTML."""
        return sheets_of(self.title, self.parts, making.foot, making.size)


def print_pages(parsed: argparse.Namespace) -> int:
    """Write what was asked for; each thing that can't be done is told in a sentence."""
    guide = open_guide(parsed.guide, also={"rearing", "cupboard"})
    if isinstance(guide, Exit):
        return guide
    read = find_holding().read
    holding = read.holding if read else Holding()
    system = units_of(parsed, holding)
    size: Size = parsed.paper or ("letter" if system == "us" else "a4")
    vet = parsed.vet or os.environ.get("TRIAGE_VET", "")
    making = Making(guide, system, size, Now.read(), holding, vet)
    if parsed.what == "all":
        return _all(parsed, making)
    made = _one(parsed, making)
    return made if isinstance(made, Exit) else _write_one(made, making, parsed.out)


def _one(parsed: argparse.Namespace, making: Making) -> Sheets | Exit:
    match parsed.what:
        case "plan":
            return _plan(parsed, making)
        case "topic":
            return _topic(making, parsed.name)
        case "danger":
            return _danger(making)
        case "record":
            return Sheets("lamb-record", record.NAME, tuple(record.record_parts(making.system)))
        case "leader" | "readiness":
            from triage.commands.practice_pages import practice_sheets

            made = practice_sheets(parsed, making)
        case "tables":
            made = _tables(making)
        case _:
            made = _cupboard(making)
    if isinstance(made, str):
        complain(made)
        return Exit.PROBLEMS
    return made


def _danger(making: Making) -> Sheets:
    parts = danger.danger_parts(making.wall, making.holding, making.vet)
    return Sheets("danger-signs", danger.NAME, tuple(parts))


def _tables(making: Making) -> Sheets | str:
    lacking = tables.lacking(making.guide)
    if lacking:
        return f"This guide lacks numbers that the milk tables stand on: {', '.join(lacking)}."
    parts = tables.table_parts(making.wall, trusted(bag_of(making.holding), making.guide))
    return Sheets("milk-tables", tables.NAME, tuple(parts))


def _cupboard(making: Making) -> Sheets | str:
    """Return the list of the cupboard, against what is on this holding's shelf."""
    if not making.guide.cupboard:
        return NO_CUPBOARD
    place = shelf_file()
    units = units_of_things(making.guide)
    read = ShelfRead(Shelf()) if isinstance(place, Nowhere) else read_shelf(place, units)
    for problem in read.problems:
        complain(inert(str(problem)))
    today = making.now.moment.astimezone(making.now.zone).date()
    counted = cupboard_of(making.guide, read.shelf, today)
    groups = groups_of(making.guide, counted, making.system)
    return Sheets("cupboard", cupboard.NAME, tuple(cupboard.cupboard_parts(groups, lead_of(counted))))


def _topic(making: Making, name: str | None) -> Sheets | Exit:
    topics = making.guide.front.topics
    if not name or name not in topics:
        if name:
            complain(f"There is no topic '{inert(name, 40)}'{nearest(name, topics) or '.'}")
        complain(f"The topics are {', '.join(topics)}.")
        return Exit.PROBLEMS
    return _topic_sheets(making, name)


def _topic_sheets(making: Making, name: str) -> Sheets:
    return Sheets(
        f"topic-{name}", making.guide.topics[name].title, tuple(topic_parts(making.wall, name, making.phone))
    )


def _plan(parsed: argparse.Namespace, making: Making) -> Sheets | Exit:
    if not parsed.name:
        complain("Whose plan? Give the lamb's name: triage print plan blue")
        return Exit.UNREADABLE
    parsed.lamb = parsed.name
    session = at_lamb(parsed, making.guide)
    if isinstance(session, Exit):
        return session
    made = _plan_of(session, making)
    if isinstance(made, str):
        complain(made)
        return Exit.PROBLEMS
    return made


def _plan_of(session: Session, making: Making) -> Sheets | str:
    """Return the plan of the lamb in hand, or why there is none."""
    from triage.session.plan import PlanRoom

    plan = PlanRoom(session).plan()
    if isinstance(plan, str):
        return plan
    parts = plan_parts(plan, making.now, making.system, making.phone)
    return Sheets(f"plan-{_as_file(plan.lamb.name)}", title_of(plan), tuple(parts))


def _as_file(name: str) -> str:
    """Return a lamb's name as part of a file's name, which every system takes."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub("[^a-z0-9]+", "-", plain)[:40].strip("-") or "lamb"


def _plans(parsed: argparse.Namespace, making: Making) -> Iterator[Sheets | Exit]:
    """Yield the plan of each lamb in care; of the others it is told why they have none."""
    from triage.session.lambs import EVERY
    from triage.session.resuming import take_up_last

    session = open_session(parsed, making.guide)
    if isinstance(session, Exit):
        yield session
        return
    book = session.desk.keeping.book
    cases = book.open_cases(EVERY) if book else ()
    if isinstance(cases, NotKept):
        complain(f"The casebook can't be read: {cases.why}.")
        yield Exit.UNREADABLE
        return
    for lamb in {lamb.id: lamb for lamb, _ in cases}.values():
        take_up_last(session, lamb)
        made = _plan_of(session, making)
        if isinstance(made, str):
            complain(f"{inert(lamb.name, 40)}: {made}")
        else:
            yield made


def _all(parsed: argparse.Namespace, making: Making) -> int:
    """Write every page into a folder, and a page that lists them."""
    status = Exit.FINE
    sheets = [_danger(making)]
    for made in (_tables(making), _cupboard(making)):
        if isinstance(made, str):
            complain(made)
        else:
            sheets.append(made)
    sheets.append(Sheets("lamb-record", record.NAME, tuple(record.record_parts(making.system))))
    sheets += [_topic_sheets(making, name) for name in making.guide.front.topics]
    for plan in _plans(parsed, making):
        if isinstance(plan, Exit):
            status = plan
        else:
            sheets.append(plan)
    wrote = _write_all(_told_apart(sheets), making, parsed.out or FOLDER)
    return status if wrote is Exit.FINE else wrote


def _told_apart(sheets: Iterable[Sheets]) -> tuple[Sheets, ...]:
    """Return the sheets, each with a file name of its own: two lambs may be called alike."""
    found: dict[str, Sheets] = {}
    for each in sheets:
        name, number = each.file, 2
        while name in found:
            name, number = f"{each.file}-{number}", number + 1
        found[name] = Sheets(name, each.title, each.parts)
    return tuple(found.values())


def _write_all(sheets: tuple[Sheets, ...], making: Making, folder: Path) -> Exit:
    entries = [Entry(f"{each.file}.html", each.title) for each in sheets]
    index = Sheets(Path(FILE).stem, NAME, tuple(index_parts(entries)))
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        complain(f"The folder {folder} can't be made: {error.strerror or error}.")
        return Exit.UNREADABLE
    for each in (*sheets, index):
        if not _write(each.html(making), folder / f"{each.file}.html"):
            return Exit.UNREADABLE
    say(f"{len(sheets)} pages are in {folder}. Open {folder / FILE} in a browser.")
    return Exit.FINE


def _write_one(sheets: Sheets, making: Making, out: Path | None) -> Exit:
    file = out or Path(f"{sheets.file}.html")
    html: str | bytes = sheets.html(making)
    if file.suffix.lower() == ".pdf":
        try:
            html = pdf_of(str(html))
        except NoPdf as error:
            complain(str(error))
            return Exit.UNREADABLE
    if not _write(html, file):
        return Exit.UNREADABLE
    say(f"Written to {file}." if isinstance(html, bytes) else f"Written to {file}. {THEN}")
    return Exit.FINE


def _write(written: str | bytes, file: Path) -> bool:
    """Write a file whole; say why it can't be done."""
    try:
        if isinstance(written, bytes):
            write_bytes_whole(written, file)
        else:
            write_whole(written, file)
    except OSError as error:
        complain(f"{file} can't be written: {error.strerror or error}. What was there is there still.")
        return False
    return True
