"""Simulated helpers: one who follows the guide, one who guesses, and one with a single wrong belief."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from random import Random

from triage.practice.dealing import Dealer, Past, Played, calls
from triage.practice.faults import Score
from triage.practice.looking import danger_findings, listed
from triage.practice.memory import after_round, scheduler_of
from triage.practice.questions import Posed, Question
from triage.practice.readiness import Shown
from triage.practice.round import Round
from triage.practice.scoring import score

EVENING = datetime(2026, 2, 1, 19, tzinfo=UTC)
A_CASE = timedelta(minutes=2)
A_DAY = 10
"""Cases that a simulated helper does in one evening."""

Play = Callable[[Posed], Round]


def looked_by_the_guide(posed: Posed) -> Round:
    """Look at what the guide looks at, the danger signs first, and decide."""
    dangers = danger_findings(posed.case.walk.guide)
    played = Round(posed)
    for finding in sorted(posed.case.hidden, key=lambda name: name not in dangers):
        played = played.look(finding)
    return played.decide()


def by_the_guide(posed: Posed) -> Round:
    """Answer everything as the guide does."""
    played = looked_by_the_guide(posed)
    while question := played.question:
        played = played.answer(*question.right)
    return played


def at_random(rng: Random) -> Play:
    """Return a helper who looks at anything and answers anything."""

    def play(posed: Posed) -> Round:
        played = Round(posed)
        for finding in listed(posed.case):
            played = played.look(finding.name) if rng.random() < 0.5 else played
        played = played.decide()
        while question := played.question:
            names = [option.name for option in question.options]
            chosen = [name for name in names if rng.random() < 0.5] if question.many else [rng.choice(names)]
            played = played.answer(*chosen)
        return played

    return play


def believing_otherwise(rule: str) -> Play:
    """Return a helper who follows the guide in all but one rule, which it takes to be wrong."""

    def play(posed: Posed) -> Round:
        played = looked_by_the_guide(posed)
        while question := played.question:
            played = played.answer(*_against(question, rule))
        return played

    return play


def _against(question: Question, rule: str) -> list[str]:
    chosen = set(question.right)
    against = [option for option in question.options if rule in option.rules]
    if against and question.many:
        for option in against:
            chosen ^= {option.name}
    elif against and not against[0].right:
        chosen = {against[0].name}
    return [option.name for option in question.options if option.name in chosen]


def practised(
    dealer: Dealer, play: Play, most: int, stop: Callable[[Score], bool] = lambda came: False
) -> list[tuple[Posed, Score]]:
    """Play cases one evening after another, at most so many; return each with what came of it."""
    past, now, rng, plan = Past(), EVENING, Random(1), scheduler_of()
    done: list[tuple[Posed, Score]] = []
    while len(done) < most:
        posed = dealer.deal(past, now, rng)
        assert posed is not None
        came = score(play(posed))
        done.append((posed, came))
        kept = {**past.kept, **after_round(past.kept, came, now, plan)}
        past = Past(
            [
                *past.rounds,
                Played(
                    posed.case.name,
                    posed.case.page.name,
                    came.asked,
                    came.danger,
                    calls(dealer.guide, came.urgency),
                ),
            ],
            kept,
        )
        now += A_CASE if len(done) % A_DAY else timedelta(days=1)
        if stop(came):
            break
    return done


def shown(done: list[tuple[Posed, Score]]) -> list[Shown]:
    """Return what rounds have shown, one after another."""
    return [
        Shown(EVENING + at * A_CASE, posed.case.name, came.urgency, came.said, came.fails)
        for at, (posed, came) in enumerate(done)
    ]
