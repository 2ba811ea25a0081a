"""Rich guides made up by hypothesis: every way in which what is known of a lamb can matter to a walk.

A part of a guide is made from a few bytes that hypothesis draws at once, so that a guide is made fast and
still shrinks: byte nought is the plainest choice everywhere.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from hypothesis.strategies import DrawFn, composite

from tests.published.rich_parts import (
    LINES,
    MATTER,
    NUMBERS,
    POOL,
    SAID,
    SHOWN,
    STEPS,
    TAGS,
    TITLES,
    URGENCIES,
    Dice,
)
from triage.guide.model import (
    Act,
    Ask,
    Branch,
    Condition,
    End,
    Finding,
    Front,
    Guide,
    Lamb,
    Node,
    Step,
    Topic,
    Urgency,
)
from triage.guide.model_rules import Pages, Rule, Trait
from triage.problems import Place

CALLS = tuple(Urgency(name, name, name, "Phone") for name in URGENCIES)
"""Urgencies that all call a vet."""


def place_of(name: str, column: int = 1) -> Place:
    """Return where a node is written; its branches stand on its line, in the columns behind."""
    return Place("made-up.yaml", int(name[1:]) + 1, column)


@composite
def rich_guides(draw: DrawFn, most: int = 10) -> Guide:
    """Draw a guide that every walk comes to an end of, with rules, and with all that a walk can meet."""
    dice = Dice(draw, 32)
    findings = _findings(dice)
    names = [f"n{number}" for number in range(2 + dice.below(most - 1))]
    asked = list(findings.values())
    dangers = [each for each in asked if each.choices][: 1 + dice.chance(3)]
    if several := dice.chance(4):
        asked.append(MATTER)
        findings[MATTER.name] = MATTER
    findings.update({each.name: each for each in POOL if each.name not in findings})
    maker = _Maker(asked, list(findings.values()), names)
    nodes: dict[str, Node] = {name: maker.node(Dice(draw, 30), at) for at, name in enumerate(names)}
    if dice.below(2):
        turn_back(dice, nodes)
    rules = [maker.rule(Dice(draw, 20), f"rule-{at}") for at in range(dice.below(5))]
    urgencies = tuple(
        Urgency(name, name, name, "Phone" if at <= dice.below(4) else "") for at, name in enumerate(URGENCIES)
    )
    signs = {each.name: dice.some(tuple(each.choices)[1:], 1) for each in dangers}
    if several:
        return with_ways_in(dice, guide_of(nodes, rules, signs, urgencies, findings))
    return guide_of(nodes, rules, signs, urgencies, findings)


def with_ways_in(dice: Dice, guide: Guide) -> Guide:
    """Return a guide that is entered by what a walk is about, one matter of which is taken as known."""
    names, taken = list(guide.nodes), dice.one(tuple(MATTER.choices))
    start = f"n{len(names)}"
    branches = tuple(
        Branch(
            guide.front.way_in if choice == taken else dice.one(names),
            is_=(choice,),
            at_least=dice.one(URGENCIES) if dice.chance(5) else "",
            place=place_of(start, column),
        )
        for column, choice in enumerate(MATTER.choices, 2)
    )
    ask = Ask(start, "topic", MATTER.name, branches, place_of(start))
    front = replace(guide.front, way_in=start, unless_told={MATTER.name: taken})
    return replace(guide, front=front, nodes={start: ask, **guide.nodes})


def guide_of(
    nodes: Mapping[str, Node],
    rules: Sequence[Rule] = (),
    signs: Mapping[str, tuple[str, ...]] | None = None,
    urgencies: tuple[Urgency, ...] = CALLS,
    findings: Mapping[str, Finding] | None = None,
) -> Guide:
    """Return a guide of these parts, which begins at the first node."""
    way_in, signs = next(iter(nodes)), signs or {}
    front = Front("test", "2026-01-01", "Made up", "For tests.", (), way_in, signs, urgencies, (), {})
    topics = {"topic": Topic("topic", "Topic", "About.")}
    findings = findings or {finding.name: finding for finding in POOL}
    return Guide(front, topics, findings, nodes, NUMBERS, {}, {}, {}, {rule.name: rule for rule in rules})


def _findings(dice: Dice) -> dict[str, Finding]:
    picked = dice.some(POOL, 1)[:4]
    names = [finding.name for finding in picked]
    made: dict[str, Finding] = {}
    for finding in picked:
        stand_ins = dice.some([name for name in names if name != finding.name]) if dice.below(3) else ()
        never = "It is seen." if finding.choices and dice.chance(4) else ""
        made[finding.name] = replace(finding, stand_ins=stand_ins, never_unsure=never)
    return made


class _Maker:
    """Makes nodes and rules over given findings; node by node, each leads to later ones or counted back."""

    def __init__(self, asked: Sequence[Finding], findings: Sequence[Finding], names: Sequence[str]) -> None:
        self.asked = asked
        self.findings = findings
        self.names = names

    def node(self, dice: Dice, at: int) -> Node:
        name, later = self.names[at], self.names[at + 1 : at + 5]
        kinds = ("ask", "ask", "ask", "ask", "ask", "act", "counted", "end") if later else ("end",)
        kind = dice.one(kinds) if at else dice.one(kinds[:7] if later else kinds)
        if kind == "end":
            return self._end(dice, name)
        if kind == "ask":
            return self._ask(dice, name, later)
        act = self._act(dice, name, dice.one(later))
        if kind == "act":
            return act
        return replace(act, at_most=dice.one((1, 1, 2, 3)), else_=act.then, then=dice.one(self.names))

    def _end(self, dice: Dice, name: str) -> End:
        urgency, title = dice.one(URGENCIES[::-1]), dice.one(TITLES)
        steps, lamb = self._steps(dice), self._for(dice)
        call = dice.one(("Phone.", "Phone the vet.", "{milk-feed}"))
        return End(name, "topic", urgency, title, steps, (), call, for_=lamb, place=place_of(name))

    def _act(self, dice: Dice, name: str, then: str) -> Act:
        forget = (
            dice.some([finding.name for finding in self.asked if finding != MATTER]) if dice.below(3) else ()
        )
        title, steps, lamb = dice.one(TITLES), self._steps(dice), self._for(dice)
        return Act(name, "topic", title, steps, then, forget=forget, for_=lamb, place=place_of(name))

    def _steps(self, dice: Dice) -> tuple[Step, ...]:
        return tuple(
            Step(dice.one(STEPS) if dice.below(2) else STEPS[0], dice.some(TAGS) if dice.below(2) else ())
            for _ in range(dice.below(3))
        )

    def _ask(self, dice: Dice, name: str, later: Sequence[str]) -> Ask:
        finding = dice.one(self.asked)
        tests = _choice_tests(dice, finding) if finding.choices else _bands(dice, finding)
        if not finding.never_unsure and not dice.chance(24):
            tests.append(Branch("", unsure=True))
        if len(tests) > 1 and dice.chance(30):
            tests.pop(0)
        ways = [dice.one(later) for _ in range(1 + dice.below(3))]
        branches = [
            replace(
                test,
                go=dice.one(ways),
                at_least=dice.one(URGENCIES) if dice.chance(3) else "",
                place=place_of(name, column + 2),
            )
            for column, test in enumerate(tests)
        ]
        return Ask(name, "topic", finding.name, tuple(branches), place_of(name))

    def _for(self, dice: Dice) -> Lamb:
        return self._lamb(dice, 1) if dice.chance(4) else {}

    def _lamb(self, dice: Dice, most: int) -> Lamb:
        pool = self.findings if dice.chance(6) else self.asked
        picked = [dice.one(pool) for _ in range(1 + dice.below(most))]
        return {
            each.name: tuple(_condition(dice, each) for _ in range(1 + dice.chance(3))) for each in picked
        }

    def rule(self, dice: Dice, name: str) -> Rule:
        place = Place("rules.yaml", int(name[5:]) + 1)
        when = self._lamb(dice, 3) if dice.below(5) else {}
        on = _pages(dice) if dice.chance(3) else None
        if dice.below(2):
            trait = Trait(urgency=dice.one(URGENCIES)) if dice.chance(3) else _trait(dice)
            return Rule(name, "So.", (), always=trait, on=on, when=when, place=place)
        asked = bool(when) and dice.chance(3)
        return Rule(name, "So.", (), _trait(dice), on=on, when=when, where_asked=asked, place=place)


def _choice_tests(dice: Dice, finding: Finding) -> list[Branch]:
    choices = tuple(finding.choices)
    together = dice.below(len(choices)) if dice.chance(3) else 0
    single = [Branch("", is_=(choice,)) for choice in choices[together + 1 :]]
    if dice.chance(4):
        return [*single, Branch("", otherwise=True)]
    return [Branch("", is_=choices[: together + 1]), *single]


def _bands(dice: Dice, finding: Finding) -> list[Branch]:
    tests: list[Branch] = []
    lines = LINES[finding.name]
    for number in dice.some(lines) if dice.chance(3) else [dice.one(lines)]:
        kind = dice.below(7)
        tests += [Branch("", below=number)] if kind in (0, 1, 2, 6) else []
        tests += [Branch("", up_to=number)] if kind > 2 else []
    return [*tests, Branch("", otherwise=True)]


def _condition(dice: Dice, finding: Finding) -> Condition:
    kind = dice.below(8)
    if kind == 7:
        return Condition(unasked=True)
    if kind > 4 and not finding.never_unsure:
        return Condition(unsure=True)
    if finding.choices:
        return Condition(is_=dice.some(tuple(finding.choices), 1))
    low, high = LINES[finding.name]
    if dice.chance(6):
        return dice.one((Condition(from_=low, below=high), Condition(above=low, up_to=high)))
    line = dice.one((low, high))
    return dice.one(
        (Condition(below=line), Condition(up_to=line), Condition(from_=line), Condition(above=line))
    )


def _trait(dice: Dice) -> Trait:
    kind = dice.below(6)
    if kind < 3:
        return Trait(tag=dice.some(TAGS, 1))
    return Trait(shows=dice.some(SHOWN, 1)) if kind < 5 else Trait(says=dice.one(SAID))


def _pages(dice: Dice) -> Pages:
    return dice.one(
        (
            Pages(tag=dice.some(TAGS, 1)),
            Pages(shows=dice.some(SHOWN, 1)),
            Pages(end=dice.some(URGENCIES, 1)),
            Pages(tag=dice.some(TAGS, 1), end=dice.some(URGENCIES, 1)),
        )
    )


def turn_back(dice: Dice, nodes: dict[str, Node]) -> None:
    """Lead one branch back to a counted act, from where that act no longer leads once it is used up."""
    pairs = [
        (node, to)
        for to, counted in nodes.items()
        if isinstance(counted, Act) and counted.at_most
        for name, node in nodes.items()
        if isinstance(node, Ask) and name not in _onward_from(to, nodes)
    ]
    for node, to in [dice.one(pairs)] if pairs else []:
        at = dice.below(len(node.branches))
        turned = replace(node.branches[at], go=to)
        nodes[node.name] = replace(node, branches=(*node.branches[:at], turned, *node.branches[at + 1 :]))


def _onward_from(name: str, nodes: Mapping[str, Node]) -> set[str]:
    """Return the nodes that one leads to when counted acts are used up, itself among them."""
    found: set[str] = set()
    waiting = [name]
    while waiting:
        node = nodes[waiting.pop()]
        if node.name not in found:
            found.add(node.name)
            if isinstance(node, Ask):
                waiting += [branch.go for branch in node.branches]
            elif isinstance(node, Act):
                waiting.append(node.else_ if node.at_most else node.then)
    return found
