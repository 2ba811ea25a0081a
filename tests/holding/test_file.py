"""The holding's file: what is written comes back, and a wrong line never costs the right ones."""

from __future__ import annotations

import os
import stat
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from triage.holding.fields import BY_NAME, FIELDS, THEMES, UNITS, WAYS, text_of, with_text, words_of
from triage.holding.file import read_holding, write_holding
from triage.holding.holding import HeldRead, Holding
from triage.own_file import BIGGEST
from triage.screens.themes import THEMES as DRAWN

SEEN = st.characters(codec="utf-8", exclude_categories=["Cc", "Zl", "Zp"])
WORDS = st.text(SEEN, max_size=60).map(str.strip).filter(lambda text: text != "-")
NUMBERS = WORDS.map(lambda text: f"+44 1632 960111 {text}".strip())
NAMES = WORDS.filter(lambda text: any(sign.isalnum() for sign in text))
HOLDINGS = st.builds(
    Holding,
    caller=WORDS,
    place=WORDS,
    found_by=WORDS,
    vet=NUMBERS,
    out_of_hours=NUMBERS,
    units=st.sampled_from([None, *UNITS]),
    theme=st.sampled_from(["", *THEMES]),
    bag_powder=st.one_of(st.none(), st.floats(1, 25_000).map(lambda grams: round(grams, 4))),
    bag_water=st.one_of(st.none(), st.floats(10, 100_000).map(lambda ml: round(ml, 4))),
    bag_way=st.sampled_from(["", *WAYS]),
    taught=st.dictionaries(NAMES, WORDS.filter(bool), max_size=3),
)


@given(HOLDINGS)
@settings(max_examples=150, deadline=None)
def test_what_is_written_comes_back(holding: Holding) -> None:
    """Whatever signs it holds, hashes, colons, quotes and marks of direction among them, it reads as it was."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "deep" / "holding.yaml"

        assert write_holding(holding, path) == ""
        assert read_holding(path).problems == ()
        assert read_holding(path).holding == holding


@given(st.sampled_from(("caller", "vet", "taught", "bag-powder")), st.text(max_size=400))
@settings(max_examples=300, deadline=None)
def test_what_was_accepted_comes_back(name: str, typed: str) -> None:
    """Whatever is typed is refused in a sentence, or is read from the file as it was taken."""
    taken = with_text(Holding(), name, typed, "us")
    if isinstance(taken, str):
        assert taken.endswith((".", "?"))
        return
    with TemporaryDirectory() as folder:
        assert write_holding(taken, Path(folder) / "holding.yaml") == ""
        assert read_holding(Path(folder) / "holding.yaml") == HeldRead(taken)


def test_only_the_owner_may_read_it(tmp_path: Path) -> None:
    """The file and its folder are the owner's alone."""
    path = tmp_path / "own" / "holding.yaml"
    before = os.umask(0)
    write_holding(Holding(vet="01632 960111"), path)
    os.umask(before)

    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700


def test_each_field_is_told_in_the_file(tmp_path: Path) -> None:
    """A person who opens the file finds above each field what it is for and how it is written."""
    path = tmp_path / "holding.yaml"
    write_holding(Holding(), path)
    text = path.read_text(encoding="utf-8")

    for field in FIELDS:
        assert f"# {field.ask} Like: {field.example}\n{field.name}: " in text


def test_every_wrong_line_is_told_and_the_rest_is_used(tmp_path: Path) -> None:
    """Each mistake has its place and what would be right; the right values hold."""
    path = tmp_path / "holding.yaml"
    path.write_text(
        "vet: 01632 960111\nplce: Hill Farm\nunits: metrik\nbag-powder: 2 minutes\ntheme: [night]\ncaller: Ann\n",
        encoding="utf-8",
    )

    read = read_holding(path)

    assert read.holding == Holding(vet="01632 960111", caller="Ann")
    assert [problem.place.line for problem in read.problems] == [2, 3, 4, 5]
    said = " ".join(map(str, read.problems))
    assert "did you mean 'place'" in said
    assert "did you mean 'metric'" in said
    assert f"{path}:4:13: bag-powder: " in said


def test_people_may_be_written_as_a_map(tmp_path: Path) -> None:
    """Who is vet-taught can be written line by line too."""
    path = tmp_path / "holding.yaml"
    path.write_text("taught:\n  Ann: stomach tube\n  Ben: needle under the skin\n", encoding="utf-8")

    assert read_holding(path).holding.taught == {"Ann": "stomach tube", "Ben": "needle under the skin"}


@pytest.mark.parametrize("raw", [b"", b"# only a word to myself\n", b"\n\n"])
def test_nothing_kept_is_no_mistake(tmp_path: Path, raw: bytes) -> None:
    """A missing or an empty file is an empty holding."""
    (tmp_path / "h.yaml").write_bytes(raw)

    assert read_holding(tmp_path / "h.yaml").problems == ()
    assert read_holding(tmp_path / "missing.yaml").problems == ()


@pytest.mark.parametrize(
    ("raw", "why"),
    [
        (b"vet: \xff\xfe", "it is not UTF-8 text"),
        (b"vet: [1,\n", "holding.yaml"),
        (b"vet: 1\nvet: 2\n", "vet"),
        (b"x" * (BIGGEST + 1), "it is longer than"),
        (b"- a list\n", "map"),
        (b"vet: !!python/object:os.system x\n", "tag"),
    ],
)  # fmt: skip
def test_a_broken_file_is_told_and_stops_nothing(tmp_path: Path, raw: bytes, why: str) -> None:
    """Whatever lies in its place, reading gives a sentence and never a traceback."""
    (tmp_path / "holding.yaml").write_bytes(raw)

    read = read_holding(tmp_path / "holding.yaml")

    assert read.problems
    assert why in str(read.problems[0])


def test_a_folder_or_a_pipe_in_its_place(tmp_path: Path) -> None:
    """What is no file is told, and never waited for."""
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")

    for name in ("folder", "pipe"):
        assert "this is not a file" in str(read_holding(tmp_path / name).problems[0])


def test_a_place_that_can_not_be_written_to(tmp_path: Path) -> None:
    """A failure to write is a sentence."""
    (tmp_path / "file").write_text("in the way")

    assert write_holding(Holding(), tmp_path / "file" / "holding.yaml").startswith(
        "It could not be written to"
    )


@pytest.mark.parametrize(
    ("name", "typed", "why"),
    [
        ("units", "metres", "is not one of metric, us"),
        ("theme", "dark", "is not one of night, day, stark, terminal"),
        ("bag-powder", "200 ml", "That is a volume"),
        ("taught", "Ann", "Write each as name: what"),
        ("place", "a\nb", "one line"),
        ("place", "a\u2028b", "one line"),
        ("place", "\x1b[A", "can't be kept"),
        ("place", "caf\udce9", "can't be kept"),
        ("vet", "yes", "There is no number in 'yes'"),
        ("bag-powder", "200", "'200' of what? Type the unit too"),
        ("bag-water", "1,5", "'1,5' of what? Type the unit too"),
        ("bag-powder", "0.2 g", "must be from"),
        ("taught", "Ann: a; Ann: b", "'Ann' is there twice"),
        ("taught", "<<: stomach tube", "name: what"),
        ("taught", "x" * 70 + ": stomach tube", "at most 60 signs"),
        ("taught", "; ".join(f"n{each}: {'x' * 250}" for each in range(9)), "The list is too long"),
        ("caller", "x" * 400, "too long"),
    ],
)  # fmt: skip
def test_a_wrong_value_gets_a_clear_line(name: str, typed: str, why: str) -> None:
    """What can't be used is told in a sentence, and the holding stays as it was."""
    came = with_text(Holding(), name, typed, "metric")

    assert isinstance(came, str)
    assert why in came


def test_a_dash_empties_a_field() -> None:
    """What is kept can be taken away again."""
    kept = with_text(Holding(), "vet", "01632 960111", "metric")
    assert isinstance(kept, Holding)

    assert with_text(kept, "vet", "-", "metric") == Holding()


def test_units_are_read_as_the_person_types_them() -> None:
    """The bag may be typed in either system, and is kept in grams and millilitres."""
    held = with_text(Holding(), "bag-powder", "7 oz", "us")
    assert isinstance(held, Holding)
    assert held.bag_powder == pytest.approx(198.4, abs=0.1)
    assert words_of(replace(held, units="us"), "bag-powder") == "198.4467 g (7 oz by weight)"
    assert words_of(held, "bag-powder") == "198.4467 g"
    assert text_of(replace(held, bag_powder=200.0), "bag-powder") == "200 g"


def test_the_choices_are_those_of_the_guide_and_the_screen(guide: object) -> None:
    """The ways a bag words it are the guide's, and the lights are the screen's."""
    from triage.guide.model import Guide

    assert isinstance(guide, Guide)
    assert tuple(guide.findings["bag-way"].choices) == WAYS
    assert tuple(theme.name for theme in DRAWN) == THEMES
    assert set(BY_NAME) == {field.name for field in FIELDS}
