"""What is kept comes back as it was, and nothing that was answered is ever lost."""

from __future__ import annotations

import sqlite3
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from triage.casebook.book import Behind, Casebook
from triage.casebook.failing import NotKept
from triage.casebook.rows import Case, Look, Observation
from triage.facts import UNSURE
from triage.walk import Answer, Done

TIMES = st.datetimes(datetime(1900, 1, 1), datetime(9000, 1, 1), timezones=st.just(UTC))
TEXTS = st.text(st.characters(codec="utf-8"), max_size=200)
NUMBERS = st.floats(-1e9, 1e9)
MOVES = st.one_of(
    st.builds(Answer, TEXTS, st.one_of(NUMBERS, TEXTS, st.just(UNSURE)), TEXTS, st.one_of(st.none(), TIMES)),
    st.builds(Done, TEXTS, st.one_of(st.none(), TIMES)),
)
HOSTILE = "[/] [red]\x1b[2J\x00\u202e\u2066<b>&'\";--" + "x" * 10_000


def begun(book: Casebook, case: Case = CASE) -> Case:
    came = book.begin(LAMB, case)
    assert isinstance(came, Case)
    return came


def same(one: Case, other: Case) -> bool:
    """Whether two cases are alike in everything, what is typed and when among it."""
    told = [(getattr(move, "said", ""), move.at) for case in (one, other) for move in case.moves]
    return one == other and told[: len(one.moves)] == told[len(one.moves) :]


def test_a_case_comes_back_as_it_was_kept(book: Casebook) -> None:
    """Lamb, moves with their times, look and edition are read as they were written."""
    kept = begun(book)

    [(lamb, case)] = book.open_cases(10)  # type: ignore[misc]
    assert lamb == LAMB
    assert same(case, kept)
    assert case.version == 1


@given(st.lists(MOVES, max_size=6), TIMES, TIMES, TEXTS)
@settings(max_examples=60, deadline=None)
def test_any_moves_come_back(
    moves: list[Answer | Done], begun_at: datetime, due: datetime, said: str
) -> None:
    """Whatever is answered, whenever, in whatever signs, is read as it was written."""
    case = replace(CASE, moves=tuple(moves), begun=begun_at, look=Look(begun_at, due), edition=said)
    with TemporaryDirectory() as folder:
        book = opened_at(Path(folder) / "c.sqlite").book
        kept = begun(book, case)

        assert same(book.case(case.id), kept)  # type: ignore[arg-type]
        book.close()


def test_hostile_words_are_stored_whole(book: Casebook) -> None:
    """Markup, control codes, marks of direction and 10,000 signs are kept as they are, in every field."""
    lamb = replace(LAMB, name=HOSTILE, sex=HOSTILE, birth_type=HOSTILE)
    case = replace(CASE, moves=(Answer(HOSTILE, HOSTILE, HOSTILE, NOW), Done(HOSTILE, NOW)), edition=HOSTILE)
    seen = Observation("o", lamb.id, HOSTILE, NOW, NOW, {HOSTILE: HOSTILE})

    assert isinstance(book.begin(lamb, case), Case)
    assert book.note(seen) == seen

    assert book.lamb(lamb.id) == lamb
    assert same(book.case(case.id), replace(case, version=1))  # type: ignore[arg-type]
    assert book.observations_of(lamb.id) == (seen,)


def test_half_a_sign_becomes_visible(book: Casebook) -> None:
    """A broken terminal may send half a sign, which no file holds: it is kept as words."""
    book.keep_lamb(replace(LAMB, name="a\udc80b"))

    assert book.lamb(LAMB.id).name == "a\\udc80b"  # type: ignore[union-attr]


def test_moves_taken_back_stay_in_the_file(book: Casebook, path: Path) -> None:
    """What no longer belongs to the walk is marked with when it was dropped, and the rest keeps its times."""
    case = begun(book)
    later = NOW + timedelta(minutes=5)
    changed = replace(case, moves=(case.moves[0], Answer("temperature", 38.0, "38", later)), look=None)

    kept = book.keep(changed, later)

    assert isinstance(kept, Case)
    assert kept.version == 2
    assert same(book.case(case.id), kept)  # type: ignore[arg-type]
    with sqlite3.connect(path) as raw:
        rows = raw.execute("SELECT place, value, dropped IS NULL FROM moves ORDER BY id").fetchall()
    assert rows == [(0, "none", 1), (1, 36.2, 0), (1, 38.0, 1)]


def test_two_copies_never_write_over_each_other(book: Casebook, path: Path) -> None:
    """A copy that has not seen the other's answers is told so, and nothing is written."""
    case = begun(book)
    other = opened_at(path).book
    more = replace(case, moves=(*case.moves, Answer("age", 3.0, "3 h", NOW)))
    assert isinstance(other.keep(more, NOW), Case)

    assert isinstance(book.keep(replace(case, moves=case.moves[:1]), NOW), Behind)
    assert len(book.case(case.id).moves) == 3  # type: ignore[union-attr]
    other.close()


def test_several_writings_are_kept_all_or_none(book: Casebook) -> None:
    """When one of several writings fails, none of them is kept."""
    bad = replace(CASE, id="case-2", lamb="nobody")

    failed = book.together([partial(book.begin, LAMB, CASE), partial(book.begin, LAMB, CASE), lambda: bad])

    assert isinstance(failed, NotKept)
    assert book.lambs() == ()
    assert book.open_cases(9) == ()


def test_the_longest_due_comes_first(book: Casebook) -> None:
    """Open cases with a look come first, the earliest due before the others; then the latest touched."""
    for name, minutes, touched in (("a", 30, 0), ("b", None, 1), ("c", 10, 2), ("d", None, 3)):
        look = None if minutes is None else Look(NOW, NOW + timedelta(minutes=minutes))
        at = NOW + timedelta(minutes=touched)
        begun(book, replace(CASE, id=name, look=look, touched=at))
    begun(book, replace(CASE, id="closed", closed=NOW))

    assert [case.id for _, case in book.open_cases(9)] == ["c", "a", "d", "b"]  # type: ignore[union-attr]
    assert [case for case, _, _ in book.looks(9)] == ["c", "a"]  # type: ignore[union-attr]
    assert book.count_open() == 4


def test_an_observation_is_written_once(book: Casebook) -> None:
    """An observation that is there already, by its id, stays as it is."""
    book.keep_lamb(LAMB)
    seen = Observation("o", LAMB.id, "weight", NOW, NOW, {"weight": 4.2})
    book.note(seen)
    book.note(replace(seen, parts={"weight": 9.9}))

    assert book.observations_of(LAMB.id) == (seen,)


def test_an_observation_needs_its_lamb(book: Casebook) -> None:
    """The file holds nothing about a lamb that is not in it."""
    assert isinstance(book.note(Observation("o", "nobody", "note", NOW, NOW, {})), NotKept)


@pytest.mark.parametrize("number", [float("inf"), float("nan"), -1e300])
def test_a_number_that_is_no_measurement_is_not_kept(book: Casebook, number: float) -> None:
    """No page could show it; nothing of the writing is kept, and the reason is told."""
    case = replace(CASE, moves=(Answer("weight", number),))

    assert book.begin(LAMB, case) == NotKept("it can't be written down as it is")
    assert isinstance(book.begin(LAMB, CASE), Case)
    seen = Observation("o", LAMB.id, "weight", NOW, NOW, {"weight": number})
    assert book.note(seen) == NotKept("it can't be written down as it is")


def test_the_list_of_a_start_reads_no_more_than_it_shows(book: Casebook) -> None:
    """Open cases and looks come in their order from an index, however many cases there are: nothing is
    sorted, and no table is read through."""
    asked: list[str] = []
    book._database.set_trace_callback(asked.append)
    book.open_cases(20)
    book.looks(20)
    book.count_open()
    book._database.set_trace_callback(None)

    selects = [each for each in asked if each.startswith("SELECT")]
    plans = [
        row[3] for each in selects for row in book._database.execute(f"EXPLAIN QUERY PLAN {each}").fetchall()
    ]
    assert len(selects) == 3
    assert any("cases_open" in plan for plan in plans)
    assert not [plan for plan in plans if "TEMP B-TREE" in plan or ("SCAN" in plan and "INDEX" not in plan)]
