"""What a map says: each place in a few words, and each way by the answers that take it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from triage.guide.model import Act, Ask, Branch, Node
from triage.page.wall import Wall

NOT_SURE = "Not sure"
DONE = "Done"


def label_of(wall: Wall, node: Node) -> str:
    """Return a place in a few words: what is asked, or the title of what is done or found."""
    if isinstance(node, Ask):
        return wall.fill(wall.guide.findings[node.finding].label)
    return wall.fill(node.title)


def leads_to(node: Node) -> tuple[str, ...]:
    """Return the nodes that a place leads to; `guide/graph.py` has this too, and loads a library first."""
    if isinstance(node, Ask):
        return tuple(branch.go for branch in node.branches)
    if isinstance(node, Act):
        return (node.then, node.else_) if node.else_ else (node.then,)
    return ()


def answers_of(wall: Wall, node: Node) -> Iterator[tuple[str, str, str]]:
    """Yield each way out of a place: the answer in words, the node it leads to, the urgency it asks for."""
    if isinstance(node, Ask):
        before: Branch | None = None
        for branch in node.branches:
            for words in _branch_words(wall, node, branch, before):
                yield words, branch.go, branch.at_least
            before = branch if branch.below or branch.up_to else before
    elif isinstance(node, Act):
        yield _after(wall, node), node.then, ""
        if node.else_:
            times = "time" if node.at_most == 1 else "times"
            yield f"Done {node.at_most} {times}, and no better", node.else_, ""


def joined(answers: Sequence[str]) -> str:
    """Return several answers as one text."""
    rest = (each if each.startswith("I ") else each[:1].lower() + each[1:] for each in answers[1:])
    return "; or ".join((answers[0], *rest))


def _after(wall: Wall, node: Act) -> str:
    return f"{DONE}, and {wall.number(node.wait)} later" if node.wait else DONE


def _branch_words(wall: Wall, node: Ask, branch: Branch, before: Branch | None) -> Iterator[str]:
    finding = wall.guide.findings[node.finding]
    if branch.unsure:
        yield wall.fill(finding.unsure or NOT_SURE)
    elif branch.is_:
        yield from (wall.fill(finding.choices[name]) for name in branch.is_)
    else:
        yield _band(wall, branch, before)


def _band(wall: Wall, branch: Branch, before: Branch | None) -> str:
    """Return a band of a measurement by both its edges, so that no line leans on the line above it."""
    low = _low(wall, before)
    if branch.below:
        high = wall.number(branch.below)
        return f"{low}, below {high}" if low else f"Below {high}"
    if branch.up_to:
        high = wall.number(branch.up_to)
        return f"{low}, up to {high}" if low else f"Up to {high}"
    return low or "Whatever is measured"


def _low(wall: Wall, before: Branch | None) -> str:
    if before is None:
        return ""
    return f"From {wall.number(before.below)}" if before.below else f"Above {wall.number(before.up_to)}"
