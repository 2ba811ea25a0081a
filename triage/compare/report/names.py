"""Statements of either guide by what people call them."""

from __future__ import annotations

from triage.compare.lambs import Said
from triage.compare.report.compared import Compared
from triage.compare.statements import values_of
from triage.facts import Facts, Value
from triage.guide.model import Ask, Finding, Guide
from triage.page.wall import Wall
from triage.page.words import Reader
from triage.units import UNITS, System, convert, tidy

KINDS = {
    "guide": "the guide itself",
    "urgency": "the urgency",
    "topic": "the topic",
    "node": "the page",
    "finding": "the finding",
    "number": "the number",
    "how-to": "the how-to",
    "rule": "the rule",
    "term": "the word",
    "source": "the source",
    "duty": "the duty",
    "law": "the law",
    "item": "the thing of the cupboard",
    "deed": "the deed of practice",
    "case": "the practice case",
}
TITLES = ("title", "say", "label", "because", "word", "where", "do", "story", "farm")
"""Fields that say what a statement is, the first one that it has."""

SIGNS = {"degC": "\u00b0C", "degF": "\u00b0F"}

NOWHERE = "No page: the guide has no such answer"
NO_CALL = "No urgency"


class Names:
    """What statements, pages, urgencies and answers are called in one of the guides."""

    def __init__(self, guide: Guide, system: System) -> None:
        self.guide = guide
        self._wall = Wall(guide, system)
        self._reader = Reader(guide, Facts(guide.values(), {}), system)
        self._values = values_of(guide)

    def fill(self, text: str) -> str:
        """Return a text with its numbers, for no one lamb."""
        return self._wall.fill(text) if text else ""

    def page(self, name: str) -> str:
        """Return a page by its title and name."""
        return self.statement(f"node/{name}") if name else NOWHERE

    def urgency(self, name: str) -> str:
        """Return what an urgency says."""
        return self.guide.urgency(name).say if name else NO_CALL

    def statement(self, key: str) -> str:
        """Return a statement by its title and its name."""
        value = self._values[key]
        if isinstance(value, Ask):
            title = self.guide.findings[value.finding].ask
        else:
            title = next(str(getattr(value, each)) for each in TITLES if getattr(value, each, ""))
        return f"{self.fill(title).rstrip('.')} ({key.partition('/')[2]})"

    def label(self, said: Said) -> str:
        """Return the short name of what was asked."""
        return self._reader.fill(self.guide.findings[said.finding].label)

    def answer(self, said: Said) -> str:
        """Return an answer in words."""
        words = self._words(self.guide.findings[said.finding], said.value).rstrip(".")
        return f"{words[:1].upper()}{words[1:]}."

    def _words(self, finding: Finding, value: Value) -> str:
        """Return an answer; a temperature between two marks of a thermometer is told as exactly as it is."""
        if isinstance(value, float) and UNITS[finding.measure].dimension == "temperature":
            unit = "degF" if self._reader.system == "us" else "degC"
            return f"{tidy(convert(value, finding.measure, unit), 3)} {SIGNS[unit]}"
        return self._reader.answer(finding, value)


class Both:
    """The names of both guides."""

    def __init__(self, compared: Compared) -> None:
        self.old = Names(compared.old.guide, compared.system)
        self.new = Names(compared.new.guide, compared.system)

    def statement(self, key: str) -> str:
        """Return what a statement is called: as the new guide has it, or else the old one."""
        kind = KINDS[key.partition("/")[0]]
        known = self.new if key in self.new._values else self.old
        return kind if kind == KINDS["guide"] else f"{kind} {known.statement(key)}"

    def lamb(self, answers: tuple[Said, ...]) -> tuple[tuple[str, str], ...]:
        """Return a lamb as what was asked and what it answered; what is asked again says so."""
        lines: list[tuple[str, str]] = []
        asked: set[str] = set()
        for said in answers:
            names = self.new if said.new else self.old
            label = names.label(said)
            again = f"{label}, again" if label in asked else label
            asked.add(label)
            lines.append((again, names.answer(said)))
        return tuple(lines)
