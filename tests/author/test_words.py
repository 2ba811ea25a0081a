"""A new file of other words: every text of the guide, quoted so that it comes back letter for letter."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.author.conftest import New
from tests.conftest import SMALL, write_small
from triage.author.words import FILE, quoted, words_text
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.guide.rewording import ill_fitting, read_words, reworded, texts_in
from triage.guide.text import BIGGEST, Text, read_text
from triage.problems import Problem


def test_as_it_is_laid_down_it_changes_nothing(tmp_path: Path, guide: Guide) -> None:
    """Every text of the guide stands in it once, with itself in its place, and the guide stays what it is."""
    (tmp_path / FILE).write_text(words_text(guide), encoding="utf-8")

    words, problems = read_words(tmp_path)

    assert problems == ()
    assert words is not None
    assert sorted(words.pairs) == sorted(texts_in(guide))
    assert all(shipped == here for shipped, here in words.pairs.items())
    assert len(words.words) == len(words.pairs)
    assert list(ill_fitting(guide, words)) == []
    assert reworded(guide, words) == guide


def test_one_line_typed_over_is_one_text_changed(tmp_path: Path, guide: Guide) -> None:
    """A file that is hardly begun is read, and shows what is done of it."""
    before, after = '    here: "Danger sign"\n', '    here: "Gefahr"\n'
    text = words_text(guide, "de")
    assert text.count(before) == 1
    (tmp_path / FILE).write_text(text.replace(before, after), encoding="utf-8")

    words, problems = read_words(tmp_path)

    assert problems == ()
    assert words is not None
    assert words.language == "de"
    worded = reworded(guide, words)
    assert worded.findings["danger"].label == "Gefahr"
    changed = [name for name, each in worded.findings.items() if each != guide.findings[name]]
    assert changed == ["danger"]
    assert (worded.nodes, worded.numbers) == (guide.nodes, guide.numbers)


def test_there_is_room_for_a_longer_language(guide: Guide) -> None:
    """Though every text grew by a half, the file could still be read."""
    grown = len(words_text(guide)) + sum(map(len, texts_in(guide))) // 2

    assert grown < BIGGEST


@given(st.text(st.characters(exclude_categories=["Cs"])))
def test_a_quoted_text_comes_back(text: str) -> None:
    """Whatever it holds: quotes, braces, backslashes, a line's end of any kind."""
    problems: list[Problem] = []

    read = read_text(f"here: {quoted(text)}\n", "words.yaml", problems)

    assert problems == []
    assert read is not None
    assert isinstance(read.fields["here"], Text)
    assert read.fields["here"].text == text


def test_it_is_written_into_the_own_folder(
    tmp_path: Path, new: New, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Texts that the own folder adds are among its texts; another time nothing is written over."""
    monkeypatch.setenv("TRIAGE_OWN", str(tmp_path))
    (tmp_path / "numbers.yaml").write_text("warming-check: {note: Ours.}\n", encoding="utf-8")

    assert new("words", "--language", "de") == 0

    text = (tmp_path / FILE).read_text(encoding="utf-8")
    assert 'language: "de"\n' in text
    assert '  - shipped: "Ours."\n    here: "Ours."\n' in text
    assert f"{text.count('- shipped:'):,} texts" in capsys.readouterr().out
    assert new("words", "--language", "fr") == 1
    assert "is there already" in capsys.readouterr().err
    assert (tmp_path / FILE).read_text(encoding="utf-8") == text


def test_a_guide_with_a_mistake_has_no_words_yet(
    tmp_path: Path, new: New, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """The mistake is told with its place, and no file is begun."""
    own = tmp_path / "own"
    own.mkdir()
    monkeypatch.setenv("TRIAGE_OWN", str(own))
    (own / "numbers.yaml").write_text("warming-check: {value: soon}\n", encoding="utf-8")

    assert new("words") == 1

    assert "own/numbers.yaml:1:24: 'soon' is not a plain number" in capsys.readouterr().err
    assert not (own / FILE).exists()


def test_the_words_of_another_guide(tmp_path: Path) -> None:
    """Its own texts, each under the part that it is first met in."""
    read = read_guide(write_small(tmp_path))
    assert read.guide is not None

    text = words_text(read.guide)

    assert "  # findings: mouth\n" in text
    assert '  - shipped: "Is its mouth warm?"\n' in text
    assert text.count('shipped: "Cold kills."') == 1 < SMALL["findings/all.yaml"].count("Cold kills.")
