"""The danger signs: a sheet each to be read from across a shed, with whom to phone and where the place is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from triage.guide.model import Ask, End, Finding, Guide, Step
from triage.holding.holding import Holding
from triage.page.inert import inert
from triage.page.wall import Wall
from triage.paper.pieces import ROOM, TURN, WIDE, Part, Piece, blank, gap, text, whole
from triage.paper.setting import (
    AID,
    BAND,
    BIG,
    BODY,
    HEAD,
    HUGE,
    LEAD,
    MIDDLE,
    SIGN,
    STRONG,
    TITLE,
    Style,
    wide,
)

NAME = "Danger signs"


@dataclass(frozen=True)
class Sizes:
    """How large the signs are set, the first aid beside them, and the numbers at most."""

    sign: Style
    aid: Style
    number: Style


SIZES = (
    Sizes(BIG, AID, HUGE),
    Sizes(MIDDLE, AID, HUGE),
    Sizes(SIGN, AID, HUGE),
    Sizes(SIGN, LEAD, SIGN),
    Sizes(BAND, LEAD, SIGN),
    Sizes(BAND, BODY, AID),
)
"""The largest first. Where the place takes very many words, they go over to another sheet."""

RULE = Piece('<div class="rule"></div>', 3.3)
SAY = "Say where you are"
FEET = "Any one of these: phone first. Do the first aid while it rings."


def danger_parts(wall: Wall, holding: Holding, vet: str = "") -> Iterator[Part]:
    """Yield a sheet for the lamb's signs and for each other matter's: whom to phone, the signs, the place.

    The signs are set as large as one sheet has room for, each with the first thing to do.
    """
    for name in wall.guide.front.danger_signs:
        for sizes in SIZES:
            parts = tuple(_sheet(wall, name, (holding, vet), sizes))
            if sum(part.high for part in parts) <= ROOM:
                break
        yield TURN
        yield from parts


def _sheet(wall: Wall, name: str, phone: tuple[Holding, str], sizes: Sizes) -> Iterator[Piece]:
    guide, (holding, vet) = wall.guide, phone
    finding = guide.findings[name]
    first = name == next(iter(guide.front.danger_signs))
    yield text(NAME if first else _topic_of(guide, finding), TITLE, "h1")
    yield whole(_phone(guide, holding, vet, sizes.number), "now", 4.5)
    yield RULE
    yield text(wall.fill(finding.ask), HEAD)
    for choice in guide.front.danger_signs[name]:
        yield whole(_sign(wall, finding, choice, sizes))
    yield RULE
    yield text(FEET, STRONG)
    if finding.look:
        yield text(wall.fill(finding.look), BODY)
    yield from _here(holding)


def _topic_of(guide: Guide, finding: Finding) -> str:
    """Return the title of the topic that begins with these signs."""
    asking = (node for node in guide.nodes.values() if isinstance(node, Ask) and node.finding == finding.name)
    return next((guide.topics[node.topic].title for node in asking), finding.label)


def _phone(guide: Guide, holding: Holding, vet: str, most: Style) -> Iterator[Piece]:
    """Yield the call and the numbers, or lines to write them on."""
    yield text(guide.urgency(guide.top).say, SIGN, "h2")
    day, night = numbers_of(holding, vet)
    for label, number in (("By day", day), ("At night", night)) if night or not day else (("", day),):
        if number:
            yield text(f"{label}: {number}".removeprefix(": "), _fitting(f"{label}: {number}", most))
        else:
            yield blank(f"{label}:", AID, 16)


def phone_line(holding: Holding, vet: str = "") -> str:
    """Return the numbers in one line, or nothing where none is kept."""
    day, night = numbers_of(holding, vet)
    return f"{day}, at night {night}" if day and night else day or night


def numbers_of(holding: Holding, vet: str = "") -> tuple[str, str]:
    """Return the numbers by day and at night; one given for now goes before both."""
    if vet:
        return inert(vet, 80), ""
    day, night = inert(holding.vet, 80), inert(holding.out_of_hours, 80)
    return day, "" if night == day else night


def _fitting(words: str, most: Style) -> Style:
    """Return the largest type, up to a most, in which a number stays on one line, as far as it can."""
    styles = [style for style in (HUGE, SIGN, AID) if style.pt <= most.pt]
    return next((style for style in styles if wide(words, style) <= WIDE), AID)


def _sign(wall: Wall, finding: Finding, choice: str, sizes: Sizes) -> Iterator[Piece]:
    """Yield a sign, and the first thing to do about it where the guide asks nothing more before it."""
    yield gap(2.2)
    yield text(wall.fill(finding.choices[choice]), sizes.sign, "h3")
    first = _first(wall.guide, finding, choice)
    if first:
        yield text(wall.fill(first.do), sizes.aid)


def _first(guide: Guide, finding: Finding, choice: str) -> Step | None:
    for node in guide.nodes.values():
        if not isinstance(node, Ask) or node.finding != finding.name:
            continue
        for branch in node.branches:
            end = guide.nodes[branch.go]
            # Only where the sign itself calls the vet: further on it is asked to tell other lambs apart.
            if choice in branch.is_ and branch.at_least == guide.top and isinstance(end, End):
                return next((step for step in end.do if "phone" not in step.tag), None)
    return None


def _here(holding: Holding) -> Iterator[Piece]:
    """Yield what to say of the place, or lines to write it on."""
    if holding.place:
        yield text(f"{SAY}: {holding.place}", HEAD)
    else:
        yield blank(f"{SAY}:", HEAD, 11)
    yield text(holding.found_by, BODY) if holding.found_by else blank("", BODY, 11)
