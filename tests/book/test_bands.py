"""Bands of a measurement: each reading that an instrument can show is in one of them, the walk's own."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.book.conftest import DAY
from tests.book.reader import Book, holds
from tests.book.walks import lines_of, readings
from tests.conftest import small_guide
from triage.book.bands import Line, mark
from triage.book.making import Making
from triage.book.whole import book_of
from triage.guide.model import Ask, Guide
from triage.units import KG_PER_LB, System, convert
from triage.walk import branch_for


@pytest.mark.parametrize("system", ["metric", "us"])
def test_each_reading_near_a_line_takes_the_branch_of_the_walk(
    guide: Guide, metric: Book, us: Book, system: System
) -> None:
    """By the words of the bands alone, at every question that measures, in either unit system."""
    book, lines, tried = us if system == "us" else metric, lines_of(guide), 0
    for node in guide.nodes.values():
        if not isinstance(node, Ask) or not guide.findings[node.finding].measure:
            continue
        finding = guide.findings[node.finding]
        for value in readings(finding, lines.get(finding.name, []), system):
            branch = branch_for(guide, node, value)
            if branch is None:
                continue
            links = book.links(f"node-{node.name}")
            found = [link.to for link in links if holds(link.words, value, finding.measure, system)]
            assert found == [f"node-{branch.go}"], f"{node.name}: {value} {[link.words for link in links]}"
            tried += 1
    assert tried > 1000


@pytest.mark.parametrize(
    ("node", "words"),
    [
        (
            "warmth",
            [
                "Up to 37 °C (98.6 °F)",
                "More than 37 °C (98.6 °F), up to 40 °C (104 °F)",
                "More than 40 °C (104 °F), less than 40.5 °C (104.9 °F)",
                "40.5 °C (104.9 °F) or more, less than 41 °C (105.8 °F)",
                "41 °C (105.8 °F) or more",
                "No thermometer, or not sure",
            ],
        ),
        ("glucose-weight", ["Any weight", "No scale"]),
    ],
)
def test_bands_read_as_sentences_do(metric: Book, node: str, words: list[str]) -> None:
    """Both lines of a band, each in both systems where they differ."""
    assert [link.words.replace("\u00a0", " ") for link in metric.links(f"node-{node}")] == words


def test_a_line_between_two_marks_is_told_as_the_mark_that_parts_the_same(tmp_path: Path) -> None:
    """39.2 degC is 102.56 degF, which no thermometer shows: 102.5 is within, and 102.6 above."""
    small = small_guide(
        tmp_path, ("numbers.yaml", "value: 37\n", "value: 39.2\n"), ("numbers.yaml", "[36, 37]", "39.2")
    )
    book = Book(book_of(Making(small, DAY, "us")))

    assert [link.words for link in book.links("node-warmth")][:2] == [
        "Up to 102.5 °F (39.2 °C)",
        "More than 102.5 °F (39.2 °C)",
    ]


@given(st.floats(30, 42), st.booleans(), st.integers(860, 1076))
def test_a_mark_parts_degrees_fahrenheit_as_the_line_does(value: float, within: bool, tenths: int) -> None:
    """Whatever the line, for every tenth of a degree."""
    line = round(value, 2)
    shown = float(mark(Line(line, within), "degC", "us").removesuffix(" °F"))
    reading = convert(tenths / 10, "degF", "degC")
    lower = reading <= line if within else reading < line

    assert lower == (tenths / 10 <= shown if within else tenths / 10 < shown)


@given(st.floats(0.8, 60), st.booleans(), st.integers(30, 2000))
def test_a_mark_parts_ounces_as_the_line_does(value: float, within: bool, ounces: int) -> None:
    """Whatever the line, for every ounce."""
    line = round(value, 2)
    said = mark(Line(line, within), "kg", "us").replace(" lb", "*16").replace(" oz", "").split()
    shown = sum(int(part.removesuffix("*16")) * (16 if part.endswith("*16") else 1) for part in said)
    lower = ounces * KG_PER_LB / 16 <= line if within else ounces * KG_PER_LB / 16 < line

    assert lower == (ounces <= shown if within else ounces < shown)
