"""Rules that are gone, or that ask for less than before: of fewer lambs, of fewer pages, or less of each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from triage.compare.compared import LostRule
from triage.compare.scale import Scale
from triage.facts import UNSURE, Value
from triage.guide.model import Condition, Guide
from triage.guide.model_rules import Pages, Rule, Trait
from triage.rules.telling import Telling
from triage.units import convert, same_dimension
from triage.walk import fits


def rules_lost(old: Guide, new: Guide) -> tuple[LostRule, ...]:
    """Return the rules that are gone or ask for less: what forbids first, and what is gone before others."""
    held = _Held(old, new)
    found: list[LostRule] = []
    for name, rule in old.rules.items():
        now = new.rules.get(name)
        how = tuple(dict.fromkeys(held.less(rule, now))) if now else ()
        if how or now is None:
            found.append(LostRule(name, rule.never is not None, rule.because, how))
    return tuple(sorted(found, key=lambda each: (not each.never, bool(each.how))))


class _Held:
    """One rule against what it is now."""

    def __init__(self, old: Guide, new: Guide) -> None:
        self.guides = old, new
        self.scale = Scale(old, new)
        self.telling = Telling(old), Telling(new)

    def less(self, rule: Rule, now: Rule) -> Iterator[str]:
        """Yield each way in which a rule asks for less than before."""
        if (rule.never is None) != (now.never is None):
            yield "it no longer forbids anything" if rule.never else "it no longer asks for anything"
            return
        if rule.never and now.never:
            yield from _forbids_less(rule.never, now.never)
        if rule.always and now.always:
            yield from self._asks_less(rule.always, now.always)
        if _fewer_pages(rule.on, now.on):
            yield "it speaks of fewer pages"
        if now.where_asked and not rule.where_asked:
            yield "it speaks only of lambs that were asked about"
        if any(self._fewer(rule, now, finding) for finding in now.when):
            yield "it speaks of fewer lambs"

    def _asks_less(self, before: Trait, after: Trait) -> Iterator[str]:
        if before.urgency and self.scale.rank(0, before.urgency) < self.scale.rank(1, after.urgency):
            yield "it asks for a less urgent call"
        if set(before.says) - set(after.says):
            yield "it asks for fewer words"
        if (before.tag and not set(after.tag) <= set(before.tag)) or (before.tag and not after.tag):
            yield "other steps will do as well"
        if (before.shows and not set(after.shows) <= set(before.shows)) or (before.shows and not after.shows):
            yield "other figures will do as well"

    def _fewer(self, rule: Rule, now: Rule, finding: str) -> bool:
        """Whether some answer to a finding no longer brings a lamb under the rule."""
        after = now.when[finding]
        before = rule.when.get(finding)
        old, new = (guide.findings.get(finding) for guide in self.guides)
        if new is None:
            return False
        if _unasked(before) and not _unasked(after):
            return True
        if old is None:
            return before is None
        for was, value in self._answers(finding, (*(before or ()), *after)):
            met = before is None or self.telling[0].meets(finding, before, was)
            if (
                met
                and fits(old, was)
                and fits(new, value)
                and not self.telling[1].meets(finding, after, value)
            ):
                return True
        return False

    def _answers(self, finding: str, conditions: Sequence[Condition]) -> Iterator[tuple[Value, Value]]:
        """Yield answers that these conditions tell apart, as the old and as the new guide takes them."""
        old, new = (guide.findings[finding] for guide in self.guides)
        yield from ((choice, choice) for choice in old.choices if choice in new.choices)
        yield UNSURE, UNSURE
        if not (old.measure and new.measure and same_dimension(old.measure, new.measure)):
            return
        edges = {*old.plausible}
        for side, telling in enumerate(self.telling):
            unit = (old, new)[side].measure
            for condition in conditions:
                for number in (condition.above, condition.from_, condition.below, condition.up_to):
                    if number and number in self.guides[side].numbers:
                        edges.add(convert(telling.line(finding, number), unit, old.measure))
        ordered = sorted(edges)
        for value in sorted({*ordered, *((low + high) / 2 for low, high in pairwise(ordered))}):
            yield value, convert(value, old.measure, new.measure)


def _unasked(conditions: tuple[Condition, ...] | None) -> bool:
    return conditions is None or any(each.unasked for each in conditions)


def _forbids_less(before: Trait, after: Trait) -> Iterator[str]:
    if set(before.tag) - set(after.tag):
        yield "it forbids fewer kinds of steps"
    if set(before.shows) - set(after.shows):
        yield "it forbids fewer figures"
    if before.says and (not after.says or set(after.says) - set(before.says)):
        yield "it forbids fewer words"


def _fewer_pages(before: Pages | None, after: Pages | None) -> bool:
    if after is None:
        return False
    if before is None:
        return True
    pairs = ((before.tag, after.tag), (before.shows, after.shows), (before.end, after.end))
    return any(set(was) - set(now) for was, now in pairs)
