"""What can still be checked of a guide with mistakes: the parts that are whole in themselves.

Nothing is said of walks, of reaching, or of what is used: a missing file would make all of that false.
"""

from __future__ import annotations

from typing import Protocol

from triage.guide import model
from triage.guide.items import Item
from triage.units import same_dimension


class Parts(Protocol):
    """The named pieces of a guide as far as they could be read."""

    topics: dict[str, model.Topic]
    findings: dict[str, model.Finding]
    nodes: dict[str, model.Node]
    numbers: dict[str, model.Number]
    how_tos: dict[str, model.HowTo]
    glossary: dict[str, model.Term]
    sources: dict[str, model.Source]
    cupboard: dict[str, Item]


def whole_parts(front: model.Front, parts: Parts) -> model.Guide:
    """Return a guide of only those parts that lean on nothing missing."""
    findings = {
        name: each for name, each in parts.findings.items() if bool(each.choices) != bool(each.measure)
    }
    nodes: dict[str, model.Node] = {}
    for name, node in parts.nodes.items():
        if isinstance(node, model.Ask):
            finding = findings.get(node.finding)
            if finding and all(_stands(each, finding, parts) for each in node.branches):
                nodes[name] = node
        elif isinstance(node, model.Act) or any(node.urgency == each.name for each in front.urgencies):
            nodes[name] = node
    return model.Guide(
        front,
        parts.topics,
        findings,
        nodes,
        parts.numbers,
        parts.how_tos,
        parts.glossary,
        parts.sources,
        cupboard=parts.cupboard,
    )


def _stands(branch: model.Branch, finding: model.Finding, parts: Parts) -> bool:
    """Whether a branch has one test that its finding can be put to, and the number of its band is there."""
    tests = (branch.is_, branch.below, branch.up_to, branch.otherwise, branch.unsure)
    if sum(map(bool, tests)) != 1 or bool(branch.is_) > bool(finding.choices):
        return False
    line = branch.below or branch.up_to
    number = parts.numbers.get(line)
    return not line or bool(number and finding.measure and same_dimension(number.unit, finding.measure))
