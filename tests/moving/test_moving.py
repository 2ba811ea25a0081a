"""A lamb that is moved comes back whole; a file that is not right changes nothing."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.test_book import HOSTILE, MOVES, NUMBERS, TEXTS, TIMES, same
from triage.casebook.book import Casebook
from triage.casebook.rows import Case, Lamb, Look, Observation
from triage.facts import UNSURE
from triage.moving.export import exported
from triage.moving.reading import BIGGEST, Moved, Refused, read_moved
from triage.moving.taking import Taken, take_in
from triage.walk import Answer, Done

SEEN = (
    Observation("o-1", LAMB.id, "weight", NOW, NOW, {"weight": 4.2}),
    Observation("o-2", LAMB.id, "note", NOW, NOW, {"note": HOSTILE}),
)
WALK = replace(
    CASE,
    moves=(
        *CASE.moves, Answer("mouth", UNSURE, "?", NOW), Done("warm-it", NOW), Answer("age", 3.0), Done("act"),
        Answer("a-finding-of-another-guide", "x", HOSTILE, NOW),
    ),
)  # fmt: skip
CLOSED = Case("case-2", LAMB.id, NOW, NOW, "2026.1", closed=NOW + timedelta(hours=1))


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Casebook]:
    """A casebook with one invented lamb, two walks and two notes."""
    kept = opened_at(tmp_path / "from.sqlite").book
    for case in (WALK, CLOSED):
        kept.begin(LAMB, case)
    for seen in SEEN:
        kept.note(seen)
    yield kept
    kept.close()


@pytest.fixture
def other(tmp_path: Path) -> Iterator[Casebook]:
    """Another casebook, with nothing in it."""
    kept = opened_at(tmp_path / "to.sqlite").book
    yield kept
    kept.close()


def file_of(book: Casebook, lamb: Lamb = LAMB) -> bytes:
    text = exported(book, lamb, "2026.1", NOW)
    assert isinstance(text, str), text
    return text.encode()


def read(written: bytes) -> Moved:
    moved = read_moved(written)
    assert isinstance(moved, Moved), moved
    return moved


def refused(data: object) -> str:
    moved = read_moved(data if isinstance(data, bytes) else json.dumps(data).encode())
    assert isinstance(moved, Refused)
    return moved.why


def everything(book: Casebook) -> list[tuple[object, ...]]:
    return [
        row
        for table in ("lambs", "cases", "moves", "observations")
        for row in book._database.execute(f"SELECT * FROM {table} ORDER BY 1")
    ]


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


WRONG: dict[str, tuple[tuple[Any, ...], Any, str]] = {
    "no map": ((), [1], "it is not a file that this program exported"),
    "another file": ((), {"a": 1}, "it is not a file that this program exported"),
    "newer": (("moved",), 2, "it is of version 2, made by a newer edition; this one reads version 1"),
    "no version": (("moved",), True, "moved: this should be 1"),
    "a version of old": (("moved",), 0, "moved: this should be 1"),
    "a field too many": (("lamb", "owner"), "me", "lamb: there is no field 'owner' here"),
    "a field too many above": (("more",), 1, "the file: there is no field 'more' here"),
    "text for a list": (("cases",), "none", "cases: this should be a list"),
    "a list for a map": (("cases", 0), [], "cases[0]: this should be a map"),
    "an empty id": (("lamb", "id"), "", "lamb.id: this should be a text of 1 to 200 signs"),
    "a long name of a finding": (("cases", 0, "moves", 0, "finding"), "x" * 201, "cases[0].moves[0].finding: this should be a text of 1 to 200 signs"),
    "half a sign": (("lamb", "name"), "a\ud800", "lamb.name: this text holds half a sign"),
    "no sex of a sheep": (("lamb", "sex"), "bull", "lamb.sex: this should be ewe, ram, wether, or empty"),
    "a word for yes": (("lamb", "born_guessed"), "yes", "lamb.born_guessed: this should be true or false"),
    "no time": (("cases", 0, "begun"), "last night", "cases[0].begun: this should be a time, like 2026-02-11T02:10:00+00:00"),
    "a number for a time": (("cases", 0, "touched"), 1770000000, "cases[0].touched: this should be a time, like 2026-02-11T02:10:00+00:00"),
    "no such day": (("cases", 0, "begun"), "2026-02-30T00:00:00+00:00", "cases[0].begun: this should be a time, like 2026-02-11T02:10:00+00:00"),
    "no offset": (("cases", 0, "begun"), "2026-02-11T02:10:00", "cases[0].begun: this should be a time with its offset, between 1900 and 9000"),
    "before all clocks": (("written",), "0001-01-01T00:00:00+14:00", "written: this should be a time, like 2026-02-11T02:10:00+00:00"),
    "after all clocks": (("written",), "9999-12-31T23:00:00+00:00", "written: this should be a time with its offset, between 1900 and 9000"),
    "due before it was set": (("cases", 0, "look", "due"), "2026-02-11T02:00:00+00:00", "cases[0].look: this is due before it was set"),
    "a look too many": (("cases", 0, "look", "rung"), True, "cases[0].look: there is no field 'rung' here"),
    "both value and unsure": (("cases", 0, "moves", 0, "unsure"), True, "cases[0].moves[0]: this needs either a value or unsure"),
    "unsure and not": (("cases", 0, "moves", 2, "unsure"), False, "cases[0].moves[2].unsure: this can only be true"),
    "a list for a value": (("cases", 0, "moves", 0, "value"), [1], "cases[0].moves[0].value: this should be a number"),
    "yes for a number": (("cases", 0, "moves", 1, "value"), True, "cases[0].moves[1].value: this should be a number"),
    "out of all bounds": (("cases", 0, "moves", 1, "value"), 10**400, "cases[0].moves[1].value: this number is out of all bounds"),
    "an act with a value": (("cases", 0, "moves", 3, "value"), 1, "cases[0].moves[3]: there is no field 'value' here"),
    "a part of parts": (("observations", 0, "parts", "weight"), {"kg": 4}, "observations[0].parts.weight: this should be a number"),
    "parts as a list": (("observations", 0, "parts"), [], "observations[0].parts: this should be a map"),
    "one walk twice": (("cases", 1, "id"), "case-1", "cases: the id 'case-1' stands here twice"),
    "one note twice": (("observations", 1, "id"), "o-1", "observations: the id 'o-1' stands here twice"),
}  # fmt: skip


@pytest.mark.parametrize("name", WRONG)
def test_what_is_not_right_is_refused_with_its_place(name: str, book: Casebook) -> None:
    """Each field is checked strictly, and the reason names where in the file it is."""
    way, value, why = WRONG[name]
    data = json.loads(file_of(book))
    if way:
        at = data
        for step in way[:-1]:
            at = at[step]
        at[way[-1]] = value
    else:
        data = value

    assert refused(data) == why


def test_each_field_is_needed(book: Casebook) -> None:
    """A file that lacks any one of its fields is refused, and the reason names it."""
    data = json.loads(file_of(book))
    for way in fields(data):
        spoilt = deepcopy(data)
        at = spoilt
        for step in way[:-1]:
            at = at[step]
        del at[way[-1]]
        if way[0] == "moved":
            assert "exported" in refused(spoilt)
        elif way[-1] in ("value", "unsure", "act"):  # what a move without it could be is not known
            assert refused(spoilt).startswith("cases[0].moves[")
        elif way[-2:-1] != ("parts",):
            assert f"{way[-1]}: this is missing" in refused(spoilt)


def fields(data: object, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the way to each field of each map."""
    if isinstance(data, dict):
        for name, value in data.items():
            yield (*way, name)
            yield from fields(value, (*way, name))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from fields(value, (*way, index))


def test_texts_that_are_not_such_a_file(book: Casebook) -> None:
    """What is cut short, is no text, is nested without end or too large is refused in a sentence."""
    whole = file_of(book)
    for end in range(0, len(whole) - 2, 7):
        assert "cut short" in refused(whole[:end])
    assert refused(b"\xff\xfe{}") == "it is not UTF-8 text"
    assert refused(b"SQLite format 3\0").startswith("line 1, column 1: this is not JSON")
    assert refused(b"[" * 200_000) == "it is nested too deeply"
    assert refused(b'{"moved":1,"lamb":' + b'{"a":' * 200_000) == "it is nested too deeply"
    assert refused(b" " * (BIGGEST + 1)) == "it is larger than 20 MB"
    assert refused(b'{"moved": NaN}') == "'NaN' is not a number"
    assert refused(b'{"moved": 1' + b"0" * 5000 + b"}") == "a number in it is out of all bounds"
    assert refused(whole.replace(b'"value": 36.2', b'"value": 1e999')).endswith(
        "this number is out of all bounds"
    )


def test_a_field_that_stands_twice_is_refused_with_its_place(book: Casebook) -> None:
    """Which of the two would count is not guessed."""
    whole = file_of(book)

    twice = whole.replace(b'"finding": "danger",', b'"finding": "danger", "finding": "mouth",')
    assert refused(twice) == "cases[0].moves[0]: the field 'finding' stands here twice"
    assert refused(whole.replace(b'"weight": 4.2', b'"weight": 4.2, "weight": 9')) == (
        "observations[0].parts: the field 'weight' stands here twice"
    )
    assert refused(b'{"moved": 1, "moved": 1}') == "the file: the field 'moved' stands here twice"


def test_an_editor_may_have_saved_it(book: Casebook) -> None:
    """Other spacing, another order of fields and a byte order mark change nothing."""
    data = json.loads(file_of(book))
    turned = {name: data[name] for name in reversed(data)}

    assert read(b"\xef\xbb\xbf" + json.dumps(turned).encode()) == read(file_of(book))


VALUES = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), st.text(max_size=9), st.just("2026-02-11T02:10:00+00:00")),
    lambda each: st.lists(each, max_size=3) | st.dictionaries(st.text(max_size=5), each, max_size=3), max_leaves=5,
)  # fmt: skip


@given(st.data())
@settings(max_examples=200, deadline=None)
def test_no_change_to_a_file_gives_half_a_lamb(data: st.DataObject) -> None:
    """However a file is changed, it is taken whole or refused in a sentence, and nothing is raised."""
    whole = json.loads(WHOLE)
    ways = list(fields(whole))
    for way in data.draw(st.lists(st.sampled_from(ways), min_size=1, max_size=3)):
        at: Any = whole
        try:
            for step in way[:-1]:
                at = at[step]
            at[way[-1]] = data.draw(VALUES)
        except (KeyError, IndexError, TypeError):
            continue  # an earlier change took this place away
    try_to_take(json.dumps(whole).encode())


@given(st.integers(min_value=0), st.binary(max_size=8), st.integers(0, 30))
@settings(max_examples=200, deadline=None)
def test_no_damage_to_a_file_gives_half_a_lamb(at: int, noise: bytes, gone: int) -> None:
    """Bytes changed, put in or taken out: the file is taken whole or refused in a sentence."""
    at %= len(WHOLE)
    try_to_take(WHOLE[:at] + noise + WHOLE[at + gone :])


def try_to_take(written: bytes) -> None:
    moved = read_moved(written)
    if isinstance(moved, Refused):
        assert moved.why
        return
    with TemporaryDirectory() as folder:
        book = opened_at(Path(folder) / "to").book
        assert take_in(book, moved) == Taken(True, len(moved.cases), len(moved.observations), 0)
        again = read(file_of(book, moved.lamb))
        assert again.lamb == moved.lamb
        assert {case.id: case.moves for case in again.cases} == {case.id: case.moves for case in moved.cases}
        assert sorted(each.id for each in again.observations) == sorted(
            each.id for each in moved.observations
        )
        book.close()


def whole_file() -> bytes:
    with TemporaryDirectory() as folder:
        book = opened_at(Path(folder) / "from").book
        book.begin(LAMB, WALK)
        for seen in SEEN[:1]:
            book.note(seen)
        whole = file_of(book)
        book.close()
    return whole.replace(HOSTILE[-9_900:].encode(), b"")


WHOLE = whole_file()


def test_utc_is_written() -> None:
    """Times are ISO 8601 in UTC with their offset."""
    data = json.loads(WHOLE)

    assert data["written"] == "2026-02-11T02:10:00+00:00"
    assert datetime.fromisoformat(data["cases"][0]["moves"][0]["at"]) == NOW.astimezone(UTC)
