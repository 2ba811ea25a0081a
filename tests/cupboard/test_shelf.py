"""The shelf's text: each right line is used, each wrong one told, and a change touches its own line alone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from triage.cupboard.shelf import MOST_TOLD, Shelf, changed, read_text

UNITS = {"probe": "count", "powder": "kg", "drink": "ml"}


def test_right_lines_are_used_and_wrong_ones_told() -> None:
    """A slip in one line costs no other, and is told with its place and what would be right."""
    read = read_text(
        "# mine\nlambs: 5\nprobe: 2  # in the drawer\n\nPowder: 10\npowdr: 1 kg\ndrink 1 l\nprobe: 3\r\ndrink: 1 l\n",
        "shelf.txt", UNITS,
    )  # fmt: skip

    assert read.shelf.lambs == 5
    assert {name: [str(lot) for lot in lots] for name, lots in read.shelf.lots.items()} == {
        "probe": ["2"],
        "drink": ["1 l"],
    }
    assert [problem.place.line for problem in read.problems] == [5, 6, 7, 8]
    said = [str(problem) for problem in read.problems]
    assert said[0].startswith("shelf.txt:5:9: '10' of what?")
    assert "did you mean 'powder'?" in said[1]
    assert "has no colon" in said[2]
    assert "is here twice, first at line 3" in said[3]
    assert read.unread == {"powder", "powdr"}


@pytest.mark.parametrize("lambs", ["0", "-1", "many", "2001", "5.5", "\u0665"])
def test_what_is_no_number_of_lambs_is_told(lambs: str) -> None:
    """Lambs are counted in whole numbers that a flock can have."""
    read = read_text(f"lambs: {lambs}\n", "shelf.txt", UNITS)

    assert read.shelf == Shelf()
    assert "is no number of lambs" in str(read.problems[0])


def test_a_file_that_is_no_shelf_is_soon_put_down() -> None:
    """Of a long file of other things only the first mistakes are told."""
    read = read_text("x: 1\n" * 20_000, "shelf.txt", UNITS)

    assert len(read.problems) == MOST_TOLD + 1
    assert "were not looked at" in str(read.problems[-1])


def test_a_line_is_changed_where_it_stands() -> None:
    """The other lines, the notes and the ends of lines stay as they are."""
    text = "# mine\r\nprobe: 2 # in the drawer\r\nbad line\r\n"

    assert changed(text, "probe", "3") == "# mine\r\nprobe: 3  # in the drawer\r\nbad line\r\n"
    assert changed(text, "drink", "1 l") == f"{text}drink: 1 l\n"
    assert changed("probe: 2", "drink", "1 l") == "probe: 2\ndrink: 1 l\n"


def test_a_line_that_meant_something_else_stays_as_a_note() -> None:
    """What nobody could read is not thrown away when its line is set anew."""
    assert changed("powder: 2 big bags # ask Ann\n", "powder", "20 kg", keep=True) == (
        "# powder: 2 big bags # ask Ann\npowder: 20 kg  # ask Ann\n"
    )


LINES = st.lists(st.sampled_from(["probe: 2", "powder: 1 kg, 2027-03", "drink:", "# note", "", "what: 1", "probe: x", "::"]), max_size=8)  # fmt: skip


@given(LINES | st.text(max_size=200).map(lambda text: [text]), st.sampled_from(sorted(UNITS)))
def test_a_change_reads_back_and_leaves_the_rest(lines: list[str], name: str) -> None:
    """Whatever lies in the file, one thing set is read as it was set, and all else as it was."""
    text = "\n".join(lines)
    value = {"probe": "7", "powder": "7 kg, 2027-03", "drink": "7 l"}[name]
    before = read_text(text, "shelf.txt", UNITS).shelf
    after = read_text(changed(text, name, value), "shelf.txt", UNITS).shelf

    assert [str(lot) for lot in after.lots[name]] == [value]
    assert {**after.lots, name: ()} == {**before.lots, name: ()}
    assert after.lambs == before.lambs
