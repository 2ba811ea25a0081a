"""The pages one key away: how and why, whom to phone, the answers so far, and the working."""

from __future__ import annotations

from triage.guide.model import Act, Ask, End, HowTo
from triage.page.keys import keys_for
from triage.page.page import Block, Page, lamb_line
from triage.page.words import Reader, terms_in
from triage.units import System
from triage.walk import Answer, Done, Walk


def how_page(walk: Walk, system: System) -> Page:
    """Why this is asked or done, how to do it, and the trade words in it."""
    reader = Reader(walk.guide, walk.facts, system)
    node = walk.node
    blocks: list[Block] = []
    how_tos: list[str] = []
    if isinstance(node, Ask):
        finding = walk.guide.findings[node.finding]
        blocks += [Block("heading", "Why it matters"), Block("body", reader.fill(finding.why))]
        blocks += [Block("body", reader.fill(finding.look))] if finding.look else []
        how_tos = [finding.how]
    else:
        steps = node.steps if isinstance(node, Act) else node.do
        how_tos = [step.how for step in steps]
    for name in dict.fromkeys(how_tos):
        if name:
            blocks += [Block("blank", ""), *_how_to(walk.guide.how_tos[name], reader)]
    if not any(block.role == "heading" for block in blocks):
        blocks.append(Block("heading", "No technique is needed here"))
    blocks += _terms(walk, blocks)
    keys = [Block("quiet", f"{key.key}  {key.word}") for key in keys_for("act") if key.name != "how"]
    return Page("side", "How and why", (*blocks, Block("blank", ""), Block("label", "Keys"), *keys))


def _how_to(how_to: HowTo, reader: Reader) -> list[Block]:
    blocks = [Block("heading", how_to.title)]
    if how_to.why:
        blocks.append(Block("body", reader.fill(how_to.why)))
    if how_to.need:
        blocks.append(Block("body", f"You need: {reader.fill('; '.join(how_to.need))}."))
    blocks += [Block("step", reader.fill(text), str(n)) for n, text in enumerate(how_to.steps, 1)]
    if how_to.right:
        blocks.append(Block("body", f"It went right when: {reader.fill(how_to.right)}"))
    if how_to.stop:
        blocks.append(Block("caution", reader.fill(how_to.stop), "!"))
    blocks += [Block("caution", reader.fill(text), "!") for text in how_to.cautions]
    if how_to.note:
        blocks.append(Block("quiet", reader.fill(how_to.note)))
    return blocks


def _terms(walk: Walk, blocks: list[Block]) -> list[Block]:
    found = terms_in(walk.guide, " ".join(block.text for block in blocks))
    if not found:
        return []
    meanings = [Block("quiet", f"{term.word}: {term.means}") for term in found]
    return [Block("blank", ""), Block("label", "Words"), *meanings]


def phone_page(walk: Walk, system: System, vet: str) -> Page:
    """Whom to phone and what to say, from what is known so far."""
    reader = Reader(walk.guide, walk.facts, system)
    state = walk.state
    number = vet or "No number is kept yet. Start with --vet NUMBER to see it here."
    blocks = [Block("heading", "Phone the vet"), Block("body", number), Block("blank", "")]
    blocks += [Block("label", "Say first"), Block("body", _opening(walk, reader, system)), Block("blank", "")]
    found = [
        Block("body", f"{walk.guide.findings[name].label}: {reader.answer(walk.guide.findings[name], value)}")
        for name, value in state.known.items()
    ]
    blocks += [Block("label", "What you found"), *(found or [Block("body", "Nothing yet.")])]
    how_to = walk.guide.how_tos.get("phone-the-vet-well")
    if how_to:
        blocks += [Block("blank", ""), *_how_to(how_to, reader)]
    return Page("side", "Whom to phone", tuple(blocks))


def _opening(walk: Walk, reader: Reader, system: System) -> str:
    lamb = lamb_line(walk, system)
    who = f"I have a lamb, {lamb}." if lamb else "I have a young lamb."
    node = walk.node
    if isinstance(node, End):
        return f"{who} {reader.fill(node.title)}."
    rises = [rise for rise in walk.state.rises if rise.finding]
    if not rises:
        return who
    finding = walk.guide.findings[rises[-1].finding]
    return f"{who} {finding.label}: {reader.answer(finding, rises[-1].value)}."


def answers_page(walk: Walk, system: System) -> Page:
    """The answers so far, numbered, so that any can be changed."""
    reader = Reader(walk.guide, walk.facts, system)
    blocks = [Block("heading", "Answers so far")]
    for number, index in enumerate(changeable(walk), 1):
        move = walk.moves[index]
        assert isinstance(move, Answer)
        finding = walk.guide.findings[move.finding]
        text = f"{finding.label}: {reader.answer(finding, move.value)}"
        blocks.append(Block("choice", text, str(number)))
    if len(blocks) == 1:
        blocks.append(Block("body", "None yet."))
    else:
        blocks.append(Block("quiet", "Type a number to change that answer. What still fits is kept."))
    return Page("side", "Answers so far", tuple(blocks))


def changeable(walk: Walk) -> list[int]:
    """Return the indexes of the moves that are answers, in order."""
    return [index for index, move in enumerate(walk.moves) if isinstance(move, Answer)]


def told_dropped(walk: Walk, dropped: tuple[Answer | Done, ...], system: System) -> str:
    """Return the sentence that names answers which no longer fit after a change."""
    if not dropped:
        return "Changed. All other answers still fit."
    reader = Reader(walk.guide, walk.facts, system)
    return f"Changed. No longer used: {'; '.join(_move_words(walk, move, reader) for move in dropped)}."


def _move_words(walk: Walk, move: Answer | Done, reader: Reader) -> str:
    if isinstance(move, Done):
        return _act_title(walk, move)
    finding = walk.guide.findings[move.finding]
    return f"{finding.label} ({reader.answer(finding, move.value)})"


def _act_title(walk: Walk, move: Done) -> str:
    node = walk.guide.nodes[move.act]
    return node.title if isinstance(node, Act) else move.act
