"""What a question says of the lamb: all that was looked at, and nothing that was not."""

from __future__ import annotations

from tests.practice.helpers import looked_by_the_guide
from triage.practice.dealing import Dealer
from triage.practice.looking import listed
from triage.practice.round import Round
from triage.practice.telling import question_page


def said(played: Round) -> str:
    """Return what stands on the page of the open question."""
    assert played.question
    return " ".join(
        block.text for block in question_page(played, played.question, frozenset(), "metric").blocks
    )


def test_a_look_that_found_nothing_wrong_is_told_again(dealer: Dealer) -> None:
    """Of every written case: a finding that the guide never asks here was still looked at, and is as it should be."""
    for posed, _ in dealer.written:
        aside = next((each for each in listed(posed.case) if each.name not in posed.case.now), None)
        if aside is None:
            continue
        words = said(Round(posed).look(aside.name).decide())
        assert "Nothing was looked at" not in words, posed.case.name
        assert aside.label in words.partition("as it should be (")[2], posed.case.name


def test_who_has_not_looked_is_told_so(dealer: Dealer) -> None:
    """And nobody who has."""
    untold = [posed for posed, _ in dealer.written if not posed.case.told and posed.case.hidden]
    assert untold
    for posed in untold:
        assert "Nothing was looked at." in said(Round(posed).decide()), posed.case.name
        assert "Nothing was looked at." not in said(looked_by_the_guide(posed)), posed.case.name


def test_a_supposed_lamb_has_nothing_said_of_looking(dealer: Dealer) -> None:
    """It is not there to be looked at: all questions of every written case, with no look taken."""
    for posed, _ in dealer.written:
        played = Round(posed).decide()
        while question := played.question:
            if question.kind in ("vet-if", "right-if"):
                assert "Nothing was looked at" not in said(played), posed.case.name
            played = played.answer(*question.right)
