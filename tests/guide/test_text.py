"""The subset of YAML: what is read, and every trap that is refused with its place."""

from __future__ import annotations

import pytest

from triage.guide.text import BIGGEST, Fields, Text, read_text
from triage.problems import Problem


def problems_of(text: str) -> list[Problem]:
    found: list[Problem] = []
    read_text(text, "f.yaml", found)
    return found


@pytest.mark.parametrize("scalar", ["no", "on", "12:30", "010", "null", "1e3", "2026-01-01", "~"])
def test_scalars_stay_text(scalar: str) -> None:
    """Nothing is turned into a truth, a time, an octal or a date: `no` is the text no."""
    found: list[Problem] = []

    read = read_text(f"key: {scalar}", "f.yaml", found)

    assert isinstance(read, Fields)
    value = read.fields["key"]
    assert isinstance(value, Text)
    assert (value.text, found) == (scalar, [])


def test_a_no_key_stays_text() -> None:
    """A choice called `no` keeps its name, where plain YAML would make it False."""
    found: list[Problem] = []

    read = read_text("choices:\n  no: No\n  yes: Yes\n", "f.yaml", found)

    assert isinstance(read, Fields)
    choices = read.fields["choices"]
    assert isinstance(choices, Fields)
    assert list(choices.fields) == ["no", "yes"]


def test_places_are_kept() -> None:
    """Every value knows its line and column, counted from one."""
    read = read_text("a:\n  b: word\n", "f.yaml", [])

    assert isinstance(read, Fields)
    inner = read.fields["a"]
    assert isinstance(inner, Fields)
    assert str(inner.fields["b"].place) == "f.yaml:2:6"
    assert str(inner.keys["b"]) == "f.yaml:2:3"


@pytest.mark.parametrize(
    ("text", "place", "rule"),
    [
        ("a: 1\nb: 2\na: 3\n", "f.yaml:3:1", "duplicate-key"),
        ("a: &x 1\n", "f.yaml:1:4", "anchor"),
        ("a: [1]\nb: *x\n", "f.yaml:2:4", "alias"),
        ("a: !!python/object:os.system x\n", "f.yaml:1:4", "tag"),
        ("a: 1\n---\nb: 2\n", "f.yaml:2:1", "documents"),
        ("a: it's: bad\n", "f.yaml:1:8", "syntax"),
        ("a: [1, 2\nb: 3\n", "f.yaml:2:2", "syntax"),
        ("\ta: 1\n", "f.yaml:1:1", "syntax"),
        ("", "f.yaml:1:1", "empty"),
        ("- a\n- b\n", "f.yaml:1:1", "shape"),
        ("[a, b]: c\n", "f.yaml:1:1", "key"),
        ("a: \x01\n", "f.yaml:1:4", "syntax"),
    ],
)
def test_refusals_name_their_place(text: str, place: str, rule: str) -> None:
    """Each thing outside the subset is refused at its own line and column."""
    found = problems_of(text)

    assert [(str(each.place), each.rule) for each in found] == [(place, rule)]


def test_a_duplicate_key_names_both_places() -> None:
    """The first place of a doubled key is named in the message for the second."""
    assert "first at line 1, column 1" in problems_of("a: 1\na: 2\n")[0].what


def test_an_alias_bomb_is_refused_before_it_is_built() -> None:
    """Nine levels of aliases are stopped at the first anchor, not after a billion items."""
    bomb = "a0: &a0 [x, x]\n" + "".join(f"a{n}: &a{n} [*a{n - 1}, *a{n - 1}]\n" for n in range(1, 40))

    assert [each.rule for each in problems_of(bomb)] == ["anchor"]


def test_a_merge_key_is_refused() -> None:
    """A merge key is refused like any other name that hides where a value comes from."""
    assert [each.rule for each in problems_of("a: {<<: {b: 1}}\n")] == ["merge-key"]


def test_a_large_file_is_refused() -> None:
    """A file of ten megabytes is refused by its size, unread."""
    assert [each.rule for each in problems_of("a: " + "x" * (10 * BIGGEST))] == ["too-big"]


@pytest.mark.parametrize("depth", [30, 5000])
def test_deep_nesting_is_refused(depth: int) -> None:
    """Nesting beyond reason is refused, at thirty levels and at five thousand."""
    found = problems_of("a: " + "[" * depth + "]" * depth)

    assert len(found) == 1
    assert found[0].rule in ("too-deep", "syntax")


def test_brackets_that_never_close_are_refused_at_their_depth() -> None:
    """They get the plain word for depth, without a second reading whose time grows with their square."""
    found = problems_of("a: " + "[" * 5000)

    assert [(each.rule, each.place.line) for each in found] == [("too-deep", 1)]


def test_a_cut_text_is_warned_of() -> None:
    """An unquoted ' #' cuts a sentence short without an error, so it is warned of."""
    found = problems_of("a: Is it lamb #1 or not\nb: word # a fair comment after one word\n")

    assert [(str(each.place), each.weight) for each in found] == [("f.yaml:1:14", "warning")]
