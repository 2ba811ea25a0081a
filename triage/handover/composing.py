"""Composing the spoken part within its words, and the lists under it.

The order is the one that works on the phone: who calls, which lamb and why now; what was found, what
was normal, what was not checked, what was given, and what is asked. (Muller, BMJ Open 2018;8:e022202.)
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from triage.handover.gathering import (
    Item,
    Sorted,
    given,
    seen_else,
    sort_findings,
    value_words,
    with_time,
)
from triage.handover.opening import ON_CARD, first_line, reason_of
from triage.handover.situation import GUIDE, Handover, Rest, Situation, Told
from triage.observations import words_of

MOST_WORDS = 150

ASKS = "What do I do now, and should you see it?"
"""Asked where no urgency has been reached yet."""

READ_BACK = (
    "Let me read that back to you.",
    "Say each amount, how it is given, and how often. Wait for a yes.",
    "Ask: when do I phone you again, and on which number?",
)
TO_WRITE = (
    "The vet's name",
    "Time",
    "What to do",
    "What to give, how much, how, how often",
    "Phone again when",
)


@dataclass(frozen=True)
class _Limits:
    """How much of each part is spoken; the narrower ones serve when words run out."""

    found: int
    readings: int
    words: int
    normal: int
    other: int
    given: int


_STEPS = (
    _Limits(8, 3, 14, 9, 4, 4),
    _Limits(8, 3, 12, 9, 2, 4),
    _Limits(8, 2, 10, 0, 2, 3),
    _Limits(6, 2, 8, 0, 0, 3),
    _Limits(4, 1, 8, 0, 0, 2),
    _Limits(3, 1, 6, 0, 0, 2),
    _Limits(1, 1, 5, 0, 0, 1),
)


def handover_of(situation: Situation) -> Handover:
    """Return the handover of a situation."""
    found = sort_findings(situation)
    spoken = next(
        (
            told
            for limits in _STEPS
            if words_in(told := tuple(_spoken(situation, found, limits))) <= MOST_WORDS
        ),
        (),
    )
    return Handover(
        spoken or tuple(_spoken(situation, found, _STEPS[-1])),
        tuple(_whole(item, situation) for item in found.found),
        tuple(_whole(item, situation) for item in found.normal),
        tuple(Told(finding.label, (rest,)) for finding, rest in found.not_checked),
        tuple(_whole(item, situation) for item in found.other),
        tuple(Told(with_time(words, at, situation), (rest,)) for at, words, rest in given(situation)),
        tuple(_seen(situation)),
        READ_BACK,
        TO_WRITE,
    )


def words_in(told: Sequence[Told]) -> int:
    """Return how many words are spoken."""
    return sum(len(each.text.split()) for each in told)


def _spoken(situation: Situation, found: Sorted, limits: _Limits) -> Iterator[Told]:
    yield first_line(situation, found, limits.words)
    yield from _list("Found", _unsaid(found.found, situation), situation, limits, limits.found)
    yield from _list("Also", _unsaid(found.other, situation), situation, limits, limits.other)
    yield from _since(situation, limits)
    if found.normal:
        shown = [item.finding.label.lower() for item in found.normal[: limits.normal]]
        text = ", ".join(shown) if shown else f"{len(found.normal)} other things"
        more = len(found.normal) - len(shown)
        text += f" and {more} more" if shown and more else ""
        yield Told(f"Looked at and normal: {text}.", _rests(found.normal))
    if found.not_checked:
        # Never shortened: what nobody looked at is what a vet must ask.
        labels = ", ".join(finding.label.lower() for finding, _ in found.not_checked)
        yield Told(f"Not checked: {labels}.", tuple(rest for _, rest in found.not_checked))
    else:
        yield Told("Nothing that you would ask was left unchecked.", (GUIDE,))
    yield _given(situation, limits)
    yield _asked(situation)


def _unsaid(items: tuple[Item, ...], situation: Situation) -> tuple[Item, ...]:
    """Return what the first line has not said already: the lamb's own data, and the reason for the call."""
    said = {*ON_CARD, reason_of(situation)}
    return tuple(item for item in items if item.finding.name not in said or len(item.readings) > 1)


def _since(situation: Situation, limits: _Limits) -> Iterator[Told]:
    """Yield the last of each kind that was written down of how the lamb is and what it passed."""
    last = {seen.kind: seen for seen in situation.observations if seen.kind in ("passed", "manner")}
    for seen in last.values():
        words = _cut(words_of(seen, situation.walk.guide, situation.system), limits.words)
        yield Told(f"{with_time(words, seen.at, situation)}.", (seen,))


def _list(
    label: str, items: tuple[Item, ...], situation: Situation, limits: _Limits, most: int
) -> Iterator[Told]:
    """Yield one line for a list of findings, the rest counted."""
    if not items or not most:
        return
    shown = items[:most]
    words = "; ".join(_short(item, situation, limits) for item in shown)
    more = f"; and {len(items) - most} more" if len(items) > most else ""
    yield Told(f"{label}: {words}{more}.", _rests(items))


def _short(item: Item, situation: Situation, limits: _Limits) -> str:
    readings = item.readings[-limits.readings :]
    values = ", then ".join(_cut(value_words(item, each, situation), limits.words) for each in readings)
    return f"{item.finding.label.lower()}: {values}"


def _cut(text: str, most: int) -> str:
    """Return at most so many words, the time at the end among them, with a sign that some are missing."""
    words = text.split()
    if len(words) <= most:
        return text
    timed = words[-2:] if words[-2] == "at" else []
    return " ".join([*words[: most - len(timed)], "..", *timed])


def _given(situation: Situation, limits: _Limits) -> Told:
    entries = given(situation)
    if not entries:
        return Told("Nothing has been given, as far as is written down.", (GUIDE,))
    shown = entries[-limits.given :]
    more = len(entries) - len(shown)
    words = "; ".join(_cut(with_time(words, at, situation), limits.words) for at, words, _ in shown)
    text = f"Given or done: {f'{more} before, then ' if more else ''}{words}."
    return Told(text, tuple(rest for _, _, rest in entries))


def _asked(situation: Situation) -> Told:
    urgency = situation.walk.state.urgency
    asks = situation.walk.guide.urgency(urgency).asks if urgency else ""
    return Told(asks or ASKS, (GUIDE,))


def _whole(item: Item, situation: Situation) -> Told:
    values = "; ".join(value_words(item, reading, situation) for reading in item.readings)
    return Told(f"{item.finding.label}: {values}", tuple(reading.rest for reading in item.readings))


def _seen(situation: Situation) -> Iterator[Told]:
    for seen in seen_else(situation):
        words = words_of(seen, situation.walk.guide, situation.system)
        yield Told(with_time(words, seen.at, situation), (seen,))


def _rests(items: tuple[Item, ...]) -> tuple[Rest, ...]:
    return tuple(reading.rest for item in items for reading in item.readings)
