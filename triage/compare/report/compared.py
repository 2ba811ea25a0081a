"""A comparison that has been made, as every report takes it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from triage.compare.compared import Comparison
from triage.compare.parts import Part, parts_changed
from triage.compare.reasons import told
from triage.compare.statements import values_of
from triage.guide.model import Guide
from triage.units import System

Reasons = Mapping[str, str]


@dataclass(frozen=True)
class Edition:
    """One of the two guides, and what there is to say of it as a whole."""

    guide: Guide
    folder: str
    """As it was named."""
    standing: str = ""
    """How it stands with vets, in one sentence."""
    mistakes: int = 0
    """How many mistakes the check finds in it."""

    @property
    def words(self) -> str:
        """Which guide it is, in one sentence."""
        front = self.guide.front
        return f"{front.title}, edition {front.edition} of {front.date}, in {self.folder}."

    @property
    def warning(self) -> str:
        """What to know of a guide with mistakes, empty for a sound one."""
        if not self.mistakes:
            return ""
        one = self.mistakes == 1
        some = "1 mistake" if one else f"{self.mistakes:,} mistakes"
        return (
            f"This guide has {some}; 'triage check' tells {'it' if one else 'them'}. Not for a lamb in need."
        )


@dataclass(frozen=True)
class Compared:
    """Two guides, what differs between them, and why."""

    old: Edition
    new: Edition
    comparison: Comparison
    reasons: Reasons = field(default_factory=dict)
    """By the key of a statement."""
    system: System = "metric"

    def parts(self, key: str) -> tuple[Part, ...]:
        """Return the fields of a statement that are other than before."""
        old, new = (values.get(key) for values in self._values)
        return parts_changed(old, new)

    @cached_property
    def _values(self) -> tuple[Mapping[str, object], ...]:
        return tuple(values_of(each.guide) for each in (self.old, self.new))

    def why(self, *keys: str) -> str:
        """Return the reasons given for some statements, or that none is given."""
        return told(self.reasons, keys)
