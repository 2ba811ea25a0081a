"""The sheet of one topic: what it can be, what to do first, what never to do, and when to phone.

It is made from the ends of the topic, and from nothing else: no sentence here is about a lamb.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from triage.guide.model import Ask, End, Guide, Urgency
from triage.page.wall import FIRST_THE_GUIDE, Wall
from triage.paper.pieces import Part, Piece, Rows, cell, head_of, listed, row, text, under_row, whole
from triage.paper.setting import BAND, BODY, CELL, DOING, HEAD, LABEL, LEAD, NOTE, STRONG, TITLE, Style

COLUMNS = (56.0, 70.0, 58.0)
HEADS = ("It is", "First", "Never, and take care")

INTO = frozenset({"feed-by-mouth", "tube-feed", "medicine", "vet-injection"})
"""Tags of steps that put something into a lamb. Beside them stands for which lambs the page is."""

DECIDES = ("temperature", "swallows")
"""Findings that say whether anything may go into a lamb, in the order in which they are looked at."""

STEPS = 2
"""How many steps stand on a wall: the guide has the rest, and asks before it."""

CARES = 2
"""How many cautions stand beside them."""

SHARED = 3
"""A caution that so many ends of a topic have stands once, above all of them."""

ONLY_FIRST = (
    "This is only how each begins. Open the guide: it asks what decides, and works out each amount. "
    "A measure goes by weight, and stands in the milk tables."
)
NOT_IN_DOUBT = "In doubt between two, take the more urgent one."


def topic_parts(wall: Wall, name: str, phone: str = "") -> Iterator[Part]:
    """Yield the sheet of a topic, the most urgent ends first; `phone` stands under each call."""
    guide = wall.guide
    topic = guide.topics[name]
    nodes = guide.by_topic.get(name, ())
    ends = [node for node in nodes if isinstance(node, End)]
    shared = _shared(ends)
    yield text(topic.title, TITLE, "h1")
    yield text(wall.fill(topic.about), LEAD)
    yield from _look(guide, name)
    if shared:
        yield whole((text("Never, whichever it is", HEAD, "h2"), listed(map(wall.fill, shared), STRONG)))
    if any(INTO & set(step.tag) for end in ends for step in end.do):
        yield from before_feed(wall)
    yield text(f"{ONLY_FIRST} {NOT_IN_DOUBT}", NOTE)
    for place, urgency in enumerate(guide.front.urgencies):
        found = [end for end in ends if end.urgency == urgency.name]
        if found:
            yield Rows(COLUMNS, _head(urgency, place, phone), tuple(_row(wall, end, shared) for end in found))


def _look(guide: Guide, topic: str) -> Iterator[Piece]:
    """Yield what the topic asks, by name: a vet will ask for it too."""
    asked = [node.finding for node in guide.by_topic.get(topic, ()) if isinstance(node, Ask)]
    labels = [guide.findings[finding].label for finding in dict.fromkeys(asked)]
    if labels:
        yield text(f"Look at: {'; '.join([labels[0], *(_small(each) for each in labels[1:])])}.", BODY)


def before_feed(wall: Wall) -> Iterator[Piece]:
    """Yield what is looked for before any feed."""
    asked, signs = wall.before_feed()
    if signs:
        yield whole((text(asked, HEAD, "h2"), text(f"{'. '.join(signs)}. {FIRST_THE_GUIDE}", BODY)))


def _small(label: str) -> str:
    return label[:1].lower() + label[1:]


def _shared(ends: list[End]) -> tuple[str, ...]:
    count = Counter(caution for end in ends for caution in dict.fromkeys(end.cautions))
    return tuple(caution for caution, often in count.items() if often >= SHARED)


def _head(urgency: Urgency, place: int, phone: str) -> Piece:
    """Return the head of a table: the call, under a rule that is the thicker the more urgent it is."""
    thick = ("now", "today", "later")[min(place, 2)]
    said = [text(urgency.say, BAND)]
    if phone and urgency.opens:
        said.append(text(phone, LEAD))
    html = "".join(each.html for each in said)
    band = Piece(f'<div class="{thick}">{html}</div>', sum(each.high for each in said) + 4.5)
    return head_of(HEADS, COLUMNS, LABEL, band)


def _row(wall: Wall, end: End, shared: tuple[str, ...]) -> Piece:
    steps = [step for step in end.do if "phone" not in step.tag][:STEPS]
    sign = [(wall.fill(end.title), STRONG)]
    if any(INTO & set(step.tag) for step in steps):
        sign += [(each, CELL) for each in _only_if(wall, end)]
    care = [each for each in end.cautions if each not in shared][:CARES]
    cells = (
        _cell(0, sign),
        _cell(1, [(wall.fill(step.do), DOING) for step in steps]),
        _cell(2, [(wall.fill(each), DOING) for each in care]),
    )
    under = " ".join(_phone(wall, end))
    return under_row(row(cells), text(under, CELL), len(COLUMNS)) if under else row(cells)


def _cell(column: int, said: list[tuple[str, Style]]) -> Piece:
    pieces = [cell(words, style, COLUMNS[column]) for words, style in said]
    return Piece("".join(each.html for each in pieces), sum(each.high for each in pieces))


def _phone(wall: Wall, end: End) -> Iterator[str]:
    """Yield when to phone, and when to phone sooner than the end itself says."""
    urgencies = wall.guide.front.urgencies[: wall.guide.rank(end.urgency)]
    opens = tuple(urgency.opens for urgency in urgencies if urgency.opens)
    for sentence in wall.fill(end.call_vet).split(". "):
        if opens and sentence.startswith(opens):
            yield f"{sentence.rstrip('.')}."


def _only_if(wall: Wall, end: End) -> Iterator[str]:
    """Yield for which lambs the end is, as far as it decides whether anything may go into them."""
    said = []
    for name in DECIDES:
        finding = wall.guide.findings.get(name)
        words = wall.conditions(finding, end.for_[name]) if finding and name in end.for_ else ""
        if finding and words:
            said.append(f"{_small(finding.label)} {words}" if finding.measure else words)
    if said:
        yield f"Only if: {'; '.join(said)}."
