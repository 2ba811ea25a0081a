"""A session at the guide: the walk, the page shown, and what each line or key typed does to them.

Both faces hold one of these and only show it, so that a key means the same in each.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import timedelta

from triage.entry import AnswerReader, AskAgain, Now, Understood
from triage.guide.model import Act, Ask
from triage.page.keys import named
from triage.page.page import Page, page_of
from triage.units import System, show
from triage.walk import Walk


@dataclass
class Session:
    """One person at one walk. `told` is the line to show them now; `left` ends the session."""

    walk: Walk
    system: System = "metric"
    vet: str = ""
    clock: Callable[[], Now] = Now.read
    told: str = field(default="", init=False)
    left: bool = field(default=False, init=False)
    side: str = field(default="", init=False)
    _refused: str = field(default="", init=False)
    _kept: tuple[Walk, int] | None = field(default=None, init=False)
    _picked: int = field(default=0, init=False)
    _leaving: bool = field(default=False, init=False)

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
        if not self.side:
            return page_of(self.walk, self.system)
        # Loaded when one is first opened: the first question does not need them.
        from triage.page import side, working

        match self.side:
            case "how":
                return side.how_page(self.walk, self.system, self._picked)
            case "phone":
                return side.phone_page(self.walk, self.system, self.vet)
            case "working":
                return working.working_page(self.walk, self.system)
            case _:
                return side.answers_page(self.walk, self.system)

    def take(self, typed: str) -> None:
        """Take one line or key. Nothing that is typed is lost, and a wrong key does no harm."""
        self.told = ""
        typed = typed.strip()
        command = named(typed.lower(), self.page().kind)
        self._leaving = self._leaving and command == "leave"
        if command:
            self._command(command)
        elif self.side:
            self._on_side(typed)
        elif self.changing and not typed:
            self._keep_old()
        else:
            self._move(typed)

    def _command(self, command: str) -> None:
        self._refused = ""
        match command:
            case "leave":
                self._leave()
            case "back":
                self._back()
            case "done":
                self._done()
            case "units":
                self.system = "us" if self.system == "metric" else "metric"
                self.told = f"Units: {'US' if self.system == 'us' else 'metric'}."
            case "answers" if self.changing:
                self.told = "First give the new answer, or press b to keep the old one."
            case "light":
                self.told = "Only the full screen has lights."
            case _:
                self.side, self._picked = command, 0

    def _leave(self) -> None:
        """Leave at once where nothing is lost, and else on the second time."""
        self.left = self._leaving or self.whole.finished or not self.whole.moves
        self._leaving = True
        if not self.left:
            self.told = "Press q once more to leave."

    def _done(self) -> None:
        node = self.walk.node
        self.walk = self.walk.done()
        if isinstance(node, Act) and node.wait:
            quantity = self.walk.guide.numbers[node.wait].quantity
            now = self.clock()
            till = now.moment + timedelta(minutes=quantity.to("min").value)
            wait = show(quantity.value, quantity.unit, self.system)
            self.told = f"Wait {wait}, till {till.astimezone(now.zone):%H:%M}. Then answer this."

    def _back(self) -> None:
        if self.side and self._picked:
            self._picked = 0
        elif self.side:
            self.side = ""
        elif self.changing:
            self._keep_old()
        elif not self.walk.moves:
            self.told = "This is the first question."
        else:
            self.walk = self.walk.back()

    def _keep_old(self) -> None:
        assert self._kept is not None
        self.walk, self._kept = self._kept[0], None
        self.told = "Nothing was changed."

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
            self.told = f"'{typed[:20]}' does nothing here. Press b to go back."
        elif answers:
            self._change(answers[number - 1])
        else:
            self._picked = number

    def _change(self, index: int) -> None:
        self.side = ""
        self._kept = (self.walk, index)
        self.walk = Walk(self.walk.guide, self.walk.moves[:index])
        self.told = "Give the new answer, or press b to keep the old one."

    def _move(self, typed: str) -> None:
        node = self.walk.node
        if isinstance(node, Ask):
            self._answer(node, typed)
        elif isinstance(node, Act):
            self.told = "Read it all, and press d when it is done."
        elif typed:
            self.told = f"'{typed[:20]}' does nothing here."

    def _answer(self, node: Ask, typed: str) -> None:
        finding = self.walk.guide.findings[node.finding]
        known = self.walk.state.known
        reader = AnswerReader(self.walk.guide, self.system, self.clock())
        answer = reader.read(finding, typed, known)
        if isinstance(answer, AskAgain):
            if answer.insisted is None or typed != self._refused:
                self.told, self._refused = answer.why, typed
                return
            answer = answer.insisted
        self._refused = ""
        self._accept(answer)

    def _accept(self, answer: Understood) -> None:
        if self._kept is None:
            self.walk = self.walk.answer(answer.value, answer.said)
            self.told = answer.note
            return
        from triage.page.side import told_dropped

        kept, index = self._kept
        changed = kept.change(index, answer.value, answer.said)
        self.walk, self._kept = changed.walk, None
        dropped = told_dropped(self.walk, changed.dropped, self.system)
        self.told = f"{answer.note} {dropped}".strip()
