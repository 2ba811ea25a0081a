"""Coverage: every answer has exactly one way on, and "not sure" is never the easy way out."""

from __future__ import annotations

from collections.abc import Iterator

from triage.check.knowledge import always_asked
from triage.guide.graph import ways_out
from triage.guide.model import Act, Ask, Branch, End, Finding, Guide
from triage.problems import Problem
from triage.units import show
from triage.walk import bound


def branches(guide: Guide) -> Iterator[Problem]:
    """Choices each have one branch; bands rise without gap or overlap over the plausible range."""
    for node in guide.nodes.values():
        if isinstance(node, Ask):
            finding = guide.findings[node.finding]
            yield from _choices(node, finding) if finding.choices else _bands(guide, node, finding)
            yield from _not_sure(node, finding)


def _choices(node: Ask, finding: Finding) -> Iterator[Problem]:
    taken: dict[str, Branch] = {}
    closed = False
    for branch in node.branches:
        if closed and branch.is_:
            yield Problem(branch.place, "this comes after 'otherwise'; put 'otherwise' last", "overlap")
        closed = closed or branch.otherwise
        for choice in branch.is_:
            if choice in taken:
                what = f"'{choice}' already has a branch, at line {taken[choice].place.line}; keep one"
                yield Problem(branch.place, what, "overlap")
            taken.setdefault(choice, branch)
    otherwise = [branch for branch in node.branches if branch.otherwise]
    left = [choice for choice in finding.choices if choice not in taken]
    if left and not otherwise:
        what = f"'{node.name}' has no branch for {', '.join(left)}; add one"
        yield Problem(node.place, what, "gap")
    for branch in otherwise[0 if not left else 1 :]:
        yield Problem(branch.place, "nothing is left for this 'otherwise'; delete it", "overlap")


def _bands(guide: Guide, node: Ask, finding: Finding) -> Iterator[Problem]:
    low, high = finding.plausible
    reached: tuple[float, bool] | None = None
    closed = False
    for branch in node.branches:
        if branch.unsure:
            continue
        if closed:
            yield Problem(branch.place, "this band comes after 'otherwise'; put 'otherwise' last", "overlap")
            continue
        if branch.otherwise:
            closed = True
            continue
        name = branch.below or branch.up_to
        edge = (bound(guide, node, name), bool(branch.up_to))
        if not low <= edge[0] <= high or edge == (low, False):
            limits = f"{show(low, finding.measure)} to {show(high, finding.measure)}"
            yield Problem(branch.place, f"'{name}' lies outside what is plausible, {limits}", "gap")
        elif reached is not None and edge <= reached:
            what = f"'{name}' is not above the band before it, so they overlap; write the lowest band first"
            yield Problem(branch.place, what, "overlap")
        reached = edge
    if not closed and (reached is None or reached < (high, True)):
        above = show(reached[0], finding.measure) if reached else show(low, finding.measure)
        what = f"'{node.name}' has no branch from {above} up; add 'otherwise: true'"
        yield Problem(node.place, what, "gap")


def _not_sure(node: Ask, finding: Finding) -> Iterator[Problem]:
    found = [branch for branch in node.branches if branch.unsure]
    if not found and not finding.never_unsure:
        what = f"'{node.name}' has no way out for \"not sure\"; add a branch with 'unsure: true'"
        yield Problem(node.place, what, "no-unsure")
    for branch in found[1:]:
        yield Problem(branch.place, "a second 'unsure' branch; keep one", "overlap")
    if found and finding.never_unsure:
        what = f"'{finding.name}' says it is never unsure, so this branch can't be taken; delete it"
        yield Problem(found[0].place, what, "overlap")


def unsure(guide: Guide) -> Iterator[Problem]:
    """The answer "not sure" leads to a stand-in, or is at least as urgent as the worst known answer here.

    Urgency of a branch is what is certain from it on: its own `at_least`, or the least urgent end
    below it when that is more urgent still.
    """
    least, asked = _least_urgent(guide), always_asked(guide)
    for node in guide.nodes.values():
        if not isinstance(node, Ask):
            continue
        stand_ins = guide.findings[node.finding].stand_ins
        if stand_ins and node.finding in asked.get(node.name, ()):
            continue  # passed in silence: where it was asked, "not sure" has met the stand-in already
        branch = next((each for each in node.branches if each.unsure), None)
        if branch is None or _asks(guide, branch.go) in stand_ins:
            continue
        worst = min(_certain(guide, least, each) for each in node.branches if not each.unsure)
        mine = _certain(guide, least, branch)
        if mine > worst:
            names = [each.name for each in guide.front.urgencies]
            what = (
                f"\"not sure\" here is sure only of '{names[mine] if mine < len(names) else 'nothing'}', "
                f"but a known answer of '{names[worst]}'; raise it with at_least, or ask a stand-in"
            )
            yield Problem(branch.place, what, "unsure-too-easy")


def _asks(guide: Guide, name: str) -> str:
    node = guide.nodes[name]
    return node.finding if isinstance(node, Ask) else ""


def _certain(guide: Guide, least: dict[str, int], branch: Branch) -> int:
    return min(guide.rank(branch.at_least), least[branch.go])


def _least_urgent(guide: Guide) -> dict[str, int]:
    """Return for each node the rank that every walk from it is sure to reach (0 is most urgent)."""
    nobody = len(guide.front.urgencies)
    least = {
        name: guide.rank(node.urgency) if isinstance(node, End) else 0 for name, node in guide.nodes.items()
    }
    changed = True
    while changed:
        changed = False
        for name, node in guide.nodes.items():
            if isinstance(node, End):
                continue
            if isinstance(node, Act):
                mine = max((least[target] for target, _ in ways_out(node)), default=nobody)
            else:
                mine = max((_certain(guide, least, branch) for branch in node.branches), default=nobody)
            if mine > least[name]:
                least[name] = mine
                changed = True
    return least
