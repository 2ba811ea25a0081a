"""The names that a knowledge folder defines, even while its entries are half written."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from triage.amounts import AMOUNTS
from triage.guide.files import list_files
from triage.guide.find import Folder
from triage.guide.model import NOT_PUBLISHED
from triage.guide.read import read_file
from triage.guide.shapes import Reading
from triage.guide.text import Fields, Items, Text, Written
from triage.problems import Problem, errors

_ENTRIES = {
    "findings": "finding",
    "numbers.yaml": "number",
    "sources.yaml": "source",
    "practice": "case",
    "rules.yaml": "rule",
}
_OWN = {"topics": "topic", "how-to": "how-to"}
"""The kinds of names by the file or folder that defines them: under each entry, or as a file's own."""


@dataclass(frozen=True)
class Known:
    """The names of each kind, and the files that could not be read for them."""

    names: Mapping[str, frozenset[str]]
    problems: tuple[Problem, ...] = ()
    unreadable: str = ""


def names_in(folder: Folder) -> Known:
    """Gather the names. An entry with a mistake counts, as it is told elsewhere than at each use."""
    files = list_files(folder)
    if isinstance(files, str):
        return Known({}, unreadable=files)
    names: dict[str, set[str]] = {
        kind: set()
        for kind in ("finding", "node", "topic", "number", "how-to", "urgency", "act tag", "case", "rule")
    }
    names |= {"source": set(NOT_PUBLISHED), "amount": set(AMOUNTS)}
    reading = Reading()
    for name, file in files:
        written = read_file(name, file, reading)
        if written:
            _gather(name, written, names)
    known = {kind: frozenset(each) for kind, each in names.items()}
    return Known(known, tuple(sorted(errors(reading.problems))))


def _gather(file: str, written: Fields, names: dict[str, set[str]]) -> None:
    where = file.partition("/")[0]
    if where in _ENTRIES:
        names[_ENTRIES[where]].update(written.fields)
    elif where in _OWN:
        own = written.fields.get(_OWN[where])
        names[_OWN[where]] |= {own.text} if isinstance(own, Text) else set()
        names["node"] |= _keys(written, "nodes") if where == "topics" else set()
    elif where == "guide.yaml":
        names["act tag"] |= _keys(written, "act_tags")
        names["urgency"] |= _urgencies(written.fields.get("urgencies"))


def _keys(written: Fields, field: str) -> set[str]:
    value = written.fields.get(field)
    return set(value.fields) if isinstance(value, Fields) else set()


def _urgencies(value: Written | None) -> set[str]:
    items = value.items if isinstance(value, Items) else ()
    named = (item.fields.get("urgency") for item in items if isinstance(item, Fields))
    return {name.text for name in named if isinstance(name, Text)}
