"""A holding's file that a tired person edited: what is right in it is used, whatever else it holds."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from triage.holding.file import read_holding
from triage.holding.holding import Holding
from triage.holding.writing import as_text
from triage.own_file import BIGGEST

FULL = Holding(
    "Ann Field", "Hill Farm", "second gate", "01632 960111", "01632 960222", "us", "day", 200.0, 800.0, "added-to",
    "scotland",
    {"Ann": "stomach tube"},
)  # fmt: skip


def read(path: Path, text: str | bytes) -> tuple[Holding, str]:
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    came = read_holding(path)
    return came.holding, "\n".join(map(str, came.problems)).replace(str(path), "h")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "holding.yaml"


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("place: Hill Farm: the old one", "h:2:17: not YAML"),
        ("place: 'Tis a farm", "h:2:19: not YAML"),
        ('place: "Hill Farm', "h:2:"),
        ("place: &a Hill Farm", "h:2:8: anchors"),
        ("place: *a", "h:2:8: aliases"),
        ("place: !x Hill Farm", "h:2:8: tags"),
        ("place: [Hill, Farm", "h:2:"),
        ("place: @hill", "h:2:8: not YAML"),
        ("Hill Farm", "h:2:"),
        ("place: " + "[" * 90_000, "h:2:8: there are no lists here"),
        ("place: " + "{a: " * 20_000, "h:2:8: there are no lists here"),
    ],
)
def test_a_slip_in_one_line_costs_no_other(path: Path, line: str, place: str) -> None:
    """A sign that breaks the whole text is told with its place, and the other lines are used."""
    held, said = read(path, f"vet: 01632 960111\n{line}\ncaller: Ann Field\n")

    assert held == Holding(vet="01632 960111", caller="Ann Field")
    assert said.startswith(place)


def test_lines_of_a_broken_file_go_on_under_their_field(path: Path) -> None:
    """What stands indented under a field is read with it, and each place is that of the file."""
    held, said = read(path, "caller: a: b\ntaught:\n  Ann: stomach tube\n  Ben: [x]\n# note\nunits: metrik\n")

    assert held.taught == {"Ann": "stomach tube"}
    assert [each.split(" ")[0] for each in said.splitlines()] == ["h:1:10:", "h:4:8:", "h:6:8:"]


def test_a_second_document_is_told_and_both_are_read(path: Path) -> None:
    """Lines that are sound one by one are used, though the file as a whole is not sound."""
    held, said = read(path, "vet: 01632 960111\n---\nplace: Hill Farm\nvet: 01632 960999\n")

    assert held == Holding(vet="01632 960111", place="Hill Farm")
    assert "'vet' is here twice, first at line 1" in said


def test_one_wrong_person_costs_no_other(path: Path) -> None:
    """Each person who was taught stands alone; what was taught may hold any sign."""
    held, said = read(path, 'taught:\n  Ann: "tube; Ben: needle"\n  Cai: ""\n  "<": needle\n')

    assert held.taught == {"Ann": "tube; Ben: needle"}
    assert [line[:6] for line in said.splitlines()] == ["h:3:3:", "h:4:3:"]


def test_a_bare_number_is_no_bag(path: Path) -> None:
    """A number whose unit nobody knows would be a wrong mix; it is told, and never guessed."""
    held, said = read(path, "units: us\nbag-powder: 7\nbag-water: 27 oz\n")

    assert held.bag_powder is None
    assert held.bag_water == pytest.approx(798.5, abs=0.1)
    assert said.startswith("h:2:13: bag-powder: '7' of what?")


def test_no_sign_from_the_file_steers_a_terminal(path: Path) -> None:
    """What is told of a file holds no escape, whatever the file holds."""
    _, said = read(path, 'units: "\\e[31mred"\n"\\e[2J": 1\n"\\e[2J": 2\ntheme: "\\u202enight"\n')

    assert said.count("\n") == 3
    assert not {"\x1b", "\u202e"} & set(said)


@pytest.mark.parametrize("change", ["cut", "turn", "double", "sign"])
def test_a_damaged_file_never_stops_the_reading(path: Path, change: str) -> None:
    """A hundred files damaged in each way are all read, and each problem's place is in the file."""
    sound = as_text(FULL).encode()
    chance = random.Random(change)
    for _ in range(100):
        at, to = sorted(chance.randrange(len(sound)) for _ in range(2))
        damaged = {
            "cut": sound[:at] + sound[to:],
            "turn": sound[:at] + sound[at:to][::-1] + sound[to:],
            "double": sound[:to] + sound[at:],
            "sign": sound[:at] + bytes([chance.randrange(256)]) + sound[at + 1 :],
        }[change]
        path.write_bytes(damaged)
        problems = read_holding(path).problems

        assert all(1 <= problem.place.line <= damaged.count(b"\n") + 1 for problem in problems)


def test_too_many_lines_are_told(path: Path) -> None:
    """A file of thousands of lines that is no holding is left after the first two hundred."""
    _, said = read(path, "vet: 01632 960111\n" + "a b\n" * 20_000)

    assert "h:201:1: only the first 200 fields were looked at" in said
    assert said.count("\n") == 199


@pytest.mark.parametrize(
    "raw", [b"\xff\xfev\0e\0t\0", b"vet: \0", b"x" * (BIGGEST + 1), b"\xef\xbb\xbf[", bytes(range(256))]
)
def test_what_is_no_text_is_told(path: Path, raw: bytes) -> None:
    """Bytes that are no text give a sentence."""
    held, said = read(path, raw)

    assert held == Holding()
    assert said


def test_a_mark_at_the_start_is_no_part_of_the_text(path: Path) -> None:
    """An editor that marks the text as Unicode, or ends lines in two signs, changes nothing."""
    assert read(path, b"\xef\xbb\xbfvet: 01632 960111\r\ncaller: Ann\r\n") == (
        Holding(vet="01632 960111", caller="Ann"),
        "",
    )
