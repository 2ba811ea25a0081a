"""The handover as blocks of a page, and as plain text."""

from __future__ import annotations

from triage.handover.situation import Handover, Told
from triage.page.lines import WIDEST, lay_block
from triage.page.page import Block

RULED = "_" * 24


def blocks(handover: Handover) -> tuple[Block, ...]:
    """Return the whole handover as blocks: what is said, and under it everything in full."""
    return (*spoken_blocks(handover), Block("blank", ""), *listed_blocks(handover))


def spoken_blocks(handover: Handover) -> tuple[Block, ...]:
    """Return what is said, and how the vet's words are read back."""
    said = [Block("step", line.text, str(number)) for number, line in enumerate(handover.spoken, 1)]
    back = [Block("body", line.text) for line in handover.read_back]
    return (Block("label", "Say"), *said, Block("blank", ""), Block("label", "Then read back"), *back)


def listed_blocks(handover: Handover) -> tuple[Block, ...]:
    """Return everything in full, each list under its name."""
    listed: list[Block] = []
    for label, lines in lists(handover):
        listed += [Block("label", label), *(Block("body", line.text) for line in lines), Block("blank", "")]
    return tuple(listed[:-1])


def lists(handover: Handover) -> tuple[tuple[str, tuple[Told, ...]], ...]:
    """Return the lists that hold something with their names, in the order in which a vet asks."""
    named = (
        ("Found", handover.found),
        ("Not checked", handover.not_checked),
        ("Given and done, the latest first", handover.given),
        ("Looked at and normal", handover.normal),
        ("Also answered", handover.other),
        ("Read on the days before", handover.before),
        ("Also written down", handover.seen),
        ("Here", handover.here),
    )
    return tuple((label, lines) for label, lines in named if lines)


def text_of(handover: Handover, title: str = "For the vet", width: int = WIDEST) -> str:
    """Return the whole handover as plain text, with room to write what the vet said."""
    write = [Block("body", f"{line.text}: {RULED}") for line in handover.to_write]
    page = (
        Block("heading", title),
        Block("blank", ""),
        *spoken_blocks(handover),
        Block("blank", ""),
        Block("label", "What the vet said"),
        *write,
        Block("blank", ""),
        *listed_blocks(handover),
    )
    laid = [line.text for block in page for line in lay_block(block, width)]
    return "\n".join(laid).rstrip() + "\n"
