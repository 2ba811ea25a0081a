"""A statement as a page: what it says, how sure that is, how it stands, and where one can go on from it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from triage.guide.model import Act, End, Guide
from triage.page.page import CERTAINTY_WORDS, Block
from triage.page.wall import Wall
from triage.reading.blocks import GAP
from triage.reading.care_pages import (
    case_blocks,
    deed_blocks,
    duty_blocks,
    farm_blocks,
    how_to_blocks,
    item_blocks,
    law_blocks,
    rule_blocks,
    term_blocks,
)
from triage.reading.figure_pages import number_blocks, source_blocks, sum_blocks
from triage.reading.kinds import parted, title_of
from triage.reading.standing import standing_line
from triage.reading.values import value_of
from triage.reading.walk_pages import (
    finding_blocks,
    front_blocks,
    node_blocks,
    topic_blocks,
    urgency_blocks,
)

NO_ONE_LAMB = "This is for reading, and for no one lamb. With a lamb before you, open the guide."

SURE = {
    "finding": "This asks, and says nothing of any lamb. What is said stands on the pages that use it.",
    "topic": "How sure each piece of it is stands on its own page.",
    "node": "A question says nothing of any lamb by itself. See what it leans on.",
    "rule": "This is as sure as the sources that it leans on.",
    "sum": "This is as sure as the numbers that it leans on.",
    "urgency": "These words say how soon, and nothing of any one lamb.",
    "term": "Plain words for a trade word; no source is needed.",
    "source": "Its grade says how far it may be leaned on.",
    "case": "Invented, for practice. What is right for it comes from the guide alone.",
    "deed": "Invented, for practice. What is wrong with it comes from the rules.",
    "guide": "This says what the guide is, and nothing of any lamb.",
}
"""What stands for the words of certainty where a statement has none of its own."""


def statement_blocks(wall: Wall, key: str) -> tuple[Block, ...]:
    """Return the page of a statement, its title first; KeyError where there is none of this key."""
    value = value_of(wall.guide, key)
    kind = parted(key)[0]
    return (
        Block("heading", title_of(wall, key)),
        *_KINDS[kind](wall, value),
        GAP,
        *_foot(wall.guide, key, value),
    )


def _foot(guide: Guide, key: str, value: Any) -> Iterator[Block]:
    certainty = getattr(value, "certainty", "")
    yield Block("quiet", CERTAINTY_WORDS.get(certainty) or SURE[parted(key)[0]])
    if isinstance(value, Act | End):
        yield Block("quiet", NO_ONE_LAMB)
    if stands := standing_line(guide, key):
        yield Block("quiet", stands)


def _guide_blocks(wall: Wall, value: Any) -> list[Block]:
    return front_blocks(wall, value) if value is wall.guide.front else farm_blocks(wall, value)


_KINDS: dict[str, Callable[[Wall, Any], list[Block]]] = {
    "guide": _guide_blocks,
    "urgency": urgency_blocks,
    "topic": topic_blocks,
    "node": node_blocks,
    "finding": finding_blocks,
    "number": number_blocks,
    "how-to": how_to_blocks,
    "rule": rule_blocks,
    "sum": sum_blocks,
    "duty": duty_blocks,
    "law": law_blocks,
    "item": item_blocks,
    "term": term_blocks,
    "source": source_blocks,
    "deed": deed_blocks,
    "case": case_blocks,
}
"""How the page of each kind is made."""
