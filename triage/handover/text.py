"""The handover as blocks of a page, and as plain text."""

from __future__ import annotations

from triage.handover.situation import Handover, Told
from triage.page.lines import WIDEST, lay_block
from triage.page.page import Block


def spoken_blocks(handover: Handover) -> tuple[Block, ...]:
    """Return what is said, and how the vet's words are read back."""
    said = [Block("step", told.text, str(number)) for number, told in enumerate(handover.spoken, 1)]
    back = [Block("body", line) for line in handover.read_back]
    return (Block("label", "Say"), *said, Block("blank", ""), Block("label", "Then read back"), *back)


def listed_blocks(handover: Handover) -> tuple[Block, ...]:
    """Return everything in full, each list under its name; what was not checked is never left out."""
    blocks: list[Block] = []
    for label, told in lists(handover):
        if told or label == NOT_CHECKED:
            blocks += [Block("label", label), *(Block("body", each.text) for each in told)]
            blocks += [] if told else [Block("body", "Nothing that a vet would ask.")]
            blocks.append(Block("blank", ""))
    return tuple(blocks)


NOT_CHECKED = "Not checked"


def lists(handover: Handover) -> tuple[tuple[str, tuple[Told, ...]], ...]:
    """Return the lists with their names, in the order in which a vet asks."""
    return (
        ("Found", handover.found),
        (NOT_CHECKED, handover.not_checked),
        ("Given and done", handover.given),
        ("Looked at and normal", handover.normal),
        ("Also answered", handover.other),
        ("Also written down", handover.seen),
    )


def text_of(handover: Handover, title: str = "For the vet", width: int = WIDEST) -> str:
    """Return the whole handover as plain text."""
    blocks = [Block("heading", title), Block("blank", ""), *spoken_blocks(handover), Block("blank", "")]
    blocks += [
        Block("label", "What the vet said"),
        *(Block("body", f"{line}: ____________") for line in handover.to_write),
    ]
    blocks += [Block("blank", ""), *listed_blocks(handover)]
    lines = [line.text for block in blocks for line in lay_block(block, width)]
    return "\n".join(lines).rstrip() + "\n"
