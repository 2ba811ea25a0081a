"""`triage book` on the command line."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.book.reader import Book
from triage.cli import main


def test_it_writes_a_book(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With the day, the units and the vet's number that were asked for, and the same bytes each time."""
    one, other = tmp_path / "one.html", tmp_path / "other.html"
    asked = ["--date", "2026-12-01", "--units", "us", "--vet", "01234 567"]

    assert main(["book", str(one), *asked]) == 0
    told = capsys.readouterr().out
    assert main(["book", str(other), *asked]) == 0
    html = one.read_text(encoding="utf-8")
    assert html == other.read_text(encoding="utf-8")
    assert "Written 1 December 2026." in html
    assert 'href="tel:01234567"' in html
    assert Book(html).links("node-warmth")[0].words == "Up to 98.6 °F (37 °C)"
    assert told.splitlines() == [
        f"Written to {one}. Open it in a browser, on a phone too, or print it. It needs no network.",
        "Your vet's number stands in it. For a book that others get, add --no-vet.",
    ]


def test_a_book_for_others_has_no_number_and_may_have_no_maps(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever is kept or set."""
    monkeypatch.setenv("TRIAGE_VET", "01234 567")
    file = tmp_path / "book.html"

    assert main(["book", str(file), "--no-vet", "--no-maps", "--units", "metric"]) == 0
    html = file.read_text(encoding="utf-8")
    assert "01234" not in html
    assert "<svg" not in html


@pytest.mark.parametrize(
    ("name", "said"),
    [
        (
            "nowhere/book.html",
            "No book was written: there is no folder {}/nowhere. Make it first, or name another.",
        ),
        (".", "No book was written: {} is a folder. Name a file in it, such as {}/book.html."),
        ("book.pdf", "No book was written: it is an HTML file. Write {}/book.html, and print that to PDF."),
    ],
)
def test_a_place_where_no_book_can_be_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str, said: str
) -> None:
    """In a sentence, and nothing is made."""
    assert main(["book", str(tmp_path / name)]) == 2
    assert capsys.readouterr().err.strip() == said.replace("{}", str(tmp_path))
    assert list(tmp_path.iterdir()) == []


def test_a_name_that_is_too_long_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whether that is seen before or while writing."""
    assert main(["book", str(tmp_path / ("b" * 300 + ".html"))]) == 2
    assert "File name too long" in capsys.readouterr().err


def test_a_day_that_is_none_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With how a day is written."""
    assert main(["book", str(tmp_path / "book.html"), "--date", "yesterday"]) == 2
    said = capsys.readouterr().err
    assert said == "No book was written: 'yesterday' is no day; write it as 2026-12-01.\n"


def test_a_full_disk_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    """A disk that takes nothing."""
    if not Path("/dev/full").exists():
        pytest.skip("this system has no /dev/full")

    assert main(["book", "/dev/full", "--units", "metric"]) == 2
    said = capsys.readouterr().err
    assert said == "/dev/full can't be written: No space left on device. What was there is there still.\n"


def test_a_file_that_can_t_be_replaced_stays_as_it_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A book that was there is there still, and nothing half written lies beside it."""
    file = tmp_path / "book.html"
    file.write_text("an older book", encoding="utf-8")

    def refuse(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", refuse)
    assert main(["book", str(file), "--units", "metric"]) == 2
    assert file.read_text(encoding="utf-8") == "an older book"
    assert [each.name for each in tmp_path.iterdir()] == ["book.html"]


def test_a_guide_with_mistakes_makes_no_book(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nobody should carry one that is not sound."""
    folder = tmp_path / "guide"
    folder.mkdir()
    (folder / "guide.yaml").write_text("edition: [", encoding="utf-8")

    assert main(["book", str(tmp_path / "book.html"), "--guide", str(folder)]) == 1
    assert "not safe to use" in capsys.readouterr().err
    assert not (tmp_path / "book.html").exists()
