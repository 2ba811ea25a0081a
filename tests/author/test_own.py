"""A new own folder: it changes nothing as it is laid down, and each example may be put to use."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.author.conftest import New
from triage.author.own import ASLEEP, EXAMPLES, README
from triage.check import check
from triage.guide.files import digest_of, own_files
from triage.guide.find import knowledge_root
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.holding.place import holding_file, own_folder
from triage.own.judging import judged
from triage.problems import errors

ROOT = knowledge_root()


def test_it_lies_beside_the_holding_and_changes_nothing(new: New, guide: Guide) -> None:
    """The guide with it has the digest that the guide has without: there is nothing to check anew."""
    assert new("own") == 0

    own, holding = own_folder(), holding_file()
    assert own is not None
    assert isinstance(holding, Path)
    assert own == holding.parent / "own"
    assert own_files(own) == []
    assert digest_of(ROOT, own) == digest_of(ROOT)
    assert read_guide(ROOT, own=own).guide == guide


@pytest.mark.parametrize("name", [name for name in EXAMPLES if name.endswith(ASLEEP)])
def test_each_example_may_be_put_to_use(tmp_path: Path, new: New, guide: Guide, name: str) -> None:
    """Copied without the end of its name it is read, changes the guide, breaks nothing and is allowed."""
    new("own", "--in", tmp_path)
    shutil.copy(tmp_path / name, tmp_path / name.removesuffix(ASLEEP))

    read = read_guide(ROOT, own=tmp_path)

    assert read.problems == ()
    assert read.guide is not None
    assert read.guide != guide
    assert errors(check(read.guide)) == []
    assert judged(guide, read.guide, tmp_path) == []


@pytest.mark.parametrize("name", [name for name in EXAMPLES if name.endswith(ASLEEP)])
def test_each_example_says_where_it_goes(name: str) -> None:
    """The name to which it is copied stands at its top."""
    assert f"copy this file to: {name.removesuffix(ASLEEP)}\n" in EXAMPLES[name]


def test_what_is_there_is_left_as_it_is(tmp_path: Path, new: New, capsys: pytest.CaptureFixture[str]) -> None:
    """Asked for again it gives what is missing; nothing that somebody wrote is touched."""
    (tmp_path / README).write_text("mine\n", encoding="utf-8")
    (tmp_path / "numbers.yaml").write_text("warming-check: {value: 15}\n", encoding="utf-8")

    assert new("own", "--in", tmp_path) == 0
    assert "READ-ME.txt is there already, and is left as it is." in capsys.readouterr().err
    assert new("own", "--in", tmp_path) == 1
    assert capsys.readouterr().err.endswith("Nothing was written.\n")

    assert (tmp_path / README).read_text(encoding="utf-8") == "mine\n"
    assert (tmp_path / "numbers.yaml").read_text(encoding="utf-8") == "warming-check: {value: 15}\n"


def test_a_folder_elsewhere_has_to_be_named(
    tmp_path: Path, new: New, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Then it is said how; where it is named already, nothing is said."""
    new("own", "--in", tmp_path / "ours")
    assert f"set TRIAGE_OWN to {tmp_path / 'ours'}." in capsys.readouterr().out

    monkeypatch.setenv("TRIAGE_OWN", str(tmp_path / "theirs"))
    assert new("own") == 0
    assert (tmp_path / "theirs" / README).is_file()
    assert "TRIAGE_OWN" not in capsys.readouterr().out


def test_a_file_in_its_place_is_told(tmp_path: Path, new: New, capsys: pytest.CaptureFixture[str]) -> None:
    """Then nothing is written, and the file is left alone."""
    (tmp_path / "own").write_text("a file", encoding="utf-8")

    assert new("own", "--in", tmp_path / "own") == 2

    assert "could not be written" in capsys.readouterr().err
    assert (tmp_path / "own").read_text(encoding="utf-8") == "a file"
