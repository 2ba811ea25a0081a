"""Practice: written cases hold by the guide, and together they put every page and every rule to the test."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import PLACEHOLDER, Ask, Guide
from triage.guide.model_practice import Farm
from triage.practice.case import Case
from triage.practice.looking import danger_findings, signs_of
from triage.practice.options import breaks
from triage.practice.questions import Posed, Questions
from triage.practice.written import case_of
from triage.problems import Problem
from triage.rules.bearing import Bearing
from triage.rules.telling import Telling
from triage.ways_in import matter

MOST_FIRST = 60
"""Cases within which a wrong belief about any rule is found out."""


def cases(guide: Guide) -> Iterator[Problem]:
    """Each written case walks to a page with just its findings; every page has one; half are no easy ones."""
    telling = Telling(guide)
    walked: list[Case] = []
    for written in guide.cases.values():
        case = case_of(guide, written)
        if isinstance(case, Problem):
            yield case
            continue
        walked.append(case)
        yield from _told(guide, case)
        yield from _clashing(guide, case, telling)
    if guide.cases:
        yield from _pages(guide, walked)
        yield from _easy(guide, walked)
        if guide.farm:
            yield from _first(guide, guide.farm, walked, telling)


def deeds(guide: Guide) -> Iterator[Problem]:
    """Each deed breaks some rule, and what each rule forbids or asks for has a deed that breaks it."""
    rules = [rule for rule in guide.rules.values() if not (rule.always and rule.always.urgency)]
    for name, deed in guide.deeds.items():
        if not any(breaks(guide, deed, rule) for rule in guide.rules.values()):
            what = f"no rule is ever broken by '{name}', so it is never wrong; delete it, or mend it"
            yield Problem(deed.place, what, "idle-deed")
    for rule in rules if guide.deeds else ():
        if not any(breaks(guide, deed, rule) for deed in guide.deeds.values()):
            what = f"no deed breaks rule '{rule.name}', so practice can't find out who would; add one"
            yield Problem(rule.place, what, "rule-without-deed")


def openings(guide: Guide) -> Iterator[Problem]:
    """A drawn case of each matter has a way to begin."""
    finding = matter(guide)
    for name in finding.choices if guide.farm and finding else ():
        if guide.farm and name not in guide.farm.openings:
            what = f"no drawn case about '{name}' can begin; write an opening for it"
            yield Problem(guide.farm.place, what, "no-opening")


def _told(guide: Guide, case: Case) -> Iterator[Problem]:
    place = guide.cases[case.name].place
    for name in PLACEHOLDER.findall(case.story):
        if name not in case.told:
            what = (
                f"the story of '{case.name}' names {{{name}}}, which is not among what is told; add it there"
            )
            yield Problem(place, what, "case-told")
    for name in case.told:
        if name not in case.now:
            yield Problem(place, f"'{case.name}' tells '{name}', which it has no answer for", "case-told")
        elif name in danger_findings(guide):
            what = f"'{case.name}' tells '{name}'; danger signs are looked for, and never told"
            yield Problem(place, what, "case-told")


def _clashing(guide: Guide, case: Case, telling: Telling) -> Iterator[Problem]:
    for clash in guide.farm.clashes if guide.farm else ():
        if telling.describes(clash, case.now):
            what = f"'{case.name}' is {' and '.join(clash)} at once as no lamb is; change one of them"
            yield Problem(guide.cases[case.name].place, what, "case-clash")


def _pages(guide: Guide, walked: list[Case]) -> Iterator[Problem]:
    there = {case.page.name for case in walked}
    for node in guide.nodes.values():
        if not isinstance(node, Ask) and node.name not in there:
            what = f"no practice case comes to '{node.name}'; write one"
            yield Problem(node.place, what, "page-without-case")


def _easy(guide: Guide, walked: list[Case]) -> Iterator[Problem]:
    hard = sum(bool(case.trap or signs_of(case) or case.urgency == guide.top) for case in walked)
    if hard * 2 < len(walked):
        what = f"{hard} of {len(walked)} practice cases have danger or a trap; half of them at least should"
        yield Problem(guide.front.place, what, "easy-cases")


def _first(guide: Guide, farm: Farm, walked: list[Case], telling: Telling) -> Iterator[Problem]:
    questions = Questions(guide, Bearing(guide, telling))
    first = [case for case in walked if case.name in farm.first]
    tested = frozenset[str]().union(*(Posed(case, questions.of(case)).rules for case in first))
    if len(set(farm.first)) < len(farm.first):
        twice = sorted(name for name in set(farm.first) if farm.first.count(name) > 1)
        yield Problem(
            farm.place, f"{', '.join(twice)} stands twice in 'first'; once is enough", "first-cases"
        )
    if len(farm.first) > MOST_FIRST:
        what = (
            f"{len(farm.first)} cases come first; {MOST_FIRST} at most, or a wrong belief is found too late"
        )
        yield Problem(farm.place, what, "first-cases")
    for name, rule in guide.rules.items():
        if name not in tested:
            what = f"no case of 'first' in farm.yaml puts rule '{name}' to the test; add one that does"
            yield Problem(rule.place, what, "rule-without-case")
