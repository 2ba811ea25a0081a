"""Looking up what a walk takes as known from its start, so that every walk can begin."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from triage.guide import model
from triage.guide.shapes import Reading
from triage.problems import nearest


def look_up_ways_in(
    front: model.Front,
    findings: Mapping[str, model.Finding],
    nodes: Mapping[str, model.Node],
    reading: Reading,
) -> None:
    """Add a mistake where what is taken as known is not what the way in asks, once and for all."""
    if len(front.unless_told) > 1:
        what = "'unless_told' takes one finding as known, the one that the way in asks; keep one"
        reading.wrong(front.place, what)
        return
    for name, taken in front.unless_told.items():
        for what in (*_asked(front, name, nodes), *_answered(front, name, taken, findings)):
            reading.wrong(front.place, what)


def _asked(front: model.Front, name: str, nodes: Mapping[str, model.Node]) -> Iterator[str]:
    start = nodes.get(front.way_in)
    if start is not None and (not isinstance(start, model.Ask) or start.finding != name):
        yield f"the way in '{start.name}' should ask '{name}', which 'unless_told' takes as known"
    for node in nodes.values():
        if isinstance(node, model.Act) and name in node.forget:
            yield f"'{node.name}' forgets '{name}', which holds for the whole walk; take it out of 'forget'"


def _answered(
    front: model.Front, name: str, taken: str, findings: Mapping[str, model.Finding]
) -> Iterator[str]:
    finding = findings.get(name)
    if finding is None:
        return
    if taken not in finding.choices:
        yield f"'{taken}' is not a choice of '{name}'{nearest(taken, finding.choices)}"
    if not finding.never_unsure:
        yield f"'{name}' says what a walk is about, so it needs 'never_unsure', with the reason"
    if name in front.danger_signs:
        yield f"'{name}' says what a walk is about, so it can't be in danger_signs"
