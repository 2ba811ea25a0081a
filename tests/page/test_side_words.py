"""The trade words of a page, explained one key away, the same in both faces."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from triage.clock import Now
from triage.guide.model import Guide
from triage.page.page import Page
from triage.session import Session
from triage.walk import Walk

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)
FIRST_MILK = ("6", "39.3", "1", "5", "2h", "6", "4.2kg")


def page_after(guide: Guide, *lines: str) -> Page:
    held = Session(Walk(guide), clock=lambda: NOW)
    for line in lines:
        held.take(line)
    return held.page()


def words_on(page: Page) -> list[str]:
    """Return the trade words listed under the heading `Words`."""
    texts = [block.text for block in page.blocks]
    if "Words" not in texts:
        return []
    after = page.blocks[texts.index("Words") + 1 :]
    listed = [
        block.text
        for block in after[: next((n for n, each in enumerate(after) if each.role != "quiet"), len(after))]
    ]
    return [text.partition(": ")[0] for text in listed]


def test_a_question_explains_the_words_it_asks_in(guide: Guide) -> None:
    """The first question says limp and fitting, and `?` says what both mean."""
    assert {"limp", "fit"} <= set(words_on(page_after(guide, "?")))


def test_an_outcome_explains_the_words_on_its_page(guide: Guide) -> None:
    """Words of the steps and cautions are explained, though the page behind `?` does not repeat them."""
    assert {"first milk", "navel", "ewe", "gums"} <= set(words_on(page_after(guide, *FIRST_MILK, "?")))


def test_a_technique_that_is_picked_explains_its_own_words(guide: Guide) -> None:
    """With a technique open, the words are those of the technique."""
    title = guide.how_tos["bottle-feed"].title
    listed = page_after(guide, *FIRST_MILK, "?").blocks
    number = next(block.mark for block in listed if block.text == title)
    page = page_after(guide, *FIRST_MILK, "?", number)

    assert title in [block.text for block in page.blocks]
    assert "swallow" in words_on(page)
    assert "navel" not in words_on(page)


def test_the_working_explains_its_words_too(guide: Guide) -> None:
    """The notes of the numbers behind a sum use words of the trade, and say what they mean."""
    assert "first milk" in words_on(page_after(guide, *FIRST_MILK, "w"))


@pytest.mark.parametrize("lines", [("6", "?"), ("6", "39.3", "1", "3", "4", "?")])
def test_a_word_is_listed_once_and_in_order(guide: Guide, lines: tuple[str, ...]) -> None:
    """However often a page uses a word, it is listed once, by the alphabet."""
    words = words_on(page_after(guide, *lines))

    assert words == sorted(set(words), key=str.lower)


def test_every_word_of_every_page_can_be_looked_up(guide: Guide) -> None:
    """Each meaning that is listed is the one in the glossary, whole."""
    for block in page_after(guide, *FIRST_MILK, "?").blocks:
        word, colon, means = block.text.partition(": ")
        if colon and word in guide.glossary:
            assert means == guide.glossary[word].means
