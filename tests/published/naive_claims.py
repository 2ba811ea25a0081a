"""What a guide says of its pages, held to every walk by the plain words of the model."""

from __future__ import annotations

from collections.abc import Iterator

from tests.published.naive import Point, Replay
from triage.amounts import AMOUNTS
from triage.facts import Unsure, Value
from triage.guide.model import PLACEHOLDER, Act, Ask, Condition, End, Guide, Lamb, Node
from triage.guide.model_rules import Rule, Trait
from triage.guide.texts import said_on, steps_of

Broken = tuple[str, str, str]
"""The rule (or the kind of problem), the page, and the finding at fault where it is not a rule."""


def least_moves(replay: Replay) -> dict[Broken, int]:
    """Return all that any walk breaks, with the least number of moves that breaks it."""
    guide, least = replay.guide, dict[Broken, int]()
    pages = {point.node.name: point.node for point in replay.points if point.shown}
    against = {
        name: [rule for rule in guide.rules.values() if _goes_against(rule, node)]
        for name, node in pages.items()
    }
    needs = {name: {*_needs(node)} for name, node in pages.items()}
    for point in replay.points:
        if point.shown:
            for each in _broken_at(guide, point, against[point.node.name], needs[point.node.name]):
                least[each] = min(point.moves, least.get(each, point.moves))
    return least


def _broken_at(guide: Guide, point: Point, against: list[Rule], needs: set[str]) -> Iterator[Broken]:
    """Yield all that one walk breaks at a page, which by itself goes against these rules and needs these."""
    node = point.node
    if isinstance(node, Ask):
        return
    yield from (("unknown-finding", node.name, each) for each in needs - point.known.keys())
    for finding, conditions in node.for_.items():
        if not _meets(guide, point, {finding: conditions}, unasked=False):
            yield "not-for-this-lamb", node.name, finding
    for rule in against:
        excused = rule.always is not None or rule.where_asked
        if _meets(guide, point, rule.when, unasked=not excused) and not _called(guide, rule, point):
            yield rule.name, node.name, ""


def _goes_against(rule: Rule, node: Node) -> bool:
    """Whether a page breaks a rule for the lambs of the rule; what walks told before may still mend an urgency."""
    if isinstance(node, Ask) or not _speaks_of(rule, node):
        return False
    if rule.never:
        return _has(node, rule.never)
    assert rule.always
    return isinstance(node, End) if rule.always.urgency else not _has(node, rule.always)


def _called(guide: Guide, rule: Rule, point: Point) -> bool:
    """Whether a walk comes to an end with the urgency that a rule asks for, by branches or by the end."""
    if not rule.always or not rule.always.urgency or not isinstance(point.node, End):
        return False
    return min(point.told, guide.rank(point.node.urgency)) <= guide.rank(rule.always.urgency)


def idle_rules(replay: Replay) -> set[str]:
    """Return the rules that are about no page, or of whom no lamb is ever shown a page at all."""
    guide = replay.guide
    about = {
        rule.name
        for rule in guide.rules.values()
        for node in guide.nodes.values()
        if not isinstance(node, Ask) and _speaks_of(rule, node) and (not rule.never or _has(node, rule.never))
    }
    shown = [point for point in replay.points if point.shown and not isinstance(point.node, Ask)]
    came = {
        rule.name
        for rule in guide.rules.values()
        if any(_meets(guide, point, rule.when, unasked=False) for point in shown)
    }
    return set(guide.rules) - (about & came)


def _meets(guide: Guide, point: Point, lamb: Lamb, unasked: bool) -> bool:
    """Whether a lamb is one of those described; `unasked` is what a finding that was not asked counts for."""
    return all(
        any(_is_so(guide, finding, each, point.known[finding]) for each in conditions)
        if finding in point.known
        else unasked or any(each.unasked for each in conditions)
        for finding, conditions in lamb.items()
    )


def _is_so(guide: Guide, finding: str, condition: Condition, value: Value) -> bool:
    if isinstance(value, Unsure):
        return condition.unsure
    if isinstance(value, str):
        return value in condition.is_

    def line(number: str) -> float:
        return guide.numbers[number].quantity.to(guide.findings[finding].measure).value

    return bool(condition.above or condition.from_ or condition.below or condition.up_to) and not (
        (condition.above and value <= line(condition.above))
        or (condition.from_ and value < line(condition.from_))
        or (condition.below and value >= line(condition.below))
        or (condition.up_to and value > line(condition.up_to))
    )


def _speaks_of(rule: Rule, node: Act | End) -> bool:
    on = rule.on
    if on is None:
        return bool(rule.never) or isinstance(node, End)
    urgency = node.urgency if isinstance(node, End) else ""
    return bool(_tags(node) & {*on.tag} or _shown(node) & {*on.shows} or {urgency} & {*on.end})


def _has(node: Act | End, trait: Trait) -> bool:
    if trait.says:
        texts = [text.lower() for text in said_on(node)]
        return all(any(words.lower() in text for text in texts) for words in trait.says)
    return bool(_tags(node) & {*trait.tag} or _shown(node) & {*trait.shows})


def _tags(node: Node) -> set[str]:
    return {tag for step in steps_of(node) for tag in step.tag}


def _shown(node: Act | End) -> set[str]:
    return {name for text in said_on(node) for name in PLACEHOLDER.findall(text)}


def _needs(node: Node) -> Iterator[str]:
    """Yield what must have been asked before the sums of a page are shown."""
    for name in set() if isinstance(node, Ask) else _shown(node) & AMOUNTS.keys():
        yield from AMOUNTS[name].needs
