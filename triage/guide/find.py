"""Where the shipped knowledge lies."""

from __future__ import annotations

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

Folder = Path | Traversable


def knowledge_root() -> Folder:
    """Return the knowledge folder: in the package once installed, beside it in a checkout."""
    packaged = files("triage") / "knowledge"
    if packaged.is_dir():
        return packaged
    return Path(__file__).resolve().parents[2] / "knowledge"
