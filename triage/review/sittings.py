"""A sitting: what somebody read on a day, what they signed, and what they said to it.

Each sitting is a file of its own in the folder `reviews`, so that signing again changes no older one. A seal
binds a signature to what a statement meant and said. The last line is a digest of the rest: who changes the
file by hand afterwards is told so, and it counts for nothing. That is against haste and mishap. It proves
nobody's identity; for that a signed commit or a signature on paper is the means.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from triage.guide.files import REVIEWS as HOUSE
from triage.guide.find import Folder
from triage.guide.leaves import OneOf, Plain
from triage.guide.shapes import Reading, Record, Shape, kind_of
from triage.guide.text import Fields, Written, read_text
from triage.problems import Place, Problem, errors

VET = "vet"
ROLES = (VET, "shepherd", "nurse", "teacher", "other")
"""As what somebody signs. Only a vet's signature counts as a review by a vet."""

KEY = re.compile(r"[a-z-]+/[^/\n]+")


@dataclass(frozen=True)
class Said:
    """What somebody said to a statement as it then was."""

    seal: str
    says: str
    place: Place = field(default=Place(""), compare=False)


@dataclass(frozen=True)
class Sitting:
    """What one person read and signed on one day. `signed` holds a seal for each statement."""

    by: str
    role: str
    on: str
    """The day, year first."""
    edition: str
    signed: Mapping[str, str] = field(default_factory=dict)
    objections: Mapping[str, Said] = field(default_factory=dict)
    notes: Mapping[str, Said] = field(default_factory=dict)
    licence: str = ""
    checked: str = ""
    place: Place = field(default=Place(""), compare=False)

    @property
    def is_vet(self) -> bool:
        """Whether it counts as a review by a vet."""
        return self.role == VET

    @property
    def who(self) -> str:
        """Who it was, as it is told: name and role."""
        return f"{self.by}, {self.role}"


@dataclass(frozen=True)
class _ByKey:
    """A map from the keys of statements to seals, or to what was said."""

    said: bool

    def read(self, value: Written, reading: Reading) -> Mapping[str, str] | Mapping[str, Said] | None:
        if not isinstance(value, Fields):
            reading.wrong(value.place, f"this is {kind_of(value)}; it should be a map from statements")
            return None
        for key, place in value.keys.items():
            if not KEY.fullmatch(key):
                reading.wrong(place, f"'{key}' is no statement; write kind/name, like number/severe-chill")
        if self.said:
            read = {key: _SAID.read(each, reading) for key, each in value.fields.items()}
            return {key: each for key, each in read.items() if each}
        seals = {key: Plain().read(each, reading) for key, each in value.fields.items()}
        return {key: each for key, each in seals.items() if each}


_SAID: Record[Said] = Record("word on a statement", Said, {"seal": Plain(), "says": Plain()})
_MUST: dict[str, Shape[object]] = {"by": Plain(), "role": OneOf(ROLES), "on": Plain(), "edition": Plain()}
SITTING: Record[Sitting] = Record(
    "sitting",
    Sitting,
    {**_MUST, "checked": Plain()},
    {"licence": Plain(), "signed": _ByKey(False), "objections": _ByKey(True), "notes": _ByKey(True)},
)


def read_sittings(folder: Folder) -> tuple[tuple[Sitting, ...], tuple[Problem, ...]]:
    """Return the sittings of a guide's folder, the oldest first, and what is wrong with other files there."""
    problems: list[Problem] = []
    sittings = []
    for name, file in _files(folder):
        sitting = _read(f"{HOUSE}/{name}", file, problems)
        if sitting:
            sittings.append(sitting)
    return tuple(sorted(sittings, key=lambda each: each.on)), tuple(problems)


def _files(folder: Folder) -> Iterator[tuple[str, Folder]]:
    house = folder / HOUSE
    if house.is_dir():
        for file in sorted(house.iterdir(), key=lambda each: _in_order(each.name)):
            if file.name.endswith((".yaml", ".yml")) and not file.name.startswith("."):
                yield file.name, file


def _in_order(name: str) -> tuple[str, int, str]:
    """Return what to sort a sitting's file by: of one day and person, the second comes after the first."""
    stem = name.rpartition(".")[0]
    again = re.fullmatch(r"(.+)-([1-9][0-9]{0,2})", stem)
    # The day itself ends in a number too: there is a name behind it.
    return (
        (again[1], int(again[2]), name) if again and len(again[1]) > len("2026-01-01-") else (stem, 1, name)
    )


def _read(name: str, file: Folder, problems: list[Problem]) -> Sitting | None:
    try:
        text = file.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        why = getattr(error, "strerror", "") or "it is not UTF-8 text"
        problems.append(Problem(Place(name), f"the file can't be read: {why}", "unreadable"))
        return None
    reading = Reading(problems)
    before = len(problems)
    written = read_text(text, name, problems)
    sitting = SITTING.read(written, reading) if written else None
    if sitting is None or errors(problems[before:]):
        return None
    if sitting.checked != digest_of(sitting):
        what = "this sitting was changed after it was signed, so it counts for nothing; sign again"
        problems.append(Problem(Place(name), what, "sitting-changed"))
        return None
    return sitting


def digest_of(sitting: Sitting) -> str:
    """Return the digest of everything that a sitting says."""
    digest = hashlib.sha256()
    for part in _parts(sitting):
        digest.update(part.encode("utf-8", errors="surrogatepass") + b"\0")
    return digest.hexdigest()[:20]


def _parts(sitting: Sitting) -> Iterator[str]:
    yield from (sitting.by, sitting.role, sitting.licence, sitting.on, sitting.edition)
    for key in sorted(sitting.signed):
        yield from ("signed", key, sitting.signed[key])
    for what, said in (("objection", sitting.objections), ("note", sitting.notes)):
        for key in sorted(said):
            yield from (what, key, said[key].seal, said[key].says)


def file_of(sitting: Sitting, folder: Path) -> Path:
    """Return where a sitting is written: a name that is still free, by its day and who it was."""
    plain = re.sub("[^a-z0-9]+", "-", sitting.by.casefold()).strip("-") or "somebody"
    house = folder / HOUSE
    names = [f"{sitting.on}-{plain}", *(f"{sitting.on}-{plain}-{number}" for number in range(2, 1000))]
    return next(each for name in names if not (each := house / f"{name}.yaml").exists())


def text_of(sitting: Sitting) -> str:
    """Return a sitting as its file holds it; read again it is the same."""
    lines = [
        "# Written by `triage sign`. Sign again rather than change it: a changed sitting counts for nothing.",
        f"by: {_quoted(sitting.by)}",
        f"role: {sitting.role}",
        *([f"licence: {_quoted(sitting.licence)}"] if sitting.licence else []),
        f"on: {sitting.on}",
        f"edition: {_quoted(sitting.edition)}",
    ]
    if sitting.signed:
        lines += ["signed:", *(f"  {_quoted(key)}: {seal}" for key, seal in sitting.signed.items())]
    for what, said in (("objections", sitting.objections), ("notes", sitting.notes)):
        if said:
            each = (
                f"  {_quoted(k)}: {{seal: {of.seal}, says: {_quoted(of.says)}}}" for k, of in said.items()
            )
            lines += [f"{what}:", *each]
    return "\n".join((*lines, f"checked: {digest_of(sitting)}", ""))


def _quoted(text: str) -> str:
    """Return a text as YAML takes it whatever it holds, on one line."""
    import json

    plain = re.fullmatch(r"[A-Za-z0-9][A-Za-z0-9/_.-]*", text)
    return text if plain else json.dumps(" ".join(text.split()), ensure_ascii=False)
