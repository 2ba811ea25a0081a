"""A round is what was given, in order; nothing else is kept of where it stands."""

from __future__ import annotations

import pytest

from tests.practice.helpers import by_the_guide
from triage.practice.dealing import Dealer
from triage.practice.looking import listed
from triage.practice.questions import Posed
from triage.practice.round import Given, NotGiven, Round, replay


@pytest.fixture
def posed(dealer: Dealer) -> Posed:
    """Any case."""
    return dealer.written[3][0]


def test_a_round_is_replayed_from_what_was_given(dealer: Dealer) -> None:
    """Of any round, at any point of it."""
    for posed, _ in dealer.written[::20]:
        played = by_the_guide(posed)
        for count in range(len(played.given) + 1):
            again = replay(posed, played.given[:count])
            assert again.given == played.given[:count]
            assert again.finished == (count == len(played.given))


def test_what_does_not_fit_any_more_is_left_out(posed: Posed) -> None:
    """A finding that is not listed, an option that is none, and a second decision."""
    given = (
        Given("look", "nowhere"),
        Given("decide"),
        Given("decide"),
        Given("vet", "no-such"),
        Given("x", "y"),
    )
    assert replay(posed, given).given == (Given("decide"),)


def test_the_questions_come_in_their_order(posed: Posed) -> None:
    """How soon a vet before anything else, and the supposed ones last."""
    kinds = [each.kind for each in posed.questions]
    order = ["vet", "first", "amount", "right", "vet-if", "right-if"]
    assert kinds == [each for each in order if each in kinds]
    assert kinds[0] == "vet"


def test_taking_back(posed: Posed) -> None:
    """The decision can be taken back until a question is answered; what was seen or answered stands."""
    played = Round(posed).look(listed(posed.case)[0].name)
    assert played.back() is played
    decided = played.decide()
    assert decided.back() == played
    answered = decided.answer("vet-now")
    assert answered.back() is answered
    finished = by_the_guide(posed)
    assert finished.back() is finished


def test_what_is_not_an_answer_is_refused(posed: Posed) -> None:
    """Two answers where one is asked for, none, or a look once it is decided."""
    played = Round(posed).decide()
    for names in (("vet-now", "watch"), (), ("tomorrow",)):
        with pytest.raises(NotGiven):
            played.answer(*names)
    with pytest.raises(NotGiven):
        played.look(listed(posed.case)[0].name)
    with pytest.raises(NotGiven):
        Round(posed).answer("vet-now")


def test_the_list_does_not_tell_what_matters(dealer: Dealer) -> None:
    """It is sorted by label, holds all that the guide needs, and things that it does not."""
    wider = 0
    for posed, _ in dealer.written:
        labels = [each.label for each in listed(posed.case)]
        assert labels == sorted(labels)
        assert set(posed.case.hidden) <= {each.name for each in listed(posed.case)}
        wider += len(labels) > len(posed.case.hidden)
    assert wider > len(dealer.written) / 2
