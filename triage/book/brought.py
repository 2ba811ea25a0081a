"""What a reader may bring to a question: the answers that may have been given to it before.

Every way through the graph is followed, also such as no real answers take, so nothing that may be brought is
left out. Measurements are not followed: of them only that they were taken is known, by `memory.py`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, Guide
from triage.walk import branch_for

Answers = Mapping[str, frozenset[Value]]
"""By the name of a finding with choices: the answers that may have been given; any, where it is not here."""


@dataclass(frozen=True)
class Brought:
    """The answers that may be brought to each node that can be come to."""

    answers: Mapping[str, Answers]

    def may_answer(self, node: Ask, value: Value) -> bool:
        """Whether an answer may be given to a question by somebody who keeps to earlier answers."""
        known = self.answers.get(node.name, {}).get(node.finding)
        return known is None or value in known


def brought_to(guide: Guide, start: str) -> Brought:
    """Return what may be brought to each node, from a first node or from the guide's way in."""
    answers: dict[str, Answers] = {start: {}, guide.front.way_in: {}}
    waiting = [*answers]
    while waiting:
        name = waiting.pop()
        for target, given in _out(guide, name, answers[name]):
            joined = _either(answers[target], given) if target in answers else given
            if joined != answers.get(target):
                answers[target] = joined
                waiting.append(target)
    return Brought(answers)


def _out(guide: Guide, name: str, known: Answers) -> Iterator[tuple[str, Answers]]:
    """Yield each way out of a node: where it leads, and with which answers."""
    node = guide.nodes[name]
    if isinstance(node, Act):
        kept = {finding: given for finding, given in known.items() if finding not in node.forget}
        yield from ((target, kept) for target in (node.then, node.else_) if target)
    elif isinstance(node, Ask):
        finding = guide.findings[node.finding]
        given = known.get(node.finding, frozenset((*finding.choices, UNSURE)))
        for branch in node.branches:
            taking = frozenset(value for value in given if branch_for(guide, node, value) is branch)
            if finding.measure:
                yield branch.go, known
            elif taking:
                yield branch.go, {**known, node.finding: taking}


def _either(one: Answers, other: Answers) -> Answers:
    return {name: one[name] | other[name] for name in one if name in other}
