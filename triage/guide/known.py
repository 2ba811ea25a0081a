"""Where a guide comes from, and what is known of it: carried by the guide, and no part of what it says."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from triage.guide.files import REVIEWS
from triage.guide.find import Folder
from triage.guide.model import Read

NEVER = "Never reviewed by a vet."


@dataclass(frozen=True)
class Known:
    """What is known of a guide that is in use."""

    seals_in: Path | None = None
    """The file that holds the seal of each statement, as they were when the guide passed its check."""
    reviews_in: tuple[Folder, ...] = ()
    """The folders whose sittings count."""
    own: Path | None = None
    """The person's own folder, where the guide is fitted to one."""
    notice: str = ""
    """What must stand on every page: a part that is closed, an own folder that is not in use."""
    told: str = ""
    """What is told once, where the guide is opened."""

    @property
    def sat_over(self) -> bool:
        """Whether anybody may have signed anything; where not, a question need not wait for more."""
        return any((folder / REVIEWS).is_dir() for folder in self.reviews_in)


def known_as(read: Read, what: Known) -> Read:
    """Return what was read with what is known of it."""
    return replace(read, guide=replace(read.guide, known=what)) if read.guide else read
