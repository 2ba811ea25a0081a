"""`triage practice` as a program."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.test_cli_plan import triage


def test_a_first_case_in_plain_lines() -> None:
    """A name, a case, a look, a decision; all of it is there the next time."""
    ran = triage("practice", "Tam", "--plain", typed="1\n1\nd\nq\n")

    assert ran.returncode == 0, ran.stderr
    assert "Practice: an invented lamb" in ran.stdout
    assert "What you looked at" in ran.stdout
    assert "How soon is a vet needed?" in ran.stdout
    again = triage("practice", "tam", "--plain", typed="1\nq\n")
    assert "You were in the middle of this one." in again.stdout
    assert "How soon is a vet needed?" in again.stdout


def test_who_practises_is_asked_for() -> None:
    """Where no name was given; an end of the input leaves in order."""
    ran = triage("practice", "--plain", typed="Tam\n")
    assert ran.returncode == 0
    assert "Who practises?" in ran.stdout
    assert "Practice: Tam" in ran.stdout


def test_what_was_shown_is_printed() -> None:
    """For all, or for one, whose exit status says whether the mark is met."""
    assert "Nobody practises here yet." in triage("practice", "--ready").stdout
    triage("practice", "Tam", "--plain", typed="q\n")
    everyone, one = triage("practice", "--ready"), triage("practice", "tam", "--ready")
    assert everyone.returncode == 0
    assert one.returncode == 1
    assert "Has not met this holding's pass mark yet." in one.stdout
    assert "Practice is no licence." in everyone.stdout
    nobody = triage("practice", "Ruth", "--ready")
    assert nobody.returncode == 2
    assert "Nobody called 'Ruth' practises here." in nobody.stdout


def test_the_holdings_own_pass_mark() -> None:
    """It is set like anything else of the holding, and told on the page; a wrong one is refused."""
    assert triage("setup", "pass-mark=100, 0.5 %, 20 %").returncode == 0
    triage("practice", "Tam", "--plain", typed="q\n")
    assert "100 danger cases since" in triage("practice", "Tam", "--ready").stdout
    wrong = triage("setup", "pass-mark=3")
    assert wrong.returncode != 0
    assert "60, 1 %, 35 %" in wrong.stderr + wrong.stdout


@pytest.mark.parametrize(
    "arguments", [["leader"], ["leader", "scours"], ["leader", "wait-for-vet-1"], ["readiness"]]
)
def test_the_pages_are_printed(arguments: list[str], tmp_path: Path) -> None:
    """Cases to play aloud, of all, of a topic or one; and the owner's page."""
    file = tmp_path / "page.html"
    ran = triage("print", *arguments, "--out", str(file))
    assert ran.returncode == 0, ran.stderr
    assert "Practice is no licence" in file.read_text(encoding="utf-8")


def test_no_such_case() -> None:
    """The nearest one is named."""
    ran = triage("print", "leader", "scour")
    assert ran.returncode == 1
    assert "did you mean 'scours'" in ran.stderr


def test_a_guide_without_practice(tmp_path: Path) -> None:
    """A folder that lacks it is told so."""
    from tests.conftest import write_small

    ran = triage("practice", "Tam", "--plain", "--guide", str(write_small(tmp_path / "guide")))
    assert ran.returncode == 1
    assert "has no practice" in ran.stderr


def test_another_guide_keeps_nothing(tmp_path: Path) -> None:
    """Unless a casebook is named: what was shown of one guide says nothing of another."""
    from triage.guide.find import knowledge_root

    ran = triage("practice", "Tam", "--plain", "--guide", str(knowledge_root()), typed="q\n")
    assert ran.returncode == 0
    assert "Nothing of this is kept" in ran.stdout
    book = tmp_path / "b.sqlite"
    kept = triage(
        "practice", "Tam", "--plain", "--guide", str(knowledge_root()), "--casebook", str(book), typed="q\n"
    )
    assert "Nothing of this is kept" not in kept.stdout
    assert (tmp_path / "b-practice.sqlite").is_file()


def test_a_place_that_can_t_be_written_to(tmp_path: Path) -> None:
    """Practice works on, and says what is not kept."""
    (tmp_path / "file").write_text("x", encoding="utf-8")
    ran = triage(
        "practice", "Tam", "--plain", "--casebook", str(tmp_path / "file" / "c.sqlite"), typed="1\nd\nq\n"
    )
    assert ran.returncode == 0
    assert "Nothing of this is kept" in ran.stdout
    assert "How soon is a vet needed?" in ran.stdout
