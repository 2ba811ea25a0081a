"""The pages one key away: how and why, whom to phone, the answers so far, and the working."""

from __future__ import annotations

from collections.abc import Iterable

from triage.guide.glossary import Glossary
from triage.guide.model import Act, Ask, Guide, HowTo, Node
from triage.guide.texts import finding_texts, said_on, steps_of
from triage.page.keys import keys_for
from triage.page.page import Block, Kind, Page
from triage.page.words import Reader
from triage.units import System
from triage.walk import Answer, Done, Walk
from triage.ways_in import about


def how_page(walk: Walk, system: System, picked: int = 0, kind: Kind = "act") -> Page:
    """Why this is asked, and how to do it; with several techniques a list, one of which may be picked."""
    reader = Reader(walk.guide, walk.facts, system)
    node = walk.node
    how_tos = techniques(walk)
    blocks: list[Block] = []
    if isinstance(node, Ask) and not picked:
        finding = walk.guide.findings[node.finding]
        blocks += [Block("heading", "Why it matters"), Block("body", reader.fill(finding.why))]
        blocks += [Block("body", reader.fill(finding.look))] if finding.look else []
    if picked or len(how_tos) == 1:
        blocks += [Block("blank", ""), *how_to_blocks(how_tos[max(picked, 1) - 1], reader)]
    elif how_tos:
        blocks.append(Block("heading", "How to"))
        blocks += [Block("choice", how_to.title, str(n)) for n, how_to in enumerate(how_tos, 1)]
        blocks.append(Block("quiet", "Type a number to read one."))
    if not blocks:
        blocks.append(Block("heading", "No technique is needed here"))
    shown = () if picked else _page_texts(walk.guide, node)
    blocks += word_blocks(walk.guide, (*shown, *(block.text for block in blocks)))
    blocks += _stands(walk)
    keys = [Block("quiet", f"{key.key}  {key.word}") for key in keys_for(kind) if key.name != "how"]
    return Page("side", "How and why", (*blocks, Block("blank", ""), Block("label", "Keys"), *keys))


def _stands(walk: Walk) -> list[Block]:
    """Return how the page that `?` was pressed on stands with vets."""
    from triage.review.of import standing

    found = standing(walk.guide, f"node/{walk.node.name}")
    objected = [Block("caution", found.objection, "!")] if found.objection else []
    return [Block("blank", ""), *objected, Block("quiet", found.words)]


def techniques(walk: Walk) -> list[HowTo]:
    """Return the how-tos that serve where a walk is, in the order of its steps, each once."""
    node = walk.node
    if isinstance(node, Ask):
        names = [walk.guide.findings[node.finding].how]
    else:
        names = [step.how for step in steps_of(node)]
    return [walk.guide.how_tos[name] for name in dict.fromkeys(names) if name]


def how_to_blocks(how_to: HowTo, reader: Reader) -> list[Block]:
    """Return a technique as blocks."""
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


def _page_texts(guide: Guide, node: Node) -> tuple[str, ...]:
    """Return the texts of the page that `?` was pressed on."""
    if isinstance(node, Ask):
        return tuple(passage.text for passage in finding_texts(guide.findings[node.finding]))
    return said_on(node)


def word_blocks(guide: Guide, texts: Iterable[str]) -> list[Block]:
    """Return each trade word of these texts with its plain meaning, under a heading of their own."""
    found = Glossary(guide.glossary.values()).terms_in(texts)
    meanings = [Block("quiet", f"{term.word}: {term.means}") for term in found]
    return [Block("blank", ""), Block("label", "Words"), *meanings] if meanings else []


def answers_page(walk: Walk, system: System) -> Page:
    """The answers so far, numbered, so that any can be changed."""
    reader = Reader(walk.guide, walk.facts, system)
    blocks = [Block("heading", "Answers so far")]
    for number, index in enumerate(changeable(walk), 1):
        blocks.append(Block("choice", _move_words(walk, walk.moves[index], reader), str(number)))
    if len(blocks) == 1:
        blocks.append(Block("body", "None yet."))
    else:
        blocks.append(Block("quiet", "Type a number to change that answer. What still fits is kept."))
    return Page("side", "Answers so far", tuple(blocks))


def changeable(walk: Walk) -> list[int]:
    """Return the indexes of the moves that are answers, in order; what a walk is about stays as it is."""
    first = bool(about(walk))
    return [index for index, move in enumerate(walk.moves) if isinstance(move, Answer) and index >= first]


def told_dropped(walk: Walk, dropped: tuple[Answer | Done, ...], system: System) -> str:
    """Return the sentence that names answers which no longer fit after a change."""
    if not dropped:
        return "Changed. All other answers still fit."
    reader = Reader(walk.guide, walk.facts, system)
    return f"Changed. No longer used: {'; '.join(_move_words(walk, move, reader) for move in dropped)}."


def _move_words(walk: Walk, move: Answer | Done, reader: Reader) -> str:
    if isinstance(move, Done):
        return f"Done: {_act_title(walk, move)}"
    finding = walk.guide.findings[move.finding]
    return f"{finding.label}: {reader.answer(finding, move.value)}"


def _act_title(walk: Walk, move: Done) -> str:
    node = walk.guide.nodes[move.act]
    return node.title if isinstance(node, Act) else move.act
