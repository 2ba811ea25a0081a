"""Laying down a file: whole or not at all, and never over another."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from triage.author.laying import write_new


def test_a_file_that_is_there_is_untouched(tmp_path: Path) -> None:
    """Also one that only a link stands for."""
    (tmp_path / "there").write_text("mine", encoding="utf-8")
    (tmp_path / "link").symlink_to(tmp_path / "nowhere")

    for name in ("there", "link"):
        with pytest.raises(FileExistsError):
            write_new("new", tmp_path / name)

    assert (tmp_path / "there").read_text(encoding="utf-8") == "mine"
    assert not (tmp_path / "nowhere").exists()


def test_a_disk_that_is_full_leaves_nothing_half_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The next try finds the name free."""

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        write_new("new", tmp_path / "file")
    monkeypatch.undo()

    write_new("new", tmp_path / "file")
    assert (tmp_path / "file").read_text(encoding="utf-8") == "new"
