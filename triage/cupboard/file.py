"""The shelf's file: read whatever lies there, and written whole with one line changed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from triage.cupboard.lots import Lot
from triage.cupboard.shelf import HEAD, Shelf, ShelfRead, changed, read_text, read_value
from triage.own_file import look, make_folder
from triage.problems import Place, Problem
from triage.whole_file import OWNER, write_whole

MORE = "+"
"""Behind a name: these packs come to those that are there."""


def read_shelf(path: Path, units: Mapping[str, str]) -> ShelfRead:
    """Read a shelf's file. A missing one is an empty shelf; never raises for what is there."""
    text = _text(path)
    if isinstance(text, Problem):
        return ShelfRead(Shelf(), (text,))
    return read_text(text, str(path), units)


def change_shelf(
    typed: Mapping[str, str], path: Path, units: Mapping[str, str], write: bool = True
) -> tuple[str, ...]:
    """Set lines in the file as it stands now, all of them or none. Returns what is wrong, in sentences.

    Without `write` it only tells what is wrong.
    """
    text = _text(path)
    if isinstance(text, Problem):
        return (f"Nothing was written to {path}, as what lies there would be lost: {text.what}.",)
    there = read_text(text, str(path), units)
    if any(problem.rule == "too-big" for problem in there.problems):
        return (f"Nothing was written to {path}: it has too many mistakes to be read to its end.",)
    wrong: list[str] = []
    text = text or HEAD
    for named, given in typed.items():
        name = named.removesuffix(MORE)
        came = read_value(name, given, units)
        if isinstance(came, str):
            wrong.append(f"{name}: {came}")
            continue
        if named.endswith(MORE) and name in there.unread:
            wrong.append(
                f"{name}: The line that is there can't be read. Set it as a whole, or mend it first."
            )
            continue
        before = there.shelf.lots.get(name, ()) if named.endswith(MORE) else ()
        value = str(came) if isinstance(came, int) else _packs((*before, *came))
        again = read_value(name, value, units)
        if isinstance(again, str):
            wrong.append(f"{name}: {again}")
        text = changed(text, name, value, keep=name in there.unread)
    return tuple(wrong) if wrong or not write else _write(text, path)


def _packs(lots: tuple[Lot, ...]) -> str:
    return "; ".join(map(str, lots)) or "0"


def _write(text: str, path: Path) -> tuple[str, ...]:
    try:
        make_folder(path.parent)
        write_whole(text, path, OWNER)
    except OSError as error:
        return (
            f"It could not be written to {path}: {error.strerror or error}. What was there is there still.",
        )
    return ()


def _text(path: Path) -> str | Problem:
    there = look(path)
    if isinstance(there, str):
        return Problem(Place(str(path)), there, "unreadable")
    try:
        return (there or b"").decode("utf-8-sig")
    except UnicodeDecodeError:
        return Problem(Place(str(path)), "it is not UTF-8 text; save it as UTF-8", "unreadable")
