"""The guide that ships with the program, fitted to this holding, as a walk takes it.

Nothing is shown as sound that is not known to be: what is on the disk must be what passed its check. If it is
not, it is checked now, and a part that fails is closed (`own/trial.py`).
"""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from pathlib import Path

from triage.guide.find import knowledge_root
from triage.guide.known import Known, known_as
from triage.guide.model import Read
from triage.guide.wanted import Part


def read_shipped(also: AbstractSet[Part] = frozenset(), other_words: bool = True) -> Read:
    """Return the shipped guide for a walk, with what else of it is asked for.

    Without `other_words` a guide in another language comes in the words that were checked.
    """
    root = knowledge_root()
    if not isinstance(root, Path):  # inside an archive, where nothing tells that a file has changed
        from triage.guide.read import read_guide

        return read_guide(root, also)
    from triage.guide.files import digest_of
    from triage.guide.kept import read_kept
    from triage.holding.place import Nowhere, cache_folder, own_folder
    from triage.review.proved import found

    place, own = cache_folder(), own_folder()
    cache = None if isinstance(place, Nowhere) else place
    digest = digest_of(root, own)
    passed = found(digest, root, cache) if digest else None
    if digest is None or passed is None:
        from triage.own.trial import tried

        return tried(root, own, cache, digest, other_words)
    read = read_kept(root, cache, also, own, digest, other_words)
    return known_as(read, Known(passed, (root, own) if own else (root,), own))
