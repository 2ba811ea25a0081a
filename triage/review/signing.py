"""Signing, statement by statement: each decision is on the disk before the next statement is shown."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Literal

from triage.page.inert import inert
from triage.review.queue import Due
from triage.review.sittings import Said, Sitting, file_of, text_of
from triage.review.standing import Review

How = Literal["signed", "noted", "objected", "later"]

LONGEST_NAME = 80
LONGEST_WORD = 2_000
"""Signs of a name, and of a note or an objection."""

NOT_A_NAME = "Type a name that can be seen."


@dataclass(frozen=True)
class Signer:
    """Who signs, as what, and under which licence if any."""

    by: str
    role: str
    licence: str = ""


def plain(text: str, longest: int = LONGEST_NAME) -> str:
    """Return what somebody typed on one line, without what does not show."""
    return re.sub(r"\s+", " ", inert(text, longest)).strip()


@dataclass
class Signing:
    """One sitting in the making, over part of a queue."""

    review: Review
    queue: tuple[Due, ...]
    signer: Signer
    folder: Path
    """The folder whose `reviews` the sitting is written to."""
    today: str
    edition: str
    at: int = 0
    """Which statement of the queue is read now."""
    why_not: str = ""
    """Why the sitting could not be written; everything decided is kept for the next try."""
    _decided: dict[str, tuple[How, str]] = field(default_factory=dict, init=False)
    _file: Path | None = field(default=None, init=False)

    @property
    def now(self) -> Due | None:
        """The statement that is read now; None when the queue is through."""
        return self.queue[self.at] if self.at < len(self.queue) else None

    def decide(self, how: How, says: str = "") -> None:
        """Take what was decided on the statement in hand, write it, and go to the next one."""
        due = self.now
        if due is None:
            return
        self._decided[due.key] = (how, plain(says, LONGEST_WORD))
        self.at += 1
        self.write()

    def back(self) -> bool:
        """Go back one statement and take back what was decided on it; whether there was one."""
        if not self.at:
            return False
        self.at -= 1
        if self._decided.pop(self.queue[self.at].key, None):
            self.write()
        return True

    def count(self, *hows: How) -> int:
        """Return on how many statements it was decided so."""
        return sum(how in hows for how, _ in self._decided.values())

    @property
    def sitting(self) -> Sitting:
        """What has been decided so far, as a sitting."""
        seals = self.review.seals
        signed = {key: seals[key] for key, (how, _) in self._decided.items() if how in ("signed", "noted")}
        return Sitting(
            self.signer.by,
            self.signer.role,
            self.today,
            self.edition,
            signed,
            dict(self._said("objected")),
            dict(self._said("noted")),
            self.signer.licence,
        )

    def _said(self, which: How) -> Iterable[tuple[str, Said]]:
        for key, (how, says) in self._decided.items():
            if how == which:
                yield key, Said(self.review.seals[key], says)

    def write(self) -> None:
        """Write the sitting whole; where that fails, say why and keep what was decided."""
        sitting = self.sitting
        empty = not (sitting.signed or sitting.objections or sitting.notes)
        if empty:
            self.why_not = self._unwritten()
            return
        file = self._file or file_of(sitting, self.folder)
        self.why_not = write_sitting(sitting, file)
        if not self.why_not:
            self._file = file

    def _unwritten(self) -> str:
        try:
            if self._file:
                self._file.unlink(missing_ok=True)
        except OSError as error:
            return error.strerror or str(error)
        self._file = None
        return ""


def write_sitting(sitting: Sitting, file: Path) -> str:
    """Write a sitting; return why that failed, or an empty text."""
    from triage.whole_file import write_whole

    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        write_whole(text_of(sitting), file)
    except OSError as error:
        return f"{file.parent}: {error.strerror or error}"
    return ""
