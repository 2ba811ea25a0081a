"""What the rooms of a session share: the guide, who reads, the time, and what is kept."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from triage.clock import Now
from triage.entry import AnswerReader
from triage.guide.model import Guide
from triage.holding.holding import Holding
from triage.looks import Alarm
from triage.page.inert import inert
from triage.page.page import Page
from triage.session.keeping import Keeping
from triage.units import System

OPEN = range(8, 18)
"""Hours of the day at which a practice is mostly open; only the order of two numbers hangs on it."""


class Room(Protocol):
    """One place in a session: a page, and what is typed there. Keys that work everywhere never reach it."""

    def page(self) -> Page:
        """Return the page to show now."""

    def take(self, typed: str) -> None:
        """Take a line or key that is no command."""

    def command(self, name: str) -> None:
        """Do what a key of this kind of page stands for."""

    def back(self) -> None:
        """Go one step back, and close when there is none."""


@dataclass
class House:
    """What there is beside the guide: the casebook, the holding, and the alarm."""

    keeping: Keeping = field(default_factory=Keeping)
    holding: Holding = field(default_factory=Holding)
    holding_file: Path | None = None
    """Where the holding is written down; None where it is not to be."""
    papers: Path | None = None
    """The folder for pages to print, where there is no casebook to save them beside."""
    alarm: Alarm = field(default_factory=Alarm)
    ask: bool = False
    """Whether the holding is to be asked for, once, before the person leaves."""
    notes: list[str] = field(default_factory=list)
    """What the opening of the casebook and of the holding has to tell."""

    def news(self) -> str:
        """Return what has to be told at the start, as one text."""
        return " ".join(self.notes)


@dataclass
class Desk:
    """Shared by all rooms. `told` is the line to show now; the last of `rooms` is the one in view."""

    guide: Guide
    system: System = "metric"
    vet: str = ""
    clock: Callable[[], Now] = Now.read
    house: House = field(default_factory=House)
    told: str = ""
    pressed: str = ""
    """The command before this one: what does harm takes the same key twice in a row."""
    rooms: list[Room] = field(default_factory=list)

    @property
    def keeping(self) -> Keeping:
        """The casebook and the case in hand."""
        return self.house.keeping

    @property
    def holding(self) -> Holding:
        """What is kept of this holding."""
        return self.house.holding

    def open(self, room: Room) -> None:
        """Open a room on top of the others."""
        self.rooms.append(room)

    def close(self, room: Room) -> None:
        """Close a room and whatever is on top of it."""
        if room in self.rooms:
            del self.rooms[self.rooms.index(room) :]

    def reader(self) -> AnswerReader:
        """Return what reads typed answers now."""
        return AnswerReader(self.guide, self.system, self.clock())

    @property
    def numbers(self) -> str:
        """Return the vet's numbers as they stay in view."""
        if self.vet:
            return inert(self.vet, 80)
        day, night = inert(self.holding.vet, 80), inert(self.holding.out_of_hours, 80)
        if not day or not night or day == night:
            return day or night
        now = self.clock()
        # The number to phone now stands first, as a small screen cuts the end of the line.
        open_now = now.moment.astimezone(now.zone).hour in OPEN
        return f"{day} (at night {night})" if open_now else f"{night} (by day {day})"
