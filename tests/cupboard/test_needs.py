"""What needs a thing: by its words, its tags, its sums, and through a how-to."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from tests.cupboard.made import stocked
from triage.cupboard.needs import Needed, needs_of
from triage.guide.model import Ask, Guide
from triage.guide.model_rearing import Duty
from triage.guide.texts import steps_of

FIRST = "topics/first.yaml"


def test_each_way_to_need_a_thing(tmp_path: Path) -> None:
    """A thing is needed by its words, by a tag, by a sum, and by all that a page's how-to needs."""
    assert needs_of(stocked(tmp_path)) == {
        "probe": Needed(("measure-it",), ("warmth",)),
        "powder": Needed((), ("well",)),
        "drink": Needed((), ("still-cold",)),
        "heater": Needed((), ("warm-it", "still-cold")),
        "needle": Needed((), ("still-cold",)),
        "phone": Needed((), ("still-cold",)),
    }


def test_a_duty_needs_what_it_names_and_measures_out(tmp_path: Path) -> None:
    """The raising plan's lines are read too, and its cautions and reasons are not."""
    guide = stocked(tmp_path)
    duty = Duty(
        "keep-warm", "shelter", "Keep it warm", ("Hang the heater.", "Give {pause}."), ("a-paper",), "high"
    )
    told = replace(duty, cautions=("No needle.",), why="Or phone.")
    needed = needs_of(replace(guide, duties={"keep-warm": told}))

    assert [name for name, each in needed.items() if each.duties] == ["drink", "heater"]


def test_a_step_that_puts_a_thing_away_does_not_need_it(tmp_path: Path) -> None:
    """`unless` names the tags of such steps."""
    guide = stocked(tmp_path, ("cupboard.yaml", "words: [heater]", "words: [heater]\n  unless: phone"))

    assert needs_of(guide)["heater"] == Needed((), ("warm-it",))


def test_cautions_need_nothing(tmp_path: Path) -> None:
    """A caution names what to keep away from."""
    guide = stocked(tmp_path, (FIRST, "[Not too much.]", "[No needle.]"))

    assert "well" not in needs_of(guide)["needle"].nodes


def test_the_longest_word_is_meant(tmp_path: Path) -> None:
    """Where the words of two things begin alike, the longer one is meant, in one or in many."""
    guide = stocked(
        tmp_path,
        ("cupboard.yaml", "words: [needle]", "words: [powder needle]"),
        (FIRST, "do: Feed it., tag: feed", "do: Powder needles., tag: warm}, {do: Feed it., tag: feed"),
        ("cupboard.yaml", "tags: feed-by-mouth\n", "tags: phone\n"),
    )

    assert needs_of(guide)["needle"].nodes == ("well",)
    assert needs_of(guide)["powder"].nodes == ("still-cold",)


def test_shipped_pages_need_what_a_keeper_would_fetch(guide: Guide) -> None:
    """By hand: a page that tubes needs a tube, one that gives electrolyte needs it, one that takes milk away needs none."""
    needed = needs_of(guide)

    for name, node in guide.nodes.items():
        steps = steps_of(node)
        if any("tube-feed" in step.tag for step in steps):
            assert name in needed["tube"].nodes
            assert name in needed["syringe"].nodes
        if any("{electrolyte-dose}" in step.do for step in steps):
            assert name in needed["electrolyte"].nodes
        if any("vet-injection" in step.tag for step in steps):
            assert name in needed["glucose"].nodes
        if isinstance(node, Ask) and node.finding == "temperature":
            assert name in needed["thermometer"].nodes
    assert "thaw-first-milk" in needed["first-milk"].how_tos
    assert "thaw-first-milk" in needed["bottles"].how_tos
    takes_away = {
        name
        for name, node in guide.nodes.items()
        for step in steps_of(node)
        if "bottle" in step.do.lower() and step.tag == ("no-mouth",)
    }
    assert takes_away
    assert not takes_away & set(needed["bottles"].nodes)
