"""Safety: the rules hold in every state that real answers can reach, and each rule can fire."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from triage.check.search.claims import Claim, Part, chosen, has
from triage.check.search.live import Live
from triage.check.search.searched import Searched
from triage.check.search.states import explore, holds, with_answer
from triage.check.witness import turn_for_the_worse, walk_to
from triage.guide.model import Act, Ask, End, Rule
from triage.problems import Problem


def broken(searched: Searched) -> Iterator[Problem]:
    """Every claim of a rule, a page or a sum that some lamb breaks, with the shortest such walk."""
    for claim, state in searched.states.broken.items():
        what = claim.what + turn_for_the_worse(searched, state)
        yield Problem(claim.place, what, claim.rule, walk=walk_to(searched, state))


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
    """Return the rules whose `when` holds on some walk, looking again with everything kept in mind.

    The first search forgets what no page ahead asks about; a rule that did not fire in it is searched
    for once more with its own findings kept to the end.
    """
    rules = {rule.name: rule for rule in searched.guide.rules.values()}
    fired = {name for name, rule in rules.items() if not rule.when}
    fired |= _holding(searched, [rule for name, rule in rules.items() if name not in fired])
    for name in sorted(rules.keys() - fired):
        fired |= _holding(_kept_in_mind(searched, rules[name]), [rules[name]])
    return fired


def _kept_in_mind(searched: Searched, rule: Rule) -> Searched:
    ways = searched.states.ways
    parts = tuple(_parts(searched, rule))
    claims = [
        Claim(name, parts, "", "", node.place)
        for name, node in searched.guide.nodes.items()
        if isinstance(node, Act | End)
    ]
    states = explore(ways, Live(ways, claims), ())
    return Searched(searched.guide, searched.telling, searched.claims, states)


def _holding(searched: Searched, rules: list[Rule]) -> set[str]:
    """Return the names of the rules whose `when` comes true by some answer."""
    states, ways = searched.states, searched.states.ways
    wanted: dict[str, list[tuple[int, int, bool]]] = {
        rule.name: [
            (ways.finding_at[part.finding], part.among, part.unasked) for part in _parts(searched, rule)
        ]
        for rule in rules
    }
    by_finding: dict[int, set[str]] = {}
    for name, parts in wanted.items():
        for finding, _, _ in parts:
            by_finding.setdefault(finding, set()).add(name)
    found: set[str] = set()
    for state, node in searched.asked():
        finding = ways.finding_at[node.finding]
        open_ones = by_finding.get(finding, set()) - found
        for edge in states.edges[state] if open_ones else ():
            known = with_answer(states.known[state], finding, edge.answer)
            for name in open_ones:
                if all(holds(known, *part) for part in wanted[name]):
                    found.add(name)
    return found


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
        chosen(rule, node) and (rule.never is None or has(node, rule.never))
        for node in searched.guide.nodes.values()
        if not isinstance(node, Ask)
    )


def _same_pages(searched: Searched, one: Rule, other: Rule) -> bool:
    return any(chosen(one, node) and chosen(other, node) for node in searched.guide.nodes.values())
