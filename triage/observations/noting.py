"""Asking an observation, one part after another, as values: no clock is read here and nothing is kept."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from triage.casebook.rows import Part
from triage.clock import Now, hhmm, read_birth
from triage.entry import SURELY_YESTERDAY, AnswerReader, AskAgain, Understood
from triage.facts import Value
from triage.guide.model import Finding, Guide
from triage.observations.kinds import KindOf, PartOf
from triage.page.page import Block, Choice, Page
from triage.typed import Refused, example, read_measure
from triage.units import System

OLDEST = timedelta(days=30)
"""What is longer ago is a slip: these are notes of the days of care."""

LONGEST = 20_000

_AT = re.compile(r"(?:^|\s)at\s+(?P<time>.*[0-9].*)$", re.IGNORECASE | re.DOTALL)
_LATER = "That time is still to come. Type when it was, like: at 1:30."


@dataclass(frozen=True)
class Kept:
    """An observation with all its parts, and when it was so (aware, UTC)."""

    kind: str
    parts: Mapping[str, Part]
    at: datetime


@dataclass(frozen=True)
class Noting:
    """One kind being asked: the parts so far, and the time if one was given; `now` is when it began."""

    kind: KindOf
    guide: Guide
    now: Now
    parts: Mapping[str, Part] = field(default_factory=dict)
    at: datetime | None = None
    known: Mapping[str, Value] = field(default_factory=dict)
    """What is known of the lamb by which a measurement is judged, such as its age."""
    told: str = ""
    """What was taken for granted in the answer before."""
    doubted: str = ""
    """What was typed when an unusual measurement was asked again; the same once more keeps it."""

    @property
    def part(self) -> PartOf:
        """The part that is asked now."""
        return self.kind.parts[len(self.parts)]

    def question(self, system: System) -> Page:
        """Return the page that asks it."""
        part = self.part
        when = (
            f"At {hhmm(self.at, self.now)}." if self.at else "Now. For another time, type it like: at 1:30."
        )
        blocks = (Block("heading", part.ask), Block("quiet", when))
        choices = tuple(
            Choice(str(number), name, text) for number, (name, text) in enumerate(part.choices.items(), 1)
        )
        such_as = example(part.measure, system) if part.measure else ""
        return Page(
            "form", self.kind.label, blocks, choices, part.measure, such_as, words=part.words, timed=True
        )

    def take(self, typed: str, reader: AnswerReader) -> Noting | Kept | AskAgain:
        """Take an answer, a time, or both: `38.2 at 1:30`. The last part makes the observation."""
        rest, at = self._time(typed.strip(), reader.now)
        if isinstance(at, AskAgain):
            return at
        timed = replace(self, at=at or self.at)
        if at and not rest:
            return replace(timed, told=f"At {hhmm(at, reader.now)}.")
        read = timed._read(rest, reader)
        if isinstance(read, AskAgain):
            if read.insisted is not None and typed == self.doubted:
                read = read.insisted
            elif read.insisted is not None:
                return replace(timed, doubted=typed, told=read.why)
            else:
                return read
        assert isinstance(read.value, float | str)
        parts = {**self.parts, self.part.name: read.value}
        if len(parts) == len(self.kind.parts):
            return Kept(self.kind.name, parts, timed.at or reader.now.moment)
        return replace(timed, parts=parts, told=read.note, doubted="")

    def _time(self, typed: str, now: Now) -> tuple[str, datetime | AskAgain | None]:
        """Split a time off the end. In words only a bare time counts: a sentence may well say `at 5`."""
        match = _AT.search(typed)
        if match is None or (self.part.words and match.start() > 0):
            return typed, None
        read = read_birth(match["time"], now.moment, now.zone)
        if isinstance(read, Refused):
            later = "still to come" in read.why
            return typed, AskAgain(_LATER if later else f"'{match['time'][:20]}' is not a time, like 1:30.")
        if read.rolled and read.hours > SURELY_YESTERDAY:
            return typed, AskAgain(f"{_LATER} For yesterday, add the word.")
        if now.moment - read.moment > OLDEST:
            return typed, AskAgain(
                "That is more than 30 days ago. Type when it was, like: at 1:30 yesterday."
            )
        return typed[: match.start()].strip(), read.moment

    def _read(self, typed: str, reader: AnswerReader) -> Understood | AskAgain:
        part = self.part
        if part.finding in self.guide.findings:
            return _sure(reader.read(self.guide.findings[part.finding], typed, self.known))
        if part.measure:
            read = read_measure(typed, part.measure, part.plausible, reader.system)
            return AskAgain(read.why) if isinstance(read, Refused) else Understood(read.value, note=read.note)
        if part.choices:
            return _sure(reader.read(Finding(part.name, "", "", "", part.choices), typed, {}))
        if not typed:
            return AskAgain("Nothing was typed. Type a few words, or go back.")
        if len(typed) > LONGEST:
            return AskAgain(f"That is too long to keep: at most {LONGEST} signs.")
        return Understood(typed)


def _sure(read: Understood | AskAgain) -> Understood | AskAgain:
    """A note says what was seen; what was not seen is not noted."""
    if isinstance(read, Understood) and not isinstance(read.value, float | str):
        return AskAgain("Choose what fits best, or go back and write nothing.")
    return read
