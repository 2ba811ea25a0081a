"""Which fields of a statement are other than before, where no text of it tells that."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields, is_dataclass
from enum import Enum

LONGEST = 80
"""Signs of a value that is told in full; of a longer one only its field is named."""


@dataclass(frozen=True)
class Part:
    """A field that changed, by its name in the files; `old` and `new` are empty where they are too long."""

    field: str
    old: str
    new: str


def parts_changed(old: object, new: object) -> tuple[Part, ...]:
    """Return the fields in which two values of one kind differ; none where they are of different kinds."""
    if type(old) is not type(new) or not is_dataclass(old):
        return ()
    pairs = [
        (each.name, getattr(old, each.name), getattr(new, each.name)) for each in fields(old) if each.compare
    ]
    return tuple(_part(name.rstrip("_"), was, now) for name, was, now in pairs if was != now)


def _part(name: str, was: object, now: object) -> Part:
    before, after = _told(was), _told(now)
    if before is None or after is None or max(len(before), len(after)) > LONGEST:
        return Part(name, "", "")
    return Part(name, before or "nothing", after or "nothing")


def _told(value: object) -> str | None:
    """Return a value as its file has it, about; None where it has parts of its own."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if value is None:
        return ""
    if isinstance(value, Enum):
        return str(value.value)
    if isinstance(value, str | int | float):
        return f"{value:g}" if isinstance(value, float) else str(value)
    if isinstance(value, tuple | frozenset):
        told = [_told(each) for each in (sorted(value) if isinstance(value, frozenset) else value)]
        return None if None in told else ", ".join(filter(None, told))
    if isinstance(value, Mapping):
        pairs = {name: _told(each) for name, each in value.items()}
        return (
            None if None in pairs.values() else ", ".join(f"{name}: {each}" for name, each in pairs.items())
        )
    return None
