"""One change to the small guide at a time, and what is told of it."""

from __future__ import annotations

from pathlib import Path

from tests.compare.made import came_of, two
from tests.compare.pairs import differences
from triage.compare import Comparison, Difference, Said, compare
from triage.facts import UNSURE

TOPIC = "topics/first.yaml"
FINDINGS = "findings/all.yaml"


def only(told: tuple[Difference, ...]) -> Difference:
    """Return the only difference."""
    [each] = told
    return each


def quiet(came: Comparison) -> bool:
    """Whether nothing is told of any lamb."""
    return not (differences(came) or came.lost_cautions or came.on_the_way)


def test_a_guide_does_not_differ_from_itself(tmp_path: Path) -> None:
    """Nothing is told, and nothing has to be followed."""
    came = came_of(tmp_path)
    assert came.same
    assert came == Comparison(states=came.states)


def test_a_number_moved_off_the_safer_side(tmp_path: Path) -> None:
    """The lambs between the old line and the new one are told as less urgent, with what they met."""
    came = came_of(tmp_path, ("numbers.yaml", "value: 37", "value: 36.5"))
    less = next(each for each in came.less_urgent if each.old_end == "still-cold")
    assert less.new_end == "well"
    assert (less.old_urgency, less.new_urgency) == ("vet-now", "care-here")
    assert less.lamb[:2] == (Said(False, "danger", "none"), Said(False, "temperature", 36.75))
    assert less.met == {"number/chill"}
    assert not came.more_urgent
    [number] = came.numbers
    assert (number.old, number.new, number.by, number.off) == (37.0, 36.5, -0.5, "less safe")
    assert number.used == ("node/warmth",)


def test_a_number_moved_to_the_safer_side(tmp_path: Path) -> None:
    """The same, the other way round."""
    came = came_of(tmp_path, ("numbers.yaml", "value: 37", "value: 37.5"))
    assert not came.less_urgent
    assert {each.new_urgency for each in came.more_urgent} == {"vet-now"}
    assert [each.off for each in came.numbers] == ["safer"]


def test_an_end_less_urgent(tmp_path: Path) -> None:
    """A lamb that was told nothing else that is urgent is told; all others ended on the page as they do now."""
    came = came_of(
        tmp_path,
        (TOPIC, "{is: cold, go: warm-it, at_least: vet-now}", "{is: cold, go: still-cold}"),
        (TOPIC, "end: vet-now", "end: care-here"),
    )
    less = only(tuple(each for each in came.less_urgent if each.new_end == each.old_end))
    assert less.old_end == "still-cold"
    assert not less.new_page


def test_a_lost_caution(tmp_path: Path) -> None:
    """The page and the caution are told, with a lamb that comes there."""
    came = came_of(tmp_path, (TOPIC, "cautions: [No milk.]", "cautions: [Be calm.]"))
    [lost] = came.lost_cautions
    assert (lost.caution, lost.old_page, lost.new_page, lost.nearest) == (
        "No milk.", "still-cold", "still-cold", "",
    )  # fmt: skip
    assert lost.lamb
    assert not differences(came)
    assert not came.same


def test_a_caution_worded_otherwise_is_lost_and_told_with_what_it_became(tmp_path: Path) -> None:
    """A changed word can turn a caution round, so a person has to see both."""
    came = came_of(tmp_path, (TOPIC, "cautions: [Not too much.]", "cautions: [Not so much.]"))
    [lost] = came.lost_cautions
    assert lost.nearest == "Not so much."


def test_a_caution_of_an_act(tmp_path: Path) -> None:
    """A caution that goes from something done on the way is told for the lambs that come by it."""
    old = (TOPIC, "title: Warm it\n", "title: Warm it\n    cautions: [Not too hot.]\n")
    before = two(tmp_path / "one", old)[1]
    after = two(tmp_path / "two")[1]
    [lost] = compare(before, after).lost_cautions
    assert (lost.caution, lost.old_page) == ("Not too hot.", "warm-it")


def test_an_act_that_is_no_longer_done(tmp_path: Path) -> None:
    """Lambs that are now led past something are told of."""
    came = came_of(
        tmp_path, (TOPIC, "{up_to: chill, go: warm-it, at_least", "{up_to: chill, go: still-cold, at_least")
    )
    assert [(each.old_act, each.new_act) for each in came.on_the_way] == [("warm-it", "")]
    assert [each.new_end for each in came.elsewhere] == ["still-cold"]
    back = compare(two(tmp_path / "b", (TOPIC, "{up_to: chill, go: warm-it", "{up_to: chill, go: still-cold"))[1],
                   two(tmp_path / "c")[1])  # fmt: skip
    assert ("", "warm-it") in [(each.old_act, each.new_act) for each in back.on_the_way]


def test_an_act_with_other_steps(tmp_path: Path) -> None:
    """What is done on the way is told once for the act, and not for each end behind it."""
    came = came_of(tmp_path, (TOPIC, "do: Warm it.", "do: Warm it well."))
    assert [(each.old_act, each.new_act) for each in came.on_the_way] == [("warm-it", "warm-it")]
    assert not differences(came)


def test_an_act_done_more_often(tmp_path: Path) -> None:
    """A lamb that is warmed three times and not twice is told of."""
    came = came_of(tmp_path, (TOPIC, "at_most: 2", "at_most: 3"))
    assert [(each.old_act, each.new_act) for each in came.on_the_way] == [("", "warm-it")]


def test_other_steps_at_an_end(tmp_path: Path) -> None:
    """The same page as urgent as before, on which other things are to be done."""
    came = came_of(tmp_path, (TOPIC, "do: Feed it.", "do: Feed it now."))
    told = {(each.old_end, each.new_end, each.new_page) for each in came.elsewhere}
    assert told == {("well", "well", False)}
    assert differences(came) == list(came.elsewhere)


def test_words_alone(tmp_path: Path) -> None:
    """Where only words changed, no lamb is told of."""
    came = came_of(tmp_path, (TOPIC, "title: Warm enough", "title: Quite warm enough"))
    assert quiet(came)
    [words] = came.words
    assert (words.key, words.kind, words.old, words.new) == (
        "node/well", "title", "Warm enough", "Quite warm enough",
    )  # fmt: skip


def test_an_answer_that_is_gone(tmp_path: Path) -> None:
    """A lamb that answers what can't be answered any more ends nowhere, and less urgent."""
    came = came_of(
        tmp_path,
        (FINDINGS, "choices: {limp: Limp, none: Not limp}", "choices: {down: Down, none: Not limp}"),
        (TOPIC, "is: limp", "is: down"),
        ("guide.yaml", "danger: [limp]", "danger: [down]"),
    )
    gone = [each for each in came.less_urgent if not each.new_end]
    assert {each.lamb[0].value for each in gone} == {"limp"}
    assert {each.old_end for each in came.more_urgent} == {""}


def test_a_choice_of_another_name(tmp_path: Path) -> None:
    """A choice with the same words is the same answer."""
    came = came_of(
        tmp_path,
        (FINDINGS, "choices: {limp: Limp,", "choices: {flat: Limp,"),
        (TOPIC, "is: limp", "is: flat"),
        ("guide.yaml", "danger: [limp]", "danger: [flat]"),
    )
    assert quiet(came)


def test_another_unit(tmp_path: Path) -> None:
    """The same line in another unit is no difference to any lamb, and no number that was moved."""
    came = came_of(tmp_path, ("numbers.yaml", "value: 37\n  unit: degC", "value: 98.6\n  unit: degF"),
                   ("numbers.yaml", "a-paper: [36, 37]", "a-paper: [96, 99]"))  # fmt: skip
    assert quiet(came)
    assert not came.numbers
    assert came.otherwise == ("number/chill",)


def test_not_sure_leads_elsewhere(tmp_path: Path) -> None:
    """ "Not sure" is an answer like the others."""
    came = came_of(tmp_path, (TOPIC, "{unsure: true, go: feel}", "{unsure: true, go: well}"))
    less = came.less_urgent[0]
    assert less.lamb[1] == Said(False, "temperature", UNSURE)
    assert less.new_end == "well"


def test_everything_by_another_name(tmp_path: Path) -> None:
    """Nodes that are only called otherwise are no difference to any lamb, and are told as renamed."""
    came = came_of(tmp_path, (TOPIC, "still-cold", "yet-cold"), (TOPIC, "feel", "touch"))
    assert quiet(came)
    assert set(came.renamed) == {("node/still-cold", "node/yet-cold"), ("node/feel", "node/touch")}
    assert not came.added
    assert not came.removed


def test_what_is_added_and_taken_away(tmp_path: Path) -> None:
    """Each statement by its key."""
    came = came_of(tmp_path, ("glossary.yaml", "limp:", "wet:"))
    assert (came.added, came.removed) == (("term/wet",), ("term/limp",))


def test_a_bound_that_is_reached_is_told(tmp_path: Path) -> None:
    """What was found until then is told, and that it may not be all."""
    old, new = two(tmp_path, ("numbers.yaml", "value: 37", "value: 36.5"))
    whole, part = compare(old, new), compare(old, new, most=1)
    assert whole.complete
    assert not part.complete
    assert not part.same
    pairs = {(each.old_end, each.new_end) for each in differences(whole)}
    assert {(each.old_end, each.new_end) for each in differences(part)} < pairs


def test_lambs_that_meet_what_nobody_answers_for_are_told_apart(tmp_path: Path) -> None:
    """One change is answered for, and another one leads more lambs between the same pages: both are told."""
    old, new = two(
        tmp_path,
        ("numbers.yaml", "value: 37", "value: 36.5"),
        (TOPIC, "{unsure: true, go: feel}", "{unsure: true, go: well}"),
    )
    mine = {"node/warmth"}
    theirs = [each for each in compare(old, new, mine).less_urgent if not each.met <= mine]
    assert {each.new_end for each in theirs} == {"well"}
    both = frozenset({"node/warmth", "number/chill"})
    assert all(each.met <= both for each in compare(old, new, both).less_urgent)
