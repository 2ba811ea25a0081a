"""The first line: who calls and where, which lamb, and why now."""

from __future__ import annotations

from triage.casebook.rows import Lamb
from triage.facts import UNSURE
from triage.guide.model import Guide
from triage.handover.gathering import Item, Sorted, value_words
from triage.handover.situation import GUIDE, Rest, Situation, Told
from triage.page.inert import inert
from triage.units import show
from triage.walk import Answer

NAME = 24
ON_CARD = ("age", "weight", "birth-type")
"""Findings that the first line tells as the lamb's own."""
SEXES = {"ewe": "a ewe lamb", "ram": "a ram lamb", "wether": "a wether"}


def first_line(situation: Situation, found: Sorted, most: int) -> Told:
    """Return the line that opens the call; each answer in it is cut to so many words."""
    who, whence = _who(situation)
    lamb, known = _lamb(situation)
    why, behind = _why(situation, found, most)
    return Told(f"{who} {lamb} {why}", (*whence, *known, *behind))


def _who(situation: Situation) -> tuple[str, tuple[Rest, ...]]:
    held = situation.holding
    caller, place = inert(held.caller, NAME), inert(held.place, 2 * NAME)
    if not caller and not place:
        return "(Say your name, and where you are.)", (GUIDE,)
    at = f" at {place}" if caller and place else place
    return f"This is {caller}{at}.", (held,)


def _lamb(situation: Situation) -> tuple[str, tuple[Rest, ...]]:
    lamb, guide = situation.lamb, situation.walk.guide
    parts: list[str] = []
    rests: list[Rest] = [lamb] if lamb else []
    if lamb:
        parts += [inert(lamb.name, NAME), *([SEXES[lamb.sex]] if lamb.sex in SEXES else [])]
    parts += [part for part in (_age(situation, lamb, rests), _born_as(guide, lamb)) if part]
    weighed = _last(situation, "weight")
    if weighed:
        parts.append(show(weighed[0], "kg", situation.system))
        rests.append(weighed[1])
    return f"I have a lamb: {', '.join(parts)}." if parts else "I have a young lamb.", tuple(rests or [GUIDE])


def _age(situation: Situation, lamb: Lamb | None, rests: list[Rest]) -> str:
    """Return the age now: by the card, or as it was answered."""
    if lamb and lamb.born:
        hours = round((situation.now.moment - lamb.born).total_seconds() / 3600, 1)
        about = "about " if lamb.born_guessed else ""
        return f"{about}{show(hours, 'h', situation.system)} old" if hours >= 0 else ""
    answered = _last(situation, "age")
    if answered is None:
        return ""
    rests.append(answered[1])
    return f"{show(answered[0], 'h', situation.system)} old"


def _born_as(guide: Guide, lamb: Lamb | None) -> str:
    finding = guide.findings.get("birth-type")
    return lamb.birth_type if lamb and finding and lamb.birth_type in finding.choices else ""


def _last(situation: Situation, name: str) -> tuple[float, Rest] | None:
    """Return the last measurement of a finding in this walk or written down since."""
    found: list[tuple[float, float, Rest]] = []
    for place, move in enumerate(situation.walk.moves):
        if isinstance(move, Answer) and move.finding == name and isinstance(move.value, float):
            found.append((move.at.timestamp() if move.at else place, move.value, move))
    for seen in situation.observations:
        value = seen.parts.get(name)
        if seen.kind == name and isinstance(value, float):
            found.append((seen.at.timestamp(), value, seen))
    if not found:
        return None
    last = max(found, key=lambda each: each[0])
    return last[1], last[2]


def _why(situation: Situation, found: Sorted, most: int) -> tuple[str, tuple[Rest, ...]]:
    """Return what raised the urgency, in the finding's own words, and how urgent it is."""
    walk = situation.walk
    urgency = walk.guide.urgency(walk.state.urgency).say if walk.state.urgency else ""
    says = f"The guide I use says: {urgency.lower()}." if urgency else ""
    raised = [rise for rise in walk.state.rises if rise.finding]
    if raised and raised[-1].value is UNSURE:
        label = walk.guide.findings[raised[-1].finding].label.lower()
        return f"Why now: I can't tell its {label}. {says}".strip(), (
            GUIDE,
            *_moves(walk.moves, raised[-1].finding),
        )
    name = reason_of(situation)
    items = [item for item in (*found.found, *found.other) if item.finding.name == name]
    if items:
        return f"Why now: {_because(items[0], situation, most)}. {says}".strip(), (GUIDE, items[0].last.rest)
    return f"Why now: I want your advice. {says}".strip(), (GUIDE,)


def reason_of(situation: Situation) -> str:
    """Return the finding that raised the urgency last, or that says why the guide was opened."""
    raised = [rise.finding for rise in situation.walk.state.rises if rise.finding]
    return raised[-1] if raised else "reason"


def _because(item: Item, situation: Situation, most: int) -> str:
    words = value_words(item, item.last, situation).split()
    if len(words) > most:
        words = [*words[: most - 2], "..", *words[-2:]]
    return " ".join([f"{item.finding.label.lower()}:", *words])


def _moves(moves: tuple[object, ...], finding: str) -> tuple[Answer, ...]:
    return tuple(move for move in moves if isinstance(move, Answer) and move.finding == finding)
