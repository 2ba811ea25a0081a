"""Every page that can be printed, made from invented lambs and holdings, and what a reader finds in it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import html5lib

from tests.rearing.lambs import BAG, lamb, now, shipped, weighed
from triage.holding.holding import Holding
from triage.page.wall import Wall
from triage.paper import cupboard, danger, record, tables
from triage.paper.index import Entry, index_parts
from triage.paper.pieces import Part
from triage.paper.plan import plan_parts, title_of
from triage.paper.sheets import Foot, Size, sheets_of
from triage.paper.topics import topic_parts
from triage.rearing import plan_of
from triage.units import System

FOOT = Foot("2026.1", "3 April 2026")
HOLDING = Holding(
    place="Nowhere Farm", found_by="second gate", vet="01632 960111", out_of_hours="01632 960222"
)
NS = "{http://www.w3.org/1999/xhtml}"
BOTH: tuple[tuple[Size, System], ...] = (("a4", "metric"), ("letter", "us"))


@dataclass(frozen=True)
class Made:
    """One page: its name, its title, and what stands on it."""

    name: str
    title: str
    parts: tuple[Part, ...]

    def html(self, size: Size = "a4", foot: Foot = FOOT) -> str:
        return sheets_of(self.title, self.parts, foot, size)


def pages(system: System, hostile: str = "") -> Iterator[Made]:
    """Yield every kind of page; with hostile words in place of all that people type."""
    guide = shipped()
    wall = Wall(guide, system)
    holding = Holding(place=hostile, found_by=hostile, vet=hostile) if hostile else HOLDING
    yield Made("danger", danger.NAME, tuple(danger.danger_parts(wall, holding)))
    yield Made("danger-unset", danger.NAME, tuple(danger.danger_parts(wall, Holding())))
    yield Made("tables", tables.NAME, tuple(tables.table_parts(wall, BAG)))
    yield Made("tables-no-bag", tables.NAME, tuple(tables.table_parts(wall)))
    yield Made("record", record.NAME, tuple(record.record_parts(system)))
    line = cupboard.Line(
        hostile or "Lamb milk powder", hostile or "4 kg", hostile, hostile, hostile or "Dry."
    )
    groups = (cupboard.Group(hostile or "Buy first", (line,) * 40), cupboard.Group("Nothing", ()))
    yield Made("cupboard", cupboard.NAME, tuple(cupboard.cupboard_parts(groups, hostile)))
    # People type nothing on a topic's sheet but the number, so two of them show what comes of it.
    for name in guide.front.topics[: 2 if hostile else None]:
        yield Made(f"topic-{name}", guide.topics[name].title, tuple(topic_parts(wall, name, hostile)))
    for days in (0.2, 15.0, 80.0):
        reared = lamb(
            weighed=weighed((0, 4.0), (7, 5.2), (14, 6.1)), known={"keep-as": "ram", "tail": "dock"}
        )
        named = type(reared)(**{**vars(reared), "name": hostile or "Blue 7"})
        plan = plan_of(guide, named, now(days), system)
        yield Made(f"plan-{days:g}", title_of(plan), tuple(plan_parts(plan, now(days), system, hostile)))
    entries = [Entry("plan-blue-7.html", hostile or "Plan for Blue 7")]
    yield Made("index", "Pages to print", tuple(index_parts(entries)))


def parsed(html: str) -> Any:
    """Return a page as a tree; ParseError where it is not valid."""
    return html5lib.HTMLParser(strict=True).parse(html)


def words(node: Any) -> str:
    """Return the text of an element, white space evened out; of a whole page, of its body."""
    body = node.find(f"{NS}body")
    node = node if body is None else body
    return " ".join("".join(node.itertext()).split())


def texts(node: Any, *tags: str) -> list[str]:
    """Return the text of each element of these kinds, in order."""
    return [words(each) for each in node.iter() if each.tag in {f"{NS}{tag}" for tag in tags}]


def of_class(node: Any, name: str) -> list[Any]:
    """Return the elements of a class, in order."""
    return [each for each in node.iter() if name in (each.get("class") or "").split()]


def rows(node: Any) -> list[list[str]]:
    """Return the rows of all tables, heads with them, each as the texts of its cells."""
    return [
        [words(cell) for cell in row if cell.tag in (f"{NS}td", f"{NS}th")]
        for row in node.iter()
        if row.tag == f"{NS}tr"
    ]
