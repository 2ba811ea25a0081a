"""A round as pages say it: the story, what was seen, the questions. Only words; nothing is decided here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from triage.facts import UNSURE, Value
from triage.page.page import Block, Choice, Page
from triage.page.words import Reader
from triage.practice.case import Case
from triage.practice.looking import listed, ordinary
from triage.practice.questions import Question, amount_line, line_words
from triage.practice.round import Round
from triage.practice.written import told_story
from triage.units import System
from triage.walk import Answer, Done, Walk

TITLE = "Practice: an invented lamb"
NOT_SURE = "Not sure counts as a worry until something else tells more."
OTHERWISE = "Suppose one thing were otherwise."
OTHERWISE_AGAIN = "Now suppose another thing instead."
OTHERWISE_STILL = "Suppose the same once more."
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
    if any(case.now.get(name) is UNSURE for name in played.looked):
        blocks.append(Block("quiet", NOT_SURE))
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
    blocks += [Block("body", _seen(case, name, system)) for name in _told(case)]
    earlier = [_earlier(case, move, system) for move in case.before]
    blocks += [Block("body", f"Before: {'; '.join(earlier)}.")] if earlier else []
    return blocks


def question_page(played: Round, question: Question, marked: frozenset[str], system: System) -> Page:
    """One question, with all that is known of the lamb under it."""
    case = played.posed.case
    blocks = [Block("heading", question_heading(case, question)), *_before(played, question, system)]
    blocks.append(Block("quiet", _known(played, question, system)))
    if question.many:
        blocks.append(Block("label", "A digit marks a line or clears it. d when you are done."))
    return Page("round", TITLE, tuple(blocks), _choices(question, marked, system))


def _before(played: Round, question: Question, system: System) -> list[Block]:
    """Return what a question is about, where that is not simply the lamb as it is."""
    case = played.posed.case
    if question.kind == "amount":
        return [Block("body", f"The page says: {amount_line(case, system)}")]
    otherwise = supposed_of(case, question.kind)
    if otherwise is None:
        return []
    lead = OTHERWISE
    if question.kind == "right-if" and case.vet_if:
        lead = OTHERWISE_STILL if case.vet_if == case.right_if else OTHERWISE_AGAIN
    seen = otherwise.finding in (*case.told, *played.looked)
    return [Block("body", supposed_words(case, otherwise, system, lead, seen))]


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
        return "How much is right for this one?"
    return ASKED[question.kind]


def supposed_of(case: Case, kind: str) -> Answer | None:
    """Return what a kind of question supposes to be otherwise."""
    return {"vet-if": case.vet_if, "right-if": case.right_if}.get(kind)


def supposed_words(
    case: Case, otherwise: Answer, system: System, lead: str = OTHERWISE, seen: bool = True
) -> str:
    """Return what is supposed otherwise, in a sentence; how it is only to who has `seen` it."""
    would = fact_words(case.walk, otherwise.finding, otherwise.value, system)
    was = _reader(case.walk, system).answer(
        case.walk.guide.findings[otherwise.finding], case.now[otherwise.finding]
    )
    return f"{lead} {_end(would)}" + (f" (In this case: {was.rstrip('.')}.)" if seen else "")


def _known(played: Round, question: Question, system: System) -> str:
    """Return what was told and seen, as it is in the case, or as it is supposed."""
    case = played.posed.case
    if supposed_of(case, question.kind):
        # Of a supposed lamb only what the guide still goes by: the rest may not be so any more.
        known, aside, earlier = question.walk.state.known, [], []
        lead, none = "It would be", "Nothing else is known of it."
    else:
        # What the guide never asks here was found as it should be.
        known, aside = case.now, [name for name in played.looked if name not in case.now]
        earlier = [f"before: {_earlier(case, move, system)}" for move in case.before]
        lead, none = "Seen", "Nothing was looked at."
    seen = [name for name in (*_told(case), *played.looked) if name in case.now and name in known]
    facts = [*_facts(question.walk, {name: known[name] for name in seen}, aside, system), *earlier]
    told = f"{lead}: {'; '.join(facts)}." if facts else none
    return f"{told} {NOT_SURE}" if any(known[name] is UNSURE for name in seen) else told


def _facts(walk: Walk, seen: Mapping[str, Value], aside: Sequence[str], system: System) -> list[str]:
    """Return what is out of the way in words, and what is not by its label alone."""
    findings = walk.guide.findings
    well = [name for name in seen if seen[name] in (getattr(findings[name].normal, "is_", ()) or ())]
    facts = [fact_words(walk, name, seen[name], system).rstrip(".") for name in seen if name not in well]
    labels = ", ".join(findings[name].label for name in (*well, *aside))
    return [*facts, f"as it should be ({labels})"] if labels else facts


def _seen(case: Case, name: str, system: System) -> str:
    if name in case.now:
        return _end(fact_words(case.walk, name, case.now[name], system))
    usual = ordinary(case, name)
    label = case.walk.guide.findings[name].label
    said = fact_words(case.walk, name, usual, system) if usual else f"{label}: nothing out of the way"
    return f"{_end(said)} As it should be."


def _told(case: Case) -> tuple[str, ...]:
    """Return what is told outright, without the answers that only lead on to another question."""
    farm = case.walk.guide.farm
    leading = farm.leads_on if farm else {}
    return tuple(
        name for name in case.told if name in case.now and case.now[name] not in leading.get(name, ())
    )


def fact_words(walk: Walk, name: str, value: Value, system: System) -> str:
    """Return what was seen so that it can be read alone: none of what, and yes to what."""
    finding = walk.guide.findings[name]
    reader = _reader(walk, system)
    words = reader.answer(finding, value)
    if value is UNSURE:
        return f"{finding.label}: not sure, and it can't be told now"
    if words.lower().startswith("none of these"):
        others = [reader.choice(finding, each) for each in finding.choices if each != value]
        return f"{finding.label}: none of these: {'; '.join(others)}"
    if words.split(",")[0].split()[0] in ("Yes", "No") and not finding.measure:
        return f"{reader.fill(finding.ask)} {words}"
    return f"{finding.label}: {words}"


def _earlier(case: Case, move: Answer | Done, system: System) -> str:
    guide = case.walk.guide
    if isinstance(move, Done):
        return f"then done: {getattr(guide.nodes[move.act], 'title', move.act)}"
    return fact_words(case.walk, move.finding, move.value, system)


def _reader(walk: Walk, system: System) -> Reader:
    return Reader(walk.guide, walk.facts, system)


def _end(words: str) -> str:
    """Return words as the end of a sentence."""
    return words if words.endswith((".", "?")) else f"{words}."
