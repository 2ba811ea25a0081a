"""Plots in plain text: each reading in words first, then in its place among the guide's own lines."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest_snapshot.plugin import Snapshot

from tests.timeline.conftest import LONDON, NIGHT, NOW, case, lines_of, measured, seen, temperature, utc
from triage.casebook.rows import Observation
from triage.clock import Now
from triage.facts import UNSURE
from triage.guide.model import Guide
from triage.page.ascii import to_ascii
from triage.timeline import Reading, plot, series
from triage.timeline.plot import GAPS, MOST
from triage.units import System
from triage.walk import KEPT, Answer

HOUR, DAY = timedelta(hours=1), timedelta(days=1)


def readings(finding: str, *values: tuple[datetime, float]) -> tuple[Reading, ...]:
    """Return readings at these times."""
    return series((), measured(finding, *values), finding)


def hourly(*values: float, first: datetime = NIGHT - 6 * HOUR) -> tuple[tuple[datetime, float], ...]:
    """Return values an hour apart."""
    return tuple((first + index * HOUR, value) for index, value in enumerate(values))


def shown(
    guide: Guide,
    finding: str,
    *values: tuple[datetime, float],
    now: Now = NOW,
    system: System = "metric",
    width: int = 76,
) -> list[str]:
    """Return the lines of a plot."""
    return lines_of(plot(readings(finding, *values), finding, guide, system, now), width)


CHILLED = hourly(35.8, 36.4, 37.5, 38.6, 39.3)
PLOTS: dict[str, tuple[str, tuple[tuple[datetime, float], ...], Now]] = {
    "warmed": ("temperature", CHILLED, NOW),
    "one": ("temperature", hourly(36.2), NOW),
    "equal": ("temperature", hourly(39.0, 39.0, 39.0), NOW),
    "far-out": ("temperature", hourly(25.0, 43.0), NOW),
    "with-gaps": (
        "temperature",
        ((NIGHT - 60 * HOUR, 36.0), (NIGHT - 7 * HOUR, 38.4), (NIGHT - 6 * HOUR, 38.8), (NIGHT, 40.6)),
        NOW,
    ),
    "clock-goes-back": (
        "temperature",
        tuple(
            (utc(2026, 10, 25, 0, 10) + 20 * index * timedelta(minutes=1), 36.5 + index * 0.3)
            for index in range(6)
        ),
        Now(utc(2026, 10, 25, 6, 0), LONDON),
    ),
    "clock-goes-forward": (
        "temperature",
        ((utc(2026, 3, 29, 0, 50), 37.2), (utc(2026, 3, 29, 1, 10), 37.9)),
        Now(utc(2026, 3, 29, 6, 0), LONDON),
    ),
    "five-hundred": (
        "temperature",
        tuple((NIGHT - (500 - n) * HOUR / 2, 38.5 + n % 5 / 10) for n in range(500)),
        NOW,
    ),
    "weights": (
        "weight",
        ((NIGHT - 9 * DAY, 3.4), (NIGHT - 3 * DAY, 4.9), (NIGHT - 2 * HOUR, 4.7), (NIGHT, 4.75)),
        NOW,
    ),
    "one-weight": ("weight", ((NIGHT, 4.2),), NOW),
}


@pytest.mark.parametrize("width", [24, 44, 76])
def test_plots_read_as_they_should(guide: Guide, snapshot: Snapshot, width: int) -> None:
    """Every plot is, at each width, what it was when it was last read and approved."""
    snapshot.snapshot_dir = "tests/snapshots/timeline"
    parts = [
        [f"--- {name}", *shown(guide, finding, *values, now=now, width=width)]
        for name, (finding, values, now) in PLOTS.items()
    ]

    snapshot.assert_match("\n".join(line for part in parts for line in part) + "\n", f"plots-{width}.txt")


def test_a_plot_in_us_units(guide: Guide, snapshot: Snapshot) -> None:
    """Readings, lines and gains are told in the reader's units."""
    snapshot.snapshot_dir = "tests/snapshots/timeline"
    finding, values, now = PLOTS["weights"]

    lines = shown(guide, "temperature", *CHILLED, system="us")
    lines += shown(guide, finding, *values, now=now, system="us")

    snapshot.assert_match("\n".join(lines) + "\n", "us-units.txt")


def test_readings_come_from_answers_and_from_notes(small: Guide) -> None:
    """Answers of every walk and notes between them are one series; what is no new reading is not in it."""
    cases = [
        case(temperature(38.0, NIGHT - HOUR), Answer("mouth", "warm", at=NIGHT)),
        case(
            temperature(36.0, NIGHT - 3 * HOUR),
            temperature(36.0, NIGHT, KEPT),
            temperature(37.0, None),
            Answer("temperature", UNSURE, at=NIGHT),
        ),
    ]
    notes = [
        seen(NIGHT - 2 * HOUR, "temperature", temperature=37.0),
        seen(NIGHT, "temperature", temperature="warm"),
        seen(NIGHT, "weight", weight=4.0),
        seen(NIGHT, "note", temperature=39.0),
    ]

    found = series(cases, notes, "temperature")

    assert [(reading.at, reading.value) for reading in found] == [
        (NIGHT - 3 * HOUR, 36.0),
        (NIGHT - 2 * HOUR, 37.0),
        (NIGHT - HOUR, 38.0),
    ]
    assert [reading.rests_on for reading in found] == [cases[1].moves[0], notes[0], cases[0].moves[0]]


def test_no_readings_are_no_plot(guide: Guide) -> None:
    """Without a reading nothing is drawn."""
    assert plot((), "temperature", guide, "metric", NOW) == []


def test_only_the_last_readings_are_drawn_and_the_rest_counted(guide: Guide) -> None:
    """Of many readings the last are drawn, under a line that says how many there are."""
    lines = shown(guide, "temperature", *hourly(*[39.0] * (MOST + 1)))

    assert lines[0] == "The last 12 of 13."
    assert len([line for line in lines if "*" in line and "is the lamb" not in line]) == MOST
    assert "The last" not in shown(guide, "temperature", *hourly(*[39.0] * MOST))[0]


@pytest.mark.parametrize(
    ("names", "line"),
    [
        ((), "19:10 yesterday  38 °C"),
        (("severe-chill",), "* is the lamb, | is 37 °C."),
        (("severe-chill", "normal-low"), "* is the lamb, | are 37 °C and 39 °C."),
    ],
)
def test_a_guide_with_fewer_lines(guide: Guide, names: tuple[str, ...], line: str) -> None:
    """A guide that lacks some of the lines, or all, is drawn with those it has."""
    changed = replace(guide, numbers={name: guide.numbers[name] for name in names})

    assert shown(changed, "temperature", (NIGHT - 7 * HOUR, 38.0))[0].startswith(line)


@pytest.mark.parametrize("finding", GAPS)
def test_a_gap_is_told_from_its_length_on(guide: Guide, finding: str) -> None:
    """A pause of that length between two readings is told, and a shorter one is not."""
    long = shown(guide, finding, (NIGHT - GAPS[finding], 38.0), (NIGHT, 38.0))
    short = shown(guide, finding, (NIGHT - GAPS[finding] + HOUR / 60, 38.0), (NIGHT, 38.0))

    assert len([line for line in long if "without a reading" in line]) == 1
    assert not any("without a reading" in line for line in short)


@pytest.mark.parametrize(
    ("weights", "told"),
    [
        ([(2, 4.0), (0, 4.5)], ["It gained 250 g a day over the last 2 days."]),
        ([(2, 4.5), (0, 4.0)], ["It lost 250 g a day over the last 2 days."]),
        ([(2, 4.0), (0, 4.0)], ["It neither gained nor lost over the last 2 days."]),
        ([(1, 4.0), (0, 4.2)], ["It gained 200 g a day over the last 24 hours."]),
        ([(0.99, 4.0), (0, 4.2)], []),
        ([(0, 4.0)], []),
        (
            [(4, 4.0), (2, 5.0), (0.5, 4.9), (0, 4.8)],
            [
                "It lost 100 g a day over the last 2 days.",
                "It gained 200 g a day over the 4 days since the first weighing.",
            ],
        ),
    ],
)
def test_the_daily_gain(guide: Guide, weights: list[tuple[float, float]], told: list[str]) -> None:
    """Two weighings a day apart give a gain or a loss a day: lately, and since the first one."""
    values = [(NIGHT - days * DAY, kilos) for days, kilos in weights]

    lines = shown(guide, "weight", *values)

    assert [line for line in lines if line.startswith("It ")] == told


def test_weights_that_do_not_differ_have_no_scale(guide: Guide) -> None:
    """Where there is nothing to compare a weight to, its words stand alone."""
    drawn = plot(readings("weight", (NIGHT - HOUR, 4.2), (NIGHT, 4.2)), "weight", guide, "metric", NOW)

    assert [(block.text, block.scale) for block in drawn] == [
        ("01:10  4.2 kg", None),
        ("02:10  4.2 kg", None),
    ]


def test_temperatures_have_no_gain(guide: Guide) -> None:
    """A rise of temperature over days is not told as growth."""
    assert not any(
        line.startswith("It ") for line in shown(guide, "temperature", (NIGHT - 2 * DAY, 38.0), (NIGHT, 39.0))
    )


VALUES = st.lists(st.tuples(st.integers(0, 40 * 1440), st.floats(25, 43)), min_size=1, max_size=30)


@given(VALUES, st.integers(24, 120), st.sampled_from(["metric", "us"]))
def test_every_plot_fits_and_stays_true(
    guide: Guide, values: list[tuple[int, float]], width: int, system: System
) -> None:
    """At any width no line is too long or beyond ASCII, and a warmer lamb never stands left of a colder one."""
    given_ = [(NIGHT - timedelta(minutes=minutes), value) for minutes, value in values]
    blocks = plot(readings("temperature", *given_), "temperature", guide, system, NOW)

    lines = lines_of(blocks, width)

    assert all(len(line) <= width for line in lines)
    assert all(to_ascii(line.replace("°", "")) == line.replace("°", "") for line in lines)
    scales = [block.scale for block in blocks if block.scale]
    drawn = readings("temperature", *given_)[-MOST:]
    assert len(scales) == len(drawn)
    for scale, reading in zip(scales, drawn, strict=True):
        assert 0 <= scale.at <= 1
        assert all(0 <= mark <= 1 for mark in scale.marks)
        for mark, name in zip(scale.marks, ("severe-chill", "normal-low", "fever-today"), strict=True):
            number = guide.numbers[name].value
            assert (scale.at < mark) == (reading.value < number) or abs(reading.value - number) < 1e-6
    placed = sorted(zip(drawn, scales, strict=True), key=lambda pair: pair[0].value)
    assert [scale.at for _, scale in placed] == sorted(scale.at for scale in scales)


@given(VALUES, st.integers(24, 120))
def test_every_reading_is_told_in_words(guide: Guide, values: list[tuple[int, float]], width: int) -> None:
    """Whatever room there is for signs, the words of each reading drawn are there, time and value first."""
    given_ = [(NIGHT - timedelta(minutes=minutes), value) for minutes, value in values]
    drawn = plot(readings("temperature", *given_), "temperature", guide, "metric", NOW)

    whole = " ".join(" ".join(lines_of(drawn, width)).split())

    for block in drawn:
        assert " ".join(block.text.split()) in whole


def test_a_plot_never_says_what_to_do(guide: Guide) -> None:
    """A plot shows and tells; the words of its lines are times, values and the guide's own figures."""
    notes: tuple[Observation, ...] = measured("temperature", *CHILLED)
    drawn = plot(series((), notes, "temperature"), "temperature", guide, "metric", NOW)

    assert [block.role for block in drawn] == ["body"] * len(drawn)
    assert drawn[0].text == "* is the lamb, | are 37 °C, 39 °C and 40.5 °C."
