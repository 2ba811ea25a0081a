"""Reading the casebook."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Literal

from triage.casebook.base import OpenFile
from triage.casebook.failing import NotKept
from triage.casebook.moves import maybe_moment, moment, move_of, parts_of, text
from triage.casebook.rows import Case, Lamb, Look, Observation
from triage.walk import Move

_LAMB = "lambs.id, lambs.name, lambs.added, lambs.born, lambs.born_guessed, lambs.birth_type, lambs.sex"
CASE = "id, lamb, begun, touched, edition, look_set, look_due, closed, version"
_CASE = ", ".join(f"cases.{name}" for name in CASE.split(", "))
_JOINED = "FROM cases JOIN lambs ON lambs.id = cases.lamb WHERE closed IS NULL"
_DUE_FIRST = "ORDER BY look_due IS NULL, look_due, touched DESC"
"""The order of the index `cases_open`, so that nothing is sorted."""


class BookReader(OpenFile):
    """The reading half of a casebook. Each method returns what it says, or NotKept with the reason."""

    def open_cases(self, most: int) -> tuple[tuple[Lamb, Case], ...] | NotKept:
        """Return open cases with their moves, at most so many: the longest due first, then the latest."""

        def read() -> tuple[tuple[Lamb, Case], ...]:
            rows = self._run(
                f"SELECT {_LAMB}, {_CASE} {_JOINED} {_DUE_FIRST} LIMIT ?",
                (most,),
            ).fetchall()
            return tuple((_lamb_of(row[:7]), self._case_of(row[7:])) for row in rows)

        return self._read(read)

    def looks(self, most: int) -> tuple[tuple[str, str, Look], ...] | NotKept:
        """Return the looks set on open cases, first due first, as (case, name of the lamb, look)."""

        def read() -> tuple[tuple[str, str, Look], ...]:
            rows = self._run(
                f"SELECT cases.id, lambs.name, look_set, look_due {_JOINED} AND (look_due IS NULL) = 0 "
                "ORDER BY look_due, touched DESC LIMIT ?",
                (most,),
            ).fetchall()
            return tuple((text(case), text(name), _look(at, due)) for case, name, at, due in rows)

        return self._read(read)

    def count_open(self) -> int | NotKept:
        """Return how many cases are open."""
        return self._read(lambda: int(self._one("SELECT count(*) FROM cases WHERE closed IS NULL")))

    def lambs(self) -> tuple[Lamb, ...] | NotKept:
        """Return every lamb, the latest first."""
        select = f"SELECT {_LAMB} FROM lambs ORDER BY added DESC, id"
        return self._read(lambda: tuple(_lamb_of(row) for row in self._run(select).fetchall()))

    def lamb(self, key: str) -> Lamb | NotKept | None:
        """Return one lamb, or None when there is none of this id."""

        def read() -> Lamb | None:
            row = self._run(f"SELECT {_LAMB} FROM lambs WHERE id = ?", (key,)).fetchone()
            return _lamb_of(row) if row else None

        return self._read(read)

    def case(self, key: str) -> Case | NotKept | None:
        """Return one case with its moves, or None when there is none of this id."""

        def read() -> Case | None:
            row = self._run(f"SELECT {_CASE} FROM cases WHERE id = ?", (key,)).fetchone()
            return self._case_of(row) if row else None

        return self._read(read)

    def cases_of(self, lamb: str) -> tuple[Case, ...] | NotKept:
        """Return a lamb's cases with their moves, the oldest first."""
        select = f"SELECT {_CASE} FROM cases WHERE lamb = ? ORDER BY begun, id"
        return self._read(lambda: tuple(self._case_of(row) for row in self._run(select, (lamb,)).fetchall()))

    def ids(self, table: Literal["cases", "observations"]) -> frozenset[str] | NotKept:
        """Return the ids of all cases, or of all observations."""
        return self._read(
            lambda: frozenset(row[0] for row in self._run(f"SELECT id FROM {table}").fetchall())
        )

    def observations_of(self, lamb: str) -> tuple[Observation, ...] | NotKept:
        """Return what was observed of a lamb, the oldest first."""
        select = (
            "SELECT id, lamb, kind, at, written, parts FROM observations WHERE lamb = ? ORDER BY at, written"
        )
        return self._read(lambda: tuple(_observation(row) for row in self._run(select, (lamb,)).fetchall()))

    def _moves(self, case: str) -> tuple[Move, ...]:
        rows = self._run(
            "SELECT kind, name, value, said, at FROM moves "
            "WHERE case_id = ? AND dropped IS NULL ORDER BY place",
            (case,),
        ).fetchall()
        return tuple(move_of(row) for row in rows)

    def _case_of(self, row: Sequence[Any]) -> Case:
        key, lamb, begun, touched, edition, look_set, look_due, closed, version = row
        look = None if look_due is None else _look(look_set, look_due)
        times = (moment(begun), moment(touched))
        return Case(
            text(key),
            text(lamb),
            *times,
            text(edition),
            self._moves(key),
            look,
            maybe_moment(closed),
            version,
        )


def _look(set_at: int | None, due: int) -> Look:
    return Look(moment(due if set_at is None else set_at), moment(due))


def _lamb_of(row: Sequence[Any]) -> Lamb:
    key, name, added, born, guessed, birth_type, sex = row
    times = (moment(added), maybe_moment(born))
    return Lamb(text(key), text(name), *times, bool(guessed), text(birth_type), text(sex))


def _observation(row: Sequence[Any]) -> Observation:
    key, lamb, kind, at, written, parts = row
    return Observation(text(key), text(lamb), text(kind), moment(at), moment(written), parts_of(parts))
