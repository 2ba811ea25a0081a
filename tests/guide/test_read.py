"""Reading a whole folder: every mistake in one run, each at its place, with what would be right."""

from __future__ import annotations

import gc
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.check.practice_canaries import PRACTICE
from tests.conftest import read_small, small_guide, write_small
from triage.guide.find import knowledge_root
from triage.guide.model import Ask
from triage.guide.read import read_guide
from triage.guide.texts import steps_of


def test_the_small_guide_is_sound(tmp_path: Path) -> None:
    """The guide that these tests spoil has no mistake of its own."""
    assert read_small(tmp_path).problems == ()


@pytest.mark.parametrize(
    ("file", "old", "new", "said"),
    [
        ("topics/first.yaml", "go: feel", "go: fel", "topics/first.yaml:16:28: there is no node 'fel'; did you mean 'feel'?"),
        ("topics/first.yaml", "ask: mouth", "ask: mout", "there is no finding 'mout'; did you mean 'mouth'?"),
        ("topics/first.yaml", "up_to: chill", "up_to: chil", "there is no number 'chil'; did you mean 'chill'?"),
        ("topics/first.yaml", "is: cold", "is: colt", "finding 'mouth' has no choice 'colt'; did you mean 'cold'?"),
        ("topics/first.yaml", "tag: warm", "tag: wram", "there is no act tag 'wram'; did you mean 'warm'?"),
        ("topics/first.yaml", "end: care-here", "end: care-her", "there is no urgency 'care-her'"),
        ("topics/first.yaml", "    likely: It is ill.\n", "    likly: It is ill.\n", "has no field 'likly'; did you mean 'likely'?"),
        ("topics/first.yaml", "    call_vet: Now.\n", "", "this end node lacks 'call_vet'"),
        ("topics/first.yaml", "at_most: 2", "at_most: two", "'two' is not a whole number of 1 or more"),
        ("topics/first.yaml", "    else: still-cold\n", "", "needs both 'at_most' and 'else', or neither"),
        ("topics/first.yaml", "Warm it., tag", '"Warm to {chil}.", tag', "there is no number or amount 'chil'"),
        ("topics/first.yaml", "Warm it., tag", '"Warm {it", tag', "a brace without its partner"),
        ("topics/first.yaml", "{is: warm, go: well}", "{go: well}", "exactly one of is, below, up_to, otherwise, unsure; this has none"),
        ("topics/first.yaml", "up_to: chill", "is: chill", "'temperature' is measured; use 'below' or 'up_to'"),
        ("topics/first.yaml", "  still-cold:\n    end: vet-now", "  still-cold:\n    end: vet-now\n    end: vet-now", "'end' is here twice, first at line 34"),
        ("numbers.yaml", "value: 37\n", "value: warm\n", "'warm' is not a plain number"),
        ("numbers.yaml", "unit: degC", "unit: degreesC", "'degreesC' is not one of degC"),
        ("numbers.yaml", "[36, 37]", "[37, 36]", "37 is above 36; write the lower number first"),
        ("numbers.yaml", "{a-paper: 20}", "{a-papr: 20}", "there is no source 'a-papr'; did you mean 'a-paper'?"),
        ("findings/all.yaml", "  plausible: [25, 43]\n", "", "is measured, so it needs 'plausible'"),
        ("findings/all.yaml", "  choices: {limp: Limp, none: Not limp}\n", "", "needs either 'choices' or 'measure', and not both"),
        ("findings/all.yaml", "  plausible: [0.5, 60]\n", "", "is measured, so it needs 'plausible'"),
        ("topics/first.yaml", "up_to: chill", "up_to: pause", "'pause' is in min; 'temperature' is measured in degC"),
        ("findings/all.yaml", "  measure: kg\n  plausible: [0.5, 60]", "  measure: g\n  plausible: [500, 60000]", "the sums take 'weight' as a measurement in kg"),
        ("numbers.yaml", "pause:", "week-one: {title: A week, value: 1, unit: week, published: {a-paper: 1}, safer: lower, certainty: high}\npause:", "the sums take 'week-one' in day, not in week"),
        ("findings/all.yaml", "weight:\n", "birth-type: {label: B, ask: B?, why: B., choices: {one: One, two: Two}}\nweight:\n", "the sums know 'birth-type' by single, triplet, twin, which it lacks"),
        ("topics/first.yaml", "look_again: pause", "look_again: chill", "'chill' is in degC; a wait or a look needs a number of time"),
        ("guide.yaml", "topics: [first]", "topics: []", "this list is empty"),
        ("guide.yaml", "way_in: danger", "way_in: dangr", "there is no node 'dangr'; did you mean 'danger'?"),
        ("guide.yaml", "[limp]", "[lump]", "danger sign 'lump' is not a choice of 'danger'; did you mean 'limp'?"),
    ],
)  # fmt: skip
def test_a_mistake_is_named_with_what_would_be_right(
    tmp_path: Path, file: str, old: str, new: str, said: str
) -> None:
    """One wrong word gives one line that points at it and says what would be right."""
    read = read_small(tmp_path, (file, old, new))

    assert read.guide is None
    assert any(said in str(problem) for problem in read.problems), "\n".join(map(str, read.problems))
    assert all(str(problem).startswith(f"{file}:") for problem in read.problems)


@pytest.mark.parametrize(
    "line",
    [
        "clashes: [{danger: {is: lump}}]",
        "odd_together: [{danger: {is: lump}, temperature: {up_to: chill}}]",
        "leads_on: {danger: lump}",
    ],
)
def test_what_no_made_up_lamb_could_be_is_named(tmp_path: Path, line: str) -> None:
    """A choice misspelt there would hold nothing apart, and nobody would see it."""
    read = read_small(tmp_path, *PRACTICE, ("farm.yaml", "first:", f"{line}\nfirst:"))

    assert [problem.place.file for problem in read.problems] == ["farm.yaml"]
    assert "finding 'danger' has no choice 'lump'; did you mean 'limp'?" in str(read.problems[0])


def test_every_mistake_comes_in_one_run(tmp_path: Path) -> None:
    """Mistakes in three files are all told at once, in the order of their places."""
    read = read_small(
        tmp_path,
        ("topics/first.yaml", "go: feel", "go: fel"),
        ("numbers.yaml", "value: 37\n", "value: warm\n"),
        ("findings/all.yaml", "how: measure-it", "how: measure"),
    )

    assert [problem.place.file for problem in read.problems] == [
        "findings/all.yaml",
        "numbers.yaml",
        "topics/first.yaml",
    ]


def test_a_sum_names_the_numbers_it_lacks(tmp_path: Path) -> None:
    """A text that shows a sum needs every number the sum stands on, or it is refused by name."""
    read = read_small(tmp_path, ("topics/first.yaml", "do: Feed it.", 'do: "Feed {first-milk}."'))

    assert any(
        "the sum 'first-milk' needs the number 'first-milk-rate'" in str(each) for each in read.problems
    )


def test_a_number_may_not_take_the_name_of_a_sum(tmp_path: Path) -> None:
    """A name in a text means one thing, so a number called like a sum is refused."""
    read = read_small(
        tmp_path, ("numbers.yaml", "pause:", "milk-feed:"), ("topics/first.yaml", "pause", "milk-feed")
    )

    assert any("'milk-feed' is the name of a sum" in str(each) for each in read.problems)


def test_a_missing_folder_is_told(tmp_path: Path) -> None:
    """A folder that is not there is told in a sentence, with no places to point at."""
    read = read_guide(tmp_path / "nowhere")

    assert (read.guide, read.problems) == (None, ())
    assert "can't be read" in read.unreadable


def test_a_folder_without_a_guide_is_told(tmp_path: Path) -> None:
    """An empty folder is not a guide."""
    assert "no guide.yaml" in read_guide(tmp_path).unreadable


def test_a_file_that_is_not_utf8_is_told(tmp_path: Path) -> None:
    """A file saved in another encoding is told by its name and line."""
    folder = write_small(tmp_path)
    (folder / "glossary.yaml").write_bytes(b"ewe: {means: fine}\nram: {means: \xff}\n")

    assert "glossary.yaml:2:1: not UTF-8 text" in str(read_guide(folder).problems[0])


def test_a_file_that_may_not_be_read_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file without permission is one line, not a traceback."""
    folder = write_small(tmp_path)
    opened: Callable[..., object] = Path.open

    def refuse(path: Path, *arguments: str) -> object:
        if path.name == "glossary.yaml":
            raise PermissionError(13, "Permission denied")
        return opened(path, *arguments)

    monkeypatch.setattr(Path, "open", refuse)
    assert "glossary.yaml:1:1: the file can't be read" in str(read_guide(folder).problems[0])


def test_a_folder_in_place_of_a_file_is_told(tmp_path: Path) -> None:
    """A name that ends in .yaml and is a folder does no harm."""
    folder = write_small(tmp_path)
    (folder / "topics" / "more.yaml").mkdir()

    assert "topics/more.yaml:1:1: the file can't be read" in str(read_guide(folder).problems[0])


def test_a_stray_file_is_told(tmp_path: Path) -> None:
    """A file that nothing reads would be guidance nobody sees, so it is refused."""
    folder = write_small(tmp_path)
    (folder / "topic").mkdir()
    (folder / "topic" / "lost.yaml").write_text("topic: lost\n")

    assert "topic/lost.yaml:1:1: no place for this file" in str(read_guide(folder).problems[0])


def test_brackets_in_texts_are_kept(tmp_path: Path) -> None:
    """Text with brackets is plain text to the reader."""
    guide = small_guide(tmp_path, ("findings/all.yaml", "Is it limp?", '"Is it [limp] [/] or [/a]?"'))

    assert guide.findings["danger"].ask == "Is it [limp] [/] or [/a]?"


def test_a_choice_called_no_is_kept(tmp_path: Path) -> None:
    """A choice may be called `no`: it is not turned into a truth value."""
    guide = small_guide(
        tmp_path,
        ("findings/all.yaml", "{limp: Limp, none: Not limp}", "{limp: Limp, no: Not limp}"),
        ("topics/first.yaml", "is: none", "is: no"),
    )

    assert list(guide.findings["danger"].choices) == ["limp", "no"]


BROKEN_RULE = ("rules.yaml", "", "no-heat: {never: {tag: wram}, because: It burns., sources: [a-paper]}\n")
"""A rule with a wrong word, as the only rule."""


def test_a_walk_reads_no_rules(tmp_path: Path) -> None:
    """Rules are for the check: without them the same guide is read, and a wrong one is told to the check alone."""
    folder = write_small(tmp_path, BROKEN_RULE)

    whole, for_a_walk = read_guide(folder), read_guide(folder, frozenset())

    assert ["there is no act tag 'wram'" in str(each) for each in whole.problems] == [True]
    assert whole.guide is None
    assert for_a_walk.problems == ()
    assert for_a_walk.guide == small_guide(tmp_path / "other")


def test_a_walk_opens_no_cupboard(tmp_path: Path) -> None:
    """The cupboard goes with the rules, and may be asked for without them."""
    folder = write_small(tmp_path, BROKEN_RULE, ("cupboard.yaml", "", "spoon: {title: Spoon}\n"))

    assert read_guide(folder, frozenset()).problems == ()
    told = [str(each) for each in read_guide(folder, {"cupboard"}).problems]
    assert [each.partition(" [")[0] for each in told] == [
        f"cupboard.yaml:1:8: this cupboard item lacks '{field}'" for field in ("certainty", "sources", "why")
    ]
    assert len(read_guide(folder).problems) == 4


THINGS = [
    ("first: tonight, how_many: {least: 2}", ""),
    ("first: season, how_many: {least: 2, one_for: 3}", ""),
    ("first: season, how_many: {each_lamb: sack}", ""),
    ("first: season, ask_vet: Ask.", ""),
    ("at_hand: true", ""),
    ("how_many: {least: 2}", "needs either 'first' or 'at_hand'"),
    ("first: tonight", "exactly one of 'how_many', 'ask_vet' and 'at_hand'"),
    ("first: tonight, at_hand: true", "needs either 'first' or 'at_hand'"),
    (
        "first: tonight, how_many: {least: 2}, ask_vet: Ask.",
        "exactly one of 'how_many', 'ask_vet' and 'at_hand'",
    ),
    ("first: soon, how_many: {least: 2}", "'soon' is not one of tonight, this-week, season"),
    (
        "first: tonight, how_many: {least: 2, each_lamb: sack}",
        "write either 'each_lamb', or 'least' and 'one_for'",
    ),
    ("first: tonight, how_many: {each_lamb: chill}", "are no weight, volume or count"),
    ("first: tonight, how_many: {each_lamb: [sack, sack]}", "are no weight, volume or count"),
    ("first: tonight, how_many: {each_lamb: sak}", "there is no number 'sak'; did you mean 'sack'?"),
]


@pytest.mark.parametrize(("written", "said"), THINGS)
def test_a_thing_says_how_it_is_to_be_had(tmp_path: Path, written: str, said: str) -> None:
    """A thing is counted, or a vet is asked, or any house has it; what each lamb takes is something on a shelf."""
    sack = "sack: {title: S, value: 13, unit: kg, published: {a-paper: 13}, safer: lower, certainty: high}\npause:"
    thing = f"thing: {{title: T, why: W., sources: [a-paper], certainty: high, {written}}}\n"
    told = [
        str(each)
        for each in read_small(
            tmp_path, ("numbers.yaml", "pause:", sack), ("cupboard.yaml", "", thing)
        ).problems
    ]

    assert len(told) == bool(said)
    assert all(said in each for each in told)


def test_a_walk_reads_nothing_else_otherwise() -> None:
    """Of the shipped guide a walk reads all but the rules, the raising plan, the cupboard, practice, `for`, `must_say`
    and the words of tags, places too."""
    whole, for_a_walk = read_guide(knowledge_root()).guide, read_guide(knowledge_root(), frozenset()).guide
    assert whole is not None
    assert for_a_walk is not None

    bare = {
        name: node if isinstance(node, Ask) else replace(node, for_={}, must_say=())
        for name, node in whole.nodes.items()
    }
    front = replace(whole.front, tag_words=(), tag_changes={})
    left = replace(whole, rules={}, duties={}, laws={}, cupboard={}, cases={}, deeds={}, farm=None)
    assert for_a_walk == replace(left, nodes=bare, front=front)
    assert bare != whole.nodes
    assert all(node.place == whole.nodes[name].place for name, node in for_a_walk.nodes.items())
    assert all(
        step.place == there.place
        for name, node in for_a_walk.nodes.items()
        for step, there in zip(steps_of(node), steps_of(whole.nodes[name]), strict=True)
    )


@pytest.mark.parametrize("working", [True, False])
def test_the_collector_is_left_as_it_was(tmp_path: Path, working: bool) -> None:
    """Reading rests the garbage collector, and gives it back working or resting as it was, mistakes or none."""
    was = gc.isenabled()
    try:
        (gc.enable if working else gc.disable)()
        read_small(tmp_path, BROKEN_RULE)
        read_guide(tmp_path / "nowhere")
        assert gc.isenabled() == working
    finally:
        (gc.enable if was else gc.disable)()
