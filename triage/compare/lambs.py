"""One lamb that shows a difference: what it answers, and its walk through either guide."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from triage.check.search.ways import NOWHERE, ActWays, AskWays
from triage.compare.paths import Paths
from triage.compare.states import ACT, BOTH, Move
from triage.facts import Value
from triage.walk import Answer, Done, fits
from triage.walk import Move as WalkMove


@dataclass(frozen=True)
class Walked:
    """One lamb's walk through one guide."""

    moves: tuple[WalkMove, ...]
    """What `triage.walk.Walk` takes, as far as it goes; an answer that the guide lacks is no move."""
    met: tuple[str, ...]
    """Every node come to, those passed in silence among them, in order."""


@dataclass(frozen=True)
class Said:
    """One answer of a lamb, in the words of the guide that asked it first."""

    new: bool
    """Whether it is put as the new guide puts it, and not as the old one."""
    finding: str
    value: Value


class Lambs:
    """Turns the moves of a search into what the lamb said, and into its two walks."""

    def __init__(self, paths: tuple[Paths, Paths]) -> None:
        self.paths = paths

    def said(self, moves: Sequence[Move]) -> tuple[Said, ...]:
        """Return the answers in the order in which they were asked for, each once."""
        return tuple(self._said(move) for move in moves if move.finding != ACT)

    def _said(self, move: Move) -> Said:
        """Return an answer in the words of the guide that asked for it, or of the only one that knows it."""
        first = 1 if move.side == 1 else 0
        side = next((each for each in (first, 1 - first) if self._knows(each, move)), first)
        paths = self.paths[side]
        return Said(bool(side), paths.findings[move.finding], paths.told[move.finding][move.answer])

    def _knows(self, side: int, move: Move) -> bool:
        name = self.paths[side].findings[move.finding]
        value = self.paths[side].told[move.finding][move.answer]
        return bool(name) and fits(self.paths[side].guide.findings[name], value)

    def walk(self, side: int, moves: Sequence[Move]) -> Walked:
        """Return the walk of a lamb through one guide."""
        return _Walking(self.paths[side], self._readings(moves)).run()

    def _readings(self, moves: Sequence[Move]) -> dict[tuple[int, int], int]:
        """Return each answer by its finding, and by how often that had been forgotten on the walk."""
        readings = {(finding, 0): taken for finding, taken in (each.matter for each in self.paths) if finding}
        walking = [_Walking(each, readings) for each in self.paths]
        for move in moves:
            if move.finding == ACT:
                for side in (0, 1):
                    if move.side in (side, BOTH):
                        walking[side].to_an_act()
                        walking[side].act()
            else:
                side = 0 if move.side == BOTH else move.side
                readings[move.finding, walking[side].rounds.get(move.finding, 0)] = move.answer
        return readings


class _Walking:
    """Walks one guide by index, by the readings of one lamb."""

    def __init__(self, paths: Paths, readings: dict[tuple[int, int], int]) -> None:
        self.paths, self.readings = paths, readings
        self.at = paths.start
        self.rounds: dict[int, int] = {}
        self.times: dict[int, int] = {}
        self.asked: set[int] = set()
        self.moves: list[WalkMove] = []
        self.met: list[str] = []

    def run(self) -> Walked:
        while self.to_an_act():
            self.act()
        return Walked(tuple(self.moves), tuple(self.met))

    def to_an_act(self) -> bool:
        """Go on through questions to the next thing that is to be done; False where there is none."""
        while True:
            ways = self.paths.nodes[self.at]
            if isinstance(ways, ActWays):
                self._meet()
                if not ways.counter or self.times.get(self.at, 0) < ways.at_most:
                    return True
                self.at = ways.targets[1]
            elif not isinstance(ways, AskWays) or not self._ask(ways):
                self._meet()
                return False

    def _ask(self, ask: AskWays) -> bool:
        answer = self.readings.get((ask.finding, self.rounds.get(ask.finding, 0)))
        if answer is None or ask.branch_at[answer] == NOWHERE:
            return False
        if ask.finding not in self.asked:
            self.asked.add(ask.finding)
            name, value = self.paths.findings[ask.finding], self.paths.told[ask.finding][answer]
            if self.moves or self.paths.guide.front.unless_told.get(name) != value:
                self.moves.append(Answer(name, value))
        self._meet()
        self.at = ask.targets[ask.branch_at[answer]]
        return True

    def act(self) -> None:
        """Do what is to be done here."""
        ways = self.paths.nodes[self.at]
        assert isinstance(ways, ActWays)
        self.moves.append(Done(self.paths.names[self.at]))
        self.times[self.at] = self.times.get(self.at, 0) + 1
        for finding in ways.forget:
            self.rounds[finding] = self.rounds.get(finding, 0) + 1
            self.asked.discard(finding)
        self.at = ways.targets[0]

    def _meet(self) -> None:
        name = self.paths.names[self.at]
        if not self.met or self.met[-1] != name:
            self.met.append(name)
