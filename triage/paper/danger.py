"""The danger signs: one sheet to be read from across a shed, with whom to phone and where the place is."""

from __future__ import annotations

from collections.abc import Iterator

from triage.guide.model import Ask, End, Finding, Guide, Step
from triage.holding.holding import Holding
from triage.page.inert import inert
from triage.paper.pieces import ROOM, WIDE, Part, Piece, blank, gap, text, whole
from triage.paper.setting import AID, BIG, BODY, HEAD, HUGE, LABEL, MIDDLE, SIGN, TITLE, Style, wide
from triage.paper.wall import Wall

NAME = "Danger signs"
FEET = "Any one of these: phone first. Do the first aid while it rings."


def danger_parts(wall: Wall, holding: Holding, vet: str = "") -> Iterator[Part]:
    """Yield the sheet: whom to phone, each sign with the first thing to do, and where the place is.

    The signs are set as large as one sheet has room for.
    """
    for style in (BIG, MIDDLE, SIGN):
        parts = tuple(_parts(wall, holding, vet, style))
        if sum(part.high for part in parts) <= ROOM:
            break
    yield from parts


def _parts(wall: Wall, holding: Holding, vet: str, style: Style) -> Iterator[Piece]:
    guide = wall.guide
    yield text(NAME, TITLE, "h1")
    yield whole(_phone(guide, holding, vet), "now", 4.5)
    yield gap(3)
    yield Piece('<div class="rule"></div>', 3.3)
    for finding, choice in _signs(guide):
        yield whole(_sign(wall, finding, choice, style))
    yield Piece('<div class="rule"></div>', 3.3)
    yield text(FEET, HEAD)
    yield from _here(holding)


def _phone(guide: Guide, holding: Holding, vet: str) -> Iterator[Piece]:
    """Yield the call and the numbers, or lines to write them on."""
    yield text(guide.urgency(guide.top).say, SIGN, "h2")
    day, night = numbers_of(holding, vet)
    for label, number in (("By day", day), ("At night", night)) if night or not day else (("", day),):
        if number:
            yield text(f"{label}: {number}".removeprefix(": "), _fitting(number, label))
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


def _fitting(number: str, label: str) -> Style:
    """Return the largest type in which a number stays on one line, as far as it can."""
    words = f"{label}: {number}"
    return next((style for style in (HUGE, SIGN, AID) if wide(words, style) <= WIDE), AID)


def _signs(guide: Guide) -> Iterator[tuple[Finding, str]]:
    for name, choices in guide.front.danger_signs.items():
        finding = guide.findings[name]
        for choice in choices:
            yield finding, choice


def _sign(wall: Wall, finding: Finding, choice: str, style: Style) -> Iterator[Piece]:
    """Yield a sign, and the first thing to do about it where the guide asks nothing more before it."""
    yield gap(2.2)
    yield text(wall.fill(finding.choices[choice]), style, "h3")
    first = _first(wall.guide, finding, choice)
    if first:
        yield text(wall.fill(first.do), AID)


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
    yield gap(3)
    yield text("Say where you are", LABEL, "h2")
    yield text(holding.place, HEAD) if holding.place else blank("", BODY, 11)
    yield text(holding.found_by, BODY) if holding.found_by else blank("", BODY, 11)
