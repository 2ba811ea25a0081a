"""The page of a walk: one question, one thing to do, or one outcome."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal, NamedTuple

from triage.facts import UNSURE, Value
from triage.guide.known import NEVER
from triage.guide.model import (
    COMMON_PRACTICE,
    FROM_MEMORY,
    Act,
    Ask,
    End,
    Finding,
    Guide,
    Step,
    Urgency,
)
from triage.guide.texts import said_on
from triage.page.words import Reader
from triage.review.dates import past
from triage.typed import example
from triage.units import System
from triage.walk import Answer, Walk
from triage.ways_in import begun, matter, other_ways

Role = Literal["heading", "body", "label", "step", "caution", "choice", "quiet", "blank", "typed", "told"]
Kind = Literal[
    "ask", "act", "end", "side", "lambs", "lamb", "form", "practice", "round", "debrief", "sitting", "read"
]
"""A question, a thing to do, an outcome, a page beside them, the list of lambs, one lamb, a form to fill, the
rooms of practice, a round at a made-up lamb, what is said after it, a statement to be signed, and a page of
reading."""

LONGEST_BECAUSE = 40
"""A longer answer is not told again in the line of the urgency: the name of the finding serves."""

CERTAINTY_WORDS = {
    "high": "Good evidence stands behind this.",
    "moderate": "Fair evidence stands behind this.",
    "low": "Only weak evidence stands behind this.",
    COMMON_PRACTICE: "This is common practice; no study was found.",
    FROM_MEMORY: "This is from memory and was not checked against a source.",
}


class Scale(NamedTuple):
    """Where a reading stands on a scale and where its marks are, each from 0 to 1."""

    at: float
    marks: tuple[float, ...]
    column: int
    """Signs kept for the words before the scale, the same on all lines of a plot."""


class Block(NamedTuple):
    """One piece of a page: what it is for, its text, and the mark that hangs before it."""

    role: Role
    text: str
    mark: str = ""
    scale: Scale | None = None
    """Drawn after the text where there is room; the text says it all without."""


class Choice(NamedTuple):
    """One answer that a key gives."""

    key: str
    value: Value
    text: str


@dataclass(frozen=True)
class Page:
    """All that a face shows at once; `takes` says what it waits for."""

    kind: Kind
    title: str
    blocks: tuple[Block, ...]
    choices: tuple[Choice, ...] = ()
    measure: str = ""
    """The unit a measurement is kept in, on a question that takes one."""
    example: str = ""
    """How such a measurement may be typed."""
    urgency: Urgency | None = None
    because: str = ""
    lamb: str = ""
    words: bool = False
    """Whether free words are typed here, so that no letter is a command."""
    timed: bool = False
    """Whether a time may be typed in place of an answer, as `at 1:30`."""
    offers: bool = False
    """Whether Enter alone takes an answer that is kept."""
    from_end: bool = False
    """Whether a screen too small for it shows its end first: what is above has been read."""
    read_first: str = ""
    """Keys that are taken once the page has been shown to its end, and till then show more of it."""
    alarm: str = ""
    """What must be said on every page now: a look that is due, or that nothing is kept."""


def page_of(walk: Walk, system: System, hours: float | None = None, today: date | None = None) -> Page:
    """Return the page for where a walk is.

    `hours` is the lamb's age now, where its birth is known; by `today` it is told whether the guidance is
    overdue for another reading.
    """
    reader = Reader(walk.guide, walk.facts, system)
    state = walk.state
    node = state.node
    urgency = walk.guide.urgency(state.urgency) if state.urgency else None
    because, lamb = _because(walk, reader), lamb_line(walk, system, hours)
    title = walk.guide.topics[node.topic].title
    if isinstance(node, Ask):
        finding = walk.guide.findings[node.finding]
        choices, blocks = _choices(finding, reader), _ask(finding, reader, walk, today)
        such_as = example(finding.measure, system) if finding.measure else ""
        return Page("ask", title, blocks, choices, finding.measure, such_as, urgency, because, lamb)
    if isinstance(node, Act):
        blocks = _act(node, reader, walk)
        return Page("act", title, blocks, urgency=urgency, because=because, lamb=lamb, read_first="d")
    blocks = (*_end(node, reader, urgency), *_stands(node, walk.guide, today))
    return Page("end", title, blocks, urgency=urgency, because=because, lamb=lamb)


def lamb_line(walk: Walk, system: System, hours: float | None = None) -> str:
    """Return what always stays in view of the lamb: age, weight, last temperature.

    A walk that is taken up later was answered at another age, so an age known now goes before it.
    """
    reader = Reader(walk.guide, walk.facts, system)
    parts: list[str] = []
    for name in ("age", "weight", "temperature"):
        finding = walk.guide.findings.get(name)
        value = hours if name == "age" and hours is not None else _last(walk, name)
        if finding and isinstance(value, float):
            old = " old" if name == "age" else ""
            parts.append(reader.answer(finding, value) + old)
    return ", ".join(parts)


def _last(walk: Walk, finding: str) -> Value | None:
    """Return the last answer given to a finding, even one that must be asked again."""
    given = [move.value for move in walk.moves if isinstance(move, Answer) and move.finding == finding]
    measured = [value for value in given if value is not UNSURE]
    return measured[-1] if measured else None


def _because(walk: Walk, reader: Reader) -> str:
    """Return what raised the urgency, in the finding's own words."""
    rises = [rise for rise in walk.state.rises if rise.finding]
    if not rises or rises[-1].urgency != walk.state.urgency:
        return ""
    # An age or a weight may decide it, but the sign before it is what one phones for.
    signs = [rise for rise in rises if walk.guide.findings[rise.finding].normal]
    rise = rises[-1] if walk.guide.findings[rises[-1].finding].normal or not signs else signs[-1]
    finding = walk.guide.findings[rise.finding]
    if rise.value is UNSURE:
        return f"not sure: {finding.label}"
    value: Value = rise.value
    if finding.measure and not finding.normal:
        finding, value = _chosen_before(walk, finding) or (finding, value)
    words = reader.answer(finding, value)
    return f"{finding.label}: {words}" if len(words) <= LONGEST_BECAUSE else finding.label


def _chosen_before(walk: Walk, finding: Finding) -> tuple[Finding, Value] | None:
    """Return what was chosen last before an age or a weight was asked, which is what one phones for."""
    chosen: tuple[Finding, Value] | None = None
    for move in walk.moves:
        if isinstance(move, Answer) and move.finding == finding.name:
            return chosen
        if isinstance(move, Answer) and isinstance(move.value, str):
            chosen = walk.guide.findings[move.finding], move.value
    return None


def _choices(finding: Finding, reader: Reader) -> tuple[Choice, ...]:
    known = tuple(
        Choice(str(number), name, reader.choice(finding, name))
        for number, name in enumerate(finding.choices, 1)
    )
    if finding.never_unsure:
        return known
    return (*known, Choice("n", UNSURE, finding.unsure or "Not sure"))


def _ask(finding: Finding, reader: Reader, walk: Walk, today: date | None) -> tuple[Block, ...]:
    blocks = [Block("heading", reader.fill(finding.ask))]
    before = _last(walk, finding.name)
    if before is not None:
        blocks.append(Block("body", f"Asked again. Last time: {reader.answer(finding, before)}."))
    if finding.look:
        blocks.append(Block("body", reader.fill(finding.look)))
    if not begun(walk):
        blocks += _first_said(walk.guide, today)
    if not walk.moves and (pointer := _other_ways(walk.guide, reader)):
        blocks.append(Block("label", pointer))
    return tuple(blocks)


def _first_said(guide: Guide, today: date | None) -> list[Block]:
    """Return what is said before anything is asked: what the guide is, and who stands behind it."""
    stands = NEVER
    if guide.known and guide.known.sat_over:
        from triage.review.of import words_of

        stands = words_of(guide)
    late = past(guide.front, today) if today else ""
    said = [Block("quiet", f"First aid only: vet, law and labels first. {stands}")]
    return [Block("caution", late, "!"), *said] if late else said


def _stands(node: End, guide: Guide, today: date | None) -> tuple[Block, ...]:
    """Return how sure an end is, how it stands with vets, and whether it is to be read again."""
    from triage.review.of import standing

    found = standing(guide, f"node/{node.name}")
    late = past(guide.front, today) if today else ""
    told = [Block("caution", text, "!") for text in (found.objection, late) if text]
    sure = f"{CERTAINTY_WORDS.get(node.certainty, '')} {found.words}".strip()
    return (Block("blank", ""), *told, Block("quiet", sure))


def _other_ways(guide: Guide, reader: Reader) -> str:
    """Return the line that shows the way to the list of lambs, where the other ways in stand."""
    finding = matter(guide)
    if finding is None:
        return ""
    asked = reader.fill(finding.look) or f"{'; or '.join(other_ways(guide).values())}?"
    return f"{asked} Press o."


def _act(node: Act, reader: Reader, walk: Walk) -> tuple[Block, ...]:
    blocks = [Block("heading", reader.fill(node.title))]
    times = walk.state.times.get(node.name, 0)
    if times:
        blocks.append(Block("quiet", f"Time {times + 1} of {node.at_most}."))
    blocks += _steps(node.steps, reader)
    blocks += _cautions(node.cautions, reader)
    if node.wait:
        blocks += [Block("blank", ""), Block("body", f"Then wait {reader.number(node.wait)} and go on.")]
    return (*blocks, *_guesses(node, reader))


def _end(node: End, reader: Reader, urgency: Urgency | None) -> tuple[Block, ...]:
    blocks = [Block("heading", reader.fill(node.title))]
    if urgency and urgency.name != node.urgency:
        # The end's own steps don't know what was answered on the way, so the page says it for them.
        blocks.append(Block("caution", f"{urgency.say}. Your answers on the way ask for it.", "!"))
    if node.likely:
        blocks.append(Block("body", reader.fill(node.likely)))
    blocks += [Block("blank", ""), *_steps(node.do, reader)]
    blocks += _cautions(node.cautions, reader)
    blocks += [Block("blank", ""), Block("label", "When to phone"), Block("body", reader.fill(node.call_vet))]
    if node.look_again:
        blocks.append(Block("body", f"Look again in {reader.number(node.look_again)}."))
    blocks += _guesses(node, reader)
    return tuple(blocks)


def _steps(steps: tuple[Step, ...], reader: Reader) -> list[Block]:
    return [Block("step", reader.fill(step.do), str(number)) for number, step in enumerate(steps, 1)]


def _cautions(cautions: tuple[str, ...], reader: Reader) -> list[Block]:
    if not cautions:
        return []
    marked = [Block("caution", reader.fill(text), "!") for text in cautions]
    return [Block("blank", ""), Block("label", "Take care"), *marked]


def _guesses(node: Act | End, reader: Reader) -> list[Block]:
    guessed = [each.guessed for each in reader.sums(said_on(node)).values() if each.guessed]
    notes = [Block("quiet", text) for text in dict.fromkeys(guessed)]
    return [Block("blank", ""), *notes] if notes else []
