"""Where a holding is kept, and that looking for it never keeps the guide shut."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from triage.holding.found import find_holding
from triage.holding.place import Nowhere, casebook_file, holding_file, own_folder


def test_each_has_its_own_folder(own_folders: Path) -> None:
    """The holding is a setting and the casebook is data, as the platform tells them apart."""
    assert holding_file() == own_folders / "config" / "bummer-triage" / "holding.yaml"
    assert casebook_file() == own_folders / "data" / "bummer-triage" / "casebook.sqlite"


def test_no_home_is_a_reason(monkeypatch: pytest.MonkeyPatch) -> None:
    """A person whose home nobody knows gets a reason, and no folder of that name here."""
    monkeypatch.setattr(os, "getuid", lambda: 2**31 - 7)
    monkeypatch.delenv("XDG_CONFIG_HOME")
    monkeypatch.delenv("XDG_DATA_HOME")
    monkeypatch.setenv("HOME", "here")

    assert holding_file() == Nowhere("this machine names no home folder")
    assert casebook_file() == Nowhere("this machine names no home folder")
    assert find_holding() == (None, None, False)


def test_an_own_folder_that_may_be_there_is_never_left_out_in_silence(
    own_folders: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where nobody can see whether there is one, whoever reads it is to say so."""
    assert own_folder() is None

    def closed(_: Path) -> bool:
        raise PermissionError

    monkeypatch.setattr(Path, "is_dir", closed)
    assert own_folder() == own_folders / "config" / "bummer-triage" / "own"


@pytest.mark.parametrize("folder", ["x" * 300, "file/under", "loop"])
def test_a_folder_that_can_not_be_looked_into_stops_nothing(
    folder: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A folder with an impossible name, a file in its place, or a link to itself: found, and never raised."""
    (tmp_path / "file").write_text("in the way")
    (tmp_path / "loop").symlink_to(tmp_path / "loop")
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / folder))
    found = find_holding()

    assert found.read is not None
    assert found.there == bool(found.read.problems)


@pytest.mark.parametrize("module", ["place", "found", "file", "fields", "holding", "bag", "writing"])
def test_nothing_heavy_is_loaded_until_it_is_used(module: str) -> None:
    """Neither the search for the folder nor the reader of the file is loaded with the room."""
    code = f"import sys, triage.holding.{module}; print({{'platformdirs', 'yaml'}} & set(sys.modules))"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)

    assert ran.stdout.strip() == "set()"
