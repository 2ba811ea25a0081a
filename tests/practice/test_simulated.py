"""Simulated helpers: who may be called ready, and who is found out."""

from __future__ import annotations

from random import Random

import pytest

from tests.practice.helpers import at_random, believing_otherwise, by_the_guide, practised, shown
from triage.guide.find import knowledge_root
from triage.guide.model import Guide
from triage.guide.read import read_guide
from triage.practice.cards import RULE, about, kind_of
from triage.practice.dealing import Dealer
from triage.practice.readiness import PassMark, Readiness
from triage.practice.scoring import score

TRIES = 10_000
WITHIN = 60


def _rules() -> list[str]:
    guide = read_guide(knowledge_root()).guide
    return sorted(guide.rules) if guide else []


def test_every_rule_is_met_in_the_first_sixty_cases(dealer: Dealer, guide: Guide) -> None:
    """A new helper meets every one of the guide's rules, and nothing that follows the guide is a fault."""
    done = practised(dealer, by_the_guide, WITHIN)

    met = {about(card) for _, came in done for card in came.asked if kind_of(card) == RULE}
    assert met == set(guide.rules)
    assert [fault for _, came in done for fault in came.faults] == []


def test_who_follows_the_guide_is_called_ready(dealer: Dealer, guide: Guide) -> None:
    """After enough cases, and not before there are sixty danger cases among them."""
    rounds = shown(practised(dealer, by_the_guide, 150))

    ready = [Readiness(guide, rounds[:count]).ready for count in range(len(rounds) + 1)]
    first = ready.index(True)
    assert all(ready[first:])
    assert sum(each.urgency == guide.top for each in rounds[:first]) == PassMark().danger


def test_nobody_who_guesses_is_ever_called_ready(dealer: Dealer, guide: Guide) -> None:
    """In ten thousand tries; sixty danger cases in a row would have to be right, so each ends at its first miss."""
    rng = Random(6)
    play = at_random(rng)
    danger = [posed for posed, _ in dealer.written if posed.case.urgency == guide.top]
    longest = 0
    for _ in range(TRIES):
        row = 0
        while row < PassMark().danger and not score(play(rng.choice(danger))).fails:
            row += 1
        longest = max(longest, row)

    assert longest <= 3  # nowhere near it
    rounds = shown(practised(dealer, play, 90))
    assert not Readiness(guide, rounds).ready


@pytest.mark.parametrize("rule", _rules())
def test_a_single_wrong_belief_is_found_out(rule: str, dealer: Dealer) -> None:
    """Whoever holds one rule to be wrong, and knows all else, has a safety miss within sixty cases."""
    done = practised(dealer, believing_otherwise(rule), WITHIN, stop=lambda came: came.fails)

    assert done[-1][1].fails
    grave = [fault for fault in done[-1][1].faults if fault.fails]
    assert any(rule in fault.rules for fault in grave)


def test_now_is_not_always_right(dealer: Dealer, guide: Guide) -> None:
    """About half of the first sixty cases are not for now, and never more than a few in a row are."""
    done = practised(dealer, by_the_guide, WITHIN)
    row = "".join("x" if came.danger else "." for _, came in done)
    assert 20 <= row.count(".") <= 40
    assert "xxxxx" not in row[:40]


STUBBORN = (
    "no-feed-for-bloody-dung",
    "mouth-trouble-calls-today",
    "scours-pass-to-people",
    "danger-sign-calls-now",
)
"""Rules of each kind: a deed, a call for today, one about people, and the danger signs themselves."""


@pytest.mark.parametrize("rule", STUBBORN)
def test_who_learns_nothing_is_never_called_ready(rule: str, dealer: Dealer, guide: Guide) -> None:
    """However long the one wrong belief is kept, and whatever else is right."""
    rounds = shown(practised(dealer, believing_otherwise(rule), 160))

    assert sum(each.fails for each in rounds) > 1
    assert not any(Readiness(guide, rounds[:count]).ready for count in range(len(rounds) + 1))
