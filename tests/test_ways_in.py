"""Other ways in: what a walk is about, where that is not what the guide takes as known."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.conftest import read_small, small_guide, write_small
from tests.test_cli import triage
from tests.ways import WAYS_IN
from triage.answers import Answers, Stopped, follow, read_answers
from triage.clock import Now
from triage.entry import AnswerReader
from triage.guide.model import Guide
from triage.page.page import page_of
from triage.page.side import answers_page
from triage.record import record_of
from triage.walk import Answer, NotNow, Walk, replay
from triage.ways_in import about, again, begin, begun, letters

NOW = Now(datetime(2026, 2, 11, 2, 10, tzinfo=UTC), UTC)


@pytest.fixture
def ways(tmp_path_factory: pytest.TempPathFactory) -> Guide:
    """The small guide with a way in for a ewe and for a flock."""
    return small_guide(tmp_path_factory.mktemp("ways"), *WAYS_IN)


def test_a_walk_that_says_nothing_is_about_what_is_taken_as_known(ways: Guide, small: Guide) -> None:
    """It begins at the lamb's danger signs, and a walk kept before there were other ways is the same walk."""
    moves = begin(small).answer("none").answer(38.5).moves
    kept = replay(Walk(ways), moves)

    assert (Walk(ways).node.name, about(Walk(ways)), begun(Walk(ways))) == ("danger", "", False)
    assert Walk(ways).state.known == {"about": "lamb"}
    assert (kept.walk.moves, kept.dropped, kept.walk.node.name) == (moves, (), "well")
    assert Walk(ways, moves).state.met == Walk(small, moves).state.met


def test_a_walk_that_begins_with_an_ewe_goes_another_way(ways: Guide) -> None:
    """Its first page is the ewe's danger signs, and nothing of a lamb is known or asked."""
    walk = begin(ways, "ewe")

    assert (walk.node.name, about(walk), begun(walk)) == ("ewe", "ewe", False)
    assert walk.moves == (Answer("about", "ewe"),)
    down = walk.answer("down")
    assert (down.node.name, down.state.urgency, down.state.met) == ("ewe-now", "vet-now", ("ewe",))
    assert begun(down)
    assert again(down) == walk
    assert down.back() == walk


def test_said_or_taken_a_lamb_is_a_lamb(ways: Guide) -> None:
    """A walk that says what is taken as known anyway is where it would be without."""
    said = Walk(ways, (Answer("about", "lamb"), Answer("danger", "none")))

    assert begin(ways, "lamb") == Walk(ways)
    assert said.state == Walk(ways, said.moves[1:]).state
    assert about(said) == ""


def test_what_a_walk_is_about_is_said_first_or_not_at_all(ways: Guide) -> None:
    """Later it does not fit, as the walk would have gone another way from the start."""
    with pytest.raises(NotNow):
        Walk(ways, (Answer("danger", "none"), Answer("about", "ewe"))).answer("none")


def test_a_kept_walk_is_taken_up_where_it_was(ways: Guide, small: Guide) -> None:
    """A guide that knows the way replays it whole; one that does not drops what no longer fits."""
    moves = begin(ways, "ewe").answer("down").moves

    assert replay(Walk(ways), moves).walk.node.name == "ewe-now"
    older = replay(Walk(small), moves)
    assert (older.walk.node.name, older.dropped) == ("danger", moves)


def test_the_flock_leads_on_to_one_lamb(ways: Guide) -> None:
    """A way may come to the lamb's own danger signs, and then goes on as for any lamb."""
    walk = begin(ways, "flock").answer("none")
    assert walk.node.name == "danger"
    assert walk.answer("none").answer(38.5).node.name == "well"


@pytest.mark.parametrize(
    ("text", "end"),
    [
        ("about: ewe\newe-danger: down\n", "ewe-now"),
        ("about: lamb\ndanger: none\ntemperature: 38.5\n", "well"),
    ],
)
def test_a_file_of_answers_may_say_what_it_is_about(ways: Guide, text: str, end: str) -> None:
    """It is taken first, wherever in the file it stands."""
    for lines in (text.splitlines(), text.splitlines()[::-1]):
        answers = read_answers("\n".join(lines), "a.yaml", ways)
        assert isinstance(answers, Answers)
        came = follow(Walk(ways), answers, AnswerReader(ways, "metric", NOW))
        assert isinstance(came, Walk)
        assert came.node.name == end


def test_a_file_that_says_nothing_understood(ways: Guide) -> None:
    """What it is about must be one of the choices; the place in the file is told."""
    answers = read_answers("about: goose\n", "a.yaml", ways)
    assert isinstance(answers, Answers)
    came = follow(Walk(ways), answers, AnswerReader(ways, "metric", NOW))
    assert isinstance(came, Stopped)
    assert came.why.startswith("a.yaml:1:8: about: ")


def test_the_first_page_shows_the_way_to_the_others(ways: Guide, small: Guide) -> None:
    """A line beside the lamb's danger signs says which key to press, and stands on no other page."""
    line = "A ewe ill, or one found dead? Press o."

    assert line in [block.text for block in page_of(Walk(ways), "metric").blocks]
    others = (begin(ways, "ewe"), Walk(ways).answer("none"), Walk(small))
    assert not any("Press o" in block.text for walk in others for block in page_of(walk, "metric").blocks)


def test_a_finding_without_that_line_names_the_ways(tmp_path: Path) -> None:
    """Its choices serve then."""
    guide = small_guide(
        tmp_path, *WAYS_IN, ("findings/all.yaml", "  look: A ewe ill, or one found dead?\n", "")
    )
    told = [block.text for block in page_of(Walk(guide), "metric").blocks]
    assert "A ewe in trouble; or One found dead, or several ill? Press o." in told


def test_what_it_is_about_can_not_be_changed_on_the_way(ways: Guide) -> None:
    """The list of answers begins with the first page; another matter is another walk."""
    blocks = answers_page(begin(ways, "ewe").answer("down"), "metric").blocks
    assert [block.text for block in blocks if block.role == "choice"] == ["Ewe danger: Down"]


def test_the_record_tells_it_only_where_it_was_said(ways: Guide) -> None:
    """What is taken as known is no answer that anybody gave."""
    lamb, ewe = Walk(ways).answer("none"), begin(ways, "ewe").answer("down")

    assert [each["finding"] for each in record_of(lamb, "metric")["answers"]] == ["danger"]
    assert [each["finding"] for each in record_of(ewe, "metric")["answers"]] == ["about", "ewe-danger"]


def test_letters_are_the_ways_own_where_they_are_free() -> None:
    """A key of the page is never taken from it."""
    assert letters(("ewe", "flock"), "vbq") == {"e": "ewe", "f": "flock"}
    assert letters(("bag", "eye", "ewe"), "b") == {"a": "bag", "e": "eye", "w": "ewe"}


WRONG = [
    ("unless_told: {about: lamb}", "unless_told: {about: goat}", "'goat' is not a choice of 'about'"),
    (
        "unless_told: {about: lamb}",
        "unless_told: {abot: lamb}",
        "there is no finding 'abot'; did you mean 'about'?",
    ),
    ("unless_told: {about: lamb}", "unless_told: {mouth: warm}", "the way in 'about' should ask 'mouth'"),
    ("unless_told: {about: lamb}", "unless_told: {about: lamb, mouth: warm}", "takes one finding as known"),
    ("way_in: about", "way_in: well", "the way in 'well' should ask 'about'"),
    ("{danger: [limp],", "{danger: [limp], about: [ewe],", "so it can't be in danger_signs"),
]


@pytest.mark.parametrize(("old", "new", "told"), WRONG)
def test_what_is_taken_as_known_must_be_what_the_way_in_asks(
    tmp_path: Path, old: str, new: str, told: str
) -> None:
    """A guide in which a walk could not begin is refused, in one sentence."""
    read = read_small(tmp_path, *WAYS_IN, ("guide.yaml", old, new))
    assert read.guide is None
    assert any(told in problem.what for problem in read.problems), read.problems


def test_it_holds_for_the_whole_walk(tmp_path: Path) -> None:
    """It is never unsure, and no act forgets it."""
    unsure = ("findings/all.yaml", "  never_unsure: Whoever opens the guide knows what is in trouble.\n", "")
    forget = ("topics/first.yaml", "forget: [temperature, mouth]", "forget: [temperature, mouth, about]")
    told = " ".join(each.what for each in read_small(tmp_path, *WAYS_IN, unsure, forget).problems)
    assert "so it needs 'never_unsure'" in told
    assert "'warm-it' forgets 'about'" in told


def test_the_command_begins_where_it_is_told_to(tmp_path: Path) -> None:
    """`--about` serves both the plain face and a file of answers; what there is not is one sentence."""
    folder = str(write_small(tmp_path / "guide", *WAYS_IN))
    plain = triage("walk", "--plain", "--about", "ewe", "--guide", folder, typed="1\nq\n")
    assert "Is the ewe down?" in plain.stdout
    assert "A ewe that is down" in plain.stdout

    answers = tmp_path / "answers"
    answers.write_text("ewe-danger: none\n", encoding="utf-8")
    ran = triage("walk", "--answers", str(answers), "--about", "ewe", "--guide", folder)
    assert (ran.returncode, "A ewe on her feet" in ran.stdout) == (0, True)

    none = triage("walk", "--plain", "--about", "goose", "--guide", folder)
    assert (none.returncode, none.stdout) == (2, "")
    assert none.stderr == "This guide has nothing about 'goose'. It begins with: lamb, ewe, flock.\n"
