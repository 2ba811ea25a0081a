"""Reading a moved file strictly: everything in it is right, or nothing of it is taken."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, NoReturn

from triage.casebook.moves import LARGEST
from triage.casebook.rows import Case, Lamb, Look, Observation, Part
from triage.facts import UNSURE
from triage.moving.export import VERSION
from triage.walk import Answer, Done, Move

BIGGEST = 20_000_000
"""Bytes. A lamb of a long spring comes to a fiftieth of that."""

LONGEST = 100_000
LONGEST_NAME = 200
EARLIEST, LATEST = 1900, 9000
"""Years between which a time can be told; a clock that was never set still shows 1970."""

SEXES = ("", "ewe", "ram", "wether")


@dataclass(frozen=True)
class Refused:
    """Why a file can't be taken, with where in it, as `cases[2].begun: this should be a time`."""

    why: str


@dataclass(frozen=True)
class Moved:
    """A lamb with its cases and observations, as read from a file."""

    lamb: Lamb
    cases: tuple[Case, ...]
    observations: tuple[Observation, ...]


def read_moved(written: bytes) -> Moved | Refused:
    """Read a moved file. Refused when anything in it is not as it should be."""
    if len(written) > BIGGEST:
        return Refused(f"it is larger than {BIGGEST // 1_000_000} MB")
    try:
        # A byte order mark is what some editors put before a text that they save.
        return _whole(_parsed(written.decode("utf-8-sig")))
    except UnicodeDecodeError as error:
        return Refused("it is cut short" if "end of data" in error.reason else "it is not UTF-8 text")
    except _Wrong as wrong:
        return Refused(str(wrong))


class _Wrong(Exception):
    """The first thing in a file that is not as it should be."""


class _Twice(dict[str, Any]):
    """A map in which a field stands twice, until it is known where that is."""

    name = ""


def _parsed(text: str) -> Any:
    try:
        return json.loads(text, object_pairs_hook=_once, parse_constant=_no_constant)
    except json.JSONDecodeError as error:
        place = f"line {error.lineno}, column {error.colno}"
        raise _Wrong(f"{place}: this is not JSON; the file may be cut short") from None
    except RecursionError:
        raise _Wrong("it is nested too deeply") from None
    except ValueError:  # Python reads no whole number of more than some thousand digits
        raise _Wrong("a number in it is out of all bounds") from None


def _whole(data: Any) -> Moved:
    if not isinstance(data, dict) or "moved" not in data:
        raise _Wrong("it is not a file that this program exported")
    whole = _At("", data)
    version = data["moved"]
    if type(version) is int and version > VERSION:
        raise _Wrong(f"it is of version {version}, made by a newer edition; this one reads version {VERSION}")
    if type(version) is not int or version != VERSION:
        whole["moved"].wrong(f"this should be {VERSION}")
    whole.only("moved", "edition", "written", "lamb", "cases", "observations")
    whole["edition"].text(LONGEST_NAME)
    whole["written"].time()
    lamb = _lamb(whole["lamb"])
    cases = tuple(_case(each, lamb.id) for each in whole["cases"].items())
    seen = tuple(_observation(each, lamb.id) for each in whole["observations"].items())
    _different((case.id for case in cases), "cases")
    _different((each.id for each in seen), "observations")
    return Moved(lamb, cases, seen)


@dataclass(frozen=True)
class _At:
    """A value in the file, and the way to it."""

    path: str
    value: Any

    def wrong(self, what: str) -> NoReturn:
        raise _Wrong(f"{self.path or 'the file'}: {what}")

    def map(self) -> dict[str, Any]:
        if not isinstance(self.value, dict):
            self.wrong("this should be a map")
        if isinstance(self.value, _Twice):
            self.wrong(f"the field '{self.value.name[:40]}' stands here twice")
        return self.value

    def __getitem__(self, name: str) -> _At:
        path = f"{self.path}.{name}" if self.path else name
        if name not in self.map():
            raise _Wrong(f"{path}: this is missing")
        return _At(path, self.value[name])

    def only(self, *names: str) -> None:
        for name in self.map():
            if name not in names:
                self.wrong(f"there is no field '{name[:40]}' here")

    def items(self) -> list[_At]:
        if not isinstance(self.value, list):
            self.wrong("this should be a list")
        return [_At(f"{self.path}[{index}]", each) for index, each in enumerate(self.value)]

    def text(self, most: int = LONGEST, least: int = 0) -> str:
        if not isinstance(self.value, str) or not least <= len(self.value) <= most:
            self.wrong(f"this should be a text of {least} to {most:,} signs")
        try:
            self.value.encode()
        except UnicodeEncodeError:
            self.wrong("this text holds half a sign")
        return str(self.value)

    def one_of(self, words: tuple[str, ...]) -> str:
        text = self.text(LONGEST_NAME)
        if text not in words:
            self.wrong(f"this should be {', '.join(words[1:])}, or empty")
        return text

    def yes(self) -> bool:
        if not isinstance(self.value, bool):
            self.wrong("this should be true or false")
        return bool(self.value)

    def number(self) -> float:
        if isinstance(self.value, bool) or not isinstance(self.value, int | float):
            self.wrong("this should be a number")
        if not abs(self.value) <= LARGEST:
            self.wrong("this number is out of all bounds")
        return float(self.value)

    def time(self) -> datetime:
        try:
            read = datetime.fromisoformat(self.value)
            read = read.astimezone(UTC) if read.tzinfo else read
        except (TypeError, ValueError, OverflowError):
            self.wrong("this should be a time, like 2026-02-11T02:10:00+00:00")
        if read.tzinfo is None or not EARLIEST <= read.year <= LATEST:
            self.wrong(f"this should be a time with its offset, between {EARLIEST} and {LATEST}")
        return read

    def maybe(self, read: Callable[[], datetime]) -> datetime | None:
        return None if self.value is None else read()


def _lamb(at: _At) -> Lamb:
    lamb = Lamb(
        at["id"].text(LONGEST_NAME, 1),
        at["name"].text(),
        at["added"].time(),
        at["born"].maybe(at["born"].time),
        at["born_guessed"].yes(),
        at["birth_type"].text(LONGEST_NAME),
        at["sex"].one_of(SEXES),
    )
    at.only("id", "name", "added", "born", "born_guessed", "birth_type", "sex")
    return lamb


def _case(at: _At, lamb: str) -> Case:
    case = Case(
        at["id"].text(LONGEST_NAME, 1),
        lamb,
        at["begun"].time(),
        at["touched"].time(),
        at["edition"].text(LONGEST_NAME),
        tuple(_move(each) for each in at["moves"].items()),
        None if at["look"].value is None else _look(at["look"]),
        at["closed"].maybe(at["closed"].time),
    )
    at.only("id", "begun", "touched", "edition", "closed", "look", "moves")
    return case


def _look(at: _At) -> Look:
    look = Look(at["set_at"].time(), at["due"].time())
    if look.due < look.set_at:
        at.wrong("this is due before it was set")
    at.only("set_at", "due")
    return look


def _move(at: _At) -> Move:
    moment = at["at"].maybe(at["at"].time)
    if "act" in at.value:
        at.only("act", "at")
        return Done(at["act"].text(LONGEST_NAME, 1), moment)
    at.only("finding", "value", "unsure", "said", "at")
    if ("value" in at.value) == ("unsure" in at.value):
        at.wrong("this needs either a value or unsure")
    value: float | str | Any = UNSURE
    if "value" in at.value:
        given = at["value"]
        value = given.text(LONGEST_NAME, 1) if isinstance(given.value, str) else given.number()
    elif not at["unsure"].yes():
        at["unsure"].wrong("this can only be true")
    return Answer(at["finding"].text(LONGEST_NAME, 1), value, at["said"].text(), moment)


def _observation(at: _At, lamb: str) -> Observation:
    parts = at["parts"]
    told: dict[str, Part] = {}
    for name in parts.map():
        each = parts[name]
        told[_At(parts.path, name).text(LONGEST_NAME, 1)] = (
            each.text() if isinstance(each.value, str) else each.number()
        )
    at.only("id", "kind", "at", "written", "parts")
    times = (at["at"].time(), at["written"].time())
    return Observation(at["id"].text(LONGEST_NAME, 1), lamb, at["kind"].text(LONGEST_NAME, 1), *times, told)


def _different(names: Iterable[str], where: str) -> None:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise _Wrong(f"{where}: the id '{name[:40]}' stands here twice")
        seen.add(name)


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            twice = _Twice(found)
            twice.name = name
            return twice
        found[name] = value
    return found


def _no_constant(word: str) -> NoReturn:
    raise _Wrong(f"'{word}' is not a number")
