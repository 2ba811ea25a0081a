"""The shortest walk that shows a problem, as a file of answers with the questions beside them."""

from __future__ import annotations

from collections.abc import Iterable

from triage.check.search.searched import Searched
from triage.check.search.states import Edge
from triage.facts import Facts, Unsure, Value
from triage.guide.model import Ask, Guide
from triage.page.words import Reader


def walk_to(searched: Searched, state: int) -> str:
    """Return the answers of a shortest walk to a state, ready to be walked by `--answers`."""
    return as_answers(searched.guide, searched.answers(searched.states.way_to(state)))


def walk_through(searched: Searched, state: int, *edges: Edge) -> str:
    """Return a walk that comes to a state, goes these ways, and on to an end, all as mildly as it can."""
    ways = searched.onward.calm_way_to(state)
    for edge in edges:
        ways.append((state, edge))
        state = edge.to
    while searched.states.edges[state]:
        mildest = max(searched.states.edges[state], key=lambda each: searched.onward.by(state, each))
        ways.append((state, mildest))
        state = mildest.to
    return as_answers(searched.guide, searched.answers(ways))


def as_answers(guide: Guide, given: Iterable[tuple[str, Value]]) -> str:
    """Return answers as YAML, each finding once and its answers in order."""
    by_finding: dict[str, list[Value]] = {}
    for finding, value in given:
        by_finding.setdefault(finding, []).append(value)
    return "\n".join(_line(guide, finding, values) for finding, values in by_finding.items())


def _line(guide: Guide, finding: str, values: list[Value]) -> str:
    asked, reader = guide.findings[finding], Reader(guide, Facts(guide.values(), {}))
    typed = [_typed(guide, finding, value) for value in values]
    answers = typed[0] if len(typed) == 1 else f"[{', '.join(typed)}]"
    said = ", then ".join(reader.answer(asked, value).rstrip(".") for value in values)
    return f"{finding}: {answers}  # {reader.fill(asked.ask)} {said[0].upper()}{said[1:]}."


def _typed(guide: Guide, finding: str, value: Value) -> str:
    if isinstance(value, Unsure):
        return "not sure"
    if isinstance(value, str):
        return value
    unit = guide.findings[finding].measure
    if unit == "h" and value != int(value):
        return f"{value * 60:.10g} min"  # a clock time is read where hours have a point
    return f"{value:.10g} {'' if unit == 'count' else unit}".rstrip()


def turn_for_the_worse(searched: Searched, state: int) -> str:
    """Return where a walk to a page turned wrong, as ` (by the branch at file:line:column)`.

    That is the branch on it after which most more of the walks break something: it, or what lies
    between it and the page, is what to look at first.
    """
    place, most = "", -1.0
    spoilt = searched.onward.spoilt
    for earlier, edge in searched.states.way_to(state):
        node = searched.node(earlier)
        more = spoilt[edge.to] - spoilt[earlier]
        if isinstance(node, Ask) and more >= most:
            place, most = f" (by the branch at {node.branches[edge.branch].place})", more
    return place
