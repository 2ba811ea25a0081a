"""The file of a holding: plain YAML that a person can edit; a wrong line never costs the right ones."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from triage.holding.holding import HeldRead, Holding
from triage.own_file import look, make_folder
from triage.problems import Place, Problem
from triage.units import System
from triage.whole_file import OWNER, write_bytes_whole, write_whole

MOST_ASIDE = 99


def read_holding(path: Path) -> HeldRead:
    """Read a holding's file. A missing one is an empty holding; never raises for what is there."""
    there = look(path)
    if isinstance(there, str):
        return _unreadable(path, there)
    return _held(there or b"", path)


def write_holding(holding: Holding, path: Path) -> str:
    """Write a holding whole or not at all. Returns what went wrong as a sentence, or an empty text.

    Where the file held more than a holding can, that is kept beside it first: see `aside_for`.
    """
    from triage.holding.writing import as_text

    there = look(path)
    if isinstance(there, str):
        return f"Nothing was written to {path}, as what lies there would be lost: {there}."
    aside = _aside(path, there)
    try:
        if aside and there:
            write_bytes_whole(there, aside, OWNER)
        make_folder(path.parent)
        write_whole(as_text(holding), path, OWNER)
    except OSError as error:
        return f"It could not be written to {path}: {error.strerror or error}. What was there is there still."
    return ""


def change_holding(typed: Mapping[str, str], path: Path, system: System) -> Holding | str:
    """Change a few fields in the file as it stands now, so that what was changed there meanwhile stays."""
    from triage.holding.fields import with_text

    holding = read_holding(path).holding
    for name, text in typed.items():
        came = with_text(holding, name, text, system)
        if isinstance(came, str):
            return f"{name}: {came}"
        holding = came
    return write_holding(holding, path) or holding


def aside_for(path: Path) -> Path | None:
    """Return where the file as it is will be kept when it is written anew; None when nothing would be lost.

    Lost would be lines that can't be used, and comments of the person's own.
    """
    there = look(path)
    return None if isinstance(there, str) else _aside(path, there)


def _held(raw: bytes, path: Path) -> HeldRead:
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        return _unreadable(path, "it is not UTF-8 text; save it as UTF-8")
    if all(not line.strip() or line.lstrip().startswith("#") for line in text.splitlines()):
        return HeldRead(Holding())
    from triage.holding.filling import fill

    return fill(text, str(path))


def _unreadable(path: Path, why: str) -> HeldRead:
    return HeldRead(Holding(), (Problem(Place(str(path)), why, "unreadable"),))


def _aside(path: Path, there: bytes | None) -> Path | None:
    if not there or not _says_more(there, path):
        return None
    for number in range(1, MOST_ASIDE):
        aside = path.with_name(f"{path.name}.before{f'-{number}' if number > 1 else ''}")
        if look(aside) in (None, there):
            break
    return aside


def _says_more(raw: bytes, path: Path) -> bool:
    """Whether a file holds lines that can't be used, or comments of the person's own."""
    from triage.holding.writing import as_text

    held = _held(raw, path)
    if held.problems:
        return True
    own = set(as_text(held.holding).splitlines())
    return any("#" in line and line not in own for line in raw.decode("utf-8-sig").splitlines())
