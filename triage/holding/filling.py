"""A holding from the text of its file. Where the text is not sound as a whole, line by line.

A colon too many in one line would otherwise take the vet's number, three lines above, with it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Any

from triage.guide.text import Fields, Text, read_text
from triage.holding.fields import BY_NAME, with_text
from triage.holding.holding import HeldRead, Holding
from triage.holding.values import LIKE_PEOPLE, Wrong, add_person
from triage.page.inert import inert
from triage.problems import Place, Problem, errors, nearest

MOST_BRACKETS = 100
MOST_PIECES = 200
"""A holding needs none of these; more of them are not worth the time that a broken file would take."""

_BEGINS = re.compile(r"[^\s#-]|-(?!\s)")
"""How a line begins that is no comment, and does not go on with the line before."""
_MARK = re.compile(r"(---|\.\.\.)\s*$")
"""YAML's own marks between documents."""


def fill(text: str, file: str) -> HeldRead:
    """Return every right value of a holding's text, and a problem with its place for each wrong one."""
    problems: list[Problem] = []
    whole = _read(text, file, problems)
    filling = _Filling(problems=problems if whole else [])
    for piece in [whole] if whole else _pieces(text, file, filling.problems):
        filling.add(piece)
    if not whole and not errors(filling.problems):
        filling.problems += problems  # each line is sound, and together they are not
    shown = (replace(problem, what=inert(problem.what)) for problem in filling.problems)
    return HeldRead(filling.holding, tuple(sorted(shown, key=lambda problem: problem.place)))


def _read(text: str, file: str, problems: list[Problem]) -> Fields | None:
    if max(text.count("["), text.count("{")) > MOST_BRACKETS:
        first = text[: re.search(r"[\[{]", text).start()]  # type: ignore[union-attr]
        place = Place(file, first.count("\n") + 1, len(first) - first.rfind("\n"))
        problems.append(Problem(place, "there are no lists here; put the text in quotes", "shape"))
        return None
    return read_text(text, file, problems)


def _pieces(text: str, file: str, problems: list[Problem]) -> Iterator[Fields]:
    """Read each line that begins a field, with those that go on under it, by itself."""
    lines = ["" if _MARK.match(each) else each for each in text.split("\n")]
    starts = [number for number, each in enumerate(lines) if _BEGINS.match(each)]
    if len(starts) > MOST_PIECES:
        place = Place(file, starts[MOST_PIECES] + 1)
        problems.append(Problem(place, f"only the first {MOST_PIECES} fields were looked at", "too-big"))
    for start, end in pairwise([*starts, len(lines)][: MOST_PIECES + 1]):
        # Empty lines before it, so that the places in it are those of the file.
        piece = _read("\n" * start + "\n".join(lines[start:end]), file, problems)
        if piece:
            yield piece


@dataclass
class _Filling:
    """A holding as it is filled, field by field."""

    holding: Holding = field(default_factory=Holding)
    problems: list[Problem] = field(default_factory=list)
    seen: dict[str, Place] = field(default_factory=dict)

    def add(self, piece: Fields) -> None:
        for name, value in piece.fields.items():
            at = piece.keys[name]
            if name not in BY_NAME:
                known = nearest(name, BY_NAME) or f"; the fields are {', '.join(BY_NAME)}"
                self._wrong(at, f"there is no field '{inert(name, 40)}'{known}", "no-such-name")
            elif name in self.seen:
                what = f"'{name}' is here twice, first at line {self.seen[name].line}; keep one"
                self._wrong(at, what, "duplicate-key")
            else:
                self.seen[name] = at
                self._take(name, value)

    def _take(self, name: str, value: Any) -> None:
        if isinstance(value, Text):
            came = with_text(self.holding, name, value.text, "metric")
            if isinstance(came, str):
                self._wrong(value.place, f"{name}: {came}", "value")
            else:
                self.holding = came
        elif name == "taught" and isinstance(value, Fields):
            self.holding = replace(self.holding, taught=self._people(value))
        else:
            self._wrong(value.place, f"{name}: this should be one text; put it in quotes", "shape")

    def _people(self, value: Fields) -> dict[str, str]:
        found: dict[str, str] = {}
        for who, what in value.fields.items():
            if not isinstance(what, Text):
                self._wrong(what.place, f"taught: write each as name: what, {LIKE_PEOPLE}", "shape")
                continue
            try:
                add_person(found, who.strip(), what.text.strip())
            except Wrong as wrong:
                self._wrong(value.keys[who], f"taught: {wrong}", "value")
        return found

    def _wrong(self, place: Place, what: str, rule: str) -> None:
        self.problems.append(Problem(place, what, rule))
