"""A session at the guide: rooms one above the other, over the walk in hand.

Both faces hold one of these and only show it, so that a key means the same in each. The walk is kept
before the next page is shown.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from triage.casebook.rows import Look
from triage.clock import Now
from triage.page.inert import inert
from triage.page.keys import named
from triage.page.page import Page
from triage.session.alarms import alarm_line, looks_now
from triage.session.desk import Desk, House, Room
from triage.session.walking import Walking
from triage.units import System
from triage.walk import Walk
from triage.ways_in import about, begun


class Session:
    """One person at the guide. `told` is the line to show them now; `left` ends the session."""

    def __init__(
        self,
        walk: Walk,
        system: System = "metric",
        vet: str = "",
        clock: Callable[[], Now] = Now.read,
        house: House | None = None,
    ) -> None:
        house = house or House()
        self.desk = Desk(walk.guide, system, vet, clock, house)
        self.walking = Walking(self.desk, walk)
        self.desk.keeping.called = about(walk)
        self.left = False
        self._due = ""
        known = walk.guide.known
        self._notice = inert(known.notice, 400) if known else ""
        self.desk.told = house.news()

    @property
    def told(self) -> str:
        """The line to show now."""
        return self.desk.told

    @told.setter
    def told(self, line: str) -> None:
        self.desk.told = line

    @property
    def system(self) -> System:
        """The unit system in use."""
        return self.desk.system

    @property
    def vet(self) -> str:
        """The vet's numbers, as they stay in view."""
        return self.desk.numbers

    @property
    def walk(self) -> Walk:
        """The walk in hand."""
        return self.walking.walk

    @property
    def whole(self) -> Walk:
        """The walk in hand with nothing lost, also while an answer of it is being changed."""
        return self.walking.whole

    @property
    def changing(self) -> bool:
        """Whether an earlier answer is being changed."""
        return self.walking.changing

    @property
    def side(self) -> str:
        """The name of the page beside the walk that is open, or an empty text."""
        return self.walking.side

    @property
    def room(self) -> Room:
        """The room in view."""
        return self.desk.rooms[-1] if self.desk.rooms else self.walking

    def page(self) -> Page:
        """Return the page to show now."""
        page = self.room.page()
        lamb = self.desk.keeping.lamb
        if page.lamb and lamb and page.kind in ("ask", "act", "end"):
            page = replace(page, lamb=f"{inert(lamb.name, 24)}, {page.lamb}")
        alarm = alarm_line(self.desk.keeping, self._due)
        return replace(page, alarm=f"{alarm} {self._notice}".strip())

    def take(self, typed: str, words: bool = False) -> None:
        """Take one line or key. Nothing that is typed is lost, and a wrong key does no harm.

        With `words` it is text from a box, and no command whatever it says.
        """
        typed = typed.strip()
        page = self.room.page()
        command = "" if words and page.words else named(typed.lower(), page.kind)
        self._turn(lambda: self._command(command) if command else self.room.take(typed))
        self.desk.pressed = command

    def back(self) -> None:
        """Go one step back, also from a box in which `b` would be a letter."""
        self._turn(self.room.back)

    def _turn(self, turn: Callable[[], None]) -> None:
        """Do what a key stands for, and keep what it changed before the next page is shown."""
        self.desk.told = ""
        before, walking = self.whole, self.walking
        turn()
        # A walk that was only taken up is not written: nobody has answered anything yet.
        if self.whole is not before and self.walking is walking:
            self._keep()
        self._look_who_is_due()

    def open(self, name: str) -> None:
        """Open the list of lambs, the lamb in hand, the vet's page or the holding, from anywhere."""
        from triage.session.rooms import room_for

        room = room_for(name, self)
        self.desk.rooms = [each for each in self.desk.rooms if type(each) is not type(room)]
        self.desk.open(room)

    def take_up(self, walk: Walk) -> None:
        """Go on with a walk; every other page is closed."""
        self.desk.rooms.clear()
        self.walking = Walking(self.desk, walk)
        self.desk.keeping.called = about(walk)
        self.walking.grow()

    def watch(self) -> bool:
        """Look at the clock: whether the bell is to ring now. To be called once a second or so."""
        now, keeping = self.desk.clock(), self.desk.keeping
        told = keeping.look_over(now) or keeping.retry(self.whole, now)
        if told:
            self.desk.told = told
        self.walking.grow()
        return self.desk.house.alarm.rings(self._look_who_is_due())

    def _look_who_is_due(self) -> Mapping[str, Look]:
        looks = looks_now(self.desk.keeping, self.whole)
        watched = [(case, look) for case, (_, look) in looks.items()]
        due = self.desk.house.alarm.due(watched, self.desk.clock().moment)
        self._due = ", ".join(dict.fromkeys(looks[case][0] for case in due))
        return due

    def _keep(self) -> None:
        told = self.desk.keeping.keep(self.whole, self.desk.clock())
        self.desk.told = f"{told} {self.desk.told}".strip()

    def _command(self, command: str) -> None:
        match command:
            case "leave":
                self._leave()
            case "back":
                self.room.back()
            case "units":
                self.desk.system = "us" if self.desk.system == "metric" else "metric"
                self.desk.told = f"Units: {'US' if self.desk.system == 'us' else 'metric'}."
            case "light":
                self.desk.told = "Only the full screen has lights."
            case "vet" | "lamb" | "lambs" | "holding":
                self.open(command)
            case _:
                self.room.command(command)

    def _ask_holding(self) -> None:
        """Ask, once, what should be in view the next time; leaving the form leaves the guide."""
        from triage.session.holding import HoldingRoom

        self.left = self.desk.house.ask = False
        self.desk.open(HoldingRoom(self, leaving=True))
        self.desk.told = "Before you go, once: what should be in view next time? Going back leaves."

    def _leave(self) -> None:
        """Leave at once where nothing is lost, and else on the second time."""
        walk = self.whole
        keeping = self.desk.keeping
        if keeping.book:
            keeping.retry(walk, self.desk.clock())
        lost = bool(keeping.book and keeping.why_not)
        self.left = self.desk.pressed == "leave" or (not lost and (walk.finished or not begun(walk)))
        if self.left and self.desk.house.ask and begun(walk) and walk.state.urgency != walk.guide.top:
            self._ask_holding()
        elif not self.left:
            kept = " This walk is kept." if self.desk.keeping.case and not self.desk.keeping.why_not else ""
            self.desk.told = f"Press q once more to leave.{kept}"
