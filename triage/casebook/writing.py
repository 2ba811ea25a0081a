"""Writing to a file of ours: every writing is one transaction, on the disk before the call returns."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from typing import ClassVar, TypeVar

from triage.casebook.base import OpenFile, stamp_of
from triage.casebook.failing import NotKept, not_kept, primary_of
from triage.casebook.form import Form

T = TypeVar("T")

HASTE = 0.05
"""Seconds to wait after a wait was in vain, until a writing succeeds: nobody sits before a dead screen."""


class WritableFile(OpenFile):
    """The writing half of an open file."""

    FORM: ClassVar[Form]
    """Which kind of file it is."""

    def _write(self, work: Callable[[], T]) -> T | NotKept:
        try:
            if self._database.in_transaction:  # inside `together`, which begins and ends it
                return work()
            return self._transaction(work)
        except Undo as undo:
            if self._database.in_transaction:
                raise
            return undo.why
        except (sqlite3.Error, OSError, ValueError, OverflowError) as error:
            return not_kept(error)

    def _transaction(self, work: Callable[[], T]) -> T:
        try:
            self._begin()
            came = work()
            self._run("COMMIT")
        except BaseException:
            self._roll_back()
            raise
        return came

    def _begin(self) -> None:
        """Begin to write, unless another file lies where this one was: nobody would find what is written."""
        try:
            self._run("BEGIN IMMEDIATE")
        except sqlite3.Error as error:
            self._wait_at_most(HASTE if primary_of(error) == "SQLITE_BUSY" else self._patience)
            raise
        self._wait_at_most(self._patience)
        if stamp_of(self.path) != self.stamp:
            raise Undo(NotKept(f"the {self.FORM.what} was moved or deleted while it was open", damaged=True))

    def _wait_at_most(self, seconds: float) -> None:
        self._run(f"PRAGMA busy_timeout = {round(seconds * 1000)}")

    def _roll_back(self) -> None:
        if self._database.in_transaction:
            self._database.rollback()


class Undo(Exception):
    """Raised by a step of `together`: undoes all of them, and is returned as its reason."""

    def __init__(self, why: NotKept) -> None:
        self.why = why
