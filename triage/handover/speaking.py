"""The spoken part within its words.

The order is the one that works on the phone: who calls, which lamb and why now; what was found, what
was normal, what was not checked, what was given, and what is asked. (Muller, BMJ Open 2018;8:e022202.)
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, fields, replace
from functools import cache
from typing import TypeVar

from triage.casebook.rows import Observation
from triage.handover.gathering import DAY, Item, Sorted, well_again
from triage.handover.given import Gift, gathered
from triage.handover.opening import ON_CARD, first_line, reason_of
from triage.handover.situation import FORM, GUIDE, Rest, Situation, Told, told
from triage.handover.wording import LONGEST_ANSWER, at_words, cut, gifts_words, readings_words, small
from triage.observations import words_of

T = TypeVar("T")

MOST_WORDS = 150

ASKS = "What do I do now, and should you see it?"
"""Asked where no urgency has been reached yet."""

NOTED = ("manner", "passed")
"""Kinds of observations whose last one is told: how it is, and what it passed."""


@dataclass(frozen=True)
class Limits:
    """How many of each are said; all others are counted and stand in the lists below."""

    found: int
    again: int
    """Things found that are normal by their last reading."""
    noted: int
    other: int
    normal: int
    into: int
    """Things given by mouth or needle, each told once however often it was given."""
    done: int
    """What was done and did not go in."""
    said: int = 1
    """Whether the vet's last words are told back."""
    readings: int = 3
    """Readings of one finding."""
    free: int = 12
    """Words of a text that was typed freely."""
    ways: int = 1
    """Whether it is told how a feed went down, and who ordered a treatment."""


@dataclass(frozen=True)
class Parts:
    """All that could be said, in the order in which it is said."""

    found: tuple[Item, ...]
    again: tuple[Item, ...]
    noted: tuple[Observation, ...]
    other: tuple[Item, ...]
    normal: tuple[Item, ...]
    into: tuple[tuple[Gift, ...], ...]
    done: tuple[tuple[Gift, ...], ...]
    said: tuple[Observation, ...]


GIVES_WAY = (
    ("other", 0),
    ("normal", 3),
    ("said", 0),
    ("readings", 2),
    ("normal", 0),
    ("done", 0),
    ("readings", 1),
    ("free", 6),
    ("again", 0),
    ("found", 3),
    ("noted", 1),
    ("ways", 0),
    ("free", 3),
    ("found", 1),
    ("noted", 0),
    ("found", 0),
    ("into", 0),
)
"""What gives way first where the words run out, and down to how many. Nothing stands here of what was not
checked and of why now; what went in by mouth or needle comes last of all."""


def spoken(situation: Situation, found: Sorted, gifts: tuple[Gift, ...]) -> tuple[Told, ...]:
    """Return what is said: all of it where there is room, else as much as the words allow."""
    parts = _parts(situation, found, gifts)
    limits = whole = Limits(
        *(len(getattr(parts, part.name)) for part in fields(parts) if part.name != "said")
    )

    @cache
    def said(limits: Limits) -> tuple[Told, ...]:
        return tuple(_lines(situation, found, parts, limits))

    if words_in(said(whole)) <= MOST_WORDS:
        return said(whole)
    for name, least in GIVES_WAY:
        while words_in(said(limits)) > MOST_WORDS and getattr(limits, name) > least:
            limits = replace(limits, **{name: getattr(limits, name) - 1})
    return said(_filled(limits, whole, said))


def _filled(limits: Limits, whole: Limits, said: Callable[[Limits], Sequence[Told]]) -> Limits:
    """Return limits with what still has room, as the last to give way may have left more than was needed."""
    for name in dict.fromkeys(name for name, _ in reversed(GIVES_WAY)):
        while getattr(limits, name) < getattr(whole, name):
            wider = replace(limits, **{name: getattr(limits, name) + 1})
            if words_in(said(wider)) > MOST_WORDS:
                break
            limits = wider
    return limits


def words_in(lines: Sequence[Told]) -> int:
    """Return how many words are spoken."""
    return sum(len(line.text.split()) for line in lines)


def _parts(situation: Situation, found: Sorted, gifts: tuple[Gift, ...]) -> Parts:
    groups = gathered(gifts)
    reason = reason_of(situation, found)
    since = situation.now.moment - DAY
    lately = [seen for seen in situation.observations if seen.at >= since]
    unsaid = [item for item in found.found if item.finding.name != reason or len(item.readings) > 1]
    return Parts(
        tuple(item for item in unsaid if not well_again(situation, item)),
        tuple(item for item in unsaid if well_again(situation, item)),
        tuple(seen for kind in NOTED if (seen := _last(lately, kind))),
        tuple(item for item in found.other if _unsaid(item, gifts, (*ON_CARD, reason))),
        tuple(item for item in found.normal if _unsaid(item, gifts, ())),
        tuple(group for group in groups if group[0].into),
        tuple(group for group in groups if not group[0].into),
        tuple(seen for seen in [_last(lately, "vet-said")] if seen),
    )


def _unsaid(item: Item, gifts: tuple[Gift, ...], said: tuple[str, ...]) -> bool:
    """Whether no other line tells a finding: neither the first one nor that of what was given."""
    told_as_given = all(any(rest is gift.rest for gift in gifts) for rest in item.rests)
    return item.finding.name not in said and not told_as_given


def _last(seen: Sequence[Observation], kind: str) -> Observation | None:
    return max((each for each in seen if each.kind == kind), key=lambda each: each.at, default=None)


def _lines(situation: Situation, found: Sorted, parts: Parts, limits: Limits) -> Iterator[Told]:
    """Yield the lines that these limits leave."""

    def item(each: Item) -> str:
        more = len(each.readings) - limits.readings
        before = f", and {more} before" if more > 0 else ""
        return readings_words(each, each.readings[: limits.readings], situation) + before

    def normal(each: Item) -> str:
        measured = bool(each.finding.measure)
        return readings_words(each, each.readings[:1], situation) if measured else small(each.finding.label)

    def noted(each: Observation) -> str:
        words = cut(words_of(each, situation.walk.guide, situation.system), LONGEST_ANSWER)
        return f"{small(words)}{at_words(each.at, situation)}"

    yield first_line(situation, found, limits.free)
    yield from _list("Found", parts.found, limits.found, item)
    yield from _list("Normal again", parts.again, limits.again, item)
    yield from _list("Noted", parts.noted, limits.noted, noted)
    if limits.other:
        yield from _list("Also", parts.other, limits.other, item)
    yield from _list("Looked at, normal", parts.normal, limits.normal, normal)
    yield from _not_checked(found, situation)
    yield from _given(situation, parts, limits)
    if limits.said:
        yield from (_said(seen, situation, limits.free) for seen in parts.said)
    yield _asked(situation)


def _list(label: str, things: Sequence[T], most: int, words: Callable[[T], str]) -> Iterator[Told]:
    """Yield one line for a list of things, those that have no room counted."""
    if not things:
        return
    said = [words(each) for each in things[:most]]
    more = len(things) - most
    if more > 0:
        said.append(f"{'and ' if said else ''}{more} {'more' if said else _things(more)}, below")
    yield told(f"{label}: {'; '.join(said)}.", (rest for each in things for rest in _rests(each)))


def _things(number: int) -> str:
    return "thing" if number == 1 else "things"


def _rests(thing: object) -> tuple[Rest, ...]:
    """Return what one thing rests on, the guide's own words among it."""
    match thing:
        case Item():
            return (GUIDE, *thing.rests)
        case Observation():
            return (thing,)
        case _:
            assert isinstance(thing, tuple)
            return (GUIDE, *(gift.rest for gift in thing))


def _not_checked(found: Sorted, situation: Situation) -> Iterator[Told]:
    """Yield what was not looked at, always in full: it is what a vet must ask."""
    if found.not_checked:
        labels = ", ".join(small(finding.label) for finding, _ in found.not_checked)
        yield told(f"Not checked: {labels}.", (GUIDE, *(rest for _, rest in found.not_checked)))
    elif situation.walk.guide.front.vet_asks:
        yield told("Not checked: nothing that a vet would ask.", (GUIDE,))


def _given(situation: Situation, parts: Parts, limits: Limits) -> Iterator[Told]:
    def words(group: tuple[Gift, ...]) -> str:
        return gifts_words(group, situation, limits.free, bool(limits.ways))

    if not parts.into:
        yield told("Given: nothing that is written down.", (FORM,))
    yield from _list("Given", parts.into, limits.into, words)
    yield from _list("Done", parts.done, limits.done, words)


def _said(seen: Observation, situation: Situation, free: int) -> Told:
    """Return what the vet said the last time, as the keeper wrote it down."""
    label, _, words = words_of(seen, situation.walk.guide, situation.system).partition(": ")
    return told(f"{label}{at_words(seen.at, situation)}: {cut(words, free)}", (seen,))


def _asked(situation: Situation) -> Told:
    urgency = situation.walk.state.urgency
    asks = situation.walk.guide.urgency(urgency).asks if urgency else ""
    return told(asks, (GUIDE,)) if asks else told(ASKS, (FORM,))
