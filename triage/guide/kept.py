"""The shipped guide as it was read once, kept so that the next opening need not read it again.

What is kept is named by a hash of every file of the guide and of the code that reads it, so it can be
of no other guide than the one on the disk now; and it begins with a hash of itself, so a half written or
damaged file is not taken. Whatever is wrong with it, the guide is read from its files, as if there were none.
It lies in the person's own cache folder, is theirs alone, and may be thrown away at any time.
"""

from __future__ import annotations

import hashlib
import os
import pickle
import stat
import sys
from collections.abc import Iterator
from collections.abc import Set as AbstractSet
from contextlib import suppress
from pathlib import Path

from triage.guide.files import digest_of
from triage.guide.model import Read
from triage.guide.resting import collector_at_rest
from triage.guide.wanted import Part

BEGINS = "guide-"
ENDS = ".kept"
_DIGEST = hashlib.sha256().digest_size
_OTHERS_MAY_WRITE = stat.S_IWGRP | stat.S_IWOTH


def read_kept(  # noqa: PLR0913, PLR0917 - each of them tells one kept guide from another
    root: Path,
    cache: Path | None,
    also: AbstractSet[Part] = frozenset(),
    own: Path | None = None,
    digest: str | None = None,
    other_words: bool = True,
) -> Read:
    """Return the guide of a folder for a walk, with what else is asked for; kept if it was read before.

    `cache` None keeps nothing. `own` is the folder that fits it to a holding; `digest` is that of all the
    guidance, where it is known already. Without `other_words` those of another language are left out.
    """
    plain = "" if other_words else " in the words that were checked"
    name = None if cache is None else _name(digest or digest_of(root, own), f"{sorted(also)}{plain}")
    kept = _taken(cache / name) if cache and name else None
    if kept is not None:
        return kept
    from triage.guide.read import read_guide  # none of it is needed where the guide is kept

    read = read_guide(root, also, own)
    if own:
        read = in_other_words(read, own, other_words)
    if cache and name and read.guide and not read.problems:
        with suppress(OSError):
            _keep(read, cache / name)
    return read


def in_other_words(read: Read, own: Path, another_language: bool = True) -> Read:
    """Return what was read with the words of an own folder."""
    from dataclasses import replace

    from triage.guide.rewording import read_words, reworded

    words, _ = read_words(own)
    if read.guide is None or words is None or (words.language and not another_language):
        return read
    return replace(read, guide=reworded(read.guide, words))


def _name(guidance: str | None, also: str) -> str | None:
    """Return the name of what is kept, by all that it hangs on; None where a file can't be read."""
    if guidance is None:
        return None
    digest = hashlib.sha256(f"{sys.version} {also} {guidance}".encode())
    try:
        for code in _code():
            seen = code.stat()
            digest.update(f"{code.name} {seen.st_size} {seen.st_mtime_ns}".encode())
    except OSError:
        return None
    return f"{BEGINS}{digest.hexdigest()[:40]}{ENDS}"


def _code() -> Iterator[Path]:
    """Yield the files of the code by which a guide is read, in a settled order."""
    package = Path(__file__).resolve().parents[1]
    for folder in (package, package / "guide", package / "amounts"):
        yield from sorted(folder.glob("*.py"))


def _taken(file: Path) -> Read | None:
    """Return what a file holds, None where it is not there, not whole, or may be somebody else's."""
    try:
        # Without waiting: a pipe that lies in its place may never be written to.
        opened = os.open(file, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))
        with os.fdopen(opened, "rb") as kept:
            seen = os.fstat(kept.fileno())
            if not stat.S_ISREG(seen.st_mode) or not ours(seen):
                return None
            written = kept.read()
        if hashlib.sha256(written[_DIGEST:]).digest() != written[:_DIGEST]:
            return None
        with collector_at_rest():
            read = pickle.loads(written[_DIGEST:])  # our own file, which nobody else may write
    except Exception:  # whatever it is: the guide is read from its files
        return None
    return read if isinstance(read, Read) and read.guide else None


def ours(seen: os.stat_result) -> bool:
    """Whether a file is this person's, and nobody else may write it."""
    owned = not hasattr(os, "getuid") or seen.st_uid == os.getuid()
    return owned and not seen.st_mode & _OTHERS_MAY_WRITE


def _keep(read: Read, file: Path) -> None:
    """Write what was read, whole or not at all, and throw away what was kept of an older guide."""
    from triage.whole_file import OWNER, write_bytes_whole

    payload = pickle.dumps(read, pickle.HIGHEST_PROTOCOL)
    file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    if not ours(file.parent.stat()):  # who else may write there could lay a link to any file of the person's
        return
    if file.exists() and not file.is_file():  # a pipe would be written to, once somebody reads it
        return
    write_bytes_whole(hashlib.sha256(payload).digest() + payload, file, OWNER)
    kept = sorted(file.parent.glob(f"{BEGINS}*{ENDS}"), key=lambda each: each.stat().st_mtime)
    for old in kept[:-MOST]:
        old.unlink(missing_ok=True)


MOST = 6
"""Guides kept at once: for a walk, with a raising plan, with the cupboard, with both, practice, the book."""
