"""Opening a casebook, whatever lies in its place."""

from __future__ import annotations

import os
import sqlite3
import stat
from dataclasses import replace
from pathlib import Path

import pytest

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from triage.casebook import schema
from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept
from triage.casebook.opening import open_casebook
from triage.casebook.rows import Case, Observation
from triage.casebook.schema import CASEBOOK
from triage.walk import Answer

VERSION_1 = (Path(__file__).parent / "version_1.sql").read_text(encoding="utf-8")
"""A casebook of version 1 as SQLite dumps it; never changed, so that each later version can open it."""


def filled(path: Path, cases: int = 30) -> None:
    """Make a casebook of several pages: an invented lamb with many walks and notes."""
    book = opened_at(path).book
    for number in range(cases):
        moves = tuple(Answer(f"finding-{place}", "x" * 40, at=NOW) for place in range(20))
        book.begin(replace(LAMB, id=f"lamb-{number % 5}"), replace(CASE, id=f"case-{number}", moves=moves))
        book.note(Observation(f"note-{number}", f"lamb-{number % 5}", "note", NOW, NOW, {"note": "y" * 200}))
    book.close()


def modes(folder: Path) -> set[int]:
    return {stat.S_IMODE(each.stat().st_mode) for each in folder.iterdir()}


def test_only_the_owner_may_read_it(path: Path) -> None:
    """The file and those beside it are the owner's alone, whatever the umask; so is the folder."""
    before = os.umask(0)
    try:
        book = opened_at(path).book
        book.begin(LAMB, CASE)
        assert modes(path.parent) == {0o600}
        assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700
        book.close()
        path.chmod(0o644)
        opened_at(path).book.close()
        assert modes(path.parent) == {0o600}
    finally:
        os.umask(before)


def test_it_is_kept_as_safely_as_sqlite_can(path: Path) -> None:
    """Write-ahead log, a flush at each commit, and foreign keys, as SQLite itself says."""
    database = opened_at(path).book._database

    asked = {
        name: database.execute(f"PRAGMA {name}").fetchone()[0]
        for name in ("journal_mode", "synchronous", "foreign_keys")
    }

    assert asked == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}  # 2 is FULL (SQLite, PRAGMA)


def test_a_casebook_of_version_1_opens(path: Path) -> None:
    """What the first edition kept is read by this one."""
    path.parent.mkdir()
    with sqlite3.connect(path) as raw:
        raw.executescript(VERSION_1)
    raw.close()

    book = opened_at(path).book

    [(lamb, case)] = book.open_cases(9)  # type: ignore[misc]
    assert (lamb, case.moves, case.look) == (LAMB, CASE.moves, CASE.look)
    assert book.observations_of(LAMB.id)[0].parts == {"weight": 4.2}  # type: ignore[index]


def test_a_later_migration_is_done_once_or_not_at_all(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An older file gets the migrations it lacks; one that fails half way changes nothing."""
    filled(path, 3)
    broken = (*schema.MIGRATIONS, "CREATE TABLE more (a);\nCREATE TABLE more (a);\n")
    monkeypatch.setattr(Casebook, "FORM", replace(CASEBOOK, migrations=broken))
    assert isinstance(open_casebook(path), NotKept)
    with sqlite3.connect(path) as raw:
        assert raw.execute("PRAGMA user_version").fetchone() == (1,)
        assert raw.execute("SELECT count(*) FROM sqlite_master WHERE name = 'more'").fetchone() == (0,)
    raw.close()

    more = (*schema.MIGRATIONS, "CREATE TABLE more (a);\n")
    monkeypatch.setattr(Casebook, "FORM", replace(CASEBOOK, migrations=more))
    book = opened_at(path).book

    assert book.count_open() == 3
    assert book._database.execute("PRAGMA user_version").fetchone() == (2,)


def test_a_newer_casebook_is_left_untouched(path: Path) -> None:
    """A file of a newer edition is refused, and neither it nor anything beside it changes."""
    filled(path, 3)
    with sqlite3.connect(path) as raw:
        raw.execute(f"PRAGMA user_version = {CASEBOOK.version + 1}")
    raw.close()
    before = {each.name: each.read_bytes() for each in path.parent.iterdir()}

    came = open_casebook(path)

    assert isinstance(came, NotKept)
    assert "newer edition" in came.why
    assert {each.name: each.read_bytes() for each in path.parent.iterdir()} == before


@pytest.mark.parametrize("marked", [True, False])
def test_the_file_of_another_program_is_left_untouched(path: Path, marked: bool) -> None:
    """A database that is not a casebook is refused and stays as it is."""
    path.parent.mkdir()
    with sqlite3.connect(path) as raw:
        raw.execute("CREATE TABLE theirs (a)")
        if marked:
            raw.execute("PRAGMA application_id = 77")
    raw.close()
    before = path.read_bytes()

    came = open_casebook(path)

    assert isinstance(came, NotKept)
    assert "another program" in came.why
    with sqlite3.connect(path) as raw:
        assert raw.execute("SELECT name FROM sqlite_master").fetchall() == [("theirs",)]
    raw.close()
    assert not marked or path.read_bytes() == before


@pytest.mark.parametrize("place", ["folder", "parent-is-file", "null"])
def test_no_place_for_it_is_told(tmp_path: Path, place: str) -> None:
    """Where no file can be, the reason is told and nothing is raised."""
    path = tmp_path / "a"
    if place == "folder":
        path.mkdir()
    elif place == "parent-is-file":
        path.write_text("a file")
        path = path / "casebook.sqlite"
    else:
        path = Path("a\0b")

    assert isinstance(open_casebook(path), NotKept)


def test_a_newer_edition_that_only_the_log_tells_of(path: Path) -> None:
    """A newer edition that was killed may have told its version in the log only: that too is left untouched."""
    filled(path, 3)
    newer = sqlite3.connect(path, isolation_level=None)
    newer.execute("PRAGMA wal_autocheckpoint = 0")
    newer.execute("PRAGMA user_version = 7")
    kept = {each.name: each.read_bytes() for each in path.parent.iterdir()}
    place = path.parent.parent / "killed" / path.name
    place.parent.mkdir()
    for name, whole in kept.items():
        (place.parent / name).write_bytes(whole)
    newer.close()

    came = open_casebook(place)

    assert isinstance(came, NotKept)
    assert "newer edition" in came.why
    for name in (path.name, f"{path.name}-wal"):
        assert (place.parent / name).read_bytes() == kept[name]


@pytest.mark.parametrize("journal", ["delete", "wal"])
@pytest.mark.parametrize("version", [0, 1, 5])
def test_a_file_of_another_program_keeps_every_byte(path: Path, journal: str, version: int) -> None:
    """Many programs put no mark of theirs into their file: it is told by its tables, and no byte of it changes."""
    path.parent.mkdir()
    with sqlite3.connect(path, isolation_level=None) as raw:
        raw.execute(f"PRAGMA journal_mode = {journal}")
        raw.execute("CREATE TABLE lambs (id)")
        raw.execute(f"PRAGMA user_version = {version}")
    raw.close()
    before = path.read_bytes()

    came = open_casebook(path)

    assert isinstance(came, NotKept)
    assert "another program" in came.why
    assert {each.name: each.read_bytes() for each in path.parent.iterdir()} == {path.name: before}


def test_the_first_version_is_never_edited() -> None:
    """The first migration makes exactly the tables that went out with version 1; a change is a new migration."""

    def shape(script: str) -> list[tuple[str, str]]:
        with sqlite3.connect(":memory:") as raw:
            raw.executescript(script)
            rows = raw.execute(
                "SELECT name, sql FROM sqlite_master WHERE sql NOT NULL ORDER BY name"
            ).fetchall()
        raw.close()
        return [(name, " ".join(sql.split())) for name, sql in rows]

    assert shape(schema.MIGRATIONS[0]) == shape(VERSION_1)


def test_two_copies_of_which_one_brings_it_up(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A copy of the edition before, open while a later one brings the file up, goes on keeping in it."""
    filled(path, 3)
    before = opened_at(path).book
    tagged = (*schema.MIGRATIONS, "ALTER TABLE lambs ADD COLUMN tag TEXT;\n")
    monkeypatch.setattr(Casebook, "FORM", replace(CASEBOOK, migrations=tagged))
    later = opened_at(path).book

    assert isinstance(before.begin(replace(LAMB, id="new"), replace(CASE, id="new")), Case)

    assert isinstance(later.case("new"), Case)
    assert later.sound()
    before.close()
    later.close()


def test_a_damaged_file_of_the_version_before_is_saved(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A later edition that meets a damaged file of an older one saves its rows into the new shape."""
    filled(path, 30)
    spoilt = path.read_bytes()
    path.write_bytes(bytes(100) + spoilt[100:])
    tagged = (*schema.MIGRATIONS, "ALTER TABLE lambs ADD COLUMN tag TEXT;\n")
    monkeypatch.setattr(Casebook, "FORM", replace(CASEBOOK, migrations=tagged))

    opened = opened_at(path)

    assert "Saved from it: 5 lambs, 30 walks, 600 answers and acts, 30 notes." in opened.told
    assert opened.book._database.execute("PRAGMA user_version").fetchone() == (2,)
    opened.book.close()
