"""What is said after a round: their way and the guide's, where they part, why, and one thing to remember."""

from __future__ import annotations

from collections import Counter

from triage.page.page import Block, Page
from triage.page.words import Reader
from triage.page.working import source_words
from triage.practice.case import Case
from triage.practice.faults import CALLED, Fault, Score
from triage.practice.questions import Question, line_words
from triage.practice.round import Round
from triage.practice.telling import TITLE, supposed_words
from triage.units import System

ROWS = {
    "vet": "How soon a vet",
    "first": "First",
    "right": "Right for it",
    "amount": "How much",
    "vet-if": "How soon then",
    "right-if": "Right then",
}
"""What each question is called where both ways stand side by side."""

NEXT = "Enter brings the next one. w shows the working and the sources, ? how things are done."

MOST_TOLD = 4
"""Differences explained at once; the rest are counted. More is not taken in."""


def debrief_page(played: Round, came: Score, system: System) -> Page:
    """Return the page after a round."""
    case = played.posed.case
    guide = case.walk.guide
    reader = Reader(guide, case.walk.facts, system)
    blocks = [Block("heading", _headline(came)), Block("body", _page_words(case, reader))]
    blocks += _parting(played, came, system)
    blocks += _labelled("What misleads here", reader.fill(case.trap)) if case.trap else []
    blocks += _labelled("Remember", reader.fill(to_remember(case, came)))
    blocks += [Block("blank", ""), Block("label", "Side by side")]
    blocks += _looks(played, system)
    for question in played.posed.questions:
        blocks += _row(case, question, played.answers[question.kind], system)
    blocks += _counts(came)
    blocks += [Block("blank", ""), Block("quiet", NEXT)]
    return Page("debrief", TITLE, tuple(blocks))


def _labelled(label: str, words: str) -> list[Block]:
    return [Block("blank", ""), Block("label", label), Block("body", words)]


def _headline(came: Score) -> str:
    if came.fails:
        return "A safety step was missed. Here is where."
    if came.faults:
        return "Safe. Some of it the guide does otherwise."
    return "Just as the guide does it."


def _page_words(case: Case, reader: Reader) -> str:
    say = case.walk.guide.urgency(case.urgency).say if case.urgency else ""
    return f"The guide comes to: {reader.fill(case.page.title)}. {say}.".replace("..", ".")


def _parting(played: Round, came: Score, system: System) -> list[Block]:
    """Tell the first difference, and the grave ones after it, each with its reason and its source."""
    if not came.faults:
        return []
    # In the order of the round; what fails it is told even where other things came before.
    grave = {(each.theirs, each.why): each for each in reversed(came.faults[1:]) if each.fails}
    told = [came.faults[0], *reversed(grave.values())]
    blocks: list[Block] = []
    for at, fault in enumerate(told[:MOST_TOLD]):
        label = "Where you part first" if at == 0 else "And here"
        blocks += [Block("blank", ""), Block("label", f"{label}: {CALLED[fault.kind].lower()}")]
        blocks += _fault(played, fault, system)
    left = len(told) - MOST_TOLD
    if left > 0:
        blocks.append(Block("quiet", f"And {left} more of that kind; they come back in later cases."))
    return blocks


def _fault(played: Round, fault: Fault, system: System) -> list[Block]:
    case = played.posed.case
    question = next((each for each in played.posed.questions if each.kind == fault.where), None)
    walk = question.walk if question else case.walk
    reader = Reader(walk.guide, walk.facts, system)
    blocks: list[Block] = []
    otherwise = {"vet-if": case.vet_if, "right-if": case.right_if}.get(fault.where)
    if otherwise:
        blocks.append(Block("quiet", supposed_words(case, otherwise, system)))
    blocks += [
        Block("body", f"You: {reader.fill(fault.theirs)}"),
        Block("body", f"The guide: {reader.fill(fault.guides)}"),
    ]
    if fault.why:
        blocks.append(Block("body", f"Why: {reader.fill(fault.why)}"))
    if fault.sources:
        more = f" And {len(fault.sources) - 1} more." if len(fault.sources) > 1 else ""
        blocks.append(Block("quiet", f"From: {source_words(walk.guide, fault.sources[0])}{more}"))
    return blocks


def _looks(played: Round, system: System) -> list[Block]:
    case = played.posed.case
    labels = case.walk.guide.findings
    theirs = ", ".join(labels[name].label for name in played.looked) or "nothing"
    guides = ", ".join(labels[name].label for name in case.hidden) or "nothing more"
    return _pair("Looked at", theirs, guides)


def _row(case: Case, question: Question, given: tuple[str, ...], system: System) -> list[Block]:
    def words(names: tuple[str, ...]) -> str:
        options = [question.option(name) for name in names]
        return " ".join(_stop(line_words(question, each, system)) for each in options if each) or "nothing"

    return _pair(ROWS[question.kind], words(given), words(question.right))


def _pair(label: str, theirs: str, guides: str) -> list[Block]:
    if theirs == guides:
        return [Block("body", f"{label}, you and the guide: {_stop(theirs)}")]
    return [
        Block("body", f"{label}, you: {_stop(theirs)}"),
        Block("body", f"{label}, the guide: {_stop(guides)}"),
    ]


def _counts(came: Score) -> list[Block]:
    counted = Counter(fault.kind for fault in came.faults)
    if not counted:
        return []
    lines = [f"{CALLED[kind]}: {counted[kind]}" for kind in CALLED if counted[kind]]
    return [Block("blank", ""), Block("label", "Counted apart"), *(Block("quiet", line) for line in lines)]


def to_remember(case: Case, came: Score) -> str:
    """Return the one thing to take away: the author's, or the gravest difference's reason, or a caution."""
    if case.remember:
        return case.remember
    grave = next((fault.why for fault in came.faults if fault.fails and fault.why), "")
    return grave or next(iter(case.page.cautions), "")


def _stop(words: str) -> str:
    return words if words.endswith((".", "?")) else f"{words}."
