"""Maps in words: who follows the numbers comes where the guide goes."""

from __future__ import annotations

import re

import pytest
from pytest_snapshot.plugin import Snapshot

from triage.guide.model import Ask, Guide
from triage.maps.told import map_blocks, map_lines
from triage.maps.topic_map import map_of
from triage.maps.words import answers_of, leads_to
from triage.page.wall import Wall


def places(guide: Guide, topic: str) -> dict[str, list[str]]:
    """The lines under each number of a map."""
    found: dict[str, list[str]] = {}
    for block in map_blocks(guide, topic):
        if block.role == "choice":
            found[block.mark] = [block.text]
        elif found and block.text:
            found[list(found)[-1]].append(block.text)
    return found


def test_the_numbers_lead_where_the_guide_leads(guide: Guide) -> None:
    """From every place of every topic, an answer leads to the number of the node that it goes to."""
    for topic in guide.topics:
        drawn = map_of(guide, topic)
        told = places(guide, topic)
        number = {spot.name: spot.number for spot in drawn.spots}
        assert len(told) == len(guide.by_topic[topic])
        for spot in drawn.spots:
            lines = told[str(spot.number)]
            meant = {number[name] for name in leads_to(guide.nodes[spot.name]) if name in number}
            said = {int(each) for line in lines for each in re.findall(r"(?:go|back) to ([0-9]+)\.", line)}
            assert said == meant, (topic, lines)


def test_each_answer_stands_there_once(guide: Guide) -> None:
    """Every choice of every question, and "not sure", on the line of the place that it leads to."""
    wall = Wall(guide)
    for topic in guide.topics:
        drawn = map_of(guide, topic)
        for spot in drawn.spots:
            node = guide.nodes[spot.name]
            wanted = sorted((words, to) for words, to, _ in answers_of(wall, node))
            ways = drawn.ways_from(spot.name)
            assert sorted((words, way.to) for way in ways for words in way.answers) == wanted


def test_bands_join_without_a_gap(guide: Guide) -> None:
    """Of a measurement the upper edge of each line is the lower edge of the next, and the last one is open."""
    wall = Wall(guide)
    for node in guide.nodes.values():
        if not isinstance(node, Ask) or not guide.findings[node.finding].measure:
            continue
        bands = [branch for branch in node.branches if not branch.unsure]
        words = [said for said, _, _ in answers_of(wall, node)][: len(bands)]
        for branch, said, after in zip(bands, words, words[1:], strict=False):
            edge = wall.number(branch.below or branch.up_to)
            assert said.endswith(edge)
            assert after.startswith(f"{'From' if branch.below else 'Above'} {edge}")


def test_numbers_go_down_the_page_and_back_up_only_where_it_is_said(guide: Guide) -> None:
    """So that a reader who is told to go on never has to look above."""
    for topic in guide.topics:
        for number, lines in places(guide, topic).items():
            for line in lines:
                on = re.search(r"(go|back) to ([0-9]+)\.$", line)
                if on:
                    assert (int(on[2]) > int(number)) == (on[1] == "go"), (topic, number, line)


@pytest.mark.parametrize("width", [44, 80])
def test_no_line_is_wider_than_the_screen(guide: Guide, width: int) -> None:
    """At both usual widths, in both unit systems."""
    for topic in guide.topics:
        for system in ("metric", "us"):
            assert all(len(line.text) <= width for line in map_lines(guide, topic, width, system))


@pytest.mark.parametrize("topic", ["navel", "cold"])
def test_a_map_reads_as_it_should(guide: Guide, topic: str, snapshot: Snapshot) -> None:
    """A map in words is what it was when it was last followed and approved."""
    snapshot.snapshot_dir = "tests/snapshots/maps"

    lines = map_lines(guide, topic, 60)
    snapshot.assert_match("\n".join(line.text for line in lines) + "\n", f"{topic}.txt")


def test_other_topics_are_named(guide: Guide) -> None:
    """Where a way leaves the topic, the other topic's title stands there, and where one comes in too."""
    told = "\n".join(block.text for block in map_blocks(guide, "navel"))

    assert "on to Lame, stiff, or a sore joint (Before a feed)." in told
    assert "You can come here from: Lame, stiff, or a sore joint." in told
