"""A casebook damaged in every way that chance makes: never a traceback, the old file kept, its rows saved."""

from __future__ import annotations

import random
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest

from tests.casebook.conftest import CASE, LAMB, NOW, opened_at
from tests.casebook.killing import ROOT
from triage.casebook.book import Casebook
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened, mend, open_casebook
from triage.casebook.rows import Case, Observation
from triage.casebook.salvage import LOST
from triage.walk import Answer

PAGE = 4096
CASES = 30
MOVES = 20
Damage = Callable[[bytearray, random.Random], None]


def filled(path: Path) -> None:
    """Make a casebook of several pages: five invented lambs, with walks and notes."""
    book = opened_at(path).book
    for number in range(CASES):
        moves = tuple(Answer(f"finding-{place}", "x" * 40, "said", NOW) for place in range(MOVES))
        book.begin(replace(LAMB, id=f"lamb-{number % 5}"), replace(CASE, id=f"case-{number}", moves=moves))
        book.note(Observation(f"note-{number}", f"lamb-{number % 5}", "note", NOW, NOW, {"note": "y" * 200}))
    book.close()


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """A sound casebook, as bytes."""
    path = tmp_path_factory.mktemp("whole") / "casebook.sqlite"
    filled(path)
    return path.read_bytes()


def put(path: Path, spoilt: bytes, log: bytes = b"") -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(spoilt)
    if log:
        path.with_name(f"{path.name}-wal").write_bytes(log)


def read_all(book: Casebook) -> bool:
    """Read everything as the screens do; whether damage was met."""
    came: list[object] = [book.lambs(), book.open_cases(99), book.looks(99), book.count_open()]
    for lamb in came[0] if isinstance(came[0], tuple) else ():
        came += [book.lamb(lamb.id), book.cases_of(lamb.id), book.observations_of(lamb.id)]
    failed = [each for each in came if isinstance(each, NotKept)]
    assert all(each.damaged for each in failed), failed
    return bool(failed)


def use(path: Path) -> Opened | NotKept:
    """Open and read a casebook, mended where damage is met, as the session does it."""
    opened = open_casebook(path)
    if isinstance(opened, Opened) and not opened.told and (read_all(opened.book) or not opened.book.sound()):
        opened = mend(opened.book, NOW)
    return opened


def rows(book: Casebook, table: str) -> int:
    return int(book._database.execute(f"SELECT count(*) FROM {table}").fetchone()[0])


def aside_of(path: Path) -> Path:
    [aside] = (each for each in path.parent.glob("*.damaged-*") if each.name[-1] in "0123456789x")
    return aside


def flip_bytes(spoilt: bytearray, chance: random.Random) -> None:
    for _ in range(chance.choice([1, 3, 30])):
        spoilt[chance.randrange(len(spoilt))] ^= chance.randrange(1, 256)


def flip_in_header(spoilt: bytearray, chance: random.Random) -> None:
    spoilt[chance.randrange(100)] ^= chance.randrange(1, 256)


def noise(spoilt: bytearray, chance: random.Random) -> None:
    at, length = chance.randrange(len(spoilt)), chance.choice([8, 96, 5000])
    spoilt[at : at + length] = chance.randbytes(min(length, len(spoilt) - at))


def cut(spoilt: bytearray, chance: random.Random) -> None:
    del spoilt[chance.randrange(len(spoilt)) :]


def zero_page(spoilt: bytearray, chance: random.Random) -> None:
    at = chance.randrange(len(spoilt) // PAGE) * PAGE
    spoilt[at : at + PAGE] = bytes(PAGE)


def swap_pages(spoilt: bytearray, chance: random.Random) -> None:
    one, other = (chance.randrange(len(spoilt) // PAGE) * PAGE for _ in range(2))
    kept = spoilt[one : one + PAGE]
    spoilt[one : one + PAGE] = spoilt[other : other + PAGE]
    spoilt[other : other + PAGE] = kept


def zeros_at_the_end(spoilt: bytearray, chance: random.Random) -> None:
    length = chance.randrange(1, len(spoilt))
    spoilt[-length:] = bytes(length)


def more_at_the_end(spoilt: bytearray, chance: random.Random) -> None:
    spoilt += chance.randbytes(chance.randrange(1, 9000))


DAMAGES: tuple[Damage, ...] = (
    flip_bytes, flip_in_header, noise, cut, zero_page, swap_pages, zeros_at_the_end, more_at_the_end,
)  # fmt: skip


@pytest.mark.parametrize("damage", DAMAGES)
def test_chance_damage(damage: Damage, whole: bytes, tmp_path: Path) -> None:
    """Some 200 in all: opening and reading raise nothing. A file that is set aside is kept byte for byte,
    the new one is sound and can be written to, and nothing is told as saved that is not in it."""
    chance = random.Random(damage.__name__)
    for number in range(26):
        spoilt = bytearray(whole)
        damage(spoilt, chance)
        path = tmp_path / str(number) / "casebook.sqlite"
        put(path, bytes(spoilt))

        came = use(path)

        if isinstance(came, NotKept):  # what is left of its first bytes says that it is not ours to touch
            assert "newer edition" in came.why or "another program" in came.why
            assert path.read_bytes() == spoilt
            continue
        if came.told:
            assert aside_of(path).read_bytes() == spoilt
            saved = f"{rows(came.book, 'cases')} walks, {rows(came.book, 'moves')} answers"
            assert saved in came.told or came.told.endswith("Nothing in it could be read.")
        assert came.book.sound()
        assert not read_all(came.book)
        assert isinstance(came.book.begin(replace(LAMB, id="new"), replace(CASE, id="new")), Case)
        came.book.close()
        again = use(path)
        assert isinstance(again, Opened)
        assert again.told == "", "once mended, it stays mended"
        again.book.close()


@pytest.mark.parametrize(
    "spoilt", [b"", b"S\n", b"SQLite format 3\0", b"A shopping list\n" * 300, bytes(9000)]
)
def test_what_never_was_a_casebook(spoilt: bytes, path: Path) -> None:
    """An empty file becomes a casebook. Any other that is no database is kept aside, and a new one begun."""
    put(path, spoilt)

    came = use(path)

    assert isinstance(came, Opened)
    assert came.book.sound()
    assert bool(came.told) == bool(spoilt)
    if spoilt:
        assert aside_of(path).read_bytes() == spoilt
        assert "Nothing in it could be read." in came.told
    came.book.close()


@pytest.mark.parametrize("zeroed", [16, 100, PAGE])
def test_a_lost_beginning_loses_no_answer(zeroed: int, whole: bytes, path: Path) -> None:
    """With the first bytes or the whole first page gone, every row is saved all the same."""
    put(path, bytes(zeroed) + whole[zeroed:])

    came = use(path)

    assert isinstance(came, Opened)
    assert (
        f"Saved from it: 5 lambs, {CASES} walks, {CASES * MOVES} answers and acts, {CASES} notes."
        in came.told
    )
    assert came.book.count_open() == CASES
    came.book.close()


def test_the_front_of_a_file_cut_short_is_saved(whole: bytes, path: Path) -> None:
    """Half a file gives the rows of its half."""
    put(path, whole[: len(whole) // 2])

    came = use(path)

    assert isinstance(came, Opened)
    assert rows(came.book, "cases") > CASES // 3
    assert rows(came.book, "moves") > MOVES
    came.book.close()


@pytest.mark.parametrize("number", range(1, 60, 3))
def test_one_lost_page(number: int, whole: bytes, path: Path) -> None:
    """Any one page of a table but its root costs what was on it, and no answer that lay elsewhere."""
    pages = len(whole) // PAGE
    at = (number % (pages - 1) + 1) * PAGE
    put(path, whole[:at] + bytes(PAGE) + whole[at + PAGE :])

    came = use(path)

    assert isinstance(came, Opened)
    roots = root_pages(whole)
    if at // PAGE + 1 not in roots:
        assert rows(came.book, "moves") >= CASES * MOVES - PAGE // 40
        assert rows(came.book, "cases") == CASES
    assert not read_all(came.book)
    came.book.close()


def root_pages(whole: bytes) -> set[int]:
    database = sqlite3.connect(":memory:")
    database.deserialize(whole[:18] + b"\1\1" + whole[20:])  # 1 is no log (SQLite file format, 1.3.3)
    return {row[0] for row in database.execute("SELECT rootpage FROM sqlite_master")}


def test_answers_whose_case_was_lost_get_one(whole: bytes, path: Path) -> None:
    """When the page of the walks is gone, each walk's answers come back as a walk of a lamb without a card."""
    put(path, whole)
    with sqlite3.connect(path) as raw:
        page = raw.execute("SELECT rootpage FROM sqlite_master WHERE name = 'cases'").fetchone()[0]
    raw.close()
    spoilt = bytearray(path.read_bytes())
    spoilt[(page - 1) * PAGE : page * PAGE] = bytes(PAGE)
    path.write_bytes(spoilt)

    came = use(path)

    assert isinstance(came, Opened)
    cases = came.book.open_cases(99)
    assert isinstance(cases, tuple)
    assert {(lamb.name, len(case.moves), case.begun) for lamb, case in cases} == {(LOST, MOVES, NOW)}
    assert len(cases) == CASES
    came.book.close()


COLUMNS = (
    "lambs.id", "lambs.name", "lambs.added", "lambs.born", "lambs.born_guessed", "lambs.birth_type", "lambs.sex",
    "cases.id", "cases.lamb", "cases.begun", "cases.touched", "cases.edition", "cases.look_set",
    "cases.look_due", "cases.closed", "cases.version",
    "moves.case_id", "moves.place", "moves.name", "moves.value", "moves.said", "moves.at", "moves.dropped",
    "observations.id", "observations.lamb", "observations.kind", "observations.at", "observations.written",
    "observations.parts",
)  # fmt: skip


@pytest.mark.parametrize("column", COLUMNS)
def test_a_value_of_the_wrong_kind(column: str, whole: bytes, path: Path) -> None:
    """A value that SQLite takes for sound and no reader can use costs its own row at most, and is met once."""
    table, _, name = column.partition(".")
    for value in ("x'00ff'", "CAST(x'ff41' AS TEXT)", "'last night'", "9223372036854775807", "1e300", "NULL"):
        put(path, whole)
        with sqlite3.connect(path) as raw, suppress(sqlite3.IntegrityError):
            raw.execute(f"UPDATE {table} SET {name} = {value} WHERE rowid = 4")
        raw.close()

        came = use(path)

        assert isinstance(came, Opened)
        assert not read_all(came.book)
        assert rows(came.book, "moves") >= CASES * MOVES - 1
        case = came.book.case("case-7")
        assert isinstance(case, Case)
        kept = came.book.keep(replace(case, moves=(*case.moves, Answer("age", 2.0))), NOW)
        assert isinstance(kept, Case)
        came.book.close()
        again = use(path)
        assert isinstance(again, Opened)
        assert again.told == ""
        again.book.close()
        for each in path.parent.iterdir():
            each.unlink()


def test_a_full_disk_while_mending_changes_nothing(whole: bytes, path: Path) -> None:
    """When there is no room for a new casebook, the damaged one stays where it was, to be mended later."""
    spoilt = whole[: len(whole) // 2]
    put(path, spoilt)
    code = "import resource, signal, sys; from pathlib import Path\n"
    code += "from triage.casebook.opening import open_casebook\n"
    code += "signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
    code += "resource.setrlimit(resource.RLIMIT_FSIZE, (9000, 9000))\n"
    code += "print(open_casebook(Path(sys.argv[1])))"
    ran = subprocess.run(
        [sys.executable, "-c", code, path], capture_output=True, text=True, cwd=ROOT, check=True
    )

    assert ran.stdout.startswith("NotKept(")
    assert not [each.name for each in path.parent.iterdir() if "damaged" in each.name or ".new" in each.name]
    assert path.read_bytes() == spoilt
    came = use(path)
    assert isinstance(came, Opened)
    assert "Saved from it" in came.told
    came.book.close()


def test_two_copies_that_mend_at_once(whole: bytes, path: Path) -> None:
    """Of several copies that meet the damage together one mends, and all of them write to the new casebook."""
    put(path, whole[: len(whole) // 2])

    def begin(name: int) -> bool:
        came = open_casebook(path)
        assert isinstance(came, Opened), came
        kept = came.book.begin(replace(LAMB, id=f"new-{name}"), replace(CASE, id=f"new-{name}"))
        came.book.close()
        return isinstance(kept, Case)

    with ThreadPoolExecutor(4) as copies:
        assert all(copies.map(begin, range(4)))

    assert aside_of(path).read_bytes() == whole[: len(whole) // 2]
    book = opened_at(path).book
    assert all(isinstance(book.case(f"new-{name}"), Case) for name in range(4))
    book.close()


def test_a_damaged_log_gives_what_was_flushed(path: Path) -> None:
    """However the log beside the file is damaged, what the file itself holds is read, and nothing is raised."""
    filled(path)
    book = opened_at(path).book
    for number in range(10):
        book.begin(LAMB, replace(CASE, id=f"late-{number}"))
    whole = path.read_bytes()
    log = path.with_name(f"{path.name}-wal").read_bytes()
    book.close()
    chance = random.Random(9)
    spoilt = [log[: chance.randrange(len(log))] for _ in range(10)] + [
        bytes(len(log)),
        chance.randbytes(len(log)),
    ]
    for _ in range(20):
        at = chance.randrange(len(log))
        spoilt.append(log[:at] + chance.randbytes(8) + log[at + 8 :])
    for number, each in enumerate(spoilt):
        place = path.parent / str(number) / "casebook.sqlite"
        put(place, whole, each)

        came = use(place)

        assert isinstance(came, Opened)
        assert came.told == ""
        assert rows(came.book, "cases") >= CASES
        assert isinstance(came.book.begin(LAMB, replace(CASE, id="new")), Case)
        came.book.close()
