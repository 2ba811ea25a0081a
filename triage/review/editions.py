"""What an edition said: the digest of each statement, kept when it was cut, so that no change goes unseen."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from triage.guide.files import CHANGES as FILE
from triage.guide.files import KNOWN
from triage.guide.find import Folder
from triage.problems import Place, Problem, nearest
from triage.review.changes import Changes
from triage.review.standing import counted
from triage.review.statements import Statement

NAME = "edition"


@dataclass(frozen=True)
class Cut:
    """An edition as it was cut: its name, and the digest of each of its statements."""

    edition: str
    own: Mapping[str, str]


@dataclass(frozen=True)
class Moved:
    """What is not as an edition had it: keys of statements."""

    changed: tuple[str, ...]
    added: tuple[str, ...]
    removed: tuple[str, ...]

    @property
    def all(self) -> tuple[str, ...]:
        """Every key, in reading order; what is gone comes last."""
        return (*self.changed, *self.added, *self.removed)


def read_cut(folder: Folder) -> Cut | None:
    """Return the last edition that was cut of a folder; None where none was, or it can't be read."""
    try:
        lines = (folder / KNOWN / NAME).read_text(encoding="utf-8").splitlines()
    except (OSError, UnicodeDecodeError):
        return None
    pairs = [line.split(" ", 1) for line in lines[1:] if " " in line]
    return Cut(lines[0], {key: own for own, key in pairs}) if lines else None


def cut_text(edition: str, statements: Iterable[Statement]) -> str:
    """Return an edition as its file holds it."""
    return "".join(f"{line}\n" for line in (edition, *(f"{each.own} {each.key}" for each in statements)))


def write_cut(folder: Path, edition: str, statements: Iterable[Statement]) -> None:
    """Keep an edition as cut; OSError when it can't be written."""
    from triage.whole_file import write_whole

    (folder / KNOWN).mkdir(exist_ok=True)
    write_whole(cut_text(edition, statements), folder / KNOWN / NAME)


def moved_since(cut: Cut, statements: Mapping[str, Statement]) -> Moved:
    """Return what is not as it was when the edition was cut."""
    changed = tuple(k for k, each in statements.items() if k in cut.own and cut.own[k] != each.own)
    added = tuple(key for key in statements if key not in cut.own)
    return Moved(changed, added, tuple(key for key in cut.own if key not in statements))


def unexplained(
    cut: Cut, statements: Mapping[str, Statement], edition: str, changes: Changes
) -> Iterator[Problem]:
    """Yield each change since the last edition that nobody gave a reason for, and each reason for nothing."""
    moved = moved_since(cut, statements)
    if moved.all and edition == cut.edition:
        what = (
            f"not as edition {cut.edition} had it: {counted(len(moved.all))}, first "
            f"'{moved.all[0]}'; name the next edition here, and say in {FILE} why each changed"
        )
        yield Problem(Place("guide.yaml"), what, "same-edition")
        return
    told = changes.why(edition)
    for key in moved.all:
        if key not in told:
            place = statements[key].place if key in statements else Place(FILE)
            how = "is gone" if key in moved.removed else "is new" if key in moved.added else "has changed"
            what = f"'{key}' {how} since edition {cut.edition}; say why in {FILE}, under \"{edition}\""
            yield Problem(place, what, "unexplained-change")
    for reason in changes.editions.get(edition, ()):
        for each in reason.of:
            if each.key not in moved.all and edition != cut.edition:
                known = each.key in statements
                why = "has not changed" if known else f"is no statement{nearest(each.key, statements)}"
                yield Problem(each.place, f"'{each.key}' {why}; take this reason away", "reason-for-nothing")
