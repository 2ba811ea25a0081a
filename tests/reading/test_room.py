"""Reading in a session: the same pages in both faces, digits that choose, one key back, and words that search."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pytest_snapshot.plugin import Snapshot
from textual.events import Key
from textual.pilot import Pilot

from tests.conftest import small_guide
from tests.reading.conftest import heading, reading, texts
from tests.screens.conftest import screen_of
from triage import plain
from triage.guide.model import Guide
from triage.maps.topic_map import map_of
from triage.reading.collection import Collection
from triage.screens.app import LambApp
from triage.session import Session
from triage.session.reading import ReadingRoom, reading_room
from triage.walk import Walk


def test_it_begins_with_the_contents(collection: Collection) -> None:
    """Nine choices, each with how many statements it holds."""
    session = reading(collection)

    assert heading(session) == "Contents"
    assert len(session.page().choices) == 9
    assert any(text.endswith(f"({len(collection.guide.findings)})") for text in texts(session))


def test_a_digit_opens_and_one_key_goes_back(collection: Collection) -> None:
    """Down to a statement by digits, and back by the same way to the contents."""
    session = reading(collection)
    seen = [texts(session)]
    for _ in range(3):
        session.take("1")
        seen.append(texts(session))
    for before in reversed(seen[:-1]):
        session.take("b")
        assert texts(session) == before
    assert not session.left


def test_enter_alone_goes_back(collection: Collection) -> None:
    """As on every page beside a walk."""
    session = reading(collection, "cold", "")

    assert heading(session) == "Contents"


def test_one_key_leads_to_the_contents(collection: Collection) -> None:
    """From however deep, and back from there leaves."""
    session = reading(collection, "2", "1", "1", "1", "c")
    assert heading(session) == "Contents"

    session.take("b")
    assert session.left


def test_q_leaves_at_once(collection: Collection) -> None:
    """Nothing is kept of reading, so nothing is asked."""
    assert reading(collection, "cold", "q").left


def test_one_letter_from_a_box_is_the_key_it_is(collection: Collection) -> None:
    """Where letters are typed into a box, `q` and `u` sent from it do what they do elsewhere."""
    session = reading(collection, "cold")
    session.take("c")
    session.take("u", words=True)
    assert session.system == "us"
    session.take("q", words=True)
    assert session.left


def test_words_are_looked_for_on_every_page(collection: Collection) -> None:
    """What is called exactly so opens at once, and anything else lists what was found."""
    session = reading(collection, "severe-chill")
    assert heading(session).startswith("Severe chill")

    session.take("hypothermia")
    assert "found: hypothermia" in heading(session)
    assert len(session.page().choices) <= 9
    session.take("1")
    assert not heading(session).endswith("found: hypothermia")


def test_many_finds_come_in_parts(collection: Collection) -> None:
    """The ninth choice leads on, each part begins where the one before ended, and back goes back."""
    session = reading(collection, "milk bottle")
    first = texts(session)
    assert session.page().choices[-1].text == "More"
    session.take("9")
    assert "from 9 on" in heading(session)
    assert not set(texts(session)[1:-1]) & set(first[1:-1])
    session.take("b")
    assert texts(session) == first


def test_each_find_says_where_it_stands(collection: Collection) -> None:
    """A page of a walk names its topic, everything else its kind."""
    session = reading(collection, "warmed swallow")
    told = [choice.text for choice in session.page().choices]

    assert any(re.search(r"\(end, [0-9]+ in Cold, limp or flat out\)$", text) for text in told), told
    assert all("(" in text for text in told if text != "More")


def test_what_is_not_found_loses_nothing(collection: Collection) -> None:
    """A sentence, and the page stays; control signs in what was typed are not shown."""
    session = reading(collection, "cold", "zzzzqqqq\x1b[31m")

    assert heading(session) == "Cold, limp or flat out"
    assert session.told == "Nothing is found for 'zzzzqqqq[31m'. Try another word for it."


def test_a_number_that_stands_for_nothing_does_no_harm(collection: Collection) -> None:
    """It is told, and the page stays."""
    session = reading(collection, "77")

    assert heading(session) == "Contents"
    assert "does nothing here" in session.told


def test_numbers_are_in_the_readers_units(collection: Collection) -> None:
    """One key switches the page in view, title and all."""
    session = reading(collection, "severe-chill")
    assert "37 °C" in heading(session)

    session.take("u")
    assert "98.6 °F" in heading(session)
    assert not any("°C" in text for text in texts(session))


def test_a_number_on_a_map_opens_its_place(collection: Collection) -> None:
    """Every number of the map of every topic leads to the page of that very node."""
    for topic in collection.guide.topics:
        session = reading(collection, f"map/{topic}")
        room = session.room
        assert isinstance(room, ReadingRoom)
        for spot in map_of(collection.guide, topic).spots:
            session.take(str(spot.number))
            assert room.trail[-1] == f"node/{spot.name}"
            session.take("b")


def test_every_statement_opens_and_none_has_too_many_choices(collection: Collection) -> None:
    """Typed as its key, each has a page with at most nine choices, as there are nine digits."""
    session = reading(collection)
    room = session.room
    assert isinstance(room, ReadingRoom)
    for key in collection.statements:
        room.trail[:] = [key]
        page = session.page()
        assert page.blocks[0].role == "heading"
        assert [choice.key for choice in page.choices] == [str(at) for at in range(1, len(page.choices) + 1)]
        assert len(page.choices) <= 9


def test_over_a_walk_it_reads_the_rest_of_the_guide(guide: Guide) -> None:
    """A walk leaves rules and the cupboard unread; the room reads them, and going back leads to the walk."""
    from triage.shipped import read_shipped

    lean = read_shipped().guide
    assert lean is not None
    assert not lean.rules
    session = Session(Walk(lean))
    session.open("reading")
    room = session.room
    assert isinstance(room, ReadingRoom)

    assert room.whole.guide.rules.keys() == guide.rules.keys()
    session.back()
    assert not session.left
    assert session.page().kind == "ask"


def test_a_guide_with_little_in_it_can_be_read(small: Guide) -> None:
    """A guide without rules, cupboard or practice has fewer lists, and no list is empty."""
    session = Session(Walk(small))
    session.desk.open(reading_room(session, alone=True))
    listed = texts(session)

    assert any(text.startswith("Topics") for text in listed)
    assert not any("(0)" in text or "upboard" in text for text in listed)


def test_the_plain_face_reads(collection: Collection, snapshot: Snapshot) -> None:
    """A whole reading in plain lines is what it was when it was last read and approved."""
    snapshot.snapshot_dir = "tests/snapshots/reading"
    lines = ["2", "1", "1", "b", "c", "severe chil", "1", "u", "2", "c", "map/navel", "8", "q"]
    written: list[str] = []

    def read(prompt: str) -> str:
        line = lines.pop(0)
        written.append(prompt + line)
        return line

    plain.run(reading(collection), read, written.append, 60)

    assert not lines
    snapshot.assert_match("\n".join(line.rstrip() for line in written) + "\n", "plain.txt")


def press(pilot: Pilot[None], *keys: str) -> None:
    """Press keys; where a digit is typed into a box it is sent."""
    app = pilot.app
    assert isinstance(app, LambApp)
    for key in keys:
        app.on_key(Key(key, key if len(key) == 1 else None))
        if key.isdecimal() and app.view.typed:
            app.on_key(Key("enter", None))


@pytest.mark.parametrize("size", [(80, 24), (44, 20), (120, 36)])
async def test_the_full_screen_reads(collection: Collection, size: tuple[int, int]) -> None:
    """Words typed on the contents, a digit on a page, Esc back, and Esc on the contents leaves."""
    app = LambApp(reading(collection))
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert "Contents" in screen_of(pilot)
        press(pilot, *"cold", "enter")
        await pilot.pause()
        assert "Cold, limp or flat out" in screen_of(pilot)
        press(pilot, "1")
        await pilot.pause()
        assert "The way through" in screen_of(pilot)
        press(pilot, *"11", "enter") if app.view.typed else press(pilot, "b", "c")
        await pilot.pause()
        assert "Contents" in screen_of(pilot) or "Reading" in screen_of(pilot)
        press(pilot, "escape", "escape", "escape")
        await pilot.pause()
        assert app.session.left or "Contents" in screen_of(pilot)


async def test_text_of_a_guide_is_no_markup_on_the_screen(tmp_path: Path) -> None:
    """Brackets in a title stand on the full screen as they are written."""
    guide = small_guide(
        tmp_path, ("topics/first.yaml", "title: Warm it\n", 'title: "[bold red]Warm[/] it"\n')
    )
    session = Session(Walk(guide))
    room = reading_room(session, alone=True)
    session.desk.open(room)
    room.trail.append("node/warm-it")
    async with LambApp(session).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "[bold red]Warm[/] it" in screen_of(pilot)
