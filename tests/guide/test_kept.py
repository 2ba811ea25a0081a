"""The guide kept as it was read: never of another guide, never half, never somebody else's, never in the way."""

from __future__ import annotations

import os
import pickle
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

import pytest

from tests.conftest import write_small
from triage.guide import kept
from triage.guide.kept import read_kept
from triage.guide.model import Read
from triage.guide.read import read_guide


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return write_small(tmp_path / "guide")


@pytest.fixture
def cache(tmp_path: Path) -> Path:
    return tmp_path / "cache"


@pytest.fixture
def count(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """How often a guide was read from its files."""
    read: list[int] = []

    def counted(*arguments: object, **named: object) -> Read:
        read.append(1)
        return read_guide(*arguments, **named)  # type: ignore[arg-type]

    monkeypatch.setattr("triage.guide.read.read_guide", counted)
    return read


def test_it_is_read_once(root: Path, cache: Path, count: list[int]) -> None:
    """The second opening reads nothing anew, and has the same guide, places and all."""
    first = read_kept(root, cache, {"rearing", "cupboard"})
    second = read_kept(root, cache, {"rearing", "cupboard"})

    assert len(count) == 1
    assert second == first == read_guide(root, {"rearing", "cupboard"})
    assert first.guide is not None
    assert second.guide is not None
    for name, node in first.guide.nodes.items():
        assert second.guide.nodes[name].place == node.place


def test_a_changed_guide_is_read_anew(root: Path, cache: Path, count: list[int]) -> None:
    """One letter changed, also with size and time as before, and what was kept is not taken."""
    read_kept(root, cache)
    file = root / "guide.yaml"
    seen, text = file.stat(), file.read_text(encoding="utf-8")
    assert "Phone" in text
    file.write_text(text.replace("Phone", "Fhone"), encoding="utf-8")
    os.utime(file, ns=(seen.st_atime_ns, seen.st_mtime_ns))

    assert read_kept(root, cache) == read_guide(root, frozenset())
    assert len(count) == 2


def test_a_file_more_or_less_is_another_guide(root: Path, cache: Path, count: list[int]) -> None:
    """A file that came or went is noticed."""
    read_kept(root, cache)
    (root / "topics" / "stray.yaml").write_text("topic: stray\n", encoding="utf-8")

    assert read_kept(root, cache).problems
    assert len(count) == 2


def test_what_is_asked_for_is_kept_apart(root: Path, cache: Path, count: list[int]) -> None:
    """A walk's guide is not taken for one with its cupboard."""
    read_kept(root, cache)
    read_kept(root, cache, {"cupboard"})
    read_kept(root, cache, {"rearing"})

    assert len(count) == 3


def damaged(file: Path) -> None:
    written = bytearray(file.read_bytes())
    written[len(written) // 2] ^= 1
    file.write_bytes(written)


def halved(file: Path) -> None:
    file.write_bytes(file.read_bytes()[: file.stat().st_size // 2])


def emptied(file: Path) -> None:
    file.write_bytes(b"")


def of_something_else(file: Path) -> None:
    payload = pickle.dumps({"guide": None})
    file.write_bytes(sha256(payload).digest() + payload)


def a_link(file: Path) -> None:
    elsewhere = file.with_name("elsewhere")
    file.rename(elsewhere)
    file.symlink_to(elsewhere)


def for_all_to_write(file: Path) -> None:
    file.chmod(0o666)


def a_folder(file: Path) -> None:
    file.unlink()
    file.mkdir()


def a_pipe(file: Path) -> None:
    file.unlink()
    os.mkfifo(file)


@pytest.mark.parametrize(
    "spoil", [damaged, halved, emptied, of_something_else, a_link, for_all_to_write, a_folder, a_pipe]
)
def test_what_is_not_whole_or_not_ours_is_not_taken(
    root: Path, cache: Path, count: list[int], spoil: Callable[[Path], None]
) -> None:
    """A damaged, half, foreign or unsafe file is passed over; the guide is read, and nobody is troubled."""
    read_kept(root, cache)
    [file] = cache.iterdir()
    spoil(file)

    assert read_kept(root, cache) == read_guide(root, frozenset())
    assert len(count) == 2


def test_a_guide_with_mistakes_is_not_kept(root: Path, cache: Path) -> None:
    """What has problems is told each time."""
    (root / "numbers.yaml").write_text("nonsense: [", encoding="utf-8")

    assert read_kept(root, cache).problems
    assert not cache.exists() or not list(cache.iterdir())


def test_no_room_or_no_place_is_no_trouble(root: Path, tmp_path: Path) -> None:
    """Where nothing can be written the guide is read each time."""
    blocked = tmp_path / "blocked"
    blocked.write_text("a file", encoding="utf-8")

    assert read_kept(root, blocked / "cache").guide
    assert read_kept(root, None).guide


def test_only_few_are_kept_and_nobody_else_can_read_them(root: Path, cache: Path) -> None:
    """Older guides go, and the file is the person's own."""
    for edition in range(7):
        text = (root / "guide.yaml").read_text(encoding="utf-8")
        (root / "guide.yaml").write_text(f"{text}# {edition}\n", encoding="utf-8")
        read_kept(root, cache)

    files = list(cache.iterdir())
    assert len(files) == kept.MOST
    assert all(file.stat().st_mode & 0o077 == 0 for file in files)


def test_nothing_is_written_where_others_may_write(root: Path, cache: Path, tmp_path: Path) -> None:
    """In a folder that is not the person's alone a link could lead to any file of theirs."""
    read_kept(root, cache)
    [file] = cache.iterdir()
    precious = tmp_path / "precious"
    precious.write_text("mine", encoding="utf-8")
    file.unlink()
    file.symlink_to(precious)
    cache.chmod(0o777)

    assert read_kept(root, cache).guide
    assert precious.read_text(encoding="utf-8") == "mine"
