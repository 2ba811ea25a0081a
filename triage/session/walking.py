"""The walk in a session: its page, its side pages, and what each key or line does there."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import date

from triage.clock import hhmm
from triage.entry import AskAgain, Understood
from triage.guide.model import Act, Ask
from triage.guide.texts import steps_of
from triage.looks import look_of
from triage.page.inert import inert
from triage.page.page import Block, Page, page_of
from triage.session.aging import aged, changes_place, told_age
from triage.session.desk import Desk
from triage.units import show
from triage.walk import Walk
from triage.ways_in import begun

FEEDS = ("feed-by-mouth", "tube-feed")
"""Tags of steps that put milk into a lamb."""

TAUGHT = ("vet-injection", "tube-feed")
"""Tags of steps that a vet should have taught."""


@dataclass
class Walking:
    """One person at one walk."""

    desk: Desk
    walk: Walk
    side: str = field(default="", init=False)
    _refused: str = field(default="", init=False)
    _kept: tuple[Walk, int] | None = field(default=None, init=False)
    _picked: int = field(default=0, init=False)

    @property
    def changing(self) -> bool:
        """Whether an earlier answer is being changed; an empty line keeps the old one."""
        return self._kept is not None

    @property
    def whole(self) -> Walk:
        """The walk with nothing lost: while an answer is being changed, the walk as it was before."""
        return self._kept[0] if self._kept else self.walk

    def page(self) -> Page:
        """Return the page to show now."""
        system = self.desk.system
        if not self.side:
            page = self._offering(page_of(self.walk, system, self._age_now(), self._today()))
            return self._naming_taught(self._recalling(page))
        # Loaded when one is first opened: the first question does not need them.
        from triage.page import side, working

        match self.side:
            case "how":
                return side.how_page(self.walk, system, self._picked)
            case "working":
                return working.working_page(self.walk, system)
            case _:
                return side.answers_page(self.walk, system)

    def _today(self) -> date:
        now = self.desk.clock()
        return now.moment.astimezone(now.zone).date()

    def grow(self) -> bool:
        """Let the lamb grow to its age of now; whether another page is right for it then, which is told."""
        if self.changing:
            return False
        before, changed = self.walk, aged(self.walk, self.desk.clock().moment)
        self.walk = changed.walk
        if not changes_place(before, changed):
            return False
        self.side, self.desk.told = "", told_age(self.walk)
        return True

    def take(self, typed: str) -> None:
        """Take one line or key that is no command. What was typed for another page is not taken."""
        if not self.side and self.grow():
            return
        if self.side:
            self._on_side(typed)
        elif self.changing and not typed:
            self._keep_old()
        else:
            self._move(typed)

    def command(self, name: str) -> None:
        """Do what a key of the walk stands for."""
        self._refused = ""
        if self.grow():
            return
        if name == "done":
            self._done()
        elif name == "answers" and self.changing:
            self.desk.told = "First give the new answer, or press b to keep the old one."
        else:
            self.side, self._picked = name, 0

    def back(self) -> None:
        """Close a side page, keep the old answer, or drop the last one."""
        self._refused = ""
        if self.side and self._picked:
            self._picked = 0
        elif self.side:
            self.side = ""
        elif self.changing:
            self._keep_old()
        elif not begun(self.walk):
            self.desk.told = "This is the first question."
        else:
            self.walk = self.walk.back()

    def _done(self) -> None:
        now = self.desk.clock()
        node = self.walk.node
        self.walk = self.walk.done(now.moment)
        look = look_of(self.walk)
        if isinstance(node, Act) and node.wait and look:
            quantity = self.walk.guide.numbers[node.wait].quantity
            wait = show(quantity.value, quantity.unit, self.desk.system)
            self.desk.told = f"Wait {wait}, till {hhmm(look.due, now)}. Then answer this."

    def _keep_old(self) -> None:
        assert self._kept is not None
        self.walk, self._kept = self._kept[0], None
        self.desk.told = "Nothing was changed."

    def _on_side(self, typed: str) -> None:
        """Close a side page, or take a number from its list."""
        from triage.page.side import changeable, techniques

        if not typed:
            self.side = ""
            return
        answers = changeable(self.walk) if self.side == "answers" else []
        listed = len(techniques(self.walk)) if self.side == "how" else len(answers)
        number = int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 4 else 0
        if not 1 <= number <= listed:
            self.desk.told = f"'{typed[:20]}' does nothing here. Press b to go back."
        elif answers:
            self._change(answers[number - 1])
        else:
            self._picked = number

    def _change(self, index: int) -> None:
        self.side = ""
        self._kept = (self.walk, index)
        self.walk = Walk(self.walk.guide, self.walk.moves[:index])
        self.desk.told = "Give the new answer, or press b to keep the old one."

    def _move(self, typed: str) -> None:
        node = self.walk.node
        if isinstance(node, Ask):
            self._answer(node, typed)
        elif isinstance(node, Act):
            self.desk.told = "Read it all, and press d when it is done."
        elif typed:
            self.desk.told = f"'{typed[:20]}' does nothing here."

    def _answer(self, node: Ask, typed: str) -> None:
        offered = None if typed else self._known(node)
        if offered:
            self._refused = ""
            self._accept(replace(offered[0], note=f"Taken as kept: {offered[1]}."))
            return
        finding = self.walk.guide.findings[node.finding]
        answer = self.desk.reader().read(finding, typed, self.walk.state.known)
        if isinstance(answer, AskAgain):
            if answer.insisted is None or typed != self._refused:
                self.desk.told, self._refused = answer.why, typed
                return
            answer = answer.insisted
        self._refused = ""
        self._accept(answer)

    def _accept(self, answer: Understood) -> None:
        at = self.desk.clock().moment
        if self._kept is None:
            self.walk = self.walk.answer(answer.value, answer.said, at)
            self.desk.told = answer.note
            return
        from triage.page.side import told_dropped

        kept, index = self._kept
        changed = kept.change(index, answer.value, answer.said, at)
        self.walk, self._kept = changed.walk, None
        dropped = told_dropped(self.walk, changed.dropped, self.desk.system)
        self.desk.told = f"{answer.note} {dropped}".strip()

    def _known(self, node: Ask) -> tuple[Understood, str] | None:
        """Return what is kept of this lamb or holding for the question, and the words to offer it by."""
        desk = self.desk
        if self.changing or desk.keeping.lamb is None:
            return None
        from triage.session.card import Known

        keeping = desk.keeping
        known = Known(desk.guide, keeping.lamb, keeping.weighed, desk.holding, desk.clock(), desk.system)
        return known.of(node.finding)

    def _recalling(self, page: Page) -> Page:
        """Put what the vet said, and on a page with a feed the last feed, before what the page says."""
        if isinstance(self.walk.node, Ask) or self.desk.keeping.lamb is None:
            return page
        from triage.session.recalling import recalled

        desk = self.desk
        feeds = any(tag in FEEDS for step in steps_of(self.walk.node) for tag in step.tag)
        lines = recalled(desk.keeping.seen(), feeds, desk.guide, desk.clock(), desk.system)
        return replace(page, blocks=(page.blocks[0], *lines, *page.blocks[1:])) if lines else page

    def _age_now(self) -> float | None:
        """Return the lamb's age in hours, where its card tells when it was born."""
        lamb = self.desk.keeping.lamb
        if lamb is None or lamb.born is None:
            return None
        hours = round((self.desk.clock().moment - lamb.born).total_seconds() / 3600, 1)
        return hours if hours >= 0 else None

    def _naming_taught(self, page: Page) -> Page:
        """Name who was taught by a vet, on a page with a step that only such a person may do."""
        node, taught = self.walk.node, self.desk.holding.taught
        if not taught or isinstance(node, Ask):
            return page
        if not any(tag in TAUGHT for step in steps_of(node) for tag in step.tag):
            return page
        people = "; ".join(f"{inert(who, 24)}: {inert(what, 60)}" for who, what in taught.items())
        return replace(page, blocks=(*page.blocks, Block("quiet", f"Vet-taught here: {people}.")))

    def _offering(self, page: Page) -> Page:
        """Add to a question what is kept for it; Enter takes that."""
        node = self.walk.node
        offered = self._known(node) if isinstance(node, Ask) else None
        if not offered:
            return page
        # Right under the question: a small screen spares what comes after it.
        line = Block("label", f"Kept: {offered[1]}. Enter takes it.")
        return replace(page, blocks=(page.blocks[0], line, *page.blocks[1:]), offers=True)
