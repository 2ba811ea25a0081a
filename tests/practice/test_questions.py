"""Questions: what is right is the guide's own, what is wrong a rule forbids, and nothing is a trick."""

from __future__ import annotations

from triage.guide.model import Guide
from triage.guide.texts import said_on
from triage.page.words import Reader
from triage.practice.dealing import Dealer
from triage.practice.options import Option, breaks, page_at, stands_alone
from triage.practice.questions import MOST_LINES, amount_line, line_words


def test_what_is_right_stands_on_the_page(dealer: Dealer, guide: Guide) -> None:
    """Each right line is a text of the page that the walk comes to, word for word."""
    for posed, _ in dealer.written:
        for question in posed.questions:
            if question.kind in ("first", "right", "right-if"):
                say = guide.urgency(question.walk.state.urgency).say
                texts = (*said_on(question.walk.node), f"{say}.")
                assert all(option.text in texts for option in question.options if option.right)
            if question.kind in ("vet", "vet-if"):
                assert question.right == (question.walk.state.urgency,)


def test_what_is_wrong_by_a_rule_is_forbidden_for_this_very_lamb(dealer: Dealer, guide: Guide) -> None:
    """A deed that has rules against it: each of them bears on the lamb, and forbids just that."""
    for posed, _ in dealer.written:
        for question in posed.questions:
            bearing = {rule.name for rule in dealer.bearing.on(question.walk)}
            for option in question.options:
                assert set(option.rules) <= bearing
                if option.kind == "deed" and option.rules:
                    assert all(
                        breaks(guide, guide.deeds[option.name], guide.rules[rule]) for rule in option.rules
                    )


def test_a_deed_that_the_page_asks_for_is_never_a_wrong_one(dealer: Dealer, guide: Guide) -> None:
    """Nobody is told that warming is needless on a page that warms."""
    for posed, _ in dealer.written:
        for question in posed.questions:
            tags = {tag for step in getattr(page_at(question.walk), "do", ()) for tag in step.tag}
            for option in question.options:
                if option.kind == "deed" and not option.rules:
                    assert tags.isdisjoint(guide.deeds[option.name].tag)


def test_no_question_is_too_long(dealer: Dealer) -> None:
    """At most seven lines, and each its own; one right answer where one is asked for."""
    for posed, _ in dealer.written:
        for question in posed.questions:
            words = [line_words(question, option, "metric") for option in question.options]
            assert len(set(words)) == len(words) <= MOST_LINES
            assert question.many or len(question.right) == 1
            assert question.right


def test_the_same_case_has_the_same_questions(dealer: Dealer) -> None:
    """So that a round can be taken up where it was left."""
    for posed, _ in dealer.written[::10]:
        assert dealer.pose(posed.case) == posed


def test_amounts_are_those_of_the_sums(dealer: Dealer) -> None:
    """The right one is what the page itself shows for this lamb; nothing before the question tells it."""
    asked = [(p, q) for p, _ in dealer.written for q in p.questions if q.kind == "amount"]
    assert len(asked) > 20
    for posed, question in asked:
        case, right = posed.case, question.option("right")
        assert right is not None
        page = "\n".join(Reader(case.walk.guide, case.walk.facts).fill(text) for text in said_on(case.page))
        assert right.text in page
        told = [
            line_words(each, o, "metric")
            for each in posed.questions
            if each.kind == "first"
            for o in each.options
        ]
        assert not any(right.text in words for words in (amount_line(case, "metric"), *told))


def test_a_line_that_leans_on_another_is_never_asked_for(dealer: Dealer) -> None:
    """Torn from its page "If not, tube it" says nothing; only the first step of a page stands in any case."""
    assert not stands_alone(Option("a", "step", "If not, tube it."))
    assert not stands_alone(Option("a", "step", "The same again."))
    assert stands_alone(Option("a", "step", "Iodine on its navel."))
    for posed, _ in dealer.written:
        for question in posed.questions:
            if question.kind in ("first", "right", "right-if"):
                for option in question.options:
                    own = option.kind != "deed" and option.name != "step-0"
                    assert stands_alone(option) or not own
