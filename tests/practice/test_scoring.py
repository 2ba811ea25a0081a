"""Scoring: a safety miss fails a case whatever else was right, and each kind of fault is counted apart."""

from __future__ import annotations

from random import Random

import pytest

from tests.practice.helpers import by_the_guide, looked_by_the_guide
from triage.facts import UNSURE
from triage.guide.model import Guide
from triage.practice.cards import page_card, rule_card, sign_card
from triage.practice.dealing import Dealer
from triage.practice.faults import SAFETY
from triage.practice.looking import danger_findings, listed
from triage.practice.questions import Posed
from triage.practice.round import Round
from triage.practice.scoring import score


def posed_as(dealer: Dealer, name: str) -> Posed:
    """Return a written case with its questions."""
    return next(posed for posed, _ in dealer.written if posed.case.name == name)


@pytest.fixture
def chilled(dealer: Dealer) -> Posed:
    """A limp lamb, past five hours, with no glucose to be had: a danger sign, no heat and nothing by mouth."""
    return posed_as(dealer, "wait-for-vet-1")


@pytest.fixture
def calm(dealer: Dealer) -> Posed:
    """A lamb that needs no vet today."""
    return next(posed for posed, _ in dealer.written if posed.case.urgency == "watch")


def answered(posed: Posed, start: Round | None = None, **otherwise: tuple[str, ...]) -> Round:
    """Answer as the guide does, but for some questions."""
    played = start or looked_by_the_guide(posed)
    while question := played.question:
        played = played.answer(*otherwise.get(question.kind.replace("-", "_"), question.right))
    return played


def test_the_guide_itself_makes_no_mistake(dealer: Dealer) -> None:
    """Of every written case."""
    for posed, _ in dealer.written:
        came = score(by_the_guide(posed))
        assert came.faults == (), posed.case.name
        assert came.said == came.urgency == posed.case.urgency
        assert came.missed == frozenset()


def test_a_danger_sign_that_was_not_looked_for(chilled: Posed) -> None:
    """It fails the case even where every answer happens to be right."""
    came = score(answered(chilled, Round(chilled).decide()))

    assert came.fails
    assert came.faults[0].kind == "sign"
    assert sign_card("danger", "limp") in came.missed
    assert came.said == came.urgency


def test_a_call_too_late_fails_whatever_else_was_right(chilled: Posed, guide: Guide) -> None:
    """Less than now for a danger sign is under-triage and a safety miss, with the rule and its source."""
    came = score(answered(chilled, vet=("vet-today",)))

    kinds = [fault.kind for fault in came.faults]
    assert kinds == ["call", "under"]
    assert came.fails
    assert came.faults[0].rules
    assert came.faults[0].why == guide.rules[came.faults[0].rules[0]].because
    assert came.faults[0].sources == guide.rules[came.faults[0].rules[0]].sources


def test_more_urgent_than_the_guide_is_no_safety_miss(calm: Posed) -> None:
    """It is counted apart, and told."""
    came = score(answered(calm, vet=("vet-now",)))

    assert [fault.kind for fault in came.faults] == ["over"]
    assert not came.fails


def test_a_forbidden_deed_fails(chilled: Posed) -> None:
    """Heat before glucose, marked as right; its rules are to come back."""
    question = next(each for each in chilled.questions if each.kind == "right")
    deed = next(option for option in question.options if option.rules and not option.right)

    came = score(answered(chilled, right=(*question.right, deed.name)))

    assert [fault.kind for fault in came.faults] == ["forbidden"]
    assert came.fails
    assert {rule_card(rule) for rule in deed.rules} <= came.missed
    assert page_card(chilled.case.page.name) in came.missed


def test_a_right_line_left_out_is_no_safety_miss(dealer: Dealer) -> None:
    """It is told and counted, as long as something right was done."""
    for posed, _ in dealer.written:
        question = next(each for each in posed.questions if each.kind == "right")
        for name in question.right if len(question.right) > 1 else ():
            came = score(answered(posed, right=tuple(each for each in question.right if each != name)))
            assert [fault.kind for fault in came.faults] == ["left-out"]
            assert not came.fails


def test_every_deed_that_breaks_a_rule_fails(dealer: Dealer) -> None:
    """Whatever it is, for every written case, and its reason is the rule's own."""
    for posed, _ in dealer.written:
        question = next(each for each in posed.questions if each.kind == "right")
        for option in question.options:
            if not option.right:
                came = score(answered(posed, right=(*question.right, option.name)))
                assert came.fails == bool(option.rules)
                assert [fault.kind for fault in came.faults] == ["forbidden" if option.rules else "needless"]
                if option.rules:
                    assert came.faults[0].why == dealer.guide.rules[option.rules[0]].because


def test_another_order_is_only_another_order(dealer: Dealer) -> None:
    """A right step that is not the first is told and counted, and fails nothing."""
    for posed, _ in dealer.written[:40]:
        question = next((each for each in posed.questions if each.kind == "first"), None)
        later = (
            [each for each in question.options if each.kind == "step" and not each.right] if question else []
        )
        if later:
            came = score(answered(posed, first=(later[0].name,)))
            assert [fault.kind for fault in came.faults] == ["order"]
            assert not came.fails


def test_another_amount(dealer: Dealer) -> None:
    """It is a fault of its own, and its sum comes back."""
    posed = next(posed for posed, _ in dealer.written if any(q.kind == "amount" for q in posed.questions))
    question = next(each for each in posed.questions if each.kind == "amount")
    wrong = next(each for each in question.options if not each.right)

    came = score(answered(posed, amount=(wrong.name,)))

    assert [fault.kind for fault in came.faults] == ["amount"]
    assert any(card.startswith("amount:") for card in came.missed)


def test_looking_is_scored_too(chilled: Posed) -> None:
    """Danger signs first; what the guide looks at and was not; and what was no use."""
    hidden = [name for name in chilled.case.hidden if name != "danger"]
    played = Round(chilled).look(hidden[0]).look("danger")

    came = score(answered(chilled, played.decide()))

    kinds = [fault.kind for fault in came.faults]
    assert kinds[0] == "order"
    assert kinds.count("unlooked") == len(hidden) - 1
    assert not came.fails


def test_a_look_that_was_no_use_is_counted(dealer: Dealer) -> None:
    """What the guide never asks of this lamb, and no vet of any lamb; what a vet asks of any lamb is none."""
    asked_of_all = set(dealer.guide.front.vet_asks)
    seen = set()
    for posed, _ in dealer.written:
        for finding in listed(posed.case):
            if finding.name not in posed.case.now:
                start = looked_by_the_guide(posed).back().look(finding.name).decide()
                kinds = [fault.kind for fault in score(answered(posed, start)).faults]
                assert kinds == ([] if finding.name in asked_of_all else ["needless"])
                seen.add(bool(kinds))
    assert seen == {True, False}


def test_not_sure_of_danger_and_not_looked(dealer: Dealer) -> None:
    """Not sure counts as the worst, so who has not looked has missed it; and so with each danger there is."""
    unsure = [posed for posed, _ in dealer.written if posed.case.now.get("danger") is UNSURE]
    assert unsure
    for posed in unsure:
        assert score(answered(posed, Round(posed).decide())).faults[0].kind == "sign"
    drawn = (dealer.draw(Random(seed)) for seed in range(400))
    two = [
        posed for posed in drawn if posed and len(danger_findings(dealer.guide) & set(posed.case.hidden)) > 1
    ]
    assert two
    for posed in two:
        kinds = [fault.kind for fault in score(answered(posed, Round(posed).decide())).faults[:2]]
        assert set(kinds) <= {"sign", "order"}


def test_doing_nothing_is_a_safety_miss(dealer: Dealer) -> None:
    """Who marks no line at all does no harm, and lets it die."""
    for posed, _ in dealer.written[:60]:
        came = score(answered(posed, right=()))
        assert came.fails
        assert [fault.kind for fault in came.faults].count("nothing") == 1


def test_a_wrong_answer_to_a_supposed_case_counts_too(dealer: Dealer) -> None:
    """What would be a danger sign then, called milder, is a safety miss; the case's own call is not touched."""
    posed, question = next(
        (posed, question)
        for posed, _ in dealer.written
        for question in posed.questions
        if question.kind == "vet-if" and question.right == ("vet-now",)
    )

    came = score(answered(posed, vet_if=("care-here",)))

    assert question.kind == "vet-if"
    assert [fault.kind for fault in came.faults] == ["call"]
    assert came.fails
    assert came.said == came.urgency


def test_which_kinds_fail_a_case() -> None:
    """No other kind does, and no total can hide these."""
    assert {"sign", "forbidden", "call", "nothing"} == SAFETY
