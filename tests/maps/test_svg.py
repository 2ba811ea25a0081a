"""Drawn maps: no box or text covers another, each place is a link, and the drawing is whole XML."""

from __future__ import annotations

import re
from itertools import combinations, pairwise
from xml.etree import ElementTree as ET

import pytest

from tests.conftest import small_guide
from triage.guide.model import Guide
from triage.maps.boxes import ARROW, PAD, WIDE, long, wrapped
from triage.maps.drawing import Drawing, Placed, set_out
from triage.maps.svg import svg_map
from triage.maps.topic_map import map_of
from triage.units import System

SVG = "{http://www.w3.org/2000/svg}"


def drawings(guide: Guide) -> dict[str, Drawing]:
    """Every topic, set out."""
    return {topic: set_out(guide, map_of(guide, topic)) for topic in guide.topics}


def covers(one: Placed, other: Placed) -> bool:
    """Whether two boxes share any room."""
    aside = one.x < other.x + WIDE and other.x < one.x + WIDE
    return aside and one.y < other.y + other.box.high and other.y < one.y + one.box.high


def test_no_box_covers_another(guide: Guide) -> None:
    """On the map of every topic, and none stands outside the drawing."""
    for topic, drawing in drawings(guide).items():
        for one, other in combinations(drawing.boxes, 2):
            assert not covers(one, other), (topic, one.box.spot.name, other.box.spot.name)
        for each in drawing.boxes:
            assert each.x >= 0
            assert each.x + WIDE <= drawing.wide
            assert each.y + each.box.high <= drawing.high


def test_no_text_runs_out_of_its_box_or_into_another(guide: Guide) -> None:
    """Each line ends before the number beside it or the side of its box, and stands below the line above."""
    for topic, drawing in drawings(guide).items():
        for each in drawing.boxes:
            lines = each.box.lines
            for line in lines:
                room = WIDE - 2 * PAD - (ARROW if line.number else 0)
                assert long(line.text, line.bold) <= room, (topic, line.text)
            assert all(below.down - above.down >= 15 for above, below in pairwise(lines))
            assert lines[-1].down < each.box.high


def test_no_line_runs_through_a_box(guide: Guide) -> None:
    """Each straight part of a line keeps out of every box; the bent ones stay between two layers, where none is."""
    for topic, drawing in drawings(guide).items():
        for route in drawing.routes:
            for (x, y), (to_x, to_y) in pairwise(route.points):
                for each in drawing.boxes:
                    low, high = sorted((y, to_y))
                    left, right = sorted((x, to_x))
                    inside = (
                        right > each.x + 0.5
                        and left < each.x + WIDE - 0.5
                        and high > each.y + 0.5
                        and low < each.y + each.box.high - 0.5
                    )
                    assert not inside, (topic, route.way, each.box.spot.name)


def test_a_line_ends_at_the_box_that_it_leads_to(guide: Guide) -> None:
    """From above, or from below where it leads back; and it begins at the side of its own."""
    for drawing in drawings(guide).values():
        boxes = {each.box.spot.name: each for each in drawing.boxes}
        for route in drawing.routes:
            start, to = boxes[route.way.start], boxes[route.way.to]
            (first_x, first_y), (last_x, last_y) = route.points[0], route.points[-1]
            assert first_x in (start.x, start.x + WIDE)
            assert start.y < first_y < start.y + start.box.high
            assert to.x < last_x < to.x + WIDE
            assert last_y == (to.y + to.box.high if route.way.back else to.y)


@pytest.mark.parametrize("system", ["metric", "us"])
def test_every_place_and_every_way_is_on_the_map(guide: Guide, system: System) -> None:
    """Each node of a topic is a link, and so is each place of another topic that it leads to."""
    for topic in guide.topics:
        tree = ET.fromstring(svg_map(guide, topic, lambda node: f"#to-{node}", system))
        links = {link.get("href") for link in tree.iter(f"{SVG}a")}
        drawn = map_of(guide, topic, system)
        wanted = {node.name for node in guide.by_topic[topic]} | {stub.name for stub in drawn.stubs}
        assert links == {f"#to-{name}" for name in wanted}
        numbers = re.findall("→ ([0-9]+)", "".join(tree.itertext()))
        inside = [way for way in drawn.ways if drawn.spot(way.to)]
        assert len(numbers) == len(inside)


def test_kind_and_urgency_are_in_words(guide: Guide) -> None:
    """A box says whether it asks, does or ends, and an end how soon a vet is needed."""
    for topic in guide.topics:
        tree = ET.fromstring(svg_map(guide, topic, str))
        for name, word in (("map-ask", "Question"), ("map-act", "To do"), ("map-end", "End: ")):
            for box in tree.iter(f"{SVG}g"):
                if box.get("class") == name:
                    assert word in "".join(box.itertext())


def test_a_drawing_has_a_title_and_says_what_it_shows(guide: Guide) -> None:
    """Both by ids that no other map of a page has."""
    ids: list[str] = []
    for topic in guide.topics:
        tree = ET.fromstring(svg_map(guide, topic, str))
        named = {each.get("id"): each for each in tree.iter() if each.get("id")}
        ids += filter(None, named)
        assert named[tree.get("aria-labelledby")].text
        assert "question" in (named[tree.get("aria-describedby")].text or "")
    assert len(ids) == len(set(ids)) == 2 * len(guide.topics)


def test_maps_are_small(guide: Guide) -> None:
    """Fewer than 670 bytes for each place on them, so that a book with all maps can still be sent by mail."""
    whole = sum(len(svg_map(guide, topic, str).encode()) for topic in guide.topics)

    assert whole < 670 * len(guide.nodes)


def test_it_is_drawn_alike_each_time(guide: Guide) -> None:
    """Two drawings of a topic are the same, so that a book of the same edition is."""
    assert svg_map(guide, "cold", str) == svg_map(guide, "cold", str)


def test_words_of_a_guide_are_never_markup(tmp_path: object, small: Guide) -> None:
    """A title with tags and an address with quotes stand there as they are."""
    from pathlib import Path

    assert isinstance(tmp_path, Path)
    guide = small_guide(tmp_path / "other", ("topics/first.yaml", "title: Warm it\n", "title: <b>\"&' [/]\n"))
    drawn = svg_map(guide, "first", lambda node: f'"><i>{node}')

    tree = ET.fromstring(drawn)
    assert "<b>\"&' [/]" in "".join(tree.itertext())
    assert {each.tag for each in tree.iter()} == {
        f"{SVG}{name}"
        for name in ("svg", "style", "title", "desc", "path", "g", "a", "rect", "text", "tspan")
    }


def test_a_loop_leads_up_and_is_said(small: Guide) -> None:
    """The act that is done again has a broken line from below, and the words `back to`."""
    drawing = set_out(small, map_of(small, "first"))
    back = [route for route in drawing.routes if route.way.back]
    words = [line.text for each in drawing.boxes for line in each.box.lines]

    assert [(route.way.start, route.way.to) for route in back] == [("warm-it", "warmth")]
    assert back[0].points[0][1] > back[0].points[-1][1]
    assert any(text.startswith("back to ") for text in words)
    assert "map-back" in svg_map(small, "first", str)


def test_an_act_that_leads_to_itself_has_no_line(tmp_path: object) -> None:
    """Its words are enough, and the map can still be drawn."""
    from pathlib import Path

    assert isinstance(tmp_path, Path)
    guide = small_guide(tmp_path, ("topics/first.yaml", "then: warmth", "then: warm-it"))
    drawing = set_out(guide, map_of(guide, "first"))

    assert not [route for route in drawing.routes if route.way.start == route.way.to]
    assert any("back to" in line.text for each in drawing.boxes for line in each.box.lines)


@pytest.mark.parametrize(
    "text", ["", "one", "a b c d e f g h i j k l m n o p q r s t u v w x y z" * 3, "W" * 300]
)
def test_wrapping_loses_nothing(text: str) -> None:
    """All signs are kept in their order, and no line is longer than its room, however long a word is."""
    lines = list(wrapped(text, 100))

    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(long(line) <= 100 for line in lines)
