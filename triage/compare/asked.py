"""What two guides can ask of one lamb: their findings side by side, and the answers that either tells apart.

A lamb gives one answer to one finding, whichever guide asks first. So each finding has one list of answers
for both guides, cut at every number that a branch of either compares it with; each guide has its own words
for them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from triage.facts import UNSURE, Value
from triage.guide.model import Ask, Finding, Guide
from triage.units import convert, same_dimension
from triage.walk import bound

NO_ANSWER = ""
"""What stands in one guide for an answer that only the other can be given; no choice has an empty name."""


class Asked:
    """Every finding of two guides by one number, from 1 on, with its answers in the words of each guide."""

    def __init__(self, old: Guide, new: Guide) -> None:
        self.renamed = _renamed(old.findings, new.findings)
        """The findings of the new guide that are those of the old one by another name: new -> old."""
        was = {name: self.renamed.get(name, name) for name in new.findings}
        self.names: tuple[list[str], list[str]] = (["", *old.findings], ["", *([""] * len(old.findings))])
        """For each guide the name of each finding, empty where it has none of that number."""
        self.at: tuple[dict[str, int], dict[str, int]] = ({}, {})
        self.at[0].update({name: at for at, name in enumerate(old.findings, 1)})
        for name in new.findings:
            at = self.at[0].get(was[name], 0)
            if not at:
                at = len(self.names[0])
                self.names[0].append("")
                self.names[1].append("")
            self.names[1][at] = name
            self.at[1][name] = at
        self.values: tuple[list[tuple[Value, ...]], list[tuple[Value, ...]]] = ([()], [()])
        """For each guide the answers to each finding, in one order for both; some fit one guide only."""
        lines = _lines(old), _lines(new)
        for at in range(1, len(self.names[0])):
            mine = old.findings.get(self.names[0][at]), new.findings.get(self.names[1][at])
            held = [lines[side].get(self.names[side][at], frozenset()) for side in (0, 1)]
            told = list(_answers(mine[0], mine[1], held[0], held[1]))
            for side in (0, 1):
                self.values[side].append(tuple(pair[side] for pair in told))

    def __len__(self) -> int:
        return len(self.names[0])


def _renamed(old: Mapping[str, Finding], new: Mapping[str, Finding]) -> dict[str, str]:
    gone: dict[tuple[object, ...], str] = {}
    for name, finding in old.items():
        if name not in new:
            gone.setdefault(_said(finding), name)
    found: dict[str, str] = {}
    for name, finding in new.items():
        if name not in old and (was := gone.pop(_said(finding), "")):
            found[name] = was
    return found


def _said(finding: Finding) -> tuple[object, ...]:
    """Return what makes a finding the same one under another name: what it asks, and what it can be told."""
    return finding.label, finding.ask, tuple(finding.choices.values()), finding.measure, finding.plausible


def _lines(guide: Guide) -> dict[str, frozenset[float]]:
    """Return for each finding the numbers that any branch compares it with, in the finding's unit."""
    found: dict[str, set[float]] = {}
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            for branch in node.branches:
                if number := branch.below or branch.up_to:
                    found.setdefault(node.finding, set()).add(bound(guide, node, number))
    return {name: frozenset(lines) for name, lines in found.items()}


def _answers(
    old: Finding | None, new: Finding | None, old_lines: frozenset[float], new_lines: frozenset[float]
) -> Iterator[tuple[Value, Value]]:
    """Yield each answer as the old and as the new guide takes it."""
    yield from _choices(old.choices if old else {}, new.choices if new else {})
    if old and new and old.measure and new.measure and same_dimension(old.measure, new.measure):
        yield from _measured(old, new, old_lines, new_lines)
    else:
        for value in _cut(old, old_lines):
            yield value, NO_ANSWER
        for value in _cut(new, new_lines):
            yield NO_ANSWER, value
    if any(each is not None and not each.never_unsure for each in (old, new)):
        yield UNSURE, UNSURE


def _choices(old: Mapping[str, str], new: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Yield the choices; one that has another name and the same words is the same choice."""
    by_words = {words: name for name, words in new.items() if name not in old}
    taken: set[str] = set()
    for name, words in old.items():
        if name in new:
            yield name, name
        elif words in by_words:
            taken.add(by_words[words])
            yield name, by_words[words]
        else:
            yield name, NO_ANSWER
    for name in new:
        if name not in old and name not in taken:
            yield NO_ANSWER, name


def _measured(
    old: Finding, new: Finding, old_lines: frozenset[float], new_lines: frozenset[float]
) -> Iterator[tuple[float, float]]:
    """Yield one measurement at each number and one between each two, in the unit of either guide."""
    exact = {convert(line, new.measure, old.measure): line for line in {*new.plausible, *new_lines}}
    edges = sorted({*old.plausible, *old_lines, *exact})
    for value in sorted({*edges, *((low + high) / 2 for low, high in pairwise(edges))}):
        yield value, exact.get(value, convert(value, old.measure, new.measure))


def _cut(finding: Finding | None, lines: frozenset[float]) -> list[float]:
    if finding is None or not finding.measure:
        return []
    edges = sorted({*finding.plausible, *lines})
    return sorted({*edges, *((low + high) / 2 for low, high in pairwise(edges))})
