"""Places where no casebook can be kept, tried by a person who may not do everything."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.casebook.conftest import CASE, LAMB, opened_at
from tests.casebook.killing import ROOT
from triage.casebook.failing import NotKept
from triage.casebook.opening import open_casebook

NOBODY = 65534
TRY = f"""
import os, sys
from dataclasses import replace
from pathlib import Path
from tests.casebook.conftest import CASE, LAMB
from triage.casebook.opening import Opened, open_casebook
if os.geteuid() == 0:  # whom no permission stops
    os.setgid({NOBODY}); os.setuid({NOBODY})
came = open_casebook(Path(sys.argv[1]))
print(came.why if not isinstance(came, Opened) else getattr(came.book.keep_lamb(LAMB), "why", "kept"))
"""


def tried(path: Path) -> str:
    """Open and write as a person without privileges, and return what came of it."""
    ran = subprocess.run(
        [sys.executable, "-c", TRY, path], check=True, capture_output=True, text=True, cwd=ROOT, timeout=60
    )
    assert ran.stderr == ""
    return ran.stdout.strip()


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A casebook that belongs to a person without privileges, in a folder that others can reach."""
    path = tmp_path / "kept" / "casebook.sqlite"
    opened_at(path).book.close()
    if os.geteuid() == 0:
        for each in (tmp_path, *list(tmp_path.parents)[:3]):
            each.chmod(each.stat().st_mode | 0o055)
        os.chown(path, NOBODY, NOBODY)
        os.chown(path.parent, NOBODY, NOBODY)
    return path


def test_a_person_without_privileges_keeps(place: Path) -> None:
    """The trial itself works where everything is allowed."""
    assert tried(place) == "kept"


def no_writing(path: Path) -> None:
    path.chmod(0o400)
    path.parent.chmod(0o500)


def file_read_only(path: Path) -> None:
    path.chmod(0o400)


def file_closed(path: Path) -> None:
    path.chmod(0)


def folder_closed(path: Path) -> None:
    path.parent.chmod(0)


def log_read_only(path: Path) -> None:
    log = path.with_name(f"{path.name}-wal")
    log.touch()
    log.chmod(0o400)


@pytest.mark.parametrize("shut", [no_writing, file_read_only, file_closed, folder_closed, log_read_only])
def test_what_may_not_be_written_to_is_told(shut: Callable[[Path], None], place: Path) -> None:
    """Each way to forbid the writing is told in a sentence, and the file stays as it was."""
    before = place.read_bytes()
    shut(place)
    try:
        assert tried(place) in (
            "the casebook may not be written to",
            "the casebook can't be opened",
            "the disk does not answer as it should",
        )
    finally:
        place.parent.chmod(0o700)
        place.chmod(0o600)
    assert place.read_bytes() == before


def test_a_folder_that_may_not_be_made(tmp_path: Path, place: Path) -> None:
    """Where the folder itself can't be made, the reason is told and nothing is made."""
    (tmp_path / "shut").mkdir(mode=0o555)

    assert tried(tmp_path / "shut" / "deep" / "casebook.sqlite") == "the casebook may not be written to"
    assert list((tmp_path / "shut").iterdir()) == []


def test_things_that_are_no_files(tmp_path: Path) -> None:
    """A folder, a pipe, a broken link or a device in the casebook's place is told, and nothing waits for it."""
    (tmp_path / "folder").mkdir()
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "circle").symlink_to("circle")
    for each in (tmp_path / "folder", tmp_path / "pipe", tmp_path / "circle", Path("/dev/null")):
        came = open_casebook(each)
        assert isinstance(came, NotKept), each
    assert sorted(each.name for each in tmp_path.iterdir()) == ["circle", "folder", "pipe"]


@pytest.mark.parametrize("name", ["n" * 300, "a\0b", "half \udc80 a sign"])
def test_names_that_are_no_names(tmp_path: Path, name: str) -> None:
    """A name that no file can have is told; one that only this system can write is used."""
    came = open_casebook(tmp_path / name)

    if isinstance(came, NotKept):
        assert came.why in ("its name is too long", "no file can have that name")
    else:
        assert came.book.keep_lamb(LAMB) == LAMB
        came.book.close()


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    """A casebook that is kept elsewhere and linked to is written where it is; when damaged, it is set aside there."""
    real, link = tmp_path / "real" / "c.sqlite", tmp_path / "link.sqlite"
    real.parent.mkdir()
    link.symlink_to(real)
    book = opened_at(link).book
    book.begin(LAMB, replace(CASE))
    book.close()
    real.write_bytes(bytes(100) + real.read_bytes()[100:])

    opened = opened_at(link)

    assert link.is_symlink()
    assert "Saved from it: 1 lamb, 1 walk," in opened.told
    assert len(list(real.parent.glob("c.sqlite.damaged-*"))) >= 1
    opened.book.close()
