"""The colours of the book, held to the formula of the W3C."""

from __future__ import annotations

import re

import pytest

from tests.published.contrast import AAA, Rgb, contrast
from triage.book.colours import DARK, LIGHT, PAPER, RIMS, TEXTS
from triage.book.style import style

TABLES = {"light": LIGHT, "dark": DARK, "paper": PAPER}
RIM = 3.0
"""What WCAG 2.2 asks of the bounds of a control (1.4.11)."""


def rgb(colour: str) -> Rgb:
    """A colour as three parts."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


@pytest.mark.parametrize("name", TABLES)
@pytest.mark.parametrize(("ink", "ground"), TEXTS)
def test_every_text_is_seen_on_its_ground(name: str, ink: str, ground: str) -> None:
    """At least 7:1, also where a section is lit."""
    table = TABLES[name]

    assert contrast(rgb(table[ink]), rgb(table[ground])) >= AAA


@pytest.mark.parametrize("name", TABLES)
@pytest.mark.parametrize(("rim", "ground"), RIMS)
def test_the_bounds_of_an_answer_are_seen(name: str, rim: str, ground: str) -> None:
    """At least 3:1."""
    table = TABLES[name]

    assert contrast(rgb(table[rim]), rgb(table[ground])) >= RIM


def test_the_style_sheet_names_no_colour_that_is_in_no_table() -> None:
    """But black and white on paper; and every table has the same names."""
    held = {colour for table in TABLES.values() for colour in table.values()}
    named = set(re.findall(r"#[0-9a-f]{6}\b|#[0-9a-f]{3}\b", style({})))

    assert named - held <= {"#000", "#fff"}
    assert LIGHT.keys() == DARK.keys() == PAPER.keys()
    assert set(re.findall(r"var\(--([a-z-]+)\)", style({}))) <= LIGHT.keys()


def test_the_contrast_is_really_counted() -> None:
    """Grey on grey would be found out."""
    assert contrast(rgb("#777777"), rgb("#ffffff")) < AAA
