"""Writing a file whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
from pathlib import Path

import pytest

from triage.whole_file import OWNER, write_whole


def test_a_file_is_written(tmp_path: Path) -> None:
    """A new file holds the text in UTF-8, and nothing is left beside it."""
    write_whole("37 °C\n", tmp_path / "report")

    assert (tmp_path / "report").read_bytes() == "37 °C\n".encode()
    assert os.listdir(tmp_path) == ["report"]


def test_a_text_that_is_no_unicode_is_written_too(tmp_path: Path) -> None:
    """A file name that was only bytes can stand in a text; it does not stop the writing."""
    write_whole("caf\udce9\n", tmp_path / "report")

    assert (tmp_path / "report").read_text(encoding="utf-8") == "caf?\n"


def test_a_full_disk_leaves_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the disk is full the file of before stands unchanged, and nothing is left beside it."""
    (tmp_path / "report").write_text("before")

    def full(handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left"):
        write_whole("after", tmp_path / "report")

    assert (tmp_path / "report").read_text() == "before"
    assert os.listdir(tmp_path) == ["report"]


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """The file that a link leads to is written, and the link still leads there."""
    (tmp_path / "real").write_text("before")
    (tmp_path / "link").symlink_to("real")

    write_whole("after", tmp_path / "link")

    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_text() == "after"


def test_a_pipe_is_written_to(tmp_path: Path) -> None:
    """What is no file, such as a pipe or a device, is written to and stays what it is."""
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    reader = os.open(pipe, os.O_RDONLY | os.O_NONBLOCK)

    write_whole("text", pipe)

    assert os.read(reader, 100) == b"text"
    assert pipe.is_fifo()
    os.close(reader)


def test_the_usual_permissions(tmp_path: Path) -> None:
    """Others may read a report as they may read any new file here."""
    (tmp_path / "usual").write_text("")

    write_whole("text", tmp_path / "report")

    assert (tmp_path / "report").stat().st_mode == (tmp_path / "usual").stat().st_mode


def test_a_file_for_its_owner_is_never_open_to_others(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The part beside the target has the owner's mode already, before it takes the target's place."""
    seen: list[int] = []
    replace = os.replace

    def watched(beside: Path, target: Path) -> None:
        seen.append(stat.S_IMODE(beside.stat().st_mode))
        replace(beside, target)

    monkeypatch.setattr(os, "replace", watched)
    before = os.umask(0)
    write_whole("01632 960111", tmp_path / "own", OWNER)
    os.umask(before)

    assert seen == [0o600]
    assert stat.S_IMODE((tmp_path / "own").stat().st_mode) == 0o600
