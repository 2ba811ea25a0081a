"""A guide changed in one way or another, as editors change guides: every change leaves each walk an end."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from random import Random

from tests.published.rich_parts import URGENCIES
from triage.guide.model import Act, Ask, Branch, End, Guide, Node

Change = Callable[[Guide, Random], Guide]


def changed(guide: Guide, dice: Random) -> Guide:
    """Return a guide with one to three changes."""
    for _ in range(dice.randint(1, 3)):
        guide = dice.choice(CHANGES)(guide, dice)
    return guide


def _with(guide: Guide, node: Node) -> Guide:
    return replace(guide, nodes={**guide.nodes, node.name: node})


def _of(guide: Guide, kind: type[Node], dice: Random) -> Node | None:
    nodes = [node for node in guide.nodes.values() if isinstance(node, kind)]
    return dice.choice(nodes) if nodes else None


def _later(guide: Guide, name: str) -> Sequence[str]:
    """Return the nodes written after one, to which it can lead without a loop."""
    names = list(guide.nodes)
    return names[names.index(name) + 1 :] or names[-1:]


def another_number(guide: Guide, dice: Random) -> Guide:
    """Move a number."""
    number = dice.choice(list(guide.numbers.values()))
    moved = replace(number, value=number.value * dice.choice((0.99, 1.01, 1.02)))
    return replace(guide, numbers={**guide.numbers, number.name: moved})


def another_way(guide: Guide, dice: Random) -> Guide:
    """Lead a branch elsewhere, or raise the urgency on it to another one."""
    ask = _of(guide, Ask, dice)
    if not isinstance(ask, Ask) or not ask.branches:
        return guide
    at = dice.randrange(len(ask.branches))
    branch = ask.branches[at]
    if dice.random() < 0.5:
        branch = replace(branch, go=dice.choice(_later(guide, ask.name)))
    else:
        branch = replace(branch, at_least=dice.choice(("", *URGENCIES)))
    return _with(guide, replace(ask, branches=(*ask.branches[:at], branch, *ask.branches[at + 1 :])))


def another_order(guide: Guide, dice: Random) -> Guide:
    """Put the branches of a question in another order."""
    ask = _of(guide, Ask, dice)
    if not isinstance(ask, Ask):
        return guide
    return _with(guide, replace(ask, branches=tuple(dice.sample(ask.branches, len(ask.branches)))))


def fewer_branches(guide: Guide, dice: Random) -> Guide:
    """Leave out a branch, so that some answers may have no way on."""
    ask = _of(guide, Ask, dice)
    if not isinstance(ask, Ask) or len(ask.branches) < 2:
        return guide
    at = dice.randrange(len(ask.branches))
    return _with(guide, replace(ask, branches=(*ask.branches[:at], *ask.branches[at + 1 :])))


def another_question(guide: Guide, dice: Random) -> Guide:
    """Let a node ask another finding of the same kind."""
    ask = _of(guide, Ask, dice)
    if not isinstance(ask, Ask) or ask.name == guide.front.way_in:
        return guide
    mine = guide.findings[ask.finding]
    same = [each.name for each in guide.findings.values() if each.choices.keys() == mine.choices.keys()]
    if mine.measure:
        same = [ask.finding]
    return _with(guide, replace(ask, finding=dice.choice(same)))


def another_urgency(guide: Guide, dice: Random) -> Guide:
    """Give an end another urgency."""
    end = _of(guide, End, dice)
    return _with(guide, replace(end, urgency=dice.choice(URGENCIES))) if isinstance(end, End) else guide


def an_act_forgets(guide: Guide, dice: Random) -> Guide:
    """Let an act make other findings forgotten, or be done at most so many times."""
    act = _of(guide, Act, dice)
    if not isinstance(act, Act):
        return guide
    matter = tuple(guide.front.unless_told)
    names = [name for name in guide.findings if name not in matter]
    if act.at_most and dice.random() < 0.5:
        return _with(guide, replace(act, at_most=dice.randint(1, 3)))
    return _with(guide, replace(act, forget=tuple(dice.sample(names, dice.randint(0, len(names))))))


def an_act_more(guide: Guide, dice: Random) -> Guide:
    """Put an act before a node, on one branch."""
    ask = _of(guide, Ask, dice)
    if not isinstance(ask, Ask) or not ask.branches:
        return guide
    at = dice.randrange(len(ask.branches))
    name = f"n{len(guide.nodes) + 50}"
    forget = tuple(dice.sample([each for each in guide.findings if each not in guide.front.unless_told], 2))
    act = Act(name, "topic", "More", (), ask.branches[at].go, forget=forget)
    turned = replace(ask.branches[at], go=name)
    branches = (*ask.branches[:at], turned, *ask.branches[at + 1 :])
    return _with(_with(guide, act), replace(ask, branches=branches))


def an_act_less(guide: Guide, dice: Random) -> Guide:
    """Lead every way past an act."""
    act = _of(guide, Act, dice)
    if not isinstance(act, Act) or act.at_most:
        return guide
    nodes = {name: _past(node, act) for name, node in guide.nodes.items() if name != act.name}
    way_in = act.then if guide.front.way_in == act.name else guide.front.way_in
    return replace(guide, nodes=nodes, front=replace(guide.front, way_in=way_in))


def _past(node: Node, act: Act) -> Node:
    if isinstance(node, Ask):
        branches = (replace(each, go=act.then if each.go == act.name else each.go) for each in node.branches)
        return replace(node, branches=tuple(branches))
    if isinstance(node, Act):
        then = act.then if node.then == act.name else node.then
        else_ = act.then if node.else_ == act.name else node.else_
        return replace(node, then=then, else_=else_)
    return node


def a_question_more(guide: Guide, dice: Random) -> Guide:
    """Ask something more on one branch; each answer leads on as before, some more urgently."""
    ask = _of(guide, Ask, dice)
    if not isinstance(ask, Ask) or not ask.branches:
        return guide
    at = dice.randrange(len(ask.branches))
    go = ask.branches[at].go
    finding = dice.choice([each for each in guide.findings.values() if each.choices])
    name = f"n{len(guide.nodes) + 80}"
    branches = tuple(
        Branch(go, is_=(choice,), at_least=dice.choice(("", *URGENCIES))) for choice in finding.choices
    )
    more = Ask(name, "topic", finding.name, (*branches, Branch(go, unsure=True)))
    turned = replace(ask.branches[at], go=name)
    return _with(
        _with(guide, more), replace(ask, branches=(*ask.branches[:at], turned, *ask.branches[at + 1 :]))
    )


def other_choices(guide: Guide, dice: Random) -> Guide:
    """Take a choice of a finding away, or give it another one, or change what can be measured."""
    finding = dice.choice(list(guide.findings.values()))
    if finding.name in guide.front.unless_told:
        return guide
    if finding.measure:
        low, high = finding.plausible
        finding = replace(finding, plausible=(low + dice.choice((-1, 0, 1)), high + dice.choice((-1, 0, 1))))
    elif dice.random() < 0.5 and len(finding.choices) > 1:
        gone = dice.choice(list(finding.choices))
        finding = replace(finding, choices={k: v for k, v in finding.choices.items() if k != gone})
    else:
        finding = replace(finding, choices={**finding.choices, "more": "Something more"})
    if dice.random() < 0.2:
        finding = replace(finding, never_unsure="" if finding.never_unsure else "So.")
    return replace(guide, findings={**guide.findings, finding.name: finding})


def renamed(guide: Guide, dice: Random) -> Guide:
    """Give every node another name."""
    mark = f"-{dice.randint(1, 9)}"
    nodes = {name + mark: _renamed(node, mark) for name, node in guide.nodes.items()}
    return replace(guide, nodes=nodes, front=replace(guide.front, way_in=guide.front.way_in + mark))


def _renamed(node: Node, mark: str) -> Node:
    if isinstance(node, Ask):
        branches = tuple(replace(branch, go=branch.go + mark) for branch in node.branches)
        return replace(node, name=node.name + mark, branches=branches)
    if isinstance(node, Act):
        else_ = node.else_ + mark if node.else_ else ""
        return replace(node, name=node.name + mark, then=node.then + mark, else_=else_)
    return replace(node, name=node.name + mark)


def another_matter(guide: Guide, dice: Random) -> Guide:
    """Take another matter as known at the way in."""
    if not guide.front.unless_told:
        return guide
    [(name, _)] = guide.front.unless_told.items()
    taken = dice.choice(list(guide.findings[name].choices))
    return replace(guide, front=replace(guide.front, unless_told={name: taken}))


CHANGES: tuple[Change, ...] = (
    another_number,
    another_way,
    another_way,
    another_order,
    fewer_branches,
    another_question,
    another_urgency,
    an_act_forgets,
    an_act_more,
    an_act_less,
    a_question_more,
    other_choices,
    renamed,
    another_matter,
)
