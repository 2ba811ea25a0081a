"""The form of this holding in a session: each answer is in the file before the next question."""

from __future__ import annotations

from pathlib import Path

import pytest

from triage.guide.model import Guide
from triage.holding.fields import FIELDS
from triage.holding.file import read_holding, write_holding
from triage.holding.holding import Holding
from triage.session import Session
from triage.session.desk import House
from triage.walk import Walk


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "holding" / "holding.yaml"


@pytest.fixture
def session(small: Guide, path: Path) -> Session:
    session = Session(Walk(small), house=House(holding_file=path))
    session.open("holding")
    return session


def answer(session: Session, *lines: str) -> None:
    for line in lines:
        session.take(line)


def test_each_answer_is_written_at_once(session: Session, path: Path) -> None:
    """What was answered before the form was left is kept."""
    answer(session, "01632 960111", "", "Ann Field")

    assert read_holding(path).holding == Holding("Ann Field", vet="01632 960111")


def test_all_may_be_passed_over(session: Session, path: Path) -> None:
    """Enter alone goes through the whole form, and nothing is written."""
    answer(session, *[""] * len(FIELDS))

    assert session.page().kind == "ask"
    assert not path.exists()


def test_what_was_changed_by_hand_meanwhile_stays(session: Session, path: Path) -> None:
    """A file that is edited while the guide is open keeps what was typed into it."""
    answer(session, "01632 960111")
    write_holding(Holding(vet="01632 960222", place="Hill Farm"), path)
    answer(session, "", "Ann Field")

    assert read_holding(path).holding == Holding("Ann Field", "Hill Farm", vet="01632 960222")


def test_an_answer_that_could_not_be_written_is_written_with_the_next(session: Session, path: Path) -> None:
    """What failed to be written once is told, used, and written when that can be done again."""
    path.parent.write_text("in the way")
    answer(session, "01632 960111")

    assert session.told.startswith("It could not be written to")
    path.parent.unlink()
    answer(session, "01632 960222")
    assert read_holding(path).holding == Holding(vet="01632 960111", out_of_hours="01632 960222")
