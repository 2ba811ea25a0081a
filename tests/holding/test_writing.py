"""Writing a holding's file: whole or not at all, and nothing of a person's own is lost by it."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

import pytest

from triage.holding.file import aside_for, change_holding, read_holding, write_holding
from triage.holding.holding import Holding
from triage.own_file import BIGGEST

VET = Holding(vet="01632 960111")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "own" / "holding.yaml"


def by_hand(path: Path, text: str) -> Path:
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def test_a_file_of_its_own_leaves_nothing_beside_it(path: Path) -> None:
    """What setup wrote is written again without a copy, also with a value changed by hand."""
    write_holding(VET, path)
    by_hand(path, path.read_text(encoding="utf-8").replace('"01632 960111"', "01632 960222"))

    assert aside_for(path) is None
    assert change_holding({"caller": "Ann Field"}, path, "metric") == Holding("Ann Field", vet="01632 960222")
    assert os.listdir(path.parent) == ["holding.yaml"]


@pytest.mark.parametrize(
    "text",
    [
        "# ask for Ann first\nvet: 01632 960111\n",
        "vet: 01632 960111 # ask for Ann\n",
        "vet: 01632 960111\nplce: x\n",
    ],
)
def test_a_person_s_own_lines_are_kept_beside(path: Path, text: str) -> None:
    """Own comments and lines that can't be used are kept in a copy for the owner alone; the values stay."""
    by_hand(path, text)
    aside = aside_for(path)

    assert change_holding({"caller": "Ann Field"}, path, "metric") == Holding("Ann Field", vet="01632 960111")
    assert aside == path.with_name("holding.yaml.before")
    assert aside.read_text(encoding="utf-8") == text
    assert stat.S_IMODE(aside.stat().st_mode) == 0o600


def test_no_copy_takes_the_place_of_another(path: Path) -> None:
    """A second file edited by hand gets a second copy, and the same one no copy more."""
    for note in ("# one\n", "# two\n", "# one\n"):
        write_holding(VET, by_hand(path, note + "place: Hill Farm\n"))

    kept = {each.name: each.read_text(encoding="utf-8")[:5] for each in path.parent.glob("*.before*")}
    assert kept == {"holding.yaml.before": "# one", "holding.yaml.before-2": "# two"}


def test_what_was_changed_meanwhile_stays(path: Path) -> None:
    """One field is changed in the file as it stands, not as it was when it was read."""
    write_holding(VET, path)
    held = read_holding(path).holding
    by_hand(path, 'vet: "01632 960222"\n')

    assert held.vet == "01632 960111"
    assert change_holding({"place": "Hill Farm", "vet": ""}, path, "metric") == Holding(
        place="Hill Farm", vet="01632 960222"
    )


def test_a_wrong_value_changes_nothing(path: Path) -> None:
    """Of several fields, none is written where one is wrong."""
    came = change_holding({"vet": "01632 960111", "units": "ells"}, path, "metric")

    assert came == "units: 'ells' is not one of metric, us."
    assert not path.exists()


def test_a_pipe_in_its_place_is_left_alone(path: Path) -> None:
    """A pipe that nobody reads is neither waited for nor replaced."""
    path.parent.mkdir()
    os.mkfifo(path)

    assert "this is not a file" in write_holding(VET, path)
    assert stat.S_ISFIFO(path.stat().st_mode)


def test_what_can_not_be_read_is_not_written_over(path: Path) -> None:
    """A folder, or a file too long to be a holding, stays as it is."""
    by_hand(path, "x" * (BIGGEST + 1))

    assert "it is longer than" in write_holding(VET, path)
    assert path.stat().st_size == BIGGEST + 1
    assert "this is not a file" in write_holding(VET, path.parent)


@pytest.mark.parametrize("before", ["vet: 01632 960222\n", "# my note\nvet: 01632 960222\n"])
def test_a_full_disk_loses_nothing(path: Path, before: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """When there is no room, the file stands as it was and nothing is left beside it."""
    by_hand(path, before)

    def full(handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    said = write_holding(VET, path)

    assert said.endswith("No space left on device. What was there is there still.")
    assert os.listdir(path.parent) == ["holding.yaml"]
    assert path.read_text(encoding="utf-8") == before


def test_a_link_stays_a_link(path: Path, tmp_path: Path) -> None:
    """A file that is kept elsewhere and linked here is written where it is kept."""
    kept = tmp_path / "kept.yaml"
    path.parent.mkdir()
    path.symlink_to(kept)

    assert write_holding(VET, path) == ""
    assert path.is_symlink()
    assert read_holding(kept).holding == VET


def test_every_folder_that_is_made_is_the_owner_s(tmp_path: Path) -> None:
    """No folder on the way to it is open to others either."""
    before = os.umask(0)
    write_holding(VET, tmp_path / "a" / "b" / "holding.yaml")
    os.umask(before)

    assert [stat.S_IMODE((tmp_path / each).stat().st_mode) for each in ("a", "a/b")] == [0o700, 0o700]
