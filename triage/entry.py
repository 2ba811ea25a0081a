"""Reading an answer to a finding, as typed: a key, a choice, a measurement, a time of birth."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from triage.clock import Now, looks_like_clock, read_birth
from triage.facts import UNSURE, Facts, Value
from triage.guide.model import Condition, Finding, Guide
from triage.problems import nearest
from triage.typed import Measured, Refused, read_measure
from triage.units import System, convert, show

NOT_SURE = frozenset({"n", "unsure", "not sure"})
SURELY_YESTERDAY = 20
"""A clock time that makes a lamb older than these hours may be a slip for a time just past."""

KEEP_IT = "Type the same again to keep it."


@dataclass(frozen=True)
class Understood:
    """An answer: its value, how it was typed where that says more, and what was taken for granted."""

    value: Value
    said: str = ""
    note: str = ""


@dataclass(frozen=True)
class AskAgain:
    """Not an answer yet; `insisted` is what it becomes if the person types the same once more."""

    why: str
    insisted: Understood | None = None


@dataclass(frozen=True)
class AnswerReader:
    """Reads what is typed for a guide's findings, in a unit system, at a moment."""

    guide: Guide
    system: System
    now: Now

    def read(self, finding: Finding, text: str, known: Mapping[str, Value]) -> Understood | AskAgain:
        """Read a typed answer to a finding, given what is known of the lamb so far."""
        plain = text.strip().lower()
        if plain in NOT_SURE:
            if finding.never_unsure:
                return AskAgain(f"Please choose one of them. {finding.never_unsure}")
            return Understood(UNSURE)
        if finding.choices:
            return _choice(finding, plain, text)
        if finding.measure == "h" and looks_like_clock(plain):
            return _birth(finding, text, self.now)
        read = read_measure(text, finding.measure, finding.plausible, self.system)
        if isinstance(read, Refused):
            return AskAgain(read.why)
        return self._usual(finding, read, text, known)

    def _usual(
        self, finding: Finding, read: Measured, text: str, known: Mapping[str, Value]
    ) -> Understood | AskAgain:
        """Ask again, once, about a measurement that can be but seldom is."""
        understood = Understood(read.value, text.strip(), read.note)
        if read.other_system and finding.normal and not self._normal(finding, finding.normal, read.value):
            # Two digits changed round look like the other system, and make a well lamb a dying one.
            return AskAgain(f"{read.note} That is not normal. {KEEP_IT} Or was it a slip?", understood)
        span = usual_span(self.guide, finding, known)
        if span is None or span[0] <= read.value <= span[1]:
            return understood
        value, low, high = (
            show(round(each, 1), finding.measure, self.system) for each in (read.value, *span)
        )
        most = f"{value} is unusual; most such lambs are {low} to {high}."
        return AskAgain(f"{most}{self._meant(finding, text, span)} {KEEP_IT}", understood)

    def _normal(self, finding: Finding, normal: Condition, value: float) -> bool:
        """Whether a measurement is one that the guide calls normal."""

        def at(name: str) -> float:
            return self.guide.numbers[name].quantity.to(finding.measure).value

        low, high = normal.from_ or normal.above, normal.up_to or normal.below
        return (not low or value >= at(low)) and (not high or value <= at(high))

    def _meant(self, finding: Finding, text: str, span: tuple[float, float]) -> str:
        """Ask whether the other unit system was meant, where that would be usual."""
        other: System = "us" if self.system == "metric" else "metric"
        read = read_measure(text, finding.measure, finding.plausible, other)
        if isinstance(read, Refused) or not span[0] <= read.value <= span[1]:
            return ""
        return f" Did you mean {show(read.value, finding.measure, other)}?"


def _choice(finding: Finding, plain: str, text: str) -> Understood | AskAgain:
    names = list(finding.choices)
    if plain.isdecimal() and plain.isascii() and len(plain) < 4 and 1 <= int(plain) <= len(names):
        return Understood(names[int(plain) - 1])
    if plain in finding.choices:
        return Understood(plain)
    labels = {label.lower(): name for name, label in finding.choices.items()}
    if plain in labels:
        return Understood(labels[plain])
    keys = f"1 to {len(names)}" + ("" if finding.never_unsure else ", or n for not sure")
    if not plain:
        return AskAgain(f"Nothing was chosen. Type {keys}.")
    return AskAgain(f"'{text.strip()[:40]}' is not one of the answers. Type {keys}{nearest(plain, names)}.")


def _birth(finding: Finding, text: str, now: Now) -> Understood | AskAgain:
    born = read_birth(text, now.moment, now.zone)
    if isinstance(born, Refused):
        return AskAgain(born.why)
    if born.hours > finding.plausible[1]:
        oldest = show(finding.plausible[1], "h")
        return AskAgain(f"That is more than {oldest} ago. This guide is for younger lambs.")
    understood = Understood(born.hours, f"born {born.moment.isoformat(timespec='minutes')}", born.note)
    if born.rolled and born.hours > SURELY_YESTERDAY:
        ago = show(round(born.hours, 1), "h")
        return AskAgain(f"That time is still to come today. Yesterday, {ago} ago? {KEEP_IT}", understood)
    return understood


def usual_span(guide: Guide, finding: Finding, known: Mapping[str, Value]) -> tuple[float, float] | None:
    """Return the usual range of a measurement; its top rises with another one where the guide says so.

    When that other one is not known, only the plausible top holds.
    """
    if finding.usual is None:
        return None
    low, high = finding.usual
    rises = finding.usual_rises
    if rises is None:
        return low, high
    other = Facts(guide.values(), known).measured(rises.with_)
    if other is None:
        return low, finding.plausible[1]
    steps = convert(other, guide.findings[rises.with_].measure, rises.each)
    return low, high + guide.numbers[rises.by].value * steps
