"""A file that is not right is refused with its place, and changes nothing."""

from __future__ import annotations

import json
from collections.abc import Iterator
from copy import deepcopy
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.casebook.conftest import opened_at
from tests.moving.made import WHOLE, file_of, read, refused
from triage.casebook.book import Casebook
from triage.moving.reading import BIGGEST, Refused, read_moved
from triage.moving.taking import Taken, take_in

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
