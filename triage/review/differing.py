"""What is other in a statement than it was, part by part, in lines that a vet can read."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from typing import Any

PASSED_OVER = ("place", "name", "topic")


def differing(before: Any, now: Any) -> list[str]:
    """Return a line for each part of a value that is gone, new or another one. Both are of the same kind."""
    if before is None:
        return ["This is new; the shipped guide has nothing of it."]
    old, new = dict(_parts(before)), dict(_parts(now))
    other = (name for name in old if name in new and old[name] != new[name])
    lines = [f"{name}: was {old[name]}, is {new[name]}." for name in other]
    lines += [f"{name}: no longer {said}." for name, said in old.items() if name not in new]
    return lines + [f"{name}: new is {said}." for name, said in new.items() if name not in old]


def _parts(value: Any, name: str = "") -> Iterator[tuple[str, str]]:
    """Yield each plain part of a value with its name, as deep as it goes."""
    if is_dataclass(value):
        for each in fields(value):
            if each.name not in PASSED_OVER:
                called = each.name.strip("_").replace("_", " ")
                yield from _parts(getattr(value, each.name), f"{name} {called}".strip())
    elif isinstance(value, Mapping):
        for key, each in value.items():
            yield from _parts(each, f"{name} {key}")
    elif isinstance(value, tuple | list):
        for number, each in enumerate(value, 1):
            yield from _parts(each, f"{name} {number}")
    elif value not in ("", None, False):
        yield name, f"'{value}'" if isinstance(value, str) else str(value)
