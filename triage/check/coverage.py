"""Coverage: every known answer has exactly one way on. Of "not sure" the search tells."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import Ask, Branch, Finding, Guide
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
    for branch in found[1:]:
        yield Problem(branch.place, "a second 'unsure' branch; keep one", "overlap")
    if found and finding.never_unsure:
        what = f"'{finding.name}' says it is never unsure, so this branch can't be taken; delete it"
        yield Problem(found[0].place, what, "overlap")
