"""`triage read` as it is typed: a page into a pipe, finds by their keys, and plain lines."""

from __future__ import annotations

import argparse
import io
import sys

import pytest

from triage.commands.read import add_read
from triage.guide.model import Guide
from triage.reading.collection import Collection


def read(monkeypatch: pytest.MonkeyPatch, *arguments: str, typed: str = "") -> int:
    """Run the command as the command line does, with nobody at a terminal."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--units", choices=("metric", "us"))
    add_read(parser)
    parser.set_defaults(guide=None, vet=None, casebook=None, plain=False)
    monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
    parsed = parser.parse_args(arguments)
    return int(parsed.run(parsed))


def test_a_page_into_a_pipe(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """The whole page with its numbers, and all that uses it by a key that can be typed."""
    assert read(monkeypatch, "severe-chill", "--units", "us") == 0

    said = capsys.readouterr().out
    assert "Severe chill, at or below: 98.6 °F" in said
    assert " -  source/eales-1984: " in said
    assert " -  node/not-warming: Still too cold after warming (end, " in said


def test_every_line_that_uses_a_page_is_printed(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], collection: Collection
) -> None:
    """Nothing is cut where there is no screen to fit."""
    assert read(monkeypatch, "temperature") == 0

    said = capsys.readouterr().out
    assert all(f" -  {key}:" in said for key in collection.users["finding/temperature"])


def test_a_topic_comes_with_its_map(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """`triage read cold` prints what it is about, and the way through it."""
    assert read(monkeypatch, "cold") == 0

    said = capsys.readouterr().out
    assert said.startswith("Cold, limp or flat out\n")
    assert "The way through: Cold, limp or flat out" in said


def test_a_search_prints_what_it_finds(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Several words are one search, and each find has its key."""
    assert read(monkeypatch, "severe", "chil") == 0

    said = capsys.readouterr().out
    assert said.startswith("8 found: severe chil\n")
    assert " -  number/severe-chill: Severe chill" in said


def test_nothing_found_is_a_sentence(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """On stderr, with an exit status that says so."""
    assert read(monkeypatch, "zzzzqqqq") == 2

    captured = capsys.readouterr()
    assert captured.out == ""
    assert "Nothing is found for 'zzzzqqqq'" in captured.err


def test_plain_lines_begin_where_they_were_asked_to(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], guide: Guide
) -> None:
    """`--plain` is a session also in a pipe: it shows the page, takes lines, and ends with them."""
    assert read(monkeypatch, "cold", "--plain", typed="b\nq\n") == 0

    said = capsys.readouterr().out
    assert said.index("Cold, limp or flat out") < said.index("Contents")


def test_plain_lines_tell_what_is_not_found(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The contents open all the same."""
    assert read(monkeypatch, "zzzzqqqq", "--plain", typed="q\n") == 0

    said = capsys.readouterr().out
    assert "Nothing is found for 'zzzzqqqq'" in said
    assert "Contents" in said
