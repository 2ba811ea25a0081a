"""The casebook: every writing is one transaction, on the disk before the call returns."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from datetime import datetime

from triage.casebook.failing import NotKept
from triage.casebook.moves import alike, columns, maybe_ticks, parts_text, ticks
from triage.casebook.reading import CASE, BookReader
from triage.casebook.rows import Case, Lamb, Look, Observation
from triage.casebook.schema import CASEBOOK
from triage.casebook.writing import Undo, WritableFile
from triage.walk import Move


class Behind:
    """The case was written by another copy of the app since it was read here."""


class Casebook(BookReader, WritableFile):
    """One open casebook file. Each method returns what it says, or NotKept with the reason."""

    FORM = CASEBOOK

    def begin(self, lamb: Lamb, case: Case) -> Case | NotKept:
        """Keep a new case with its moves, and its lamb if that is new too."""

        def write() -> Case:
            self._put_lamb(lamb)
            self._run(
                f"INSERT INTO cases ({CASE}) VALUES (?, ?, ?, ?, ?, ?, ?, ?, 1)",
                (
                    case.id,
                    lamb.id,
                    ticks(case.begun),
                    ticks(case.touched),
                    case.edition,
                    *_look(case.look),
                    maybe_ticks(case.closed),
                ),
            )
            self._add_moves(case.id, case.moves, 0)
            return replace(case, lamb=lamb.id, version=1)

        return self._write(write)

    def keep(self, case: Case, now: datetime) -> Case | Behind | NotKept:
        """Keep a case as it now is: its moves, look, edition, and whether it is closed.

        Moves that are no longer among them stay in the file, marked as dropped. Behind when the
        file holds a later version; then nothing is written.
        """

        def write() -> Case | Behind:
            row = self._run("SELECT version FROM cases WHERE id = ?", (case.id,)).fetchone()
            if row is None or row[0] != case.version:
                return Behind()
            stored = self._moves(case.id)
            same = alike(stored, case.moves)
            if same < len(stored):
                self._run(
                    "UPDATE moves SET dropped = ? WHERE case_id = ? AND place >= ? AND dropped IS NULL",
                    (ticks(now), case.id, same),
                )
            self._add_moves(case.id, case.moves[same:], same)
            self._run(
                "UPDATE cases SET touched = ?, edition = ?, look_set = ?, look_due = ?, closed = ?, "
                "version = version + 1 WHERE id = ?",
                (ticks(now), case.edition, *_look(case.look), maybe_ticks(case.closed), case.id),
            )
            return replace(case, touched=now, version=case.version + 1)

        return self._write(write)

    def keep_lamb(self, lamb: Lamb) -> Lamb | NotKept:
        """Keep a lamb's card as it now is."""

        def write() -> Lamb:
            self._put_lamb(lamb)
            return lamb

        return self._write(write)

    def note(self, observation: Observation) -> Observation | NotKept:
        """Keep an observation; one that is there already, by its id, stays as it is."""

        def write() -> Observation:
            self._run(
                "INSERT OR IGNORE INTO observations (id, lamb, kind, at, written, parts) "
                "VALUES (?, ?, ?, ?, ?, ?)",
                (
                    observation.id,
                    observation.lamb,
                    observation.kind,
                    ticks(observation.at),
                    ticks(observation.written),
                    parts_text(observation.parts),
                ),
            )
            return observation

        return self._write(write)

    def together(self, steps: Iterable[Callable[[], object]]) -> NotKept | None:
        """Take several of the writings above as one: all of them are kept, or none."""

        def write() -> NotKept | None:
            for step in steps:
                came = step()
                if isinstance(came, NotKept):
                    raise Undo(came)
                if isinstance(came, Behind):
                    raise Undo(NotKept("another copy of this guide has just written to this lamb"))
            return None

        return self._write(write)

    def _put_lamb(self, lamb: Lamb) -> None:
        self._run(
            "INSERT INTO lambs (id, name, added, born, born_guessed, birth_type, sex) "
            "VALUES (?, ?, ?, ?, ?, ?, ?) "
            "ON CONFLICT (id) DO UPDATE SET name = excluded.name, born = excluded.born, "
            "born_guessed = excluded.born_guessed, birth_type = excluded.birth_type, sex = excluded.sex",
            (
                lamb.id,
                lamb.name,
                ticks(lamb.added),
                maybe_ticks(lamb.born),
                int(lamb.born_guessed),
                lamb.birth_type,
                lamb.sex,
            ),
        )

    def _add_moves(self, case: str, moves: Sequence[Move], first: int) -> None:
        for place, move in enumerate(moves, first):
            self._run(
                "INSERT INTO moves (case_id, place, kind, name, value, said, at) "
                "VALUES (?, ?, ?, ?, ?, ?, ?)",
                (case, place, *columns(move)),
            )


def _look(look: Look | None) -> tuple[int | None, int | None]:
    return (None, None) if look is None else (ticks(look.set_at), ticks(look.due))
