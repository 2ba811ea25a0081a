"""The small guide of the tests and others like it, for comparing."""

from __future__ import annotations

from pathlib import Path

from tests.conftest import small_guide, write_small
from triage.compare import Comparison, compare
from triage.guide.model import Guide

Change = tuple[str, str, str]


def two(folder: Path, *changes: Change) -> tuple[Guide, Guide]:
    """Return the small guide, and the same with changes."""
    return small_guide(folder / "old"), small_guide(folder / "new", *changes)


def two_folders(folder: Path, *changes: Change) -> tuple[Path, Path]:
    """Write the small guide, and the same with changes."""
    return write_small(folder / "old"), write_small(folder / "new", *changes)


def came_of(folder: Path, *changes: Change) -> Comparison:
    """Compare the small guide with what changes make of it."""
    return compare(*two(folder, *changes))
