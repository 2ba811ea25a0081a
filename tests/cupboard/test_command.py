"""`triage cupboard`, as a program."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import write_small
from tests.cupboard.made import CHANGES
from triage.cli import main


def triage(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "triage", "cupboard", *arguments],
        check=False, capture_output=True, text=True, timeout=60,
    )  # fmt: skip


def place() -> Path:
    return Path(os.environ["XDG_CONFIG_HOME"]) / "bummer-triage" / "shelf.txt"


def test_lambs_and_things_are_kept() -> None:
    """What is set is kept beside the holding, and counted from then on."""
    ran = triage("--lambs", "5", "thermometer=1", "milk-powder=10 kg, 2099-03")

    assert ran.returncode == 0, ran.stderr
    assert place().read_text(encoding="utf-8").splitlines()[-3:] == [
        "lambs: 5",
        "thermometer: 1",
        "milk-powder: 10 kg, 2099-03",
    ]
    listed = triage("--units", "metric").stdout
    assert "counted for 5 lambs fed by hand" in listed
    assert "(thermometer): 1 more; there is 1" in listed
    assert str(place()) in listed


def test_wrong_words_change_nothing() -> None:
    """Each slip gets a sentence of its own, and nothing is written."""
    triage("thermometer=1")
    before = place().read_text(encoding="utf-8")
    ran = triage(
        "thermometer=2", "thermometr", "milk-powder=10", "first-milk=1 l, 3/4/2027", "--lambs", "none"
    )

    assert ran.returncode == 1
    for said in ("did you mean 'thermometer'?", "milk-powder: '10' of what?", "could be two dates", "is no number of lambs", "Nothing was changed."):  # fmt: skip
        assert said in ran.stderr
    assert "Traceback" not in ran.stderr
    assert place().read_text(encoding="utf-8") == before


def test_one_thing_can_be_asked_for() -> None:
    """A name alone tells that thing, in the units of the reader."""
    ran = triage("milk-powder", "--units", "us")

    assert ran.returncode == 0
    assert "28 lb 11 oz" in ran.stdout
    assert "mix-and-warm-milk" in ran.stdout
    assert "(thermometer)" not in ran.stdout
    assert not place().exists()


def test_the_list_is_told_with_a_broken_line() -> None:
    """A line that can't be used is told with its place, and the list goes by the others."""
    place().parent.mkdir(parents=True)
    place().write_text("thermometer: two\nsoap: 1\n", encoding="utf-8")
    ran = triage()

    assert ran.returncode == 1
    assert "shelf.txt:1:14: 'two' is no whole number" in ran.stderr
    assert "Soap (soap): 1 of 1" in ran.stdout


def test_no_home_still_lists(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """Without a place to keep it the list is told all the same, and setting says why it can't be."""
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.delenv(name)
    monkeypatch.setenv("HOME", "here")
    monkeypatch.setattr(os, "getuid", lambda: 2**31 - 7)

    assert main(["cupboard"]) == 0
    assert "Digital thermometer" in capsys.readouterr().out
    assert main(["cupboard", "soap=1"]) == 2
    assert "There is no place to keep it" in capsys.readouterr().err


def test_a_guide_of_one_s_own(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Another guide's cupboard is told once its check is silent, and a guide without one says so."""
    assert main(["cupboard", "--guide", str(write_small(tmp_path / "bare"))]) == 2
    assert "has no cupboard.yaml" in capsys.readouterr().err

    own = write_small(tmp_path / "own", *CHANGES)
    assert main(["cupboard", "--guide", str(own), "--lambs", "2"]) == 0
    assert main(["cupboard", "--guide", str(own), "powder", "--units", "metric"]) == 0
    assert "It takes 26 kg: 13 kg for each of 2 lambs." in capsys.readouterr().out

    broken = write_small(tmp_path / "broken", *CHANGES, ("cupboard.yaml", "  tags: phone\n", ""))
    assert main(["cupboard", "--guide", str(broken)]) == 1
    assert "no item of cupboard.yaml is for steps tagged 'phone'" in capsys.readouterr().err
