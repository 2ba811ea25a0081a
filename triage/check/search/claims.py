"""Claims: what must not be true of any lamb at a page, from rules, from `for`, and from the sums."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from triage.amounts import AMOUNTS
from triage.guide.model import Act, Condition, End, Guide
from triage.guide.model_rules import Rule
from triage.problems import Place
from triage.rules.pages import Page
from triage.rules.telling import Telling

NO_PLACE = Place("")

URGENCY = ""
"""The name under which the urgency of a walk is kept among what is known; its values are ranks."""


@dataclass(frozen=True)
class Part:
    """One thing known of the lamb: it is among these answers (bits), or, with `unasked`, not known."""

    finding: str
    among: int
    unasked: bool = False

    def holds(self, known: Mapping[str, int]) -> bool:
        """Whether it is true of a lamb of whom this is known: findings, each with the place of its answer."""
        answer = known.get(self.finding)
        return self.unasked if answer is None else bool(self.among >> answer & 1)


class Claim(NamedTuple):
    """A page is at fault for every lamb of which all the parts are true."""

    node: str
    parts: tuple[Part, ...]
    rule: str
    what: str = ""
    """What is wrong; of a rule it is told only when it is broken, by `told`."""
    place: Place = NO_PLACE

    def open_at(self, rank: int) -> bool:
        """Whether a walk of this rank of urgency can still break it."""
        return all(part.among >> rank & 1 for part in self.parts if part.finding == URGENCY)


def claims_of(guide: Guide, telling: Telling, pages: Mapping[str, Page]) -> Iterator[Claim]:
    """Yield every claim that a guide makes of its pages."""
    for page in pages.values():
        yield from _meant_for(page.node, telling)
        yield from _sums(page)
    by_rank = {rank: [page for page in pages.values() if _later(guide, page, rank)] for rank in _ranks(guide)}
    for rule in guide.rules.values():
        parts = _parts(guide, telling, rule)
        later = rule.always is not None and rule.always.urgency
        for page in by_rank[guide.rank(later)] if later else pages.values():
            if page.spoken_of(rule) if later else _can_break(rule, page):
                yield Claim(page.node.name, parts, rule.name)


def _ranks(guide: Guide) -> range:
    return range(len(guide.front.urgencies) + 1)


def _later(guide: Guide, page: Page, rank: int) -> bool:
    """Whether a page is an end that is less urgent than a rank."""
    return isinstance(page.node, End) and guide.rank(page.node.urgency) > rank


def told(guide: Guide, pages: Mapping[str, Page], claim: Claim) -> tuple[Place, str]:
    """Return where a broken claim is wrong, and what is."""
    if claim.what:
        return claim.place, claim.what
    rule, page = guide.rules[claim.rule], pages[claim.node]
    return _fault(rule, page.node), _broken(rule, page)


def _meant_for(node: Act | End, telling: Telling) -> Iterator[Claim]:
    for finding, conditions in node.for_.items():
        every = (1 << len(telling.values[finding])) - 1
        others = every & ~telling.mask(finding, conditions)
        what = f"'{node.name}' is not for this lamb: see 'for', {finding}"
        wrong = Part(finding, others, unasked=not any(each.unasked for each in conditions))
        yield Claim(node.name, (wrong,), "not-for-this-lamb", what, conditions[0].place)


def _sums(page: Page) -> Iterator[Claim]:
    name = page.node.name
    for amount in [AMOUNTS[shown] for shown in page.shown if shown in AMOUNTS]:
        for finding in amount.needs:
            what = (
                f"{{{amount.name}}} needs '{finding}', which this walk to '{name}' never asks; ask it first"
            )
            part = Part(finding, 0, unasked=True)
            yield Claim(name, (part,), "unknown-finding", what, page.shown[amount.name])


def _can_break(rule: Rule, page: Page) -> bool:
    """Whether a rule can be broken at a page, as far as the page alone tells."""
    if not page.spoken_of(rule):
        return False
    if rule.never:
        return page.has(rule.never)
    return rule.always is not None and not page.has(rule.always)


def _parts(guide: Guide, telling: Telling, rule: Rule) -> tuple[Part, ...]:
    parts = [
        Part(finding, telling.mask(finding, conditions), _or_unasked(rule, conditions))
        for finding, conditions in rule.when.items()
    ]
    if rule.always and rule.always.urgency:
        parts.append(Part(URGENCY, _ranks_after(guide, guide.rank(rule.always.urgency))))
    return tuple(parts)


def _or_unasked(rule: Rule, conditions: tuple[Condition, ...]) -> bool:
    """Whether a rule counts a finding that was not asked as if it held: not knowing is no excuse."""
    return (rule.never is not None and not rule.where_asked) or any(each.unasked for each in conditions)


def _ranks_after(guide: Guide, rank: int) -> int:
    """Return as bits the ranks of urgency that are less urgent than this one, none at all included."""
    return sum(1 << each for each in range(rank + 1, len(guide.front.urgencies) + 1))


def _broken(rule: Rule, page: Page) -> str:
    trait = rule.never or rule.always
    assert trait is not None
    what = (
        "/".join(trait.tag)
        or "/".join(f"{{{name}}}" for name in trait.shows)
        or " and ".join(f"'{word}'" for word in page.unsaid(trait.says) or trait.says)
        or f"'{trait.urgency}' or more urgent"
    )
    lead = f"'{page.node.name}' has {what}" if rule.never else f"'{page.node.name}' lacks {what}"
    return f"{lead}, against {rule.place}: {rule.because}"


def _fault(rule: Rule, node: Act | End) -> Place:
    """Return where the page breaks the rule: the step with the forbidden tag, or the page."""
    steps = node.steps if isinstance(node, Act) else node.do
    forbidden = set(rule.never.tag) if rule.never else set()
    return next((step.place for step in steps if forbidden & set(step.tag)), node.place)
