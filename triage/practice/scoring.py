"""Scoring a round: each thing given is held against the guide's walk, its page, and its rules."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from triage.facts import UNSURE
from triage.guide.model import COMMON_PRACTICE, Guide
from triage.guide.model_rules import Rule
from triage.page.words import Reader
from triage.practice.cards import amount_card, cards_of, page_card, rule_card, sign_card
from triage.practice.faults import Fault, Kind, Score
from triage.practice.looking import danger_findings, is_needless, signs_of
from triage.practice.options import Option
from triage.practice.questions import Question, amount_of
from triage.practice.round import Round


def score(played: Round) -> Score:
    """Return what came of a round; it has to be finished."""
    case = played.posed.case
    guide = case.walk.guide
    faults = tuple(_faults(played))
    said = played.answers["vet"][0]
    asked = cards_of(played.posed)
    missed = asked & frozenset(_missed(played, faults))
    return Score(faults, case.urgency, said, case.urgency == guide.top, asked, missed)


def _faults(played: Round) -> Iterator[Fault]:
    yield from _looks(played)
    for question in played.posed.questions:
        given = played.answers[question.kind]
        if question.kind in ("vet", "vet-if"):
            yield from _vet(played, question, given[0])
        elif question.many:
            yield from _lines(question, given)
        else:
            yield from _one(question, given[0])


def _missed(played: Round, faults: Iterable[Fault]) -> Iterator[str]:
    """Yield the cards that a round has shown not to be known."""
    case, grave = played.posed.case, False
    for fault in faults:
        yield from (rule_card(rule) for rule in fault.rules)
        if fault.kind == "amount":
            yield amount_card(amount_of(case))
        if fault.kind in ("sign", "call", "under") and fault.where != "vet-if":
            yield from (sign_card(*sign) for sign in signs_of(case))
        grave |= fault.kind not in ("needless", "over", "unlooked")
    if grave:
        yield page_card(case.page.name)


def _looks(played: Round) -> Iterator[Fault]:
    case, looked = played.posed.case, played.looked
    guide = case.walk.guide
    dangers = danger_findings(guide)
    wanted = [name for name in case.hidden if name in dangers]
    reader = Reader(guide, case.walk.facts)
    for name in wanted:
        finding, value = guide.findings[name], case.now[name]
        if name in looked:
            continue
        # Not sure counts as the worst, and nobody who has not looked can be sure.
        grave = value is UNSURE or value in guide.front.danger_signs[name]
        guides = (
            f"{finding.label}: {reader.answer(finding, value)}."
            if grave
            else f"{finding.label} first, always."
        )
        yield Fault("sign" if grave else "order", "Not looked at.", guides, finding.why, where="look")
    if wanted and looked and wanted[0] in looked and looked[0] != wanted[0]:
        first = guide.findings[looked[0]].label
        asked = guide.findings[wanted[0]]
        yield Fault("order", f"{first} first.", f"{asked.label} first, always.", asked.why, where="look")
    for name in case.hidden:
        if name not in looked and name not in dangers:
            finding = guide.findings[name]
            there = reader.answer(finding, case.now[name])
            yield Fault(
                "unlooked", f"{finding.label}: not looked at.", f"It was: {there}.", finding.why, where="look"
            )
    for name in looked:
        if is_needless(case, name):
            finding = guide.findings[name]
            yield Fault(
                "needless",
                f"{finding.label}: looked at.",
                "This lamb's way does not need it.",
                "",
                where="look",
            )


def _vet(played: Round, question: Question, said: str) -> Iterator[Fault]:
    guide = question.walk.guide
    right = question.right[0]
    option = question.option(said)
    assert option is not None
    theirs, guides = f"{option.text}.", f"{guide.urgency(right).say}."
    if guide.rank(said) < guide.rank(right):
        means = guide.urgency(right).means
        yield Fault("over", theirs, guides, means, where=question.kind)
    elif guide.rank(said) > guide.rank(right):
        rules = plainest_first(guide, option.rules, (*played.posed.case.told, *played.looked))
        why, sources = _because(question, rules)
        grave = rules or right == guide.top
        if grave:
            names = tuple(rule.name for rule in rules)
            yield Fault("call", theirs, guides, why, sources, names, where=question.kind)
        if question.kind == "vet":
            yield Fault("under", theirs, guides, why, sources, where=question.kind)
        elif not grave:
            yield Fault("left-out", theirs, guides, why, sources, where=question.kind)


def _lines(question: Question, given: tuple[str, ...]) -> Iterator[Fault]:
    nothing = not set(question.right) & set(given)
    for option in question.options:
        if option.right and option.name not in given:
            why, sources = _because(question, ())
            kind: Kind = "nothing" if nothing else "left-out"
            nothing = False  # it is told once that nothing was done
            yield Fault(kind, "Left out.", option.text, why, sources, where=question.kind)
        elif not option.right and option.name in given:
            yield _wrong(question, option)


def _one(question: Question, given: str) -> Iterator[Fault]:
    option = question.option(given)
    assert option is not None
    if option.right:
        return
    right = question.option(question.right[0])
    assert right is not None
    if question.kind == "amount":
        why = "The guide reckons it from this lamb's weight; w shows how."
        yield Fault("amount", option.text, right.text, why, where=question.kind)
    elif option.kind == "deed":
        yield _wrong(question, option, right.text)
    else:
        why, sources = _because(question, ())
        yield Fault("order", option.text, right.text, why, sources, where=question.kind)


def _wrong(question: Question, option: Option, instead: str = "") -> Fault:
    rules = _rules(question, option)
    why, sources = _because(question, rules)
    names = tuple(rule.name for rule in rules)
    if rules:
        return Fault(
            "forbidden", option.text, instead or "Not for this lamb.", why, sources, names, question.kind
        )
    return Fault("needless", option.text, instead or "The page does not ask for it.", "", where=question.kind)


def _rules(question: Question, option: Option) -> list[Rule]:
    return [question.walk.guide.rules[name] for name in option.rules]


def plainest_first(guide: Guide, names: Iterable[str], seen: Iterable[str]) -> list[Rule]:
    """Return rules, the gravest first, and of those the one that speaks of most that was seen."""
    known = set(seen)

    def order(rule: Rule) -> tuple[int, bool, int]:
        urgency = rule.always.urgency if rule.always else ""
        return guide.rank(urgency), not rule.when.keys() <= known, -len(rule.when)

    return sorted((guide.rules[name] for name in names), key=order)


def _because(question: Question, rules: Iterable[Rule]) -> tuple[str, tuple[str, ...]]:
    """Return the reason and its sources: of a rule, or else of the page itself."""
    rule = next(iter(rules), None)
    if rule is not None:
        return rule.because, rule.sources
    page = question.walk.node
    likely = getattr(page, "likely", "")
    return likely, tuple(getattr(page, "sources", ())) or (COMMON_PRACTICE,)
