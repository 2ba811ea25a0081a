"""Where the shipped knowledge lies."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable

Folder: TypeAlias = "Path | Traversable"


def knowledge_root() -> Folder:
    """Return the knowledge folder: in the package once installed, beside it in a checkout."""
    from importlib.resources import files  # the way to the first question needs none of it here

    packaged = files("triage") / "knowledge"
    if packaged.is_dir():
        return packaged
    return Path(__file__).resolve().parents[2] / "knowledge"
