"""What went otherwise than by the guide in a round, each kind counted apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Kind = Literal[
    "sign", "forbidden", "call", "nothing",
    "under", "over", "order", "unlooked", "amount", "left-out", "needless",
]  # fmt: skip

SAFETY: frozenset[Kind] = frozenset(("sign", "forbidden", "call", "nothing"))
"""Any of these fails a case, whatever else was right in it."""

CALLED: Mapping[Kind, str] = {
    "sign": "Danger sign missed",
    "forbidden": "Something that must not be done",
    "call": "Called less urgent than it may be",
    "nothing": "Nothing was done for it",
    "under": "Less urgent than the guide",
    "over": "More urgent than the guide",
    "order": "Another order",
    "unlooked": "Not looked at",
    "amount": "Another amount",
    "left-out": "A step left out",
    "needless": "Not needed here",
}
"""Each kind in words, the gravest first."""


@dataclass(frozen=True)
class Fault:
    """One difference from the guide. Texts are as the guide has them, with numbers by name."""

    kind: Kind
    theirs: str
    guides: str
    why: str
    sources: tuple[str, ...] = ()
    rules: tuple[str, ...] = ()
    where: str = ""
    """The kind of question, or `look`."""

    @property
    def fails(self) -> bool:
        """Whether it fails the case by itself."""
        return self.kind in SAFETY


@dataclass(frozen=True)
class Score:
    """What came of a round. There is no total that could hide a safety miss."""

    faults: tuple[Fault, ...]
    urgency: str
    """The guide's."""
    said: str
    """The helper's."""
    danger: bool
    """Whether the guide calls for the most urgent."""
    asked: frozenset[str]
    """What of the case can be known by heart: its cards, by name."""
    missed: frozenset[str]
    """Those of them that were not known."""

    @property
    def fails(self) -> bool:
        """Whether any safety step was missed."""
        return any(fault.fails for fault in self.faults)
