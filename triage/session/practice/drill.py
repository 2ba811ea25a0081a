"""The drill in a session: one line at a time, and how long it all took. Only who asks for it is timed."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime

from triage.page.page import Block, Choice, Page
from triage.practice.drill import Line, drill
from triage.practice.telling import TITLE
from triage.session.practice.who import School

CHOICES = (Choice("1", "now", "Phone now"), Choice("2", "not", "Not by itself"))


@dataclass
class DrillRoom:
    """Ten lines."""

    school: School
    lines: tuple[Line, ...] = field(default=(), init=False)
    _said: list[bool] = field(default_factory=list, init=False)
    _began: datetime | None = field(default=None, init=False)
    _ended: datetime | None = field(default=None, init=False)

    def __post_init__(self) -> None:
        self.lines = drill(self.school.desk.guide, self.school.rng)

    def page(self) -> Page:
        """Return the beginning, a line, or what came of it."""
        if self._began is None:
            blocks = (
                Block("heading", "Phone now, or not?"),
                Block("body", "Ten things that somebody has seen, one after another."),
                Block(
                    "body",
                    "Phone now for each that is a reason by itself. The clock runs; being right counts.",
                ),
                Block("label", "Enter begins. b leaves it."),
            )
            return Page("practice", TITLE, blocks)
        if len(self._said) < len(self.lines):
            line = self.lines[len(self._said)]
            words = line.words(self.school.desk.guide, self.school.desk.system)
            shown = (Block("heading", words), Block("quiet", f"{len(self._said) + 1} of {len(self.lines)}."))
            return Page("practice", TITLE, shown, CHOICES)
        return self._told()

    def _told(self) -> Page:
        guide, system = self.school.desk.guide, self.school.desk.system
        took = (self._ended - self._began).total_seconds() if self._began and self._ended else 0.0
        pairs = list(zip(self.lines, self._said, strict=True))
        missed = [line for line, said in pairs if line.now and not said]
        over = [line for line, said in pairs if said and not line.now]
        head = "Every call was right." if not missed and not over else f"{len(missed)} missed."
        blocks = [Block("heading", head), Block("body", f"{len(self.lines)} lines in {took:.0f} seconds.")]
        for label, lines in (("Phone now for these", missed), ("No call by itself", over)):
            if lines:
                blocks += [Block("blank", ""), Block("label", label)]
                blocks += [
                    Block("body", f"{line.words(guide, system)}.".replace("..", ".")) for line in lines
                ]
        blocks += [Block("blank", ""), Block("quiet", "Enter goes back.")]
        return Page("practice", TITLE, tuple(blocks))

    def take(self, typed: str) -> None:
        """Begin, or take an answer."""
        now = self.school.desk.clock().moment
        if self._began is None:
            self._began = now
        elif len(self._said) == len(self.lines):
            self.school.desk.close(self)
        elif typed in ("1", "2"):
            self._said.append(typed == "1")
            if len(self._said) == len(self.lines):
                self._ended = now
                self._remember(now)
        else:
            self.school.desk.told = "1 phones now, 2 does not."

    def _remember(self, now: datetime) -> None:
        """Let what was missed come back sooner."""
        learner = self.school.learner
        if learner:
            known: dict[str, bool] = {}
            for line, said in zip(self.lines, self._said, strict=True):
                if line.card:
                    known[line.card] = said and known.get(line.card, True)
            learner.drilled(known, now)
            self.school.desk.told = self.school.unkept()

    def command(self, name: str) -> None:
        """No key but the digits does anything here."""
        self.school.desk.told = "1 phones now, 2 does not."

    def back(self) -> None:
        """Leave the drill; half of one counts for nothing."""
        self.school.desk.close(self)
