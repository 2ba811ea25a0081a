"""Pages of statements: there is one for each, in both unit systems, and it says what the guide says."""

from __future__ import annotations

import re

import pytest

from tests.conftest import small_guide
from triage.amounts import AMOUNTS
from triage.guide.glossary import tokens_of
from triage.guide.model import Act, Ask, End, Guide
from triage.page.listing import work_out
from triage.page.page import CERTAINTY_WORDS
from triage.page.wall import Wall
from triage.reading.collection import Collection
from triage.reading.figure_pages import span_words
from triage.reading.pages import NO_ONE_LAMB, SURE, statement_blocks
from triage.reading.samples import sample_lines
from triage.reading.standing import standing_line
from triage.units import System

SYSTEMS: tuple[System, ...] = ("metric", "us")


def page(guide: Guide, key: str, system: System = "metric") -> list[str]:
    """The texts of a page."""
    return [block.text for block in statement_blocks(Wall(guide, system), key)]


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_statement_has_a_page(collection: Collection, system: System) -> None:
    """With a title, something said, and no name in braces left over."""
    for key in collection.statements:
        blocks = statement_blocks(Wall(collection.guide, system), key)
        assert blocks[0].role == "heading", key
        assert blocks[0].text, key
        assert any(block.role in ("body", "step", "caution") for block in blocks), key
        assert not [block.text for block in blocks if re.search(r"\{[a-z-]+\}", block.text)], key


def test_every_page_says_how_sure_it_is(collection: Collection) -> None:
    """In the words of its certainty where it has one, and else in words for its kind."""
    said = {*CERTAINTY_WORDS.values(), *SURE.values()}
    for key in collection.statements:
        blocks = statement_blocks(Wall(collection.guide), key)
        foot = blocks[max(at for at, block in enumerate(blocks) if block.role == "blank") + 1 :]
        assert foot[0].text in said, key
        assert {block.role for block in foot[:1]} == {"quiet"}, key
    assert CERTAINTY_WORDS["high"] in page(collection.guide, "number/severe-chill")


def test_advice_is_read_for_no_one_lamb(collection: Collection) -> None:
    """Whatever tells what to do says that a lamb in need is to be walked through the guide."""
    for node in collection.guide.nodes.values():
        assert (NO_ONE_LAMB in page(collection.guide, f"node/{node.name}")) != isinstance(node, Ask)


def test_a_page_says_how_it_stands(collection: Collection) -> None:
    """Under the words of certainty, where there is something to say of it."""
    for key in ("number/severe-chill", "node/not-warming", "topic/cold"):
        line = standing_line(collection.guide, key)
        assert (line in page(collection.guide, key)) == bool(line)


def test_nothing_of_a_page_of_a_walk_is_left_out(collection: Collection) -> None:
    """Each step, each caution and when to phone stand on the page of an act or an end, with their numbers."""
    wall = Wall(collection.guide)
    for node in collection.guide.nodes.values():
        said = page(collection.guide, f"node/{node.name}")
        if isinstance(node, Ask):
            continue
        steps = node.steps if isinstance(node, Act) else node.do
        for text in (*(step.do for step in steps), *node.cautions):
            assert wall.fill(text) in said, (node.name, text)
        if isinstance(node, End):
            assert any(each.startswith(wall.fill(node.call_vet)) for each in said), node.name
            assert f"{collection.guide.urgency(node.urgency).say}." in said, node.name


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_number_tells_what_each_source_says(collection: Collection, system: System) -> None:
    """Its own value, and a line for every source, in the reader's units."""
    wall = Wall(collection.guide, system)
    for number in collection.guide.numbers.values():
        said = page(collection.guide, f"number/{number.name}", system)
        assert said[0].endswith(f": {wall.number(number.name)}")
        spans = sorted(f"{span_words(wall, number, source)}: " for source in number.published)
        lines = [text for text in said if text.startswith(tuple(spans))]
        assert len(lines) >= len(spans), number.name


def test_severe_chill_in_both_systems(collection: Collection) -> None:
    """As the published line stands in `tests/published`: 37.0 degrees Celsius, 98.6 Fahrenheit."""
    assert page(collection.guide, "number/severe-chill")[0].endswith(": 37 °C")
    assert page(collection.guide, "number/severe-chill", "us")[0].endswith(": 98.6 °F")


def test_a_source_tells_what_it_says_of_each_number(collection: Collection) -> None:
    """Every number that it is taken for, and what its grade means."""
    for source in collection.guide.sources.values():
        said = page(collection.guide, f"source/{source.name}")
        assert any(text.startswith(f"Grade {source.grade}") for text in said)
        for number in collection.guide.numbers.values():
            if source.name in number.published:
                title = Wall(collection.guide).fill(number.title)
                assert any(text.startswith(f"{title}: ") for text in said), (source.name, number.name)


@pytest.mark.parametrize("system", SYSTEMS)
def test_sums_are_worked_out_as_the_command_does(collection: Collection, system: System) -> None:
    """What stands on the page of a sum for each lamb is what `triage amounts` prints for that lamb."""
    checked = 0
    for name in ("first-milk", "first-milk-day", "electrolyte-dose", "fluid-day", "small-first-feed"):
        for line in sample_lines(collection.guide, name, system):
            weight, _, result = line.partition(": ")
            told = work_out(collection.guide, name, [f"weight={weight}", "age=2 days"], system)
            assert isinstance(told, list), told
            assert told[0].endswith(f": {result}"), (name, line)
            checked += 1
    assert checked == 25


def test_every_sum_has_lambs_and_its_working(collection: Collection) -> None:
    """A short table, no longer than a screen, and how one of them came about."""
    for name in AMOUNTS:
        lines = sample_lines(collection.guide, name, "metric")
        said = page(collection.guide, f"sum/{name}")
        assert 1 <= len(lines) <= 9, name
        assert set(lines) <= set(said), name
        assert "How one of them is worked out" in said


def test_a_word_is_said_by_what_it_names(collection: Collection) -> None:
    """Each statement that a trade word leads to has the word, or another way of writing it, in its texts."""
    for term in collection.guide.glossary.values():
        forms = [" ".join(tokens_of(form)) for form in (term.word, *term.also)]
        for group in collection.groups(f"term/{term.word}"):
            if group.says != "Said by":
                continue
            for key in group.keys:
                said = " ".join(" ".join(tokens_of(each.text)) for each in collection.passages[key])
                assert any(form in said for form in forms), (term.word, key)


def test_text_of_a_guide_is_shown_as_it_is(tmp_path: object) -> None:
    """Brackets and tags in a title are no markup on the way to a page."""
    from pathlib import Path

    assert isinstance(tmp_path, Path)
    guide = small_guide(tmp_path, ("topics/first.yaml", "title: Warm it\n", 'title: "[bold]<b>[/]"\n'))

    assert page(guide, "node/warm-it")[0] == "[bold]<b>[/]"
