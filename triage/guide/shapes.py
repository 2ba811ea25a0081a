"""Shapes: what a written value must look like to become a typed one.

A shape reads a `Written` value and either returns it typed, or adds every mistake to the reading
and returns None, so that one run names them all. Names that must exist elsewhere are only noted
here; they are looked up once the whole guide has been read. The shapes here hold others; those that
read a single text or two numbers are in `leaves.py`.
"""

from __future__ import annotations

import keyword
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Generic, NamedTuple, Protocol, TypeVar

from triage.guide.limits import Limit
from triage.guide.text import Fields, Items, Text, Written
from triage.problems import Place, Problem, nearest

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)

NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


class Mention(NamedTuple):
    """A name used at a place, which must exist among one of these kinds."""

    kinds: tuple[str, ...]
    name: str
    place: Place


@dataclass
class Reading:
    """What one reading of a guide has found so far."""

    problems: list[Problem] = field(default_factory=list)
    mentions: list[Mention] = field(default_factory=list)
    broken: set[str] = field(default_factory=set)
    """Names whose own entry has a mistake: it is told there, and not at each use of the name."""
    unread: set[str] = field(default_factory=set)
    """Kinds of names defined in a file that could not be read: what is missing is not known."""
    proof: bool = True
    """Whether what only the proof goes by is read too."""

    def wrong(self, place: Place, what: str, rule: str = "shape") -> None:
        """Add a mistake."""
        self.problems.append(Problem(place, what, rule))


class Shape(Protocol[T_co]):
    """Anything that can read a written value into a T."""

    def read(self, value: Written, reading: Reading) -> T_co | None:
        """Return the typed value, or None with the mistakes noted."""


def kind_of(value: Written) -> str:
    """Return what a written value is, in a word for messages."""
    return {Text: "text", Items: "a list", Fields: "a map"}[type(value)]


@dataclass(frozen=True)
class ListOf(Generic[T]):
    """A list of one shape; with `or_one`, a single value counts as a list of one."""

    each: Shape[T]
    or_one: bool = False

    def read(self, value: Written, reading: Reading) -> tuple[T, ...] | None:
        """Return the items that could be read, as a tuple."""
        if self.or_one and not isinstance(value, Items):
            value = Items((value,), value.place)
        if not isinstance(value, Items):
            reading.wrong(value.place, f"this is {kind_of(value)}; it should be a list, each line '- ...'")
            return None
        if not value.items:
            reading.wrong(value.place, "this list is empty; fill it, or leave the line out")
            return None
        read = [self.each.read(item, reading) for item in value.items]
        return tuple(item for item in read if item is not None)


@dataclass(frozen=True)
class MapOf(Generic[T]):
    """A map from names to one shape; `ref` says what the names must be, if they exist elsewhere."""

    each: Shape[T]
    ref: tuple[str, ...] = ()

    def read(self, value: Written, reading: Reading) -> Mapping[str, T] | None:
        """Return the entries that could be read."""
        if not isinstance(value, Fields):
            reading.wrong(
                value.place, f"this is {kind_of(value)}; it should be a map, with lines 'name: ...'"
            )
            return None
        if not value.fields:
            reading.wrong(value.place, "this map is empty; fill it, or leave the line out")
            return None
        entries: dict[str, T] = {}
        for name, written in value.fields.items():
            place = value.keys[name]
            if self.ref:
                reading.mentions.append(Mention(self.ref, name, place))
            elif not NAME.fullmatch(name):
                reading.wrong(
                    place, f"'{name}' should be lower-case letters, digits and single hyphens", "name"
                )
            read = self.each.read(written, reading)
            if read is not None:
                entries[name] = read
        return entries


@dataclass(frozen=True)
class Record(Generic[T]):
    """A map with known fields, made into a frozen value; unknown fields are mistakes."""

    what: str
    make: Callable[..., T]
    must: Mapping[str, Shape[Any]]
    may: Mapping[str, Shape[Any]] = field(default_factory=dict)
    called: Mapping[str, str] = field(default_factory=dict)
    """Fields whose attribute has another name than the one written."""
    limits: tuple[Limit, ...] = ()
    """What the fields ask of each other; the reader looks it up when the whole guide has been read."""
    proof_only: frozenset[str] = frozenset()
    """Fields that only the proof goes by, so that a walk need not wait for them."""

    @cached_property
    def shapes(self) -> dict[str, tuple[Shape[Any], str]]:
        """Each field's shape, and the attribute it becomes."""
        return {
            name: (shape, self.called.get(name) or attribute(name))
            for name, shape in {**self.must, **self.may}.items()
        }

    def read(self, value: Written, reading: Reading) -> T | None:
        """Return the value made from its fields, or None when any of them is wrong."""
        return self.read_with(value, reading, {})

    def read_with(self, value: Written, reading: Reading, given: Mapping[str, Any]) -> T | None:
        """Read as `read` does, adding fields that come from elsewhere, such as a name."""
        if not isinstance(value, Fields):
            reading.wrong(
                value.place, f"this is {kind_of(value)}; it should be a {self.what}, a map of fields"
            )
            return None
        sound = True
        made: dict[str, Any] = {"place": value.place}
        shapes = self.shapes
        for name, written in value.fields.items():
            if name not in shapes:
                what = f"a {self.what} has no field '{name}'{nearest(name, shapes) or self._fields()}"
                reading.wrong(value.keys[name], what, "no-such-field")
                sound = False
                continue
            if name in self.proof_only and not reading.proof:
                continue
            shape, called = shapes[name]
            made[called] = read = shape.read(written, reading)
            sound = sound and read is not None
        for name in self.must:
            if name not in value.fields:
                reading.wrong(value.place, f"this {self.what} lacks '{name}'", "missing-field")
                sound = False
        made.update(given)
        return self.make(**made) if sound else None

    def _fields(self) -> str:
        return f"; it may have {', '.join((*self.must, *self.may))}"


def attribute(name: str) -> str:
    """Return a field's name as Python writes it: `call-vet` is call_vet, `else` is else_."""
    plain = name.replace("-", "_")
    return f"{plain}_" if keyword.iskeyword(plain) or plain in {"with", "in", "is", "from", "for"} else plain
