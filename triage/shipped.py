"""The guide that ships with the program, as a walk takes it."""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from pathlib import Path

from triage.guide.find import knowledge_root
from triage.guide.model import Read
from triage.guide.wanted import Part


def read_shipped(also: AbstractSet[Part] = frozenset()) -> Read:
    """Return the shipped guide for a walk, with what else of it is asked for."""
    root = knowledge_root()
    if not isinstance(root, Path):  # inside an archive, where nothing tells that a file has changed
        from triage.guide.read import read_guide

        return read_guide(root, also)
    from triage.guide.kept import read_kept
    from triage.holding.place import Nowhere, cache_folder

    place = cache_folder()
    return read_kept(root, None if isinstance(place, Nowhere) else place, also)
