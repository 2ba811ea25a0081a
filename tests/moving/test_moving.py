"""A lamb that is moved comes back whole."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.test_book import MOVES, NUMBERS, TEXTS, TIMES, same
from tests.moving.made import SEEN, WALK, WHOLE, everything, file_of, read
from triage.casebook.book import Casebook
from triage.casebook.rows import Case, Look, Observation
from triage.moving.taking import Taken, take_in
from triage.walk import Answer, Done


def test_a_moved_lamb_is_the_same_lamb(book: Casebook, other: Casebook) -> None:
    """Card, walks, answers with their times, looks and notes are the same on the other machine."""
    assert take_in(other, read(file_of(book))) == Taken(True, 2, 2, 0)

    assert other.lambs() == (LAMB,)
    assert other.observations_of(LAMB.id) == SEEN
    cases, before = other.cases_of(LAMB.id), book.cases_of(LAMB.id)
    assert isinstance(cases, tuple)
    assert isinstance(before, tuple)
    assert all(same(one, two) for one, two in zip(cases, before, strict=True))
    assert file_of(other) == file_of(book)


@given(
    st.lists(MOVES, max_size=5), TIMES, TIMES, TEXTS,
    st.dictionaries(st.text(st.characters(codec="utf-8"), min_size=1, max_size=9), st.one_of(NUMBERS, TEXTS), max_size=3),
    st.sampled_from(["", "ewe", "ram", "wether"]), st.booleans(),
)  # fmt: skip
@settings(max_examples=60, deadline=None)
def test_whatever_was_kept_can_be_moved(
    moves: list[Answer | Done], one: datetime, two: datetime, words: str, parts: dict[str, float | str], sex: str, yes: bool,
) -> None:  # fmt: skip
    """Any moves, times and words that the casebook holds come back from the file as they went in."""
    named = [
        replace(move, finding=f"f{move.finding}", value=f"v{move.value}" if isinstance(move.value, str) else move.value)
        if isinstance(move, Answer) else replace(move, act=f"a{move.act}")
        for move in moves
    ]  # fmt: skip
    lamb = replace(LAMB, name=words, sex=sex, born=one if yes else None, born_guessed=yes)
    look = Look(min(one, two), max(one, two)) if yes else None
    case = replace(CASE, moves=tuple(named), look=look, begun=one, touched=two, closed=two if yes else None)
    with TemporaryDirectory() as folder:
        book, other = (opened_at(Path(folder) / name).book for name in ("from", "to"))
        book.begin(lamb, case)
        book.note(Observation("o", lamb.id, "note", one, two, parts))

        moved = read(file_of(book, lamb))

        assert moved.lamb == lamb
        assert same(replace(moved.cases[0], version=1), replace(case, version=1))
        assert moved.observations == (Observation("o", lamb.id, "note", one, two, parts),)
        assert take_in(other, moved) == Taken(True, 1, 1, 0)
        assert file_of(other, lamb) == file_of(book, lamb)
        book.close()
        other.close()


def test_what_is_there_stays_as_it_is(book: Casebook, other: Casebook) -> None:
    """Taken in again, with more in it, only what is new is added; card, walks and notes are not written over."""
    take_in(other, read(file_of(book)))
    here = other.case(CASE.id)
    assert isinstance(here, Case)
    other.keep(replace(here, moves=here.moves[:1]), NOW)
    other.keep_lamb(replace(LAMB, name="Named here"))
    before = everything(other)
    book.begin(LAMB, replace(CASE, id="case-3"))
    book.note(replace(SEEN[0], id="o-3"))

    assert take_in(other, read(file_of(book))) == Taken(False, 1, 1, 4)

    assert [row for row in everything(other) if row in before] == before
    assert other.lamb(LAMB.id) == replace(LAMB, name="Named here")
    assert len(other.case(CASE.id).moves) == 1  # type: ignore[union-attr]
    assert isinstance(other.case("case-3"), Case)


def test_half_a_lamb_is_never_taken_in(book: Casebook, other: Casebook) -> None:
    """When the writing fails in the middle, as on a full disk, nothing of the file is in the casebook."""
    moved = read(file_of(book))
    many = replace(moved, cases=tuple(replace(WALK, id=f"case-{number}") for number in range(200)))
    pages = other._database.execute("PRAGMA page_count").fetchone()[0]
    other._database.execute(f"PRAGMA max_page_count = {pages + 10}")

    came = take_in(other, many)

    assert getattr(came, "why", "") == "the disk is full"
    assert everything(other) == []


def test_utc_is_written() -> None:
    """Times are ISO 8601 in UTC with their offset."""
    data = json.loads(WHOLE)

    assert data["written"] == "2026-02-11T02:10:00+00:00"
    assert datetime.fromisoformat(data["cases"][0]["moves"][0]["at"]) == NOW.astimezone(UTC)
