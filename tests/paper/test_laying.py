"""Laying pieces on sheets."""

from __future__ import annotations

import re

from hypothesis import given
from hypothesis import strategies as st

from triage.paper.laying import laid
from triage.paper.pieces import ROOM, SHORT, TURN, Part, Piece, Rows
from triage.paper.setting import CELL, STYLES, TITLE, high, lines_in, wide

PIECES = st.builds(
    lambda tall, leads: (tall, leads),
    st.floats(1, 120, allow_nan=False),
    st.sampled_from([False, False, True]),
)
TABLES = st.lists(st.floats(3, 90, allow_nan=False), min_size=1, max_size=30)


def flow(shapes: list[tuple[float, bool] | list[float]]) -> tuple[Part, ...]:
    """Return parts of these heights, each with a mark of its own."""
    parts: list[Part] = []
    for at, shape in enumerate(shapes):
        if isinstance(shape, list):
            rows = tuple(Piece(f"[{at}.{row}]", tall) for row, tall in enumerate(shape))
            parts.append(Rows((50.0,), Piece(f"(head{at})", 10.0), rows))
        else:
            parts.append(Piece(f"[{at}]", shape[0], shape[1]))
    return tuple(parts)


@given(st.lists(st.one_of(PIECES, TABLES), min_size=1, max_size=12))
def test_all_is_laid_once_in_order_and_nothing_is_too_high(
    shapes: list[tuple[float, bool] | list[float]],
) -> None:
    """No piece is lost, doubled or moved; a sheet is never over-full; a table's head stands over its rows."""
    parts = flow(shapes)
    sheets = laid(parts)
    marks = [
        mark
        for part in parts
        for mark in ([row.html for row in part.rows] if isinstance(part, Rows) else [part.html])
    ]

    assert re.findall(r"\[[0-9.]+\]", "".join(sheet.html for sheet in sheets)) == marks
    assert all(sheet.high <= ROOM + 1e-6 for sheet in sheets)
    for sheet in sheets:
        for table in re.findall(r"<table.*?</table>", sheet.html):
            (number,) = set(re.findall(r"\[([0-9]+)\.", table))
            assert f"<thead>(head{number})</thead>" in table


def test_a_heading_never_ends_a_sheet() -> None:
    """What leads goes over to the next sheet with what it leads."""
    parts = (Piece("a", ROOM - 20), Piece("head", 10, leads=True), Piece("b", 30))

    assert [sheet.html for sheet in laid(parts)] == ["a", "headb"]


def test_a_short_table_is_not_torn() -> None:
    """It goes over whole; a long one begins where there is room for a row."""
    short = Rows((50.0,), Piece("h", 10), (Piece("x", 10),) * 4)
    long = Rows((50.0,), Piece("h", 10), (Piece("x", 10),) * 9)
    above = Piece("a", ROOM - 30)

    assert short.head.high + 40 <= SHORT
    assert [sheet.html.count("x") for sheet in laid((above, short))] == [0, 4]
    assert [sheet.html.count("x") for sheet in laid((above, long))] == [2, 7]


def test_a_new_sheet_begins_where_it_is_asked_for_and_never_an_empty_one() -> None:
    """Asked for at the start, twice, or at the end, it makes no blank paper."""
    parts = (TURN, Piece("a", 5), TURN, TURN, Piece("b", 5), TURN)

    assert [sheet.html for sheet in laid(parts)] == ["a", "b"]


def test_heights_are_counted_from_the_width_of_the_words() -> None:
    """Twice the words take about twice the lines, a wide word is broken, larger type takes more."""
    assert lines_in("", CELL, 50) == 1
    assert lines_in("word " * 40, CELL, 50) >= 2 * lines_in("word " * 20, CELL, 50) - 1
    assert lines_in("x" * 300, CELL, 50) > 5
    assert high("a sign", TITLE, 184) > high("a sign", CELL, 184)
    assert wide("mmm", CELL) > wide("iii", CELL)


def test_the_style_sheet_and_the_counting_go_by_the_same_sizes() -> None:
    """Each style's rule holds its own size, leading and distances."""
    for style in STYLES:
        assert f"font-size: {style.pt:g}pt; line-height: {style.leading:g};" in style.css()
        assert f"margin: {style.before:g}mm 0 {style.after:g}mm;" in style.css()
