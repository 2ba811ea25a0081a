"""The first line: who calls and where, which lamb, and why now."""

from __future__ import annotations

from triage.facts import UNSURE
from triage.guide.model import End
from triage.handover.gathering import Item, Reading, Sorted, on_card
from triage.handover.situation import FORM, GUIDE, Rest, Situation, Told, told
from triage.handover.wording import at_words, cut, readings_words, small
from triage.page.inert import inert
from triage.page.words import Reader
from triage.units import show
from triage.walk import Answer, Rise
from triage.ways_in import about, other_ways

NAME = 24
"""Signs of a name that are said."""

PLACE = 48

ON_CARD = ("age", "weight", "birth-type")
"""Findings that the first line tells as the lamb's own."""

SEXES = {"ewe": "a ewe lamb", "ram": "a ram lamb", "wether": "a wether"}


def first_line(situation: Situation, found: Sorted, free: int) -> Told:
    """Return the line that opens the call; names in it are cut to so many words."""
    who, whence = _who(situation, free)
    lamb, known = _lamb(situation, found, free)
    why, behind = _why(situation, found)
    return told(f"{who} {lamb} {why}", (*whence, *known, *behind))


def reason_of(situation: Situation, found: Sorted) -> str:
    """Return the finding whose answer the first line tells, or an empty text."""
    rise = _rise(situation)
    if rise:
        return rise.finding if rise.value is not UNSURE else ""
    item = None if situation.walk.state.urgency else _opened(found)
    return item.finding.name if item else ""


def _who(situation: Situation, free: int) -> tuple[str, tuple[Rest, ...]]:
    held = situation.holding
    caller, place = (
        cut(inert(text, most), free) for text, most in ((held.caller, NAME), (held.place, PLACE))
    )
    if not caller and not place:
        return "(Say your name, and where you are.)", (FORM,)
    return f"This is {' at '.join(part for part in (caller, place) if part)}.", (held,)


def _lamb(situation: Situation, found: Sorted, free: int) -> tuple[str, tuple[Rest, ...]]:
    lamb = situation.lamb
    parts = [cut(inert(lamb.name, NAME), free), SEXES.get(lamb.sex, "")] if lamb else []
    rests: list[Rest] = [lamb] if lamb else []
    for words, rest in (_age(situation, found), _born_as(situation, found), _weight(situation, found)):
        parts.append(words)
        rests += [rest] if words and rest else []
    said = ", ".join(part for part in parts if part)
    if other := about(situation.walk):
        matter = small(other_ways(situation.walk.guide)[other]).rstrip(".")
        return f"It is about {matter}" + (f": {said}." if said else "."), tuple(
            rests or situation.walk.moves[:1]
        )
    return f"I have a lamb: {said}." if said else "I have a young lamb.", tuple(rests or [FORM])


def _age(situation: Situation, found: Sorted) -> tuple[str, Rest | None]:
    """Return the age now: by the card, or as it was answered and has grown since."""
    lamb, now = situation.lamb, situation.now.moment
    if lamb and lamb.born and on_card(situation, "age"):
        about = "about " if lamb.born_guessed else ""
        hours = (now - lamb.born).total_seconds() / 3600
        return f"{about}{show(round(hours, 1), 'h', situation.system)} old", lamb
    last = _last(found, "age")
    if last is None or not isinstance(last.value, float):
        return "", None
    since = (now - last.at).total_seconds() / 3600 if last.at else 0.0
    return f"{show(round(last.value + max(since, 0.0), 1), 'h', situation.system)} old", last.rest


def _born_as(situation: Situation, found: Sorted) -> tuple[str, Rest | None]:
    """Return what it was born as, by the name of the choice: `twin`."""
    finding = situation.walk.guide.findings.get("birth-type")
    known = finding.choices if finding else {}
    last = _last(found, "birth-type")
    if situation.lamb and situation.lamb.birth_type in known:
        return situation.lamb.birth_type, situation.lamb
    return (last.value, last.rest) if last and isinstance(last.value, str) else ("", None)


def _weight(situation: Situation, found: Sorted) -> tuple[str, Rest | None]:
    last = _last(found, "weight")
    if last is None or not isinstance(last.value, float):
        return "", None
    return show(last.value, "kg", situation.system), last.rest


def _last(found: Sorted, name: str) -> Reading | None:
    """Return the latest reading of a finding."""
    items = (*found.found, *found.normal, *found.other)
    return next((item.readings[0] for item in items if item.finding.name == name), None)


def _why(situation: Situation, found: Sorted) -> tuple[str, tuple[Rest, ...]]:
    """Return what raised the urgency, in the guide's own words, and how urgent it is."""
    walk = situation.walk
    urgency = walk.state.urgency
    says = f" The guide says: {small(walk.guide.urgency(urgency).say)}." if urgency else ""
    rise, item = _rise(situation), _opened(found)
    if rise:
        why, rests = _raised(situation, found, rise)
    elif urgency and isinstance(walk.node, End):
        # What was found is the title of the end that the answers came to.
        title = Reader(walk.guide, walk.facts, situation.system).fill(walk.node.title)
        why, rests = title, walk.moves[-1:]
    elif item:
        why, rests = readings_words(item, item.readings[:1], situation), item.rests[:1]
    else:
        why, rests = "I want your advice", (FORM,)
    return f"Why now: {why}.{says}", (GUIDE, *rests)


def _rise(situation: Situation) -> Rise | None:
    """Return the answer that raised the urgency to where it stands; an end may have done so instead."""
    state, findings = situation.walk.state, situation.walk.guide.findings
    last = next((rise for rise in state.rises if rise.finding and rise.urgency == state.urgency), None)
    if last is None or findings[last.finding].normal:
        return last
    # An age or a weight may decide it, but the sign before it is what one phones for.
    signs = [rise for rise in state.rises if rise.finding and findings[rise.finding].normal]
    return signs[-1] if signs else last


def _raised(situation: Situation, found: Sorted, rise: Rise) -> tuple[str, tuple[Rest, ...]]:
    answers = [move for move in situation.walk.moves if isinstance(move, Answer)]
    move = next(each for each in answers if each.finding == rise.finding and each.value == rise.value)
    if rise.value is UNSURE:
        label = small(situation.walk.guide.findings[rise.finding].label)
        return f"{label}{at_words(move.at, situation)}: not sure", (move,)
    item = next(each for each in (*found.found, *found.other) if each.finding.name == rise.finding)
    return readings_words(item, (Reading(move.value, move.at, move),), situation), (move,)


def _opened(found: Sorted) -> Item | None:
    """Return what worries most where nothing has raised the urgency, or else why the guide was opened."""
    reason = [item for item in found.other if item.finding.name == "reason"]
    return next(iter((*found.found, *reason)), None)
