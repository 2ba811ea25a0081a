"""The one list of texts: complete, and each text at its own line."""

from __future__ import annotations

from pathlib import Path

from tests.conftest import SMALL, small_guide
from triage.guide.model import Act, Ask, Guide
from triage.guide.texts import all_texts, said_on, texts_of

FIRST = "topics/first.yaml"


def test_a_step_stands_at_its_own_line(small: Guide) -> None:
    """The place of a step is the line it was written on; other texts of a node stand at the node."""
    lines = SMALL[FIRST].split("\n")
    found = {passage.text: passage.place.line for passage in texts_of(small.nodes["well"])}

    assert "Feed it." in lines[found["Feed it."] - 1]
    assert found["Feed it."] != found["Not too much."] == small.nodes["well"].place.line


def test_a_page_says_all_of_its_node_in_order(small: Guide) -> None:
    """An end says its title, what it may be, its steps, its cautions and when to call."""
    assert said_on(small.nodes["well"]) == (
        "Warm enough", "It is well.", "Feed it.", "Not too much.", "Phone if it goes limp.",
    )  # fmt: skip
    assert said_on(small.nodes["danger"]) == ()


def test_every_prose_of_the_shipped_guide_is_listed(guide: Guide) -> None:
    """Every text of every node, finding, how-to, number and trade word is in the list."""
    listed = {passage.text for passage in all_texts(guide)}

    for node in guide.nodes.values():
        if not isinstance(node, Ask):
            steps = node.steps if isinstance(node, Act) else node.do
            assert {node.title, *node.cautions, *(step.do for step in steps)} <= listed
    for finding in guide.findings.values():
        assert {finding.ask, finding.why, *finding.choices.values()} <= listed
    for how_to in guide.how_tos.values():
        assert {*how_to.need, *how_to.steps, *how_to.cautions, how_to.right, how_to.stop} <= listed
    assert {number.note for number in guide.numbers.values() if number.note} <= listed
    assert {term.means for term in guide.glossary.values()} <= listed
    for item in guide.cupboard.values():
        assert {item.title, item.why, *item.cautions, *filter(None, (item.keeps, item.ask_vet))} <= listed


def test_no_text_is_empty(guide: Guide, tmp_path: Path) -> None:
    """What a guide leaves out is not listed as an empty text."""
    bare = small_guide(tmp_path, (FIRST, "    likely: It is well.\n", ""))

    assert all(passage.text for each in (guide, bare) for passage in all_texts(each))
