"""Typed words never steer the screen."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.page.inert import HIDDEN, KEPT, inert


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Blue 7", "Blue 7"),
        ("a\x1b[2Jb", "a[2Jb"),
        ("a\r\nb\tc", "a b c"),
        ("a\u202eb\u2066c\u200f", "abc"),
        ("[/] and [a]", "[/] and [a]"),
        ("x" * 10_000, "x" * 18 + ".."),
        ("\x00" * 10_000 + "x", ".."),
        ("a" + "\u0301" * 50 + "b\u0301", "a" + "\u0301" * 3 + "b\u0301"),
        ("36.2 °C", "36.2 °C"),
    ],
)
def test_a_text_is_shown_as_one_plain_line(text: str, shown: str) -> None:
    """Control codes and marks of direction are gone, brackets stay, and a cut is seen."""
    assert inert(text, 20) == shown


@given(st.text())
def test_no_sign_that_steers_is_left(text: str) -> None:
    """Whatever is typed, only signs that can be seen and single spaces remain."""
    line = inert(text)

    assert not {sign for sign in line if unicodedata.category(sign) in HIDDEN} - {KEPT}
    assert "  " not in line
    assert line == line.strip()
