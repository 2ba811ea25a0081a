"""A round as pages say it: the story, what was seen, the questions. Only words; nothing is decided here."""

from __future__ import annotations

from triage.amounts import AMOUNTS
from triage.facts import Facts
from triage.page.page import Block, Choice, Page
from triage.page.words import Reader
from triage.practice.case import Case
from triage.practice.drawn import BEGINS
from triage.practice.looking import listed
from triage.practice.questions import Question, amount_of, line_words
from triage.practice.round import Round
from triage.practice.written import told_story
from triage.units import System
from triage.walk import Answer, Done

TITLE = "Practice: an invented lamb"
MARKED, OPEN = "[x]", "[ ]"

ASKED = {
    "vet": "How soon is a vet needed?",
    "first": "What comes first?",
    "right": "Which of these are right for this one? Mark them, and leave the rest.",
    "vet-if": "How soon would a vet be needed then?",
    "right-if": "Which of these would be right then? Mark them, and leave the rest.",
}


def look_page(played: Round, system: System) -> Page:
    """The story, what was seen so far, and what can be looked at."""
    case = played.posed.case
    blocks = [Block("heading", "What you are told"), *story_blocks(case, system)]
    if played.looked:
        blocks += [Block("blank", ""), Block("label", "What you looked at")]
        blocks += [Block("body", _seen(case, name, system)) for name in played.looked]
    blocks += [Block("blank", ""), Block("label", "Look at something, or press d when you have seen enough.")]
    choices = tuple(
        Choice(str(at), finding.name, finding.label)
        for at, finding in enumerate(listed(case), 1)
        if finding.name not in played.looked
    )
    return Page("round", TITLE, tuple(blocks), choices, from_end=bool(played.looked))


def story_blocks(case: Case, system: System) -> list[Block]:
    """Return the story, what it tells outright, and what was done before."""
    blocks = [Block("body", told_story(case, system))] if case.story else []
    blocks += [Block("body", _fact(case, name, system)) for name in case.told if name in case.now]
    earlier = [_earlier(case, move, system) for move in case.before]
    blocks += [Block("body", f"Before: {'; '.join(earlier)}.")] if earlier else []
    return blocks


def question_page(played: Round, question: Question, marked: frozenset[str], system: System) -> Page:
    """One question, with all that is known of the lamb above it."""
    case = played.posed.case
    blocks = [Block("heading", question_heading(case, question)), *_supposed(case, question, system)]
    blocks.append(Block("quiet", f"{_known(played, system)}"))
    if question.many:
        blocks.append(Block("label", "A digit marks a line or clears it. d when you are done."))
    return Page("round", TITLE, tuple(blocks), _choices(question, marked, system))


def _choices(question: Question, marked: frozenset[str], system: System) -> tuple[Choice, ...]:
    choices: list[Choice] = []
    for at, option in enumerate(question.options, 1):
        words = line_words(question, option, system)
        if question.many:
            words = f"{MARKED if option.name in marked else OPEN} {words}"
        choices.append(Choice(str(at), option.name, words))
    return tuple(choices)


def question_heading(case: Case, question: Question) -> str:
    """Return what a question asks."""
    if question.kind == "amount":
        return f"{AMOUNTS[amount_of(case)].title}: how much for this one?"
    return ASKED[question.kind]


def _supposed(case: Case, question: Question, system: System) -> list[Block]:
    otherwise = {"vet-if": case.vet_if, "right-if": case.right_if}.get(question.kind)
    return [Block("body", supposed_words(case, otherwise, system))] if otherwise else []


def supposed_words(case: Case, otherwise: Answer, system: System) -> str:
    """Return what is supposed otherwise, in a sentence."""
    reader, finding = _reader(case, system), case.walk.guide.findings[otherwise.finding]
    was, would = (reader.answer(finding, value) for value in (case.now[otherwise.finding], otherwise.value))
    return f"Suppose one thing were otherwise. {finding.label}: {_end(would)} It was: {_end(was)}"


def _known(played: Round, system: System) -> str:
    case = played.posed.case
    names = [*(name for name in case.told if name in case.now), *played.looked]
    facts = [_seen(case, name, system) for name in names if name in case.now]
    return f"Seen: {'; '.join(fact.rstrip('.') for fact in facts)}." if facts else "Nothing was looked at."


def _seen(case: Case, name: str, system: System) -> str:
    if name in case.now:
        return _fact(case, name, system)
    label = case.walk.guide.findings[name].label
    return f"{label}: nobody can say, and it is not needed here."


def _fact(case: Case, name: str, system: System) -> str:
    finding = case.walk.guide.findings[name]
    return f"{finding.label}: {_end(_reader(case, system).answer(finding, case.now[name]))}"


def _earlier(case: Case, move: Answer | Done, system: System) -> str:
    guide = case.walk.guide
    if isinstance(move, Done):
        return f"then done: {getattr(guide.nodes[move.act], 'title', move.act)}"
    finding = guide.findings[move.finding]
    return f"{finding.label}: {_reader(case, system).answer(finding, move.value)}"


def _reader(case: Case, system: System) -> Reader:
    return Reader(case.walk.guide, Facts(case.walk.guide.values(), case.now), system)


def _end(words: str) -> str:
    """Return words as the end of a sentence."""
    return words if words.endswith((".", "?")) else f"{words}."


def is_drawn(case: Case) -> bool:
    """Whether a case was drawn and not written."""
    return case.name.startswith(BEGINS)
