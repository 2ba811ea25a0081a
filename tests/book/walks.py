"""Walks of the guide by chance, with readings near every line that a branch is cut at."""

from __future__ import annotations

from random import Random

from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Finding, Guide
from triage.units import KG_PER_LB, System, convert
from triage.walk import Answer, Walk, bound, fits
from triage.ways_in import begin, other_ways


def lines_of(guide: Guide) -> dict[str, list[float]]:
    """For each measured finding the values at which some branch is cut, in its unit."""
    found: dict[str, set[float]] = {}
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            for branch in node.branches:
                if branch.below or branch.up_to:
                    cut = bound(guide, node, branch.below or branch.up_to)
                    found.setdefault(node.finding, set()).add(cut)
    return {name: sorted(values) for name, values in found.items()}


def readings(finding: Finding, lines: list[float], system: System) -> list[float]:
    """What an instrument of a unit system can show near each line, and at both ends of what is plausible."""
    near: set[float] = set()
    for line in (*lines, *finding.plausible):
        near |= {on_a_mark(line, finding.measure, system, step) for step in (-2, -1, 0, 1, 2)}
    return sorted(value for value in near if fits(finding, value))


def on_a_mark(value: float, unit: str, system: System, step: int) -> float:
    """The reading so many marks from a value: tenths of a degree, ounces or 10 g, minutes, whole counts."""
    if unit == "degC" and system == "us":
        return convert((round(convert(value, "degC", "degF") * 10) + step) / 10, "degF", "degC")
    if unit == "kg" and system == "us":
        return (round(value / KG_PER_LB * 16) + step) * KG_PER_LB / 16
    mark = {"degC": 0.1, "kg": 0.01, "h": 1 / 60}.get(unit, 1.0)
    return round((round(value / mark) + step) * mark, 6)


class Drawing:
    """Draws whole walks."""

    def __init__(self, guide: Guide, system: System, seed: int) -> None:
        self.guide, self.chance, self.calm = guide, Random(seed), 0.0
        lines = lines_of(guide)
        self.readings = {
            finding.name: readings(finding, lines.get(finding.name, []), system)
            for finding in guide.findings.values()
            if finding.measure
        }

    def walk(self) -> Walk:
        """A walk to an end, about any matter; some are calm, with most things as they should be."""
        about = self.chance.choice(["", "", *other_ways(self.guide)])
        self.calm = self.chance.choice([0.3, 0.7, 0.9, 0.97])
        return self._to_its_end(begin(self.guide, about))

    def near(self, walk: Walk) -> Walk:
        """A walk in which one answer of another is changed, to an end."""
        self.calm = 0.8
        asked = [at for at, move in enumerate(walk.moves) if isinstance(move, Answer)]
        at = self.chance.choice(asked)
        finding = self.guide.findings[walk.moves[at].finding]  # type: ignore[union-attr]
        return self._to_its_end(walk.change(at, self._any(finding)).walk)

    def _to_its_end(self, walk: Walk) -> Walk:
        while not walk.finished:
            walk = walk.done() if isinstance(walk.node, Act) else walk.answer(self._answer(walk.node))
        return walk

    def _usual(self, finding: Finding) -> Value | None:
        """What is normal: the first such choice, or the middle of a band."""
        normal = finding.normal
        if normal is None or normal.is_:
            return normal.is_[0] if normal else None
        if not (normal.from_ and normal.up_to):
            return None
        edges = [
            self.guide.numbers[name].quantity.to(finding.measure).value
            for name in (normal.from_, normal.up_to)
        ]
        return round(sum(edges) / 2, 1)

    def _answer(self, node: object) -> Value:
        assert isinstance(node, Ask)
        finding = self.guide.findings[node.finding]
        if self.chance.random() < self.calm and (usual := self._usual(finding)) is not None:
            return usual
        return self._any(finding)

    def _any(self, finding: Finding) -> Value:
        known: list[Value] = [*finding.choices, *self.readings.get(finding.name, [])]
        if not finding.never_unsure and self.chance.random() < 0.15:
            return UNSURE
        return self.chance.choice(known)
