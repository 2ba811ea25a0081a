"""Composing a handover: the spoken part, and everything in full under it."""

from __future__ import annotations

from collections.abc import Iterator

from triage.casebook.rows import Observation
from triage.handover.gathering import MEASURED, Item, Sorted, begun, sort_findings
from triage.handover.given import GIVEN, given
from triage.handover.situation import FORM, GUIDE, Handover, Situation, Told, told
from triage.handover.speaking import spoken
from triage.handover.wording import at_words, gift_words, readings_words
from triage.observations import words_of
from triage.page.inert import inert

NONE_MISSING = "Nothing that a vet would ask"
READ_BACK = "Let me read that back to you"
FORMS = (
    "Say each amount, how it is given, and how often. Wait for a yes.",
    "Ask: when do I phone you again, and on which number?",
)
LONG_ORDERS = ("What to do", "What to give: how much, how, how often")
"""What needs more than one line to be written down."""

TO_WRITE = (
    "Who spoke, and when",
    *LONG_ORDERS,
    "What not to do",
    "Phone again when, and on which number",
)
LONGEST = 10_000
"""Signs of one text in the lists: nothing is cut that anyone would type."""


def handover_of(situation: Situation) -> Handover:
    """Return the handover of a situation."""
    found, gifts = sort_findings(situation), given(situation)
    return Handover(
        spoken(situation, found, gifts),
        tuple(_item(item, situation) for item in found.found),
        tuple(_item(item, situation) for item in found.normal),
        tuple(_not_checked(found, situation)),
        tuple(_item(item, situation) for item in found.other),
        tuple(told(_capital(gift_words(gift, situation, LONGEST)), (GUIDE, gift.rest)) for gift in gifts),
        tuple(_item(Item(finding, (reading,)), situation) for finding, reading in found.before),
        tuple(_seen(situation)),
        tuple(_here(situation)),
        tuple(_read_back(situation)),
        tuple(told(line, (FORM,)) for line in TO_WRITE),
    )


def _item(item: Item, situation: Situation) -> Told:
    return told(_capital(readings_words(item, item.readings, situation)), (GUIDE, *item.rests))


def _not_checked(found: Sorted, situation: Situation) -> Iterator[Told]:
    """Yield what was not looked at; that it is nothing is said too, as silence could mean anything."""
    for finding, rest in found.not_checked:
        yield told(finding.label, (GUIDE, rest))
    if not found.not_checked and situation.walk.guide.front.vet_asks:
        yield told(NONE_MISSING, (GUIDE,))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _seen(situation: Situation) -> Iterator[Told]:
    """Yield what was written down that no other list tells, the latest first."""
    others = [seen for seen in situation.observations if seen.kind not in (*GIVEN, *MEASURED)]
    for seen in sorted(others, key=lambda each: each.at, reverse=True):
        words = words_of(seen, situation.walk.guide, situation.system, LONGEST)
        yield told(f"{words},{at_words(seen.at, situation)}", (seen,))


def _here(situation: Situation) -> Iterator[Told]:
    """Yield who calls, how the place is found, and who here was taught what by a vet."""
    held = situation.holding
    for label, text in (("Caller", held.caller), ("Place", held.place), ("How to find it", held.found_by)):
        if text:
            yield told(f"{label}: {text}", (held,))
    for who, what in held.taught.items():
        yield told(f"Taught by a vet: {inert(who)}, {inert(what)}", (held,))


def _read_back(situation: Situation) -> Iterator[Told]:
    """Yield what to say so that the vet hears what was understood: their words, once they are written."""
    said = _last_said(situation)
    words = inert(str(said.parts.get("said", ""))) if said else ""
    yield told(f"{READ_BACK}: {words}", (said,)) if said and words else told(f"{READ_BACK}: ...", (FORM,))
    for line in FORMS:
        yield told(line, (FORM,))


def _last_said(situation: Situation) -> Observation | None:
    """Return what the vet said last since this walk began."""
    since = begun(situation)
    said = [seen for seen in situation.observations if seen.kind == "vet-said" and seen.at >= since]
    return max(said, key=lambda each: each.at, default=None)
