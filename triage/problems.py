"""Mistakes as values: a place, what is wrong, and what would be right."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import Literal, NamedTuple

Weight = Literal["error", "warning"]


class Place(NamedTuple):
    """Where something was written: file, and 1-based line and column."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, order=True)
class Problem:
    """One mistake in the guide; prints as `file:line:column: what; what would be right [rule]`."""

    place: Place
    what: str
    rule: str
    weight: Weight = "error"
    walk: str = field(default="", compare=False)
    """The shortest walk that shows it, as a file of answers with the questions beside them."""

    def __str__(self) -> str:
        lead = "warning: " if self.weight == "warning" else ""
        return f"{self.place}: {lead}{self.what} [{self.rule}]"


def errors(problems: Iterable[Problem]) -> list[Problem]:
    """Return only the problems that make a guide unfit to use."""
    return [problem for problem in problems if problem.weight == "error"]


def nearest(word: str, known: Iterable[str]) -> str:
    """Return `; did you mean 'x'?` for a close match among known words, else an empty text."""
    close = get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f"; did you mean '{close[0]}'?" if close else ""
