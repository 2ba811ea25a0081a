"""The other ways in, in a session: how one gets there, what is kept, and what is said on the phone."""

from __future__ import annotations

import pytest

from tests.conftest import small_guide
from tests.session.conftest import Night, texts, typed
from tests.ways import WAYS_IN
from triage.handover.gathering import sort_findings
from triage.handover.opening import first_line
from triage.handover.situation import Situation
from triage.plain import run
from triage.walk import Walk


@pytest.fixture
def ways(night: Night, tmp_path_factory: pytest.TempPathFactory) -> Night:
    """A night with the small guide, which has a way in for a ewe and for a flock."""
    night.guide = small_guide(tmp_path_factory.mktemp("ways"), *WAYS_IN)
    return night


def lambs(night: Night) -> list[str]:
    """The names of all that is kept, as another process reads it."""
    book = night.open().desk.keeping.book
    return [lamb.name for lamb in book.lambs()]  # type: ignore[union-attr]


def marks(night: Night, *lines: str) -> list[tuple[str, str]]:
    """The choices of the list and their keys, after these lines."""
    page = night.open(*lines).page()
    return [(block.mark, block.text.partition(":")[0]) for block in page.blocks if block.role == "choice"]


def test_the_list_offers_the_other_ways_by_letters(ways: Night) -> None:
    """They stand after another lamb, and the numbers go on meaning lambs."""
    first = [("1", "Another lamb"), ("e", "A ewe in trouble"), ("f", "One found dead, or several ill")]
    assert marks(ways, "o") == first

    ways.open("1")
    assert marks(ways) == [*first, ("2", "Lamb of 02")]
    session = ways.open("2")
    assert session.walk.state.known["danger"] == "limp"


def test_a_ewe_has_pages_and_a_name_of_her_own(ways: Night) -> None:
    """She is asked about from the first page, and kept under a word that is no lamb's."""
    session = ways.open("o", "e")
    assert "Is the ewe down?" in texts(session)
    assert lambs(ways) == []  # nobody has answered anything yet

    typed(session, "1")
    assert session.walk.node.name == "ewe-now"
    assert lambs(ways) == ["Ewe of 02:10"]
    typed(session, "o", "F", "1")
    assert lambs(ways) == ["Flock of 02:10", "Ewe of 02:10"] or lambs(ways) == [
        "Ewe of 02:10",
        "Flock of 02:10",
    ]


def test_a_kept_ewe_is_taken_up_where_she_was(ways: Night) -> None:
    """From the list, by its number, as any lamb; a new look at her begins with her danger signs."""
    ways.open("o", "e", "2")
    session = ways.open("2")
    assert session.walk.node.name == "ewe-here"

    typed(session, "f")
    assert session.walk.node.name == "ewe"
    assert "Is the ewe down?" in texts(session)


def test_going_back_from_the_first_page_stays_there(ways: Night) -> None:
    """Whoever chose the ewe is never put before a lamb's questions by going back."""
    session = ways.open("o", "e", "b")
    assert (session.walk.node.name, session.told) == ("ewe", "This is the first question.")
    typed(session, "1", "b", "b")
    assert session.walk.node.name == "ewe"


def test_leaving_before_the_first_answer_needs_one_key(ways: Night) -> None:
    """Nothing is lost then."""
    session = ways.open("o", "e", "q")
    assert session.left


def test_a_wrong_key_on_the_list_does_no_harm(ways: Night) -> None:
    """It is told which signs do something."""
    session = ways.open("o", "z")
    assert session.told == "'z' does nothing here. Type a number or letter of the list."
    assert session.page().kind == "lambs"


def test_without_other_ways_the_list_has_no_letters(night: Night) -> None:
    """A guide with one way in is as it always was."""
    night.guide = small_guide(night.path.parent / "plain-guide")
    assert marks(night, "o") == [("1", "Another lamb")]
    assert night.open("o", "e").told == "'e' does nothing here. Type a number of the list."


def test_the_call_about_a_ewe_does_not_speak_of_a_lamb(ways: Night) -> None:
    """It opens with what it is about, and lacks nothing that only a lamb can have."""
    session = ways.open("o", "e", "1")
    situation = Situation(session.walk, ways.now())
    found = sort_findings(situation)

    said = first_line(situation, found, 100).text
    assert "It is about a ewe in trouble." in said
    assert "lamb" not in said
    assert "about" not in [item.finding.name for item in (*found.found, *found.normal, *found.other)]
    assert found.not_checked == ()


def test_a_lamb_is_spoken_of_as_always(ways: Night) -> None:
    """What is taken as known is told nowhere."""
    walk = Walk(ways.guide).answer("limp")
    situation = Situation(walk, ways.now())
    said = first_line(situation, sort_findings(situation), 100).text
    assert said.startswith("(Say your name, and where you are.) I have a young lamb. Why now:")


def test_the_plain_face_gets_there_too(ways: Night) -> None:
    """The line on the first question, the key, and the letter, all in lines of text."""
    lines, keys = list[str](), iter(["o", "f", "1", "q"])
    run(ways.open(), lambda prompt: next(keys), lines.append)
    told = "\n".join(lines)
    places = [
        told.index(each)
        for each in ("Press o.", " f  One found dead", "Are several ill?", "Several that are ill")
    ]
    assert places == sorted(places)
