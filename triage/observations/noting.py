"""Asking an observation, one part after another, as values: no clock is read here and nothing is kept."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from triage.casebook.rows import Part
from triage.clock import Asked, Now, Past, at_clock, hhmm, read_past
from triage.entry import NOT_SURE, SURELY_YESTERDAY, AnswerReader, AskAgain, Understood
from triage.facts import Value
from triage.guide.model import Finding, Guide
from triage.observations.kinds import KindOf, PartOf
from triage.observations.wording import filled
from triage.page.page import Block, Choice, Page
from triage.typed import Refused, example, read_measure
from triage.units import System

SEEN = Asked(
    "a time",
    "at 1:30, or at 23:30 yesterday",
    "Type when it was.",
    timedelta(days=30),
    "That is more than 30 days ago. These are notes of the days of care.",
    earlier=False,
)
"""What is longer ago is a slip."""

LONGEST = 20_000

_AT = re.compile(r"(?:^|\s)((?:(?:yesterday|today)\s+)?at\s+.*[0-9].*)$", re.IGNORECASE | re.DOTALL)
"""A time at the end of an answer."""

_TIME_ALONE = re.compile(
    r"(?:(?:yesterday|today)\s+)?at\s+(?:[0-9-]{8,10}\s+)?[0-9]{1,2}(?:[:.][0-9]{2})?\s*(?:am|pm)?"
    r"(?:\s+[0-9-]{8,10})?(?:\s+(?:yesterday|today))?(?P<zone>\s+\S{1,5})?",
    re.IGNORECASE,
)
"""A time and nothing else, where words are typed."""

_SLIP = "That time is still to come today. For yesterday, add the word. Or type it like: at 1:30."


@dataclass(frozen=True)
class Kept:
    """An observation with all its parts, and when it was so (aware, UTC)."""

    kind: str
    parts: Mapping[str, Part]
    at: datetime
    told: str = ""
    """The time as it was understood, where one was typed."""


@dataclass(frozen=True)
class Noting:
    """One kind being asked: the parts so far, and the time if one was given; `now` is when it was asked."""

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
        """The part that is asked now, with what the guide says of it."""
        return self.kind.parts[len(self.parts)].under(self.guide)

    def question(self, system: System) -> Page:
        """Return the page that asks it."""
        part = self.part
        when = (
            f"At {hhmm(self.at, self.now)}." if self.at else "Now. For another time, type it like: at 1:30."
        )
        blocks = (Block("heading", part.ask), Block("quiet", when))
        choices = tuple(
            Choice(str(number), name, filled(text, self.guide, system))
            for number, (name, text) in enumerate(part.choices.items(), 1)
        )
        such_as = example(part.measure, system) if part.measure else ""
        return Page(
            "form", self.kind.label, blocks, choices, part.measure, such_as, words=part.words, timed=True
        )

    def take(self, typed: str, reader: AnswerReader) -> Noting | Kept | AskAgain:
        """Take an answer, a time, or both: `38.2 at 1:30`. The last part makes the observation."""
        rest, time = self._split(typed, reader.now)
        if isinstance(time, AskAgain):
            return time
        when = _time_told(time, reader.now) if time else ""
        timed = replace(self, at=time.moment if time else self.at, now=reader.now)
        if time and not rest:
            return replace(timed, told=when)
        read = timed._read(rest, reader)
        if isinstance(read, AskAgain):
            if read.insisted is None:
                return read
            if rest != self.doubted:
                return replace(timed, doubted=rest, told=f"{when} {read.why}".strip())
            read = read.insisted
        return timed._with(read, when)

    def _with(self, read: Understood, when: str) -> Noting | Kept:
        """Return this with one part more; a time that is not now is told once more at the end."""
        assert isinstance(read.value, float | str)
        parts = {**self.parts, self.part.name: read.value}
        if len(parts) == len(self.kind.parts):
            when = when or (f"At {hhmm(self.at, self.now)}." if self.at else "")
            return Kept(self.kind.name, parts, self.at or self.now.moment, when)
        return replace(self, parts=parts, told=f"{when} {read.note}".strip(), doubted="")

    def _split(self, typed: str, now: Now) -> tuple[str, Past | AskAgain | None]:
        """Split a time off the end. In words only a bare time counts: a sentence may well say `at 5`."""
        if self.part.words:
            alone = _TIME_ALONE.fullmatch(typed.strip())
            if alone is None:
                return typed, None
            read = _time(typed.strip(), now)
            # `at 1:30 again` are words after all.
            return (typed, None) if alone["zone"] and isinstance(read, AskAgain) else ("", read)
        plain = typed.strip()
        match = _AT.search(plain)
        return (plain[: match.start()].strip(), _time(match[1], now)) if match else (plain, None)

    def _read(self, typed: str, reader: AnswerReader) -> Understood | AskAgain:
        part = self.part
        if part.words:
            return _words(typed)
        if typed.lower() in NOT_SURE:
            # A note says what was seen; what was not seen is not noted.
            best = "Measure it" if part.measure else "Choose what fits best"
            return AskAgain(f"{best}, or go back and write nothing.")
        if part.choices:
            asked = Finding(part.name, "", "", "", part.choices, never_unsure="A note says what was seen.")
            return reader.read(asked, typed, {})
        if part.finding:
            return reader.read(self.guide.findings[part.finding], typed, self.known)
        read = read_measure(typed, part.measure, part.plausible, reader.system)
        return AskAgain(read.why) if isinstance(read, Refused) else Understood(read.value, note=read.note)


def _time(text: str, now: Now) -> Past | AskAgain:
    """Read a time gone by. One just ahead of the clock is a slip, not a day ago."""
    read = read_past(text, now, SEEN)
    if isinstance(read, Refused):
        return AskAgain(read.why)
    if read.rolled and now.moment - read.moment > timedelta(hours=SURELY_YESTERDAY):
        return AskAgain(_SLIP)
    return read


def _words(typed: str) -> Understood | AskAgain:
    """Take words whole, whatever is in them."""
    if not typed.strip():
        return AskAgain("Nothing was typed. Type a few words, or go back.")
    if len(typed) > LONGEST:
        return AskAgain(f"That is too long to keep: at most {LONGEST:,} signs.")
    return Understood(typed)


def _time_told(time: Past, now: Now) -> str:
    """Tell what was understood, and how to say the other time where the clock showed it twice."""
    told = f"At {hhmm(time.moment, now)}."
    if time.other is None:
        return told
    other = at_clock(time.other, now.zone)
    day = f"{time.other.astimezone(now.zone):%Y-%m-%d}"
    return f"{told} The clock showed that time twice. For the other one type: at {day} {other}."
