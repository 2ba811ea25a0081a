"""A made-up lamb, ready to be played: its walk to the page that is right for it, and how it is told."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from triage.facts import Value
from triage.guide.model import Act, End
from triage.walk import Answer, Done, Walk


@dataclass(frozen=True)
class Case:
    """One made-up lamb. Its walk stops at the page that decides; all that is right comes from there."""

    name: str
    """Of a written case its own name; of a drawn one `drawn-` and what it was drawn from."""
    walk: Walk
    story: str
    told: tuple[str, ...] = ()
    remember: str = ""
    trap: str = ""
    vet_if: Answer | None = None
    """One answer to be thought otherwise: how soon a vet then?"""
    right_if: Answer | None = None
    """One answer to be thought otherwise: what is right then?"""

    @property
    def page(self) -> Act | End:
        """The page that is right for this lamb."""
        node = self.walk.node
        assert isinstance(node, Act | End)
        return node

    @property
    def urgency(self) -> str:
        """How soon this lamb needs a vet, by all its answers."""
        return self.walk.state.urgency

    @cached_property
    def now(self) -> Mapping[str, Value]:
        """What is true of it now, told or not: each finding with its last answer."""
        return {name: value for name, value in self.walk.state.known.items() if name in self.asked}

    @cached_property
    def asked(self) -> tuple[str, ...]:
        """The findings that the guide asks for it, in order, each once. What is decided now comes last."""
        last = [move.finding for move in self.walk.moves if isinstance(move, Answer)]
        return tuple(dict.fromkeys(last))

    @cached_property
    def before(self) -> tuple[Answer | Done, ...]:
        """What came before the last act: told as what has been done already, as it can't be asked now."""
        acts = [at for at, move in enumerate(self.walk.moves) if isinstance(move, Done)]
        if not acts:
            return ()
        gone = {name for name in self.asked if name not in self.walk.state.known}
        again = {m.finding for m in self.walk.moves[acts[-1] + 1 :] if isinstance(m, Answer)}
        earlier = self.walk.moves[: acts[-1] + 1]
        return tuple(m for m in earlier if isinstance(m, Done) or m.finding in gone | again)

    @property
    def hidden(self) -> tuple[str, ...]:
        """The findings that have to be looked at, in the guide's order."""
        return tuple(name for name in self.asked if name in self.now and name not in self.told)
