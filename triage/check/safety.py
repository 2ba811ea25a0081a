"""Safety: the rules hold in every state that real answers can reach, and each rule can fire."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from triage.check.search.claims import Claim, Part, told
from triage.check.search.live import Live
from triage.check.search.searched import Searched
from triage.check.search.states import SILENT, explore
from triage.check.witness import turn_for_the_worse, walk_to
from triage.guide.model_rules import Rule
from triage.problems import Problem


def broken(searched: Searched) -> Iterator[Problem]:
    """Every claim of a rule, a page or a sum that some lamb breaks, with the shortest such walk."""
    for claim, state in searched.states.broken.items():
        place, what = told(searched.guide, searched.pages, claim)
        what += turn_for_the_worse(searched, state)
        yield Problem(place, what, claim.rule, walk=walk_to(searched, state))


def idle(searched: Searched) -> Iterator[Problem]:
    """A rule that no lamb can ever come under proves nothing."""
    fired = _fired(searched)
    for rule in searched.guide.rules.values():
        if not _about_any(searched, rule):
            what = f"rule '{rule.name}' is about no page of this guide, so it proves nothing; mend it"
            yield Problem(rule.place, what, "rule-never-fires")
        elif rule.name not in fired:
            what = f"no walk ever comes under rule '{rule.name}', so it proves nothing; mend its 'when'"
            yield Problem(rule.place, what, "rule-never-fires")


def _fired(searched: Searched) -> set[str]:
    """Return the rules whose `when` holds of some lamb at some page, looking again with all kept in mind.

    The first search forgets what no page ahead asks about, and takes lambs for one that no page ahead tells
    apart. A rule that does not hold of all of those is searched for again with its own answers kept apart.
    """
    rules = searched.guide.rules.values()
    fired = {rule.name for rule in rules if not rule.when}
    fired |= _answered(searched, [rule for rule in rules if rule.when and not _unasked(rule)])
    fired |= _walked(searched, [rule for rule in rules if rule.name not in fired])
    return fired | _held(searched, [rule for rule in rules if rule.name not in fired])


def _walked(searched: Searched, rules: list[Rule]) -> set[str]:
    """Return those of the rules that describe the lamb of a shortest walk to some page."""
    states, ways, found = searched.states, searched.states.ways, set[str]()
    pages = {ways.node_at[page]: page for page in searched.pages}
    wanted = {rule.name: [*_parts(searched, rule)] for rule in rules}
    for state, at in enumerate(states.at):
        passed = states.edges[state][:1] and states.edges[state][0].answer == SILENT
        if at in pages and not passed and len(found) < len(wanted):
            del pages[at]
            known = searched.known(states.way_to(state))
            found |= {name for name, parts in wanted.items() if all(part.holds(known) for part in parts)}
    return found


def _held(searched: Searched, rules: list[Rule]) -> set[str]:
    """Return those of the rules that describe a lamb to which some page is shown."""
    if not rules:
        return set()
    ways = searched.states.ways
    claims = [
        Claim(page, parts, rule.name)
        for rule in rules
        for parts in [tuple(_parts(searched, rule))]
        for page in searched.pages
    ]
    states = explore(ways, Live(ways, claims), claims, enough=True)
    if not states.complete and len(rules) > 1:  # together they keep too much in mind
        return set[str]().union(*(_held(searched, [rule]) for rule in rules))
    return {claim.rule for claim in states.broken}


def _answered(searched: Searched, rules: list[Rule]) -> set[str]:
    """Return those of the rules whose `when` is sure to come true by some answer; a page comes after it."""
    ways = searched.states.ways
    wanted: dict[int, dict[str, dict[int, int]]] = {}
    for rule in rules:
        parts = {ways.finding_at[part.finding]: part.among for part in _parts(searched, rule)}
        for finding in parts:
            wanted.setdefault(finding, {})[rule.name] = parts
    found: set[str] = set()
    for state, node in (*searched.opening(), *searched.asked()):
        finding = ways.finding_at[node.finding]
        for name, parts in wanted.get(finding, {}).items():
            if name not in found and _comes_true(searched, state, finding, parts):
                found.add(name)
    return found


def _comes_true(searched: Searched, state: int, finding: int, parts: dict[int, int]) -> bool:
    """Whether an answer to what a state asks makes all parts true, for every lamb that it stands for."""
    states, others = searched.states, ~parts[finding]
    if not any(edge.among and not edge.among & others for edge in states.edges[state]):
        return False
    alike = ((states.among(state, of), among) for of, among in parts.items() if of != finding)
    return all(answers and not answers & ~among for answers, among in alike)


def _unasked(rule: Rule) -> bool:
    """Whether a rule speaks of a lamb of whom something was not asked."""
    return any(each.unasked for conditions in rule.when.values() for each in conditions)


def _parts(searched: Searched, rule: Rule) -> Iterator[Part]:
    for finding, conditions in rule.when.items():
        yield Part(
            finding, searched.telling.mask(finding, conditions), any(each.unasked for each in conditions)
        )


def contradicting(searched: Searched) -> Iterator[Problem]:
    """Two rules, one of which always asks for what the other one never allows, for the same lamb."""
    for one, other in combinations(searched.guide.rules.values(), 2):
        always, never = (one, other) if one.always else (other, one)
        if always.always is None or never.never is None or not _clash(searched, always, never):
            continue
        what = (
            f"rules '{always.name}' and '{never.name}' contradict: a lamb that both describe can't be "
            f"served; see {min(always.place, never.place)}"
        )
        yield Problem(max(always.place, never.place), what, "rules-contradict")


def _clash(searched: Searched, always: Rule, never: Rule) -> bool:
    wanted, forbidden = always.always, never.never
    assert wanted is not None
    assert forbidden is not None
    same = (
        (wanted.tag and set(wanted.tag) <= set(forbidden.tag))
        or (wanted.shows and set(wanted.shows) <= set(forbidden.shows))
        or (wanted.says and set(wanted.says) >= set(forbidden.says) and forbidden.says)
    )
    if not same or not _same_pages(searched, always, never):
        return False
    return all(
        searched.telling.mask(finding, always.when[finding]) & searched.telling.mask(finding, conditions)
        for finding, conditions in never.when.items()
        if finding in always.when
    )


def _about_any(searched: Searched, rule: Rule) -> bool:
    """Whether any page is one that the rule speaks of, and has what it forbids."""
    return any(
        page.spoken_of(rule) and (rule.never is None or page.has(rule.never))
        for page in searched.pages.values()
    )


def _same_pages(searched: Searched, one: Rule, other: Rule) -> bool:
    return any(page.spoken_of(one) and page.spoken_of(other) for page in searched.pages.values())
