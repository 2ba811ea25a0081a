"""The plain face, as a person meets it: whole walks kept as text."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime

import pytest
from pytest_snapshot.plugin import Snapshot

from triage import plain
from triage.clock import Now
from triage.guide.model import Guide
from triage.session import Session
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)

WALKS = {
    "cold-newborn": ["5", "36.2", "3h", "", "d", "38", "1", "6", "4.2kg", "w", "b", "q"],
    "cold-older-no-glucose": ["6", "35.8", "14h", "3", "v", "b"],
    "no-thermometer-no-scale": ["6", "n", "1", "1", "5", "n", "1", "6", "n", "2"],
    "scours-in-us-units": ["u", "6", "102.5", "1", "3", "?", "b", "3", "2", "6", "10 days", "9 lb"],
    "slips-and-changes": ["7", "", "6", "392", "39,2", "a", "2", "b", "1", "a", "1", "5", "n", "q", "q"],
}


def lines_of(guide: Guide, lines: list[str], width: int = 76) -> str:
    """Return what is written and typed, line by line, until the input ends."""
    written: list[str] = []
    typed: Iterator[str] = iter(lines)

    def read(prompt: str) -> str:
        line = next(typed, None)
        written.append(prompt + ("" if line is None else line))
        if line is None:
            raise EOFError
        return line

    held = Session(Walk(guide), vet="01632 960111", clock=lambda: NOW)
    plain.run(held, read, written.append, width)
    return "\n".join(line.rstrip() for line in written) + "\n"


@pytest.mark.parametrize("name", WALKS)
def test_a_walk_reads_as_it_should(guide: Guide, snapshot: Snapshot, name: str) -> None:
    """A whole walk in plain lines is what it was when it was last read and approved."""
    snapshot.snapshot_dir = "tests/snapshots/plain"

    snapshot.assert_match(lines_of(guide, WALKS[name]), f"{name}.txt")


@pytest.mark.parametrize("width", [20, 30, 44, 76])
def test_no_line_is_wider_than_the_terminal(guide: Guide, width: int) -> None:
    """Pages are wrapped to the width; only the prompt, which the terminal wraps, may be longer."""
    for lines in WALKS.values():
        for line in lines_of(guide, lines, width).split("\n"):
            if "q leave" not in line and not line.startswith(("**", "Vet:", "Lamb:")):
                assert len(line) <= width or line in line_exceptions(line, guide)


def line_exceptions(line: str, guide: Guide) -> list[str]:
    """Return the lines that a terminal itself wraps: topic titles and messages."""
    titles = [topic.title for topic in guide.topics.values()]
    return [*titles, *([line] if line.endswith((".", "?", "39.2.")) else [])]


def test_nothing_is_drawn(guide: Guide) -> None:
    """Plain mode moves no cursor, draws no box and sets no colour."""
    text = "".join(lines_of(guide, lines) for lines in WALKS.values())

    assert "\x1b" not in text
    assert not any(0x2500 <= ord(sign) <= 0x257F for sign in text)
