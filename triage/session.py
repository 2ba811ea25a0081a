"""A session at the guide: the walk, the page shown, and what each line or key typed does to them.

Both faces hold one of these and only show it, so that a key means the same in each.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from triage.entry import AnswerReader, AskAgain, Now, Understood
from triage.guide.model import Act, Ask
from triage.page.keys import named
from triage.page.page import Page, page_of
from triage.units import System
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

    @property
    def changing(self) -> bool:
        """Whether an earlier answer is being changed; an empty line keeps the old one."""
        return self._kept is not None

    def page(self) -> Page:
        """Return the page to show now."""
        if not self.side:
            return page_of(self.walk, self.system)
        # Loaded when one is first opened: the first question does not need them.
        from triage.page import side, working

        match self.side:
            case "how":
                return side.how_page(self.walk, self.system)
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
        if command:
            self._command(command)
        elif self.side:
            self._leave_side(typed)
        elif self.changing and not typed:
            self._keep_old()
        else:
            self._move(typed)

    def _command(self, command: str) -> None:
        self._refused = ""
        match command:
            case "leave":
                self.left = True
            case "back":
                self._back()
            case "units":
                self.system = "us" if self.system == "metric" else "metric"
            case _:
                self.side = command

    def _back(self) -> None:
        if self.side:
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

    def _leave_side(self, typed: str) -> None:
        """Close a side page; a number on the page of answers goes back to that question."""
        from triage.page.side import changeable

        indexes = changeable(self.walk) if self.side == "answers" else []
        if not typed:
            self.side = ""
            return
        number = int(typed) if typed.isascii() and typed.isdecimal() and len(typed) < 4 else 0
        if not 1 <= number <= len(indexes):
            self.told = f"'{typed[:20]}' does nothing here. Press b to go back."
            return
        self.side = ""
        self._kept = (self.walk, indexes[number - 1])
        self.walk = Walk(self.walk.guide, self.walk.moves[: indexes[number - 1]])
        self.told = "Give the new answer, or press b to keep the old one."

    def _move(self, typed: str) -> None:
        node = self.walk.node
        if isinstance(node, Ask):
            self._answer(node, typed)
        elif isinstance(node, Act) and not typed:
            self.walk = self.walk.done()
        elif isinstance(node, Act):
            self.told = "Press Enter when it is done."
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
