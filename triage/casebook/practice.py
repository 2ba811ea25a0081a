"""The practice book: who practises, and what each has shown. A file of its own beside the casebook.

So nothing that happens to it in the daytime can touch what is kept of a sick lamb.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any, TypeVar

from triage.casebook.failing import NotKept
from triage.casebook.form import Form
from triage.casebook.moves import maybe_moment, maybe_ticks, moment, parts_of, parts_text, text, ticks
from triage.casebook.rows import Part
from triage.casebook.writing import Undo, WritableFile

FINISHED = NotKept("another copy of practice has finished this case")

LOST = "A helper whose name was lost"

PRACTICE = Form(
    "practice book",
    0x50656E53,
    (
        """
    CREATE TABLE helpers (
        id TEXT PRIMARY KEY,
        name TEXT NOT NULL,
        added INTEGER NOT NULL
    );
    CREATE TABLE rounds (
        id TEXT PRIMARY KEY,
        helper TEXT NOT NULL REFERENCES helpers (id),
        begun INTEGER NOT NULL,
        ended INTEGER,
        edition TEXT NOT NULL,
        parts TEXT NOT NULL
    );
    CREATE INDEX rounds_of_helper ON rounds (helper, ended, begun);
    CREATE TABLE cards (
        id TEXT PRIMARY KEY,
        helper TEXT NOT NULL REFERENCES helpers (id),
        about TEXT NOT NULL,
        due INTEGER NOT NULL,
        parts TEXT NOT NULL
    );
    CREATE INDEX cards_of_helper ON cards (helper, due);
    """,
    ),
    ("helpers", "rounds", "cards"),
    {
        "helpers": ("helper", "helpers"),
        "rounds": ("round", "rounds"),
        "cards": ("thing to remember", "things to remember"),
    },
    (
        "INSERT OR IGNORE INTO helpers (id, name, added) "
        f"SELECT helper, '{LOST}', begun FROM rounds WHERE helper NOT IN (SELECT id FROM helpers)",
        "DELETE FROM cards WHERE helper NOT IN (SELECT id FROM helpers)",
    ),
)
"""Who practises, their rounds, and what they remember."""


R = TypeVar("R")


@dataclass(frozen=True)
class Helper:
    """One person who practises."""

    id: str
    name: str
    added: datetime


@dataclass(frozen=True)
class KeptRound:
    """One round as it is kept: the case, what was given, and, once it has ended, what came of it."""

    id: str
    helper: str
    begun: datetime
    edition: str
    parts: Mapping[str, Part] = field(default_factory=dict)
    ended: datetime | None = None


@dataclass(frozen=True)
class KeptCard:
    """One thing that a helper is to know by heart, and when it is due."""

    about: str
    due: datetime
    parts: Mapping[str, Part] = field(default_factory=dict)


class PracticeBook(WritableFile):
    """One open practice book. Each method returns what it says, or NotKept with the reason."""

    FORM = PRACTICE

    def helpers(self) -> tuple[Helper, ...] | NotKept:
        """Return everybody who practises, the first to come first."""
        select = "SELECT id, name, added FROM helpers ORDER BY added, id"
        return self._read(lambda: tuple(_helper(row) for row in self._run(select).fetchall()))

    def keep_helper(self, helper: Helper) -> Helper | NotKept:
        """Keep a helper."""

        def write() -> Helper:
            self._put_helper(helper)
            return helper

        return self._write(write)

    def _put_helper(self, helper: Helper) -> None:
        self._run(
            "INSERT OR IGNORE INTO helpers (id, name, added) VALUES (?, ?, ?)",
            (helper.id, helper.name, ticks(helper.added)),
        )

    def rounds_of(self, helper: str) -> tuple[KeptRound, ...] | NotKept:
        """Return a helper's finished rounds in the order in which they were begun, whatever a clock said.

        A row that can't be read costs itself.
        """
        select = (
            "SELECT id, helper, begun, edition, parts, ended FROM rounds "
            "WHERE helper = ? AND ended IS NOT NULL ORDER BY rowid"
        )
        return self._read(lambda: tuple(_readable(_round, self._run(select, (helper,)).fetchall())))

    def open_round(self, helper: str) -> KeptRound | NotKept | None:
        """Return the round that a helper was in the middle of, the latest one."""
        select = (
            "SELECT id, helper, begun, edition, parts, ended FROM rounds "
            "WHERE helper = ? AND ended IS NULL ORDER BY rowid DESC LIMIT 1"
        )

        def read() -> KeptRound | None:
            rows = self._run(select, (helper,)).fetchall()
            return next(iter(_readable(_round, rows)), None)

        return self._read(read)

    def cards_of(self, helper: str) -> tuple[KeptCard, ...] | NotKept:
        """Return what a helper is to know by heart."""
        select = "SELECT about, due, parts FROM cards WHERE helper = ? ORDER BY due, id"
        return self._read(lambda: tuple(_readable(_card, self._run(select, (helper,)).fetchall())))

    def keep_round(
        self, helper: Helper, kept: KeptRound, cards: Iterable[KeptCard] = ()
    ) -> KeptRound | NotKept:
        """Keep a round as it now is, and the cards that it changed, all or nothing.

        A round that has ended is never written again: a second copy may have finished it meanwhile.
        """

        def write() -> KeptRound:
            self._put_helper(helper)
            came = self._run(
                "INSERT INTO rounds (id, helper, begun, ended, edition, parts) VALUES (?, ?, ?, ?, ?, ?) "
                "ON CONFLICT (id) DO UPDATE SET ended = excluded.ended, parts = excluded.parts "
                "WHERE rounds.ended IS NULL",
                (
                    kept.id,
                    kept.helper,
                    ticks(kept.begun),
                    maybe_ticks(kept.ended),
                    kept.edition,
                    parts_text(kept.parts),
                ),
            )
            if not came.rowcount:
                raise Undo(FINISHED)
            for card in cards:
                self._put_card(kept.helper, card)
            return kept

        return self._write(write)

    def keep_cards(self, helper: Helper, cards: Sequence[KeptCard]) -> int | NotKept:
        """Keep cards that no round has changed; return how many."""

        def write() -> int:
            self._put_helper(helper)
            for card in cards:
                self._put_card(helper.id, card)
            return len(cards)

        return self._write(write)

    def _put_card(self, helper: str, card: KeptCard) -> None:
        self._run(
            "INSERT INTO cards (id, helper, about, due, parts) VALUES (?, ?, ?, ?, ?) "
            "ON CONFLICT (id) DO UPDATE SET due = excluded.due, parts = excluded.parts",
            (f"{helper} {card.about}", helper, card.about, ticks(card.due), parts_text(card.parts)),
        )

    def drop_round(self, key: str) -> str | NotKept:
        """Forget a round that was left in the middle; a finished one stays."""

        def write() -> str:
            self._run("DELETE FROM rounds WHERE id = ? AND ended IS NULL", (key,))
            return key

        return self._write(write)


def beside(casebook: Path) -> Path:
    """Return where the practice book of a casebook lies; ValueError where no file can have that name."""
    return casebook.with_name(f"{casebook.stem}-practice{casebook.suffix}")


def _readable(read: Callable[[Sequence[Any]], R], rows: Iterable[Sequence[Any]]) -> Iterator[R]:
    """Yield what can be read of rows."""
    for row in rows:
        try:
            yield read(row)
        except (ValueError, TypeError, OverflowError):
            continue


def _helper(row: Sequence[Any]) -> Helper:
    key, name, added = row
    return Helper(text(key), text(name), moment(added))


def _round(row: Sequence[Any]) -> KeptRound:
    key, helper, begun, edition, parts, ended = row
    return KeptRound(
        text(key), text(helper), moment(begun), text(edition), parts_of(parts), maybe_moment(ended)
    )


def _card(row: Sequence[Any]) -> KeptCard:
    about, due, parts = row
    return KeptCard(text(about), moment(due), parts_of(parts))
