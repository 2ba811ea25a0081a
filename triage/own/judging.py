"""What an own folder may do to the shipped guide: raise and add; never lower or drop, unless a vet signed it.

The proof holds the sum of both to every rule. This holds the sum to the shipped guide: that no lamb is called
less urgent, that no caution is gone, and that what the proof itself goes by is still there. A vet's signature
over a statement as it now is, in the folder's own `reviews`, allows just that change.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from triage.guide.model import End, Guide
from triage.guide.model_rules import Rule
from triage.guide.rewording import ill_fitting, read_words, reworded
from triage.own.framing import frame_lost, swapped
from triage.own.losing import Losing, not_on, routing, same_number, with_signed, within
from triage.own.places import place_in, places_in
from triage.problems import Place, Problem
from triage.review.sittings import read_sittings
from triage.review.statements import seals_of, statements_of, values_of
from triage.walk import Walk

if TYPE_CHECKING:
    from triage.compare import Comparison

UNLESS = "a vet has to sign this very change first: triage sign"

PAGES = ("node", "finding", "topic")
"""Kinds of statements that are pages, or stand on them."""

PARTS = (
    ("page", "node", "nodes"),
    ("question", "finding", "findings"),
    ("topic", "topic", "topics"),
    ("word", "term", "glossary"),
    ("how-to", "how-to", "how_tos"),
    ("duty", "duty", "duties"),
    ("law", "law", "laws"),
    ("item", "item", "cupboard"),
)
"""How each part of a guide is called, its kind of statement, and where the guide holds it."""


def judged(base: Guide, whole: Guide, own: Path) -> list[Problem]:
    """Return everything that an own folder does and may not do. Both guides are in the shipped words."""
    words, problems = read_words(own)
    if words:
        problems = (*problems, *ill_fitting(whole, words), *swapped(whole, words))
    sittings, ill = read_sittings(own)
    seals = seals_of(statements_of(reworded(whole, words)))
    signed = {
        key
        for sitting in sittings
        if sitting.is_vet
        for key, seal in sitting.signed.items()
        if seals.get(key) == seal
    }
    judge = _Judge(base, whole, frozenset(signed))
    # A sitting that was changed by hand only counts for nothing: that is no fault of the guidance.
    return sorted({*problems, *(replace(each, weight="warning") for each in ill), *judge.all()})


@dataclass(frozen=True)
class _Judge:
    base: Guide
    whole: Guide
    signed: frozenset[str]

    def all(self) -> Iterator[Problem]:
        yield from self.frame()
        yield from self.rules()
        yield from self.numbers()
        yield from self.parts()
        yield from self.situations()

    def unsigned(self, key: str, place: Place, what: str, rule: str) -> Iterator[Problem]:
        """Yield a problem with a change, unless a vet has signed the statement as it now is."""
        if key not in self.signed:
            yield Problem(place, f"{what}; {UNLESS}", rule)

    def frame(self) -> Iterator[Problem]:
        """What the proof goes by may be added to, and nothing of it taken away; nobody can sign that."""
        for what in sorted(frame_lost(self.base.front, self.whole.front)):
            yield Problem(
                place_in(self.whole.front), f"your own folder changes '{what}', which it may not", "own-frame"
            )

    def rules(self) -> Iterator[Problem]:
        for name, rule in self.base.rules.items():
            now = self.whole.rules.get(name)
            if now is None or _meant(now) != _meant(rule):
                place = place_in(now) if now else Place("own/rules.yaml")
                what = f"the rule '{name}' is another one than the shipped guide has"
                yield from self.unsigned(f"rule/{name}", place, what, "own-rule")

    def numbers(self) -> Iterator[Problem]:
        for name, number in self.base.numbers.items():
            now = self.whole.numbers[name]
            if now == number:
                continue
            if not same_number(number, now) or not number.published.items() <= now.published.items():
                what = f"'{name}' may get another value or note, and more that is published; all else stays"
                yield Problem(place_in(now), what, "own-frame")
            elif now.value != number.value and (now.value < number.value) == (number.safer == "higher"):
                what = f"'{name}' is {now.value:g}, off the safer side of {number.value:g} {number.unit}"
                yield from self.unsigned(f"number/{name}", place_in(now), what, "own-number")
            elif not within(number, now.value):
                what = f"'{name}' is {now.value:g}, outside what the shipped guide names as published"
                yield from self.unsigned(f"number/{name}", place_in(now), what, "own-number")

    def parts(self) -> Iterator[Problem]:
        """Pages, questions, techniques and all else that people read: added to, and nothing taken away."""
        losing = Losing(self.base, self.whole)
        for called, kind, held in PARTS:
            for name, part in getattr(self.base, held).items():
                mine = getattr(self.whole, held).get(name)
                for lost in losing.of(part, mine) if mine != part else ():
                    what = f"the {called} '{name}' loses {lost}"
                    key, place = f"{kind}/{name}", place_in(mine)
                    if kind in PAGES:
                        yield from self.unsigned(key, place, what, "own-page")
                    else:
                        yield from self.unsigned(key, place, what, "own-caution")

    def situations(self) -> Iterator[Problem]:
        """Where lambs come to, held against the shipped guide with what a vet has signed already in it."""
        from triage.compare import compare

        before = with_signed(self.base, self.whole, self.signed)
        came = compare(before, self.whole)
        for each in came.less_urgent:
            what = (
                f"a lamb that came to '{each.old_end}' ({each.old_urgency}) comes to "
                f"'{each.new_end}' ({each.new_urgency}), which is less urgent"
            )
            yield self._at(each.met, each.new_end, what, "own-less-urgent")
        if not came.complete:
            what = "your own folder changes so much that not every situation could be compared; change less"
            yield Problem(Place("own/guide.yaml"), what, "own-too-much")
        if any(routing(node) != routing(self.whole.nodes.get(name)) for name, node in before.nodes.items()):
            # A number that was moved to its safer side sends lambs elsewhere, and rightly.
            yield from self._led(before, compare(replace(before, numbers=self.whole.numbers), self.whole))

    def _led(self, before: Guide, came: Comparison) -> Iterator[Problem]:
        """Yield what a lamb misses that is sent another way without being called more urgent."""
        for each in came.elsewhere:
            old, new = before.nodes.get(each.old_end), self.whole.nodes.get(each.new_end)
            if not (isinstance(old, End) and isinstance(new, End)):
                continue
            if self.whole.rank(new.urgency) < before.rank(old.urgency):
                continue
            for lost in not_on(old, new):
                what = f"a lamb that came to '{each.old_end}' comes to '{each.new_end}' and misses {lost}"
                yield self._at(each.met, each.new_end, what, "own-page")
        for did in came.on_the_way:
            ends = Walk(before, did.old_walk).state.urgency, Walk(self.whole, did.new_walk).state.urgency
            graver = self.whole.rank(ends[1]) < before.rank(ends[0])
            if did.old_act and not did.new_act and not graver:
                what = f"a lamb for which '{did.old_act}' was done goes without it, or has it less often"
                yield self._at(did.met, did.old_act, what, "own-page")

    def _at(self, met: frozenset[str], node: str, what: str, rule: str) -> Problem:
        """Return a problem at the first place in the own folder that such a lamb meets."""
        values = values_of(self.whole)
        met_here = [values[key] for key in sorted(met - self.signed) if key in values]
        mine = next((place for value in met_here for place in places_in(value)), None)
        place = mine or place_in(next(iter(met_here), self.whole.nodes.get(node)))
        return Problem(place, f"{what}; {UNLESS}", rule)


def _meant(rule: Rule) -> object:
    return rule.never, rule.always, rule.on, rule.when, rule.where_asked
