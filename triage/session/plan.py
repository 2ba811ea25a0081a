"""The raising plan of the lamb in hand: what counts today, and each duty on a digit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import TYPE_CHECKING

from triage.casebook.rows import Observation
from triage.guide.model import End, Guide
from triage.handover.gathering import meets
from triage.observations import words_of
from triage.page.page import Block, Page
from triage.rearing import Plan, plan_of
from triage.rearing.blocks import chosen, may_wean, task_blocks, today_blocks
from triage.rearing.duties import Task
from triage.rearing.gathering import reared_of
from triage.walk import Move

if TYPE_CHECKING:
    from triage.session.session import Session

NO_PLAN = "This guide has no raising plan."
GUIDE_FIRST = "The page of the guide comes first, and its feeds. This is for when it is well."
NOTED = "Open the guide for that first. This plan is for when it is well."
LATELY = timedelta(hours=24)
"""A note of warmth or manner older than this says nothing of today."""

WEAK = ("dull", "limp")
"""How it is, where no plan feeds it."""

UNFINISHED = "Its walk is not at an end. Go on with it first: a cold or sick lamb is fed by that page alone."


@dataclass
class PlanRoom:
    """Shows the plan, and the duty that was chosen."""

    session: Session
    _guide: Guide | None = field(default=None, init=False)
    _task: Task | None = field(default=None, init=False)

    def page(self) -> Page:
        """Return the plan as it stands now, or the duty that was chosen."""
        desk = self.session.desk
        now = desk.clock()
        plan = self.plan()
        if isinstance(plan, str):
            return Page("side", "Raising it", (Block("heading", "No plan yet"), Block("body", plan)))
        if self._task:
            return Page("side", "Raising it", task_blocks(self._task, now))
        return Page("side", "Raising it", today_blocks(plan, now, desk.system))

    def plan(self) -> Plan | str:
        """Return the plan of the lamb in hand, or a sentence on what is lacking."""
        desk = self.session.desk
        now = desk.clock()
        self._guide = self._guide or with_duties(desk.guide)
        if not self._guide.duties:
            return NO_PLAN
        cases, seen = desk.keeping.story(self.session.whole, now)
        moves = [move for case in cases for move in case.moves]
        reared = reared_of(desk.keeping.known(now), moves, seen, desk.holding)
        if isinstance(reared, str):
            return reared
        return plan_of(self._guide, replace(reared, ill=self._ill(seen)), now, desk.system)

    def _ill(self, seen: Sequence[Observation]) -> str:
        """Return why the guide comes first: the walk in hand calls a vet or has no end, or a note worries."""
        desk, walk = self.session.desk, self.session.whole
        noted = worry_noted(desk.guide, seen, walk.moves, desk.clock().moment)
        return self._by_walk() or (f"{words_of(noted, desk.guide, desk.system)}. {NOTED}" if noted else "")

    def _by_walk(self) -> str:
        """Return what the walk in hand says; where its care was ended it is over, whatever it called for."""
        case, walk = self.session.desk.keeping.case, self.session.whole
        if case and case.closed:
            return ""
        urgency = walk.guide.urgency(walk.state.urgency) if walk.state.urgency else None
        if urgency and urgency.opens:
            return f"{urgency.say}. {GUIDE_FIRST}"
        if case and case.look and isinstance(walk.node, End):
            return f"Its last page still holds: {self._title(walk.node)}. {GUIDE_FIRST}"
        return UNFINISHED if walk.moves and not walk.finished else ""

    def _title(self, end: End) -> str:
        from triage.page.words import Reader

        walk = self.session.whole
        return Reader(walk.guide, walk.facts, self.session.desk.system).fill(end.title)

    def take(self, typed: str) -> None:
        """Open the duty of a digit, or write down that it is weaned; Enter alone goes back."""
        plan = self.plan()
        offered = plan if isinstance(plan, Plan) and not self._task else None
        tasks = chosen(offered) if offered else ()
        number = int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 3 else 0
        if not typed:
            self.back()
        elif 1 <= number <= len(tasks):
            self._task = tasks[number - 1]
        elif offered and may_wean(offered) and number == len(tasks) + 1:
            from triage.session.noting import NotingRoom

            self.session.desk.open(NotingRoom.begin(self.session, "weaned"))
        else:
            self.session.desk.told = f"'{typed[:20]}' does nothing here."

    def command(self, name: str) -> None:
        """This page has no keys of its own."""

    def back(self) -> None:
        """Close the duty, or the plan."""
        if self._task:
            self._task = None
        else:
            self.session.desk.close(self)


def worry_noted(
    guide: Guide, seen: Sequence[Observation], moves: Sequence[Move], now: datetime
) -> Observation | None:
    """Return what was written down last, after the walk, of warmth or manner, where that is a worry."""
    since = max((move.at for move in moves if move.at), default=now - LATELY)
    last = {each.kind: each for each in sorted(seen, key=lambda each: each.at) if since < each.at <= now}
    warmth, manner = last.get("temperature"), last.get("manner")
    finding = guide.findings.get("temperature")
    if warmth and finding and now - warmth.at <= LATELY:
        taken = warmth.parts.get("temperature")
        if isinstance(taken, float) and not meets(guide, finding, finding.normal, taken):
            return warmth
    if manner and now - manner.at <= LATELY and manner.parts.get("manner") in WEAK:
        return manner
    return None


def with_duties(guide: Guide) -> Guide:
    """Return the guide with its raising plan, which a walk leaves unread."""
    if guide.duties:
        return guide
    from triage.shipped import read_shipped

    read = read_shipped({"rearing"})
    same = read.guide and read.guide.front.edition == guide.front.edition
    return read.guide if read.guide and same else guide
