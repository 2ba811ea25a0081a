"""A question that was answered before offers the answers that may have been given, and a way back for any other."""

from __future__ import annotations

import pytest

from tests.book.conftest import DAY
from tests.book.reader import Book
from triage.book.brought import brought_to
from triage.book.making import Making
from triage.book.memory import memory_of
from triage.book.phone import numbers
from triage.book.whole import book_of
from triage.facts import UNSURE, Value
from triage.guide.model import Ask, End, Guide

AGAIN = "Is it otherwise now? Then begin again at the danger signs, 1."


def test_a_lamb_that_cant_swallow_is_sent_to_no_tube(guide: Guide, metric: Book) -> None:
    """Where only lambs that swallow can have come, the other answer leads nowhere but to the danger signs."""
    node = guide.nodes["warmed-new-suck"]
    assert isinstance(node, Ask)
    cant = guide.findings[node.finding].choices["no-swallow"]

    assert cant not in [link.words for link in metric.links("node-warmed-new-suck")]
    assert AGAIN in metric.text("node-warmed-new-suck")


def test_who_has_another_answer_by_now_is_told_where_to_go(guide: Guide, metric: Book) -> None:
    """Wherever an answer is not offered again, and nowhere else; and something is always offered."""
    memory, brought = memory_of(guide, "danger"), brought_to(guide, "danger")
    fewer = 0
    for node in memory.asks:
        choices = guide.findings[node.finding].choices
        answers: tuple[Value, ...] = (*choices, UNSURE)
        left_out = [each for each in answers if not brought.may_answer(node, each)]
        text = metric.text(f"node-{node.name}")
        assert metric.links(f"node-{node.name}")
        assert (AGAIN in text) == bool(memory.surely(node) and left_out), node.name
        fewer += AGAIN in text
    assert fewer > 50


def test_a_page_that_calls_dials(guide: Guide) -> None:
    """Where the vet's number is known it stands with each call, and with no other page."""
    book = Book(book_of(Making(guide, DAY, phone=("01632 960111", "")))).by_id
    for node in guide.nodes.values():
        if isinstance(node, End):
            dials = [
                each for each in book[f"node-{node.name}"].iter("a") if each.get("href") == "tel:01632960111"
            ]
            assert len(dials) == bool(guide.urgency(node.urgency).opens), node.name


def test_the_call_stays_in_view(metric: Book) -> None:
    """With the links that are always at hand, and at the foot of each page of paper."""
    for place in ("nav", "footer"):
        said = [" ".join("".join(each.itertext()).split()) for each in metric.root.iter(place)]
        assert any("Told to phone? That still stands." in each for each in said), place


@pytest.mark.parametrize(
    ("typed", "dialled"),
    [
        ("01632 960111", "01632960111"),
        ("+44 (0)1632 960111", "+441632960111"),
        ("(01632) 960111", "01632960111"),
        ("01632 960111 or 960112", "01632960111"),
        ("555-0142 ext 5", "5550142"),
        ("Ann: 01632 960111", "01632960111"),
        ("next door", ""),
    ],
)
def test_what_is_dialled_is_one_number(typed: str, dialled: str, guide: Guide) -> None:
    """The first that stands there, as a phone takes it; what is no number is no link. The numbers are invented."""
    said = numbers(Making(guide, DAY, phone=(typed, "")))
    assert (f'href="tel:{dialled}"' in said) == bool(dialled)
    assert ("<a" in said) == bool(dialled)
