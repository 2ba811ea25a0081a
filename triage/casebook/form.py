"""What tells one kind of our files from another: its mark, its tables, and how an older one grows."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Form:
    """One kind of file. A file's `user_version` is how many of the migrations it has had."""

    what: str
    """What it is called to people."""
    application: int
    """Tells it from the file of another program (SQLite file format, offset 68)."""
    migrations: tuple[str, ...]
    tables: tuple[str, ...]
    """What it is made of, in an order in which each needs only those before it."""
    called: Mapping[str, tuple[str, str]]
    """What one row of each table, and several, are called to people."""
    mending: tuple[str, ...] = ()
    """What makes whole again what was saved of a damaged file, so that nothing answered is lost."""

    @property
    def version(self) -> int:
        """Return the version that it has now."""
        return len(self.migrations)
