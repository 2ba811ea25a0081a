"""The guide that ships with the program, as a walk takes it."""

from __future__ import annotations

from pathlib import Path

from triage.guide.find import knowledge_root
from triage.guide.model import Read


def read_shipped(rearing: bool = False, cupboard: bool = False) -> Read:
    """Return the shipped guide for a walk, with its raising plan or its cupboard where asked for."""
    root = knowledge_root()
    if not isinstance(root, Path):  # inside an archive, where nothing tells that a file has changed
        from triage.guide.read import read_guide

        return read_guide(root, False, rearing=rearing, cupboard=cupboard)
    from triage.guide.kept import read_kept
    from triage.holding.place import Nowhere, cache_folder

    place = cache_folder()
    return read_kept(root, None if isinstance(place, Nowhere) else place, rearing, cupboard)
