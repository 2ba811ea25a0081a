"""Claims: what must not be true of any lamb at a page, from rules, from `for`, and from the sums."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from triage.amounts import AMOUNTS
from triage.check.search.telling import Telling
from triage.guide.model import PLACEHOLDER, Act, Ask, Condition, End, Guide, Node, Rule, Trait
from triage.guide.texts import texts_of
from triage.problems import Place

URGENCY = ""
"""The name under which the urgency of a walk is kept among what is known; its values are ranks."""


@dataclass(frozen=True)
class Part:
    """One thing known of the lamb: it is among these answers (bits), or, with `unasked`, not known."""

    finding: str
    among: int
    unasked: bool = False


@dataclass(frozen=True)
class Claim:
    """A page is at fault for every lamb of which all the parts are true."""

    node: str
    parts: tuple[Part, ...]
    rule: str
    what: str
    place: Place

    def open_at(self, rank: int) -> bool:
        """Whether a walk of this rank of urgency can still break it."""
        return all(part.among >> rank & 1 for part in self.parts if part.finding == URGENCY)


def claims_of(guide: Guide, telling: Telling) -> Iterator[Claim]:
    """Yield every claim that a guide makes of its pages."""
    for name, node in guide.nodes.items():
        if not isinstance(node, Ask):
            yield from _meant_for(name, node, telling)
            yield from _sums(name, node)
    for rule in guide.rules.values():
        parts = _parts(guide, telling, rule)
        for node in guide.nodes.values():
            if not isinstance(node, Ask) and _can_break(guide, rule, node):
                yield Claim(node.name, parts, rule.name, _broken(guide, rule, node), _fault(rule, node))


def _meant_for(name: str, node: Act | End, telling: Telling) -> Iterator[Claim]:
    for finding, conditions in node.for_.items():
        every = (1 << len(telling.values[finding])) - 1
        others = every & ~telling.mask(finding, conditions)
        what = f"'{name}' is not for this lamb: see 'for', {finding}"
        wrong = Part(finding, others, unasked=not any(each.unasked for each in conditions))
        yield Claim(name, (wrong,), "not-for-this-lamb", what, conditions[0].place)


def _sums(name: str, node: Act | End) -> Iterator[Claim]:
    shown = _shown(node)
    for amount in AMOUNTS.values():
        for finding in amount.needs if amount.name in shown else ():
            what = (
                f"{{{amount.name}}} needs '{finding}', which this walk to '{name}' never asks; ask it first"
            )
            yield Claim(name, (Part(finding, 0, unasked=True),), "unknown-finding", what, shown[amount.name])


def _shown(node: Act | End) -> dict[str, Place]:
    """Return the numbers and sums that a page shows, each with the place of its text."""
    return {name: text.place for text in texts_of(node) for name in PLACEHOLDER.findall(text.text)}


def chosen(rule: Rule, node: Node) -> bool:
    """Whether a rule speaks of a page: those of `on`, or else every act and end, or every end."""
    if isinstance(node, Ask):
        return False
    on = rule.on
    if on is None:
        return rule.never is not None or isinstance(node, End)
    return (
        bool(set(on.tag) & tags_of(node))
        or bool(set(on.shows) & _shown(node).keys())
        or (isinstance(node, End) and node.urgency in on.end)
    )


def _can_break(guide: Guide, rule: Rule, node: Act | End) -> bool:
    """Whether a rule can be broken at a page, as far as the page alone tells."""
    if not chosen(rule, node):
        return False
    if rule.never:
        return has(node, rule.never)
    assert rule.always is not None
    if rule.always.urgency:
        return isinstance(node, End) and guide.rank(node.urgency) > guide.rank(rule.always.urgency)
    return not has(node, rule.always)


def has(node: Act | End, trait: Trait) -> bool:
    """Whether a page has a trait, urgency left aside: any of the tags or sums, or all of the words."""
    if trait.tag:
        return bool(set(trait.tag) & tags_of(node))
    if trait.shows:
        return bool(set(trait.shows) & _shown(node).keys())
    return bool(trait.says) and not _unsaid(node, trait.says)


def _unsaid(node: Act | End, words: tuple[str, ...]) -> list[str]:
    """Return the words that no text of a page says."""
    said = [passage.text.lower() for passage in texts_of(node)]
    return [word for word in words if not any(word.lower() in text for text in said)]


def tags_of(node: Act | End) -> set[str]:
    """Return every tag of a page's steps."""
    return {tag for step in (node.steps if isinstance(node, Act) else node.do) for tag in step.tag}


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


def _broken(guide: Guide, rule: Rule, node: Act | End) -> str:
    trait = rule.never or rule.always
    assert trait is not None
    what = (
        "/".join(trait.tag)
        or "/".join(f"{{{name}}}" for name in trait.shows)
        or " and ".join(f"'{word}'" for word in _unsaid(node, trait.says) or trait.says)
        or f"'{trait.urgency}' or more urgent"
    )
    lead = f"'{node.name}' has {what}" if rule.never else f"'{node.name}' lacks {what}"
    return f"{lead}, against {rule.place}: {rule.because}"


def _fault(rule: Rule, node: Act | End) -> Place:
    """Return where the page breaks the rule: the step with the forbidden tag, or the page."""
    steps = node.steps if isinstance(node, Act) else node.do
    forbidden = set(rule.never.tag) if rule.never else set()
    return next((step.place for step in steps if forbidden & set(step.tag)), node.place)
