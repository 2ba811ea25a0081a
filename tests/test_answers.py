"""Walking by a file of answers: to the end, or to a clear stop."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from triage.answers import Answers, Stopped, follow, read_answers
from triage.clock import Now
from triage.entry import AnswerReader
from triage.guide.model import Guide
from triage.problems import Problem
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)


def went(guide: Guide, text: str, unsure_rest: bool = False) -> Walk | Stopped | list[Problem]:
    answers = read_answers(text, "lamb.yaml", guide)
    if not isinstance(answers, Answers):
        return answers
    return follow(Walk(guide), answers, AnswerReader(guide, "metric", NOW), unsure_rest)


def test_a_map_of_answers_reaches_an_end(guide: Guide) -> None:
    """Findings and values in any order walk to an end; acts count as carried out."""
    walk = went(
        guide,
        "weight: 4.2kg\ndanger: limp\nage: 3h\ntemperature: [36.2, 38.0]\nswallows: sucks\nbefore-feed: none\n",
    )

    assert isinstance(walk, Walk)
    assert walk.node.name == "warmed-new-bottle"


def test_json_is_taken_too(guide: Guide) -> None:
    """JSON is a map like any other."""
    walk = went(guide, '{"danger": "gasping"}')

    assert isinstance(walk, Walk)
    assert walk.node.name == "gasping"


def test_it_stops_at_the_first_finding_it_lacks(guide: Guide) -> None:
    """What is asked and not answered is named, with the two ways on."""
    stopped = went(guide, "danger: none\n")

    assert isinstance(stopped, Stopped)
    assert (
        stopped.why == "lamb.yaml: 'temperature' is asked and not answered here; add it, or add --unsure-rest"
    )


def test_a_finding_asked_again_needs_a_list(guide: Guide) -> None:
    """A temperature taken again after warming is not the one from before."""
    stopped = went(guide, "danger: limp\ntemperature: 36.2\nage: 3h\n")

    assert isinstance(stopped, Stopped)
    assert "'temperature' is asked again, for the 2. time; write its values as a list" in stopped.why


def test_the_rest_can_be_not_sure(guide: Guide) -> None:
    """With the rest not sure, an empty night still ends, and at the top urgency."""
    walk = went(guide, "reason: scours\n", unsure_rest=True)

    assert isinstance(walk, Walk)
    assert walk.state.urgency == "vet-now"


def test_not_sure_is_no_way_round_a_question_that_has_none(guide: Guide) -> None:
    """A question that can't be unsure still stops the walk."""
    stopped = went(guide, "danger: none\ntemperature: 39\nswallows: sucks\n", unsure_rest=True)

    assert isinstance(stopped, Stopped)
    assert "'reason' is asked and not answered" in stopped.why


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("dangr: none\n", "lamb.yaml:1:1: there is no finding 'dangr'; did you mean 'danger'?"),
        ("danger: {a: b}\n", "lamb.yaml:1:9: an answer is one value, or a list of values"),
        ("danger: [none\n", "lamb.yaml:2:1: not YAML"),
        ("danger: none\ndanger: limp\n", "lamb.yaml:2:1: 'danger' is here twice"),
    ],
)
def test_mistakes_in_the_file_are_placed(guide: Guide, text: str, said: str) -> None:
    """A mistake in the file is told at its line and column."""
    problems = went(guide, text)

    assert isinstance(problems, list)
    assert str(problems[0]).startswith(said)


def test_a_value_that_cannot_be_is_placed(guide: Guide) -> None:
    """A value no lamb can have stops the walk at its own line."""
    stopped = went(guide, "danger: none\ntemperature: 392\n")

    assert isinstance(stopped, Stopped)
    assert stopped.why.startswith("lamb.yaml:2:14: temperature: 392 can't be right")


def test_a_dull_older_lamb_that_cannot_pass_urine_is_a_call_now(guide: Guide) -> None:
    """Dullness does not hide a blocked lamb: an older dull lamb is asked what it passes."""
    known = "danger: none\ntemperature: 39.2\nswallows: sucks\nreason: cold\nbefore-feed: none\nmanner: dull\nage: 8 weeks\n"
    walk = went(guide, known + "passing: no-urine\n")

    assert isinstance(walk, Walk)
    assert (walk.node.name, walk.state.urgency) == ("blocked-urine", "vet-now")
