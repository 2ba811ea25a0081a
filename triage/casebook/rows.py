"""What the casebook holds, as frozen values. All times are aware and in UTC."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from triage.walk import Move


def new_id() -> str:
    """Return a new name for a lamb, a case or an observation, the like of which is nowhere else."""
    return os.urandom(16).hex()


Part = float | str
"""One part of an observation: a measurement in its finding's unit, the name of a choice, or words."""


@dataclass(frozen=True)
class Lamb:
    """One lamb: what it is called, and what stays true of it."""

    id: str
    """Made once and the same on every machine that the lamb's cases are moved to."""
    name: str
    added: datetime
    born: datetime | None = None
    born_guessed: bool = True
    """Whether the time of birth was reckoned from an age, and not given as a time."""
    birth_type: str = ""
    """A choice of the finding `birth-type`, or empty."""
    sex: str = ""
    """`ewe`, `ram` or `wether`, or empty."""


@dataclass(frozen=True)
class Look:
    """A time at which a lamb is to be looked at again: set at one moment, due at another."""

    set_at: datetime
    due: datetime


@dataclass(frozen=True)
class Case:
    """One kept walk of a lamb: its moves in order, each with the time it was made."""

    id: str
    lamb: str
    begun: datetime
    touched: datetime
    edition: str
    """The edition of the guidance by which it was walked last."""
    moves: tuple[Move, ...] = ()
    look: Look | None = None
    closed: datetime | None = None
    version: int = 0
    """Counts the writings, so that a second copy of the app can tell that it is behind."""


@dataclass(frozen=True)
class Observation:
    """One thing seen, measured, given or said between walks."""

    id: str
    lamb: str
    kind: str
    """The name of a kind in `triage/observations/`."""
    at: datetime
    """When it was so."""
    written: datetime
    """When it was written down."""
    parts: Mapping[str, Part] = field(default_factory=dict)
