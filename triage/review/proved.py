"""Which guidance is known to have passed its check: by a digest of its files, with each statement's seal.

The shipped guide carries the file, written when its edition was cut. For anything else it is made when the
check has passed, and kept in the person's cache folder by the guidance and by the code that checked it.
"""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from pathlib import Path

from triage.guide.files import KNOWN
from triage.guide.find import Folder

NAME = "proved"
BEGINS = "passed-"
FAILED = "not-"
MOST = 8
"""Guides of which it is kept at once whether they passed."""


def found(digest: str, root: Folder, cache: Path | None) -> Path | None:
    """Return the file that says that guidance of this digest passed its check, or None."""
    places = [root / KNOWN / NAME] if isinstance(root, Path) else []
    places += [cache / _name(digest)] if cache else []
    return next((place for place in places if _begins(place, digest)), None)


def failed(digest: str, cache: Path) -> tuple[str, ...]:
    """Return what was kept of guidance that failed: the first mistake, then the topics; else nothing.

    Who writes there by himself could at worst close what is sound. What is not whole is not taken, as
    fewer topics would be closed.
    """
    first, *lines = _lines(cache / f"{FAILED}{_name(digest)}") or ("",)
    return tuple(lines) if first == _sum(lines) else ()


def keep_failed(digest: str, lines: tuple[str, ...], cache: Path) -> None:
    """Keep in the cache folder that guidance failed; OSError when it can't be written."""
    told = [" ".join(line.split()) for line in lines]
    _keep(cache, f"{FAILED}{_name(digest)}", "".join(f"{line}\n" for line in (_sum(told), *told)))


def _begins(place: Path, digest: str) -> bool:
    from triage.guide.kept import ours

    try:
        if not place.is_file():  # a pipe in its place may never be written to
            return False
        with place.open("rb") as file:
            seen = os.fstat(file.fileno())
            mine = place.name == NAME or ours(seen)
            return mine and file.read(len(digest) + 1) == f"{digest}\n".encode()
    except OSError:
        return False


def _name(digest: str) -> str:
    return f"{BEGINS}{hashlib.sha256(f'{digest} {_code()}'.encode()).hexdigest()[:40]}"


@lru_cache(maxsize=1)
def _code() -> str:
    """Return what tells one version of the checking code from another."""
    package = Path(__file__).resolve().parents[1]
    stamps = [f"{file.name} {file.stat().st_size} {file.stat().st_mtime_ns}" for file in _files(package)]
    return hashlib.sha256("\n".join(stamps).encode()).hexdigest()


def _files(package: Path) -> Iterator[Path]:
    for folder in ("", "guide", "amounts", "rules", "check", "check/search", "check/wording", "own"):
        yield from sorted((package / folder).glob("*.py"))


def text_of(digest: str, seals: Mapping[str, str]) -> str:
    """Return the file's text: the digest, then each seal with its statement, and a digest of all these."""
    lines = [f"{seal} {key}" for key, seal in seals.items()]
    return "".join(f"{line}\n" for line in (digest, *lines, _sum(lines)))


def keep(digest: str, seals: Mapping[str, str], cache: Path) -> Path:
    """Keep in the cache folder that guidance passed; OSError when it can't be written."""
    return _keep(cache, _name(digest), text_of(digest, seals))


def _keep(cache: Path, name: str, text: str) -> Path:
    from triage.whole_file import OWNER, write_whole

    cache.mkdir(mode=0o700, parents=True, exist_ok=True)
    write_whole(text, cache / name, OWNER)
    kept = sorted(cache.glob(f"*{BEGINS}*"), key=lambda each: each.stat().st_mtime)
    for old in kept[:-MOST]:
        old.unlink(missing_ok=True)
    return cache / name


def write_proved(root: Path, digest: str, seals: Mapping[str, str]) -> None:
    """Write into a guide's own folder that it passed; OSError when it can't be written."""
    from triage.whole_file import write_whole

    (root / KNOWN).mkdir(exist_ok=True)
    write_whole(text_of(digest, seals), root / KNOWN / NAME)


def seals_in(file: Path) -> dict[str, str]:
    """Return the seals that a file holds; none where it can't be read or is not whole."""
    lines = _lines(file)[1:]
    if not lines or lines[-1] != _sum(lines[:-1]):
        return {}
    return {key: seal for seal, _, key in (line.partition(" ") for line in lines[:-1]) if key}


def _lines(file: Path) -> list[str]:
    try:
        # A statement's name may hold what else counts as a line's end.
        return file.read_text(encoding="utf-8").removesuffix("\n").split("\n") if file.is_file() else []
    except (OSError, UnicodeDecodeError):
        return []


def _sum(lines: Sequence[str]) -> str:
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()
