"""Reading in a session: the contents, lists, statements and maps, one opened from the other, and a search."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from triage.maps.told import map_blocks
from triage.maps.topic_map import map_of
from triage.page.inert import inert
from triage.page.keys import named as command_of
from triage.page.page import Block, Choice, Page
from triage.page.wall import Wall
from triage.reading.collection import Collection
from triage.reading.kinds import kind_of, parted, title_of
from triage.reading.pages import statement_blocks
from triage.reading.search import Index, named
from triage.reading.shelves import LONG, Choosable, Shelf, choices_on, contents, cut, leading_on

if TYPE_CHECKING:
    from triage.guide.model import Guide
    from triage.session.session import Session
    from triage.units import System

TITLE = "Reading"
HITS = 8
"""Finds shown at once; the ninth choice leads to more."""

ASK = "Choose a number, or type a word to look for."
LONGEST = 60
"""Signs of what was looked for that are shown again."""


@dataclass(frozen=True)
class Found:
    """What a search brought, and from where on it is shown."""

    typed: str
    keys: tuple[str, ...]
    begin: int = 0


Opened = Choosable | Found
"""A page of reading: a statement or a map by its key, a list, or finds."""


@dataclass
class ReadingRoom:
    """Where somebody reads, and the way by which they came there."""

    session: Session
    whole: Collection
    trail: list[Opened] = field(default_factory=list)
    """The pages opened one from the other; the contents lie under them."""
    alone: bool = False
    """Whether there is nothing under the contents but the way out."""
    _offered: dict[str, Opened] = field(default_factory=dict, init=False)
    _index: Index | None = field(default=None, init=False)
    _shown: tuple[tuple[Opened, System], Page] | None = field(default=None, init=False)
    """The page in view, which a face asks for several times, and what it was made from."""

    @property
    def wall(self) -> Wall:
        """The guide in the reader's units, for no one lamb."""
        return Wall(self.whole.guide, self.session.desk.system)

    def page(self) -> Page:
        """Return the page that was opened last, or the contents."""
        here = (self.trail[-1] if self.trail else "", self.session.desk.system)
        if self._shown is None or self._shown[0] != here:
            self._shown = (here, self._made(here[0]))
        return self._shown[1]

    def _made(self, here: Opened) -> Page:
        if not here:
            return self._shelf(contents(self.whole, self.wall), home=True)
        if isinstance(here, Shelf):
            return self._shelf(here)
        if isinstance(here, Found):
            return self._found(here)
        return self._map(parted(here)[1]) if parted(here)[0] == "map" else self._statement(here)

    def _shelf(self, shelf: Shelf, home: bool = False) -> Page:
        blocks = [Block("heading", shelf.title)]
        blocks += [Block("body", shelf.about)] if shelf.about else []
        blocks += [Block("body", ASK)] if home else []
        choices = self._offer(choices_on(self.whole, shelf, self.wall))
        return Page("read", TITLE, tuple(blocks), choices, words=home, example="cold" if home else "")

    def _found(self, found: Found) -> Page:
        shown = found.keys[found.begin : found.begin + HITS]
        count = f"{len(found.keys)} found" + (f", from {found.begin + 1} on" if found.begin else "")
        blocks = (Block("heading", f"{count}: {inert(found.typed, LONGEST)}"),)
        offered: list[tuple[str, Opened]] = [(self._hit(key), key) for key in shown]
        if len(found.keys) > found.begin + HITS:
            offered.append(("More", replace(found, begin=found.begin + HITS)))
        return Page("read", TITLE, blocks, self._offer(offered))

    def _hit(self, key: str) -> str:
        """Return a find as a line: its title, what it is, and where that stands."""
        where = ", ".join(filter(None, (kind_of(self.wall, key), self.whole.where(key))))
        return f"{cut(title_of(self.wall, key), LONG)} ({where})"

    def _statement(self, key: str) -> Page:
        offered = leading_on(self.whole, self.wall, key)
        onward = (Block("blank", ""), Block("label", "From here")) if offered else ()
        blocks = (*statement_blocks(self.wall, key), *onward)
        return Page("read", f"{TITLE}: {kind_of(self.wall, key)}", blocks, self._offer(offered))

    def _map(self, topic: str) -> Page:
        drawn = map_of(self.whole.guide, topic, self.session.desk.system)
        self._offered = {str(spot.number): f"node/{spot.name}" for spot in drawn.spots}
        blocks = map_blocks(self.whole.guide, topic, self.session.desk.system)
        foot = (Block("blank", ""), Block("quiet", "A number opens the page of that place."))
        return Page("read", f"{TITLE}: map", (*blocks, *foot))

    def _offer(self, choices: Sequence[tuple[str, Opened]]) -> tuple[Choice, ...]:
        self._offered = {str(number): opened for number, (_, opened) in enumerate(choices, 1)}
        return tuple(Choice(str(number), "", text) for number, (text, _) in enumerate(choices, 1))

    def take(self, typed: str) -> None:
        """Open what a number stands for, or look for words; Enter alone goes back."""
        desk = self.session.desk
        self.page()  # a number means what it means on the page that is shown
        if not typed:
            self.back()
        elif typed in self._offered:
            self.trail.append(self._offered[typed])
        elif typed.isdecimal():
            desk.told = f"'{inert(typed, 20)}' does nothing here. Type one of the numbers."
        elif len(typed) == 1 and command_of(typed.lower(), "read"):
            self.session.take(typed)  # from a box in which it was typed as a letter
        elif told := self.look_for(typed):
            desk.told = told

    def look_for(self, typed: str) -> str:
        """Open what is called exactly so, or what a search finds; return a sentence where that is nothing."""
        key = named(self.whole, typed)
        if key:
            self.trail.append(key)
            return ""
        self._index = self._index or Index(self.whole)
        keys = self._index.find(typed)
        if not keys:
            return f"Nothing is found for '{inert(typed, LONGEST)}'. Try another word for it."
        self.trail.append(keys[0] if len(keys) == 1 else Found(typed, keys))
        return ""

    def command(self, name: str) -> None:
        """Go to the contents."""
        if name == "contents":
            self.trail.clear()

    def back(self) -> None:
        """Go back to the page before; from the contents, leave."""
        if self.trail:
            self.trail.pop()
            return
        self.session.desk.close(self)
        self.session.left = not self.session.desk.rooms and self.alone


def reading_room(session: Session, alone: bool = False) -> ReadingRoom:
    """Return a room to read in, over the walk in hand or `alone`; the guide is read whole if it was not."""
    return ReadingRoom(session, Collection(_whole(session.desk.guide)), alone=alone)


def _whole(guide: Guide) -> Guide:
    if guide.rules and guide.cupboard and guide.cases:
        return guide
    from triage.guide.wanted import EVERYTHING
    from triage.shipped import read_shipped

    read = read_shipped(EVERYTHING)
    same = read.guide and read.guide.front.edition == guide.front.edition
    return read.guide if read.guide and same else guide
