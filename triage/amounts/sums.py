"""What a sum is: its name, what it needs, and its result with the working."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from triage.facts import Facts
from triage.units import System, show


@dataclass(frozen=True)
class Figure:
    """One figure of a result, in its own unit, with a word for what it is."""

    value: float
    unit: str
    what: str = ""

    def words(self, system: System) -> str:
        """Return the figure as the reader's unit system prints it."""
        shown = show(self.value, self.unit, system)
        return f"{shown} {self.what}".rstrip()


@dataclass(frozen=True)
class Sum:
    """A result: its figures (the main one first), how it came about, and what was guessed."""

    figures: tuple[Figure, ...]
    working: tuple[str, ...]
    guessed: str = ""

    def words(self, system: System) -> str:
        """Return all figures in one phrase, as `200 g powder and 800 ml water`."""
        return " and ".join(figure.words(system) for figure in self.figures)


@dataclass(frozen=True)
class Amount:
    """A named sum.

    `needs` are findings that must have been asked (measured, chosen or "not sure"); `uses` are
    findings that sharpen it when known; `numbers` are the guide's numbers it rests on.
    """

    name: str
    title: str
    needs: tuple[str, ...]
    numbers: tuple[str, ...]
    work_out: Callable[[Facts, System], Sum]
    uses: tuple[str, ...] = ()
