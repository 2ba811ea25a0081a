"""What is said after a round: their way and the guide's, where they part, why, and one thing to remember."""

from __future__ import annotations

from collections import Counter

from triage.guide.model import Guide
from triage.page.page import Block, Page
from triage.page.wall import Wall
from triage.page.words import Reader
from triage.page.working import source_words
from triage.practice.case import Case
from triage.practice.dealing import calls
from triage.practice.faults import CALLED, Fault, Score
from triage.practice.questions import Question, line_words
from triage.practice.round import Round
from triage.practice.scoring import plainest_first
from triage.practice.telling import TITLE, fact_words, supposed_of, supposed_words
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

SUPPOSED = ("vet-if", "right-if")
MOST_TOLD = 3
"""Differences explained at once; the rest are counted. More is not taken in."""

BELOW_PAGE = "a shows both ways side by side, and each kind of difference counted apart."


def debrief_page(played: Round, came: Score, system: System) -> Page:
    """Return the page after a round: where it parts from the guide, why, and one thing to remember."""
    case = played.posed.case
    reader = Reader(case.walk.guide, case.walk.facts, system)
    blocks = [Block("heading", _headline(came)), Block("body", _page_words(case, reader))]
    more = (_why_so_soon(played, reader), _right_words(played, came))
    blocks += [Block("body", words) for words in more if words]
    blocks += _parting(played, came, system)
    blocks += _labelled("What misleads here", reader.fill(case.trap)) if case.trap else []
    blocks += _labelled("Remember", reader.fill(to_remember(case, came)))
    differing = [block for pair in _rows(played, system) if len(pair) > 1 for block in pair]
    if differing:
        blocks += [Block("blank", ""), Block("label", "Side by side, where you differ"), *differing]
    blocks += [Block("blank", ""), Block("quiet", NEXT), Block("quiet", BELOW_PAGE)]
    return Page("debrief", TITLE, tuple(blocks))


def side_page(played: Round, came: Score, system: System) -> Page:
    """Return both ways side by side in full, and what was counted."""
    blocks = [Block("heading", "Side by side")]
    blocks += [block for pair in _rows(played, system) for block in pair]
    counted = Counter(fault.kind for fault in came.faults)
    blocks += [Block("blank", ""), Block("label", "Counted apart")]
    blocks += [Block("body", f"{CALLED[kind]}: {counted[kind]}") for kind in CALLED if counted[kind]]
    blocks += [] if counted else [Block("body", "Nothing was otherwise.")]
    return Page("debrief", TITLE, (*blocks, Block("blank", ""), Block("quiet", "Enter goes back.")))


def _labelled(label: str, words: str) -> list[Block]:
    return [Block("blank", ""), Block("label", label), Block("body", words)]


def _headline(came: Score) -> str:
    if came.fails and all(fault.where in SUPPOSED for fault in came.faults if fault.fails):
        return "Safe for this one. A safety step was missed in what was supposed."
    if came.fails:
        return "A safety step was missed. Here is where."
    if any(fault.kind != "needless" for fault in came.faults):
        return "Safe. Some of it the guide does otherwise."
    return "Just as the guide does it."


def _page_words(case: Case, reader: Reader) -> str:
    say = case.walk.guide.urgency(case.urgency).say if case.urgency else ""
    decided = decided_by(case)
    by = f" What decides it: {decided}." if decided else ""
    return f"The guide comes to: {reader.fill(case.page.title)}. {say}.{by}".replace("..", ".")


def decided_by(case: Case) -> str:
    """Return the sign that made a case as urgent as it is; empty where only its page did.

    An age or a sex may come last, but the sign before it is what one phones for. Where an act was done, what
    raised it may be of the lamb as it was before.
    """
    findings = case.walk.guide.findings
    rises = [rise for rise in case.walk.state.rises if rise.finding]
    if case.before or not rises or rises[-1].urgency != case.urgency:
        return ""
    signs = [rise for rise in rises if findings[rise.finding].normal]
    rise = rises[-1] if findings[rises[-1].finding].normal or not signs else signs[-1]
    return fact_words(case.walk, rise.finding, rise.value, "metric")


def _why_so_soon(played: Round, reader: Reader) -> str:
    """Return the plainest rule behind how soon a vet is needed, where the call was right."""
    question = played.posed.questions[0]
    if question.right != played.answers["vet"]:
        return ""
    milder = next((option for option in question.options if option.rules), None)
    if milder is None or not calls(reader.guide, question.right[0]):
        return ""
    rule = plainest_first(reader.guide, milder.rules, (*played.posed.case.told, *played.looked))[0]
    return f"Why so soon: {reader.fill(rule.because)}"


def _right_words(played: Round, came: Score) -> str:
    """Return what was right, where something was not."""
    wrong = {fault.where for fault in came.faults}
    right = [ROWS[each.kind].lower() for each in played.posed.questions if each.kind not in wrong]
    return f"You had right: {', '.join(right)}." if right and wrong else ""


def _parting(played: Round, came: Score, system: System) -> list[Block]:
    """Tell the first difference, and the grave ones after it, each with its reason and its source."""
    if all(each.kind == "needless" for each in came.faults):
        return []  # a look too many is counted, and is no reason to be corrected
    told = _worth_telling(came)
    blocks: list[Block] = []
    for at, fault in enumerate(told[:MOST_TOLD]):
        label = "Where you part first" if at == 0 else "And here"
        blocks += [Block("blank", ""), Block("label", f"{label}: {CALLED[fault.kind].lower()}")]
        blocks += _fault(played, fault, system)
    left = len(told) - MOST_TOLD
    if left > 0:
        blocks.append(Block("quiet", f"And {left} more of that kind. They come back in later cases."))
    return blocks


def _worth_telling(came: Score) -> list[Fault]:
    """Return the first difference that matters, then what failed the case, then another call or amount."""
    if not came.faults:
        return []
    first = next((each for each in came.faults if each.kind != "needless"), came.faults[0])
    others = {(each.theirs, each.why): each for each in reversed(came.faults) if each is not first}
    called_grave = any(each.kind == "call" for each in came.faults)
    grave = [each for each in others.values() if each.fails]
    # A call too late before anything else that was grave.
    grave.sort(key=lambda each: each.kind in ("forbidden", "nothing"))
    rest = [each for each in others.values() if each.kind in ("over", "amount")]
    rest += [] if called_grave else [each for each in others.values() if each.kind == "under"]
    return [first, *grave, *rest]


def _fault(played: Round, fault: Fault, system: System) -> list[Block]:
    case = played.posed.case
    question = next((each for each in played.posed.questions if each.kind == fault.where), None)
    walk = question.walk if question else case.walk
    reader = Reader(walk.guide, walk.facts, system)
    blocks: list[Block] = []
    otherwise = supposed_of(case, fault.where)
    if otherwise:
        blocks.append(Block("quiet", supposed_words(case, otherwise, system)))
    blocks += [
        Block("body", f"You: {reader.fill(fault.theirs)}"),
        Block("body", f"The guide: {reader.fill(fault.guides)}"),
    ]
    if fault.why:
        blocks.append(Block("body", f"Why: {reader.fill(fault.why)}"))
    goes_for = rule_words(walk.guide, fault.rules[0], system) if fault.rules else ""
    blocks += [Block("body", f"It goes for every lamb like this: {goes_for}.")] if goes_for else []
    if fault.sources:
        more = f" And {len(fault.sources) - 1} more." if len(fault.sources) > 1 else ""
        blocks.append(Block("quiet", f"From: {source_words(walk.guide, fault.sources[0])}{more}"))
    return blocks


def rule_words(guide: Guide, rule: str, system: System) -> str:
    """Return which lambs a rule is about, with its numbers; empty for a rule about all of them."""
    wall, said = Wall(guide, system), list[str]()
    for name, conditions in guide.rules[rule].when.items():
        words = wall.conditions(guide.findings[name], conditions)
        unsure = any(each.unsure for each in conditions)
        either = " or ".join(part for part in (words, "not sure" if unsure else "") if part)
        said += [f"{guide.findings[name].label}: {either}"] if either else []
    return "; ".join(said)


def _rows(played: Round, system: System) -> list[list[Block]]:
    """Return each thing with their way and the guide's: one line where both are the same."""
    rows = [_looks(played)]
    case = played.posed.case
    for question in played.posed.questions:
        label, otherwise = ROWS[question.kind], supposed_of(case, question.kind)
        if otherwise:
            told = fact_words(case.walk, otherwise.finding, otherwise.value, system).rstrip(".")
            label = f"{label} (if {told[:1].lower()}{told[1:]})"
        rows.append(_row(label, question, played.answers[question.kind], system))
    return rows


def _looks(played: Round) -> list[Block]:
    case = played.posed.case
    labels = case.walk.guide.findings
    theirs = ", ".join(labels[name].label for name in played.looked) or "nothing"
    guides = ", ".join(labels[name].label for name in case.hidden) or "nothing more"
    # Another order is told where it matters: the danger signs.
    return _pair("Looked at", guides if set(played.looked) == set(case.hidden) else theirs, guides)


def _row(label: str, question: Question, given: tuple[str, ...], system: System) -> list[Block]:
    def words(names: tuple[str, ...]) -> str:
        options = [option for option in question.options if option.name in names]
        return " ".join(_stop(line_words(question, each, system)) for each in options) or "nothing"

    return _pair(label, words(given), words(question.right))


def _pair(label: str, theirs: str, guides: str) -> list[Block]:
    if theirs == guides:
        return [Block("body", f"{label}, you and the guide: {_stop(theirs)}")]
    return [
        Block("body", f"{label}, you: {_stop(theirs)}"),
        Block("body", f"{label}, the guide: {_stop(guides)}"),
    ]


def to_remember(case: Case, came: Score) -> str:
    """Return the one thing to take away: why a safety step mattered, or the author's word, or a caution."""
    grave = next((fault.why for fault in _worth_telling(came) if fault.fails and fault.why), "")
    return grave or case.remember or next(iter(case.page.cautions), "")


def _stop(words: str) -> str:
    return words if words.endswith((".", "?")) else f"{words}."
