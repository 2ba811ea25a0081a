"""Why the guidance changed: the reason that the editor of an edition gives for each statement."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from triage.guide.files import CHANGES as FILE
from triage.guide.find import Folder
from triage.guide.leaves import Plain
from triage.guide.shapes import ListOf, Reading, Record, kind_of
from triage.guide.text import Fields, Text, Written, read_text
from triage.problems import Place, Problem


@dataclass(frozen=True)
class Key:
    """The key of a statement, and where it was written."""

    key: str
    place: Place


@dataclass(frozen=True)
class Reason:
    """Why some statements are not as the last edition had them."""

    of: tuple[Key, ...]
    why: str
    place: Place = field(default=Place(""), compare=False)


@dataclass(frozen=True)
class Changes:
    """The reasons of each edition, and what is wrong with the file."""

    editions: Mapping[str, tuple[Reason, ...]] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()

    def why(self, edition: str) -> dict[str, str]:
        """Return the reason for each statement that an edition names."""
        found: dict[str, list[str]] = {}
        for reason in self.editions.get(edition, ()):
            for each in reason.of:
                found.setdefault(each.key, []).append(reason.why)
        return {key: " ".join(whys) for key, whys in found.items()}


@dataclass(frozen=True)
class _AKey:
    def read(self, value: Written, reading: Reading) -> Key | None:
        if isinstance(value, Text) and "/" in value.text.strip("/"):
            return Key(value.text.strip(), value.place)
        reading.wrong(value.place, "write a statement as kind/name, like number/severe-chill")
        return None


REASON: Record[Reason] = Record("reason", Reason, {"of": ListOf(_AKey(), or_one=True), "why": Plain()})
_REASONS = ListOf(REASON)


def read_changes(folder: Folder) -> Changes:
    """Read the reasons of a guide's folder; a folder without the file has none."""
    file = folder / FILE
    if not file.is_file():
        return Changes()
    try:
        text = file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", "") or "it is not UTF-8 text"
        return Changes({}, (Problem(Place(FILE), f"the file can't be read: {why}", "unreadable"),))
    reading = Reading()
    written = read_text(text, FILE, reading.problems)
    return Changes(_editions(written, reading) if written else {}, tuple(sorted(reading.problems)))


def _editions(written: Fields, reading: Reading) -> dict[str, tuple[Reason, ...]]:
    found: dict[str, tuple[Reason, ...]] = {}
    for edition, value in written.fields.items():
        if isinstance(value, Text):
            reading.wrong(value.place, f"this is {kind_of(value)}; it should be a list of reasons")
            continue
        found[edition] = _REASONS.read(value, reading) or ()
    return found


def reasons_of(folder: Folder, edition: str = "") -> dict[str, str]:
    """Return the reason for each statement that changed, of one edition or, without a name, of all."""
    changes = read_changes(folder)
    found: dict[str, str] = {}
    for each in [edition] if edition else changes.editions:
        found |= changes.why(each)
    return found
