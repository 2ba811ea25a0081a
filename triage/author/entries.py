"""Single entries to begin with: number, finding, how-to, rule or source, each field with a word on it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from triage.guide.texts import UNWRITTEN


@dataclass(frozen=True)
class Entry:
    """What an entry of a kind begins as: its text, and the file that holds it.

    Where many entries share a file, as numbers do, it is pasted at the file's end. Others are given a file of
    their own, and then `file` has NAME in it.
    """

    file: str
    text: str

    @property
    def alone(self) -> bool:
        """Whether it has a file of its own."""
        return "NAME" in self.file


def file_of(kind: str, name: str) -> str:
    """Return the path, inside a knowledge folder, of the file that an entry of this kind and name is in."""
    return ENTRIES[kind].file.replace("NAME", name)


def entry_text(kind: str, name: str) -> str:
    """Return an entry as it is written."""
    return ENTRIES[kind].text.replace("NAME", name).replace("MARK", UNWRITTEN)


_NUMBER = """\
NAME:
  # What it is, in a few words; say whether its own value belongs to it: 'above', or 'at or above'.
  title: "MARK: NAME"
  # The one value that the guide goes by: figures and a point, no unit.
  value: 1
  # Its unit, such as degC, kg, ml, min, h, day or %.
  unit: h
  # What each source says: its name in sources.yaml, and its figure or a range such as [1, 2].
  published: {from-memory: 1}
  # Which side of it is safer for the lamb: higher or lower.
  safer: lower
  # Why this value, where it is not the safest of those published. May be left out.
  note: "MARK: why this value."
  # How sure it is: high, moderate, low, common-practice or from-memory.
  certainty: from-memory
"""

_FINDING = """\
# yaml-language-server: $schema=../.schema/findings.json
# A finding is one thing that can be seen or measured. It is asked once, and used everywhere.
NAME:
  # One or two words, for lists and for the phone.
  label: "MARK"
  # The question, as it stands on the screen.
  ask: "MARK: the question?"
  # Why it is asked; one key shows it.
  why: "MARK: why it is asked."
  # How to look, shown with the question. May be left out.
  look: "MARK: where and how to look."
  # The answers: a name for each, and the words shown for it. Six at most, as 'not sure' is the seventh.
  choices:
    present: "MARK: what is seen when it is there"
    absent: "MARK: what is seen when it is not"
  # Which answer is normal, told to a vet as 'looked at and normal'. May be left out.
  normal: {is: absent}
  # For a measurement, write these two in the place of 'choices' and 'normal':
  # measure: degC
  # plausible: [25, 43]
"""

_HOW_TO = """\
# yaml-language-server: $schema=../.schema/how-to.json
# A technique. A finding or a step names it under 'how'; until then the check calls it unused.
how-to: NAME
# Begins with what is done: Take, Weigh, Look.
title: "MARK: NAME"
# Why it is done. May be left out.
why: "MARK: why it is done."
# What to have at hand before the first step; each is a thing in cupboard.yaml. May be left out.
need: [gloves]
# One thing to do in each line, seven at most.
steps:
  - "MARK: the first step."
# What never to do: one line or more, four at most.
cautions:
  - "MARK: what must not be done."
# What it looks like when it goes well. May be left out.
right: "MARK: what shows that it went well."
# When to stop, and what to do then. May be left out.
stop: "MARK: when to stop."
# Where this is from: names in sources.yaml, or from-memory.
sources: [from-memory]
# How sure it is: high, moderate, low, common-practice or from-memory.
certainty: from-memory
"""

_RULE = """\
NAME:
  # What no lamb may meet: a tag of act_tags, or 'shows' or 'says'. Or write 'always' for what it must meet.
  never: {tag: tube-feed}
  # Which lambs: every finding named must hold. Without it, every lamb.
  when: {swallows: [{is: no-swallow}, {unsure: true}]}
  # What would happen otherwise.
  because: "MARK: why this must never be."
  # Where this is from: names in sources.yaml, or from-memory.
  sources: [from-memory]
"""

_SOURCE = """\
NAME:
  # The title, as it was published.
  title: "MARK: the title"
  # A: a reviewed paper. B: a vet practice, university, levy board or textbook. C: trade press. D: other.
  grade: D
  # Who wrote it. May be left out.
  by: "MARK: who"
  # Where it came out. May be left out.
  in: "MARK: where"
  # The year. May be left out.
  year: 2000
  # What was read of it, and what to know before trusting it. May be left out.
  note: "MARK: what was read of it."
"""

ENTRIES: Mapping[str, Entry] = {
    "number": Entry("numbers.yaml", _NUMBER),
    "finding": Entry("findings/NAME.yaml", _FINDING),
    "how-to": Entry("how-to/NAME.yaml", _HOW_TO),
    "rule": Entry("rules.yaml", _RULE),
    "source": Entry("sources.yaml", _SOURCE),
}
"""Each kind of entry that can be begun."""
