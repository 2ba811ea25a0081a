"""Practice in a session: what each line does in its rooms, and that nothing of it touches a real lamb."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest

from tests.session.conftest import Night
from triage.casebook.opening import Opened, open_book
from triage.casebook.practice import PracticeBook
from triage.guide.model import Guide
from triage.page.page import Page
from triage.plain import head, prompt, show
from triage.practice.dealing import Dealer
from triage.practice.looking import listed
from triage.session import Session
from triage.session.practice.round import RoundRoom
from triage.session.practice.who import School, WhoRoom


@pytest.fixture(scope="module")
def dealer(guide: Guide) -> Dealer:
    """What deals the cases; one for all tests."""
    return Dealer(guide)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[PracticeBook]:
    """A practice book."""
    opened = open_book(PracticeBook, tmp_path / "casebook-practice.sqlite")
    assert isinstance(opened, Opened)
    yield opened.book
    opened.book.close()


def practising(night: Night, dealer: Dealer, book: PracticeBook | None, *lines: str) -> Session:
    """Return a session in the rooms of practice, with lines typed."""
    session = night.open()
    session.desk.rooms.clear()
    school = School(session, book, rng=Random(3))
    school._dealer = dealer
    session.desk.open(WhoRoom(school))
    for line in lines:
        session.take(line, words=session.page().words)
    return session


def text(page: Page) -> str:
    """Return all that a page says."""
    return "\n".join([*(block.text for block in page.blocks), *(choice.text for choice in page.choices)])


def round_of(session: Session) -> RoundRoom:
    """Return the room of the round in hand."""
    room = session.room
    assert isinstance(room, RoundRoom)
    return room


def by_the_guide(session: Session) -> None:
    """Play the case in hand as the guide would, by the keys that a person presses."""
    room = round_of(session)
    assert room.played is not None
    case = room.played.posed.case
    labels = [finding.name for finding in listed(case)]
    for name in sorted(case.hidden, key=lambda each: each not in session.desk.guide.front.danger_signs):
        session.take(str(labels.index(name) + 1))
    session.take("d")
    while room.came is None:
        assert room.played.question is not None
        question = room.played.question
        names = [option.name for option in question.options]
        for name in question.right:
            session.take(str(names.index(name) + 1))
        if question.many:
            session.take("d")


def test_a_new_helper_says_a_name_once(night: Night, dealer: Dealer, book: PracticeBook) -> None:
    """The next time it is on the list, however it is written."""
    session = practising(night, dealer, book, "Imani")
    assert "No case was done yet" in text(session.page())

    again = practising(night, dealer, book)
    assert "Imani" in text(again.page())
    again.take("2")
    assert again.page().words
    again.take("imani", words=True)
    helpers = book.helpers()
    assert isinstance(helpers, tuple)
    assert len(helpers) == 1


def test_a_name_that_can_t_be_seen_is_asked_for_again(night: Night, dealer: Dealer) -> None:
    """Nothing is kept of it."""
    session = practising(night, dealer, None, "\u200b")
    assert session.told == "Type a name that can be seen."


def test_a_case_played_as_the_guide_plays_it(night: Night, dealer: Dealer, book: PracticeBook) -> None:
    """It is praised in a sentence, the next one comes with Enter, and both are kept."""
    session = practising(night, dealer, book, "Imani", "1")
    for _ in range(3):
        by_the_guide(session)
        assert "Just as the guide does it." in text(session.page())
        assert session.page().kind == "debrief"
        night.passes(2)
        session.take("")
    session.take("b")

    assert "3 cases done" in text(session.page())
    assert "3 cases done" in text(practising(night, dealer, book, "1").page())


def test_the_talk_after_a_safety_miss(night: Night, dealer: Dealer) -> None:
    """Where it parts, why, from which source, and one thing to remember; the guide's own pages beside it."""
    session = practising(night, dealer, None, "Imani", "1", "d", "4", "1", "1", "2", "3", "4", "5", "d")
    while round_of(session).came is None:
        session.take("1")
        session.take("d")

    said = text(session.page())
    assert "A safety step was missed." in said
    assert "Where you part first" in said
    for wanted in ("You: ", "The guide: ", "Why: ", "From: ", "Remember", "Side by side, where you differ"):
        assert wanted in said
    session.take("a")
    assert "Counted apart" in text(session.page())
    session.take("")
    session.take("w")
    assert "Sources of this page" in text(session.page())
    session.take("b")
    session.take("?")
    assert "Keys" in text(session.page())
    assert "lamb" not in text(session.page()).split("Keys")[1].replace("lambs", "")
    session.take("b")
    assert said == text(session.page())


def test_what_was_given_is_there_after_a_kill(night: Night, dealer: Dealer, book: PracticeBook) -> None:
    """The next session goes on in the middle of the very question."""
    session = practising(night, dealer, book, "Imani", "1", "2", "d", "1")
    before = session.page()

    again = practising(night, dealer, book, "1", "1")

    assert again.told == "You were in the middle of this one."
    assert again.page() == before


def test_going_back(night: Night, dealer: Dealer) -> None:
    """Marks first, then the decision; what is answered stands, and from the story it goes home."""
    session = practising(night, dealer, None, "Imani", "1", "2")
    seen = session.page()
    session.take("d")
    session.take("b")
    assert session.page() == seen
    session.take("b")
    assert "danger signs first" in text(session.page())
    session.take("1")
    session.take("d")
    session.take("1")
    before = session.page()
    session.take("b")
    assert session.page() == before
    assert "What is answered stands." in session.told


def test_what_was_not_looked_at_is_not_told_by_a_supposition(night: Night, dealer: Dealer) -> None:
    """Only who has seen how it is, is told how it is beside how it might be."""
    session = practising(night, dealer, None, "Imani", "1", "d", "1", "1")
    while (question := round_of(session).played.question) and question.kind != "vet-if":  # type: ignore[union-attr]
        session.take("d" if question.many else "1")
    assert "Suppose one thing were otherwise." in text(session.page())
    assert "In this case" not in text(session.page())


def test_marks_are_set_and_cleared(night: Night, dealer: Dealer) -> None:
    """A digit marks a line, the same digit clears it, and several may be typed at once."""
    session = practising(night, dealer, None, "Imani", "1", "d", "1", "1")
    while not getattr(round_of(session).played.question, "many", False):  # type: ignore[union-attr]
        session.take("1")
    session.take("1 3")
    marked = [choice.text.startswith("[x]") for choice in session.page().choices]
    assert marked[:4] == [True, False, True, False]
    session.take("13")
    assert not any(choice.text.startswith("[x]") for choice in session.page().choices)


@pytest.mark.parametrize("typed", ["", "x", "0", "99", "-1", "\u0661", "1 2", "a" * 5000, "12345678901"])
def test_a_wrong_key_does_no_harm(night: Night, dealer: Dealer, typed: str) -> None:
    """On no page of practice; it says what would be right."""
    for lines in (("Imani",), ("Imani", "1"), ("Imani", "1", "d"), ("Imani", "2", "")):
        session = practising(night, dealer, None, *lines)
        before = session.page()
        session.take(typed)
        if session.page() == before:
            assert session.told
        assert not session.left


def test_the_sitting_may_end_after_its_minutes(night: Night, dealer: Dealer) -> None:
    """It is said once the next case comes, and nothing is cut off."""
    session = practising(night, dealer, None, "Imani")
    room = session.room
    assert isinstance(room, WhoRoom)
    room.school.minutes = 5
    session.take("1")
    by_the_guide(session)
    night.passes(6)
    session.take("")
    assert "5 minutes" in session.told
    assert session.page().kind == "round"


def test_a_drill(night: Night, dealer: Dealer, book: PracticeBook) -> None:
    """Ten lines, the time they took, what was missed and why; what was missed comes back."""
    session = practising(night, dealer, book, "Imani", "2", "")
    for _ in range(10):
        night.passes(0.05)
        session.take("2")

    said = text(session.page())
    assert "5 missed." in said
    assert "10 lines in 30 seconds." in said
    cards = book.cards_of(book.helpers()[0].id)  # type: ignore[index]
    assert isinstance(cards, tuple)
    assert len(cards) == 5
    assert all(not card.parts["knew"] for card in cards)


def test_what_was_shown(night: Night, dealer: Dealer) -> None:
    """The page says what counts, what is wanting, and that practice is no licence."""
    session = practising(night, dealer, None, "Imani", "1")
    by_the_guide(session)
    session.take("b")
    session.take("3")
    said = text(session.page())
    assert "Has not met this holding's pass mark yet." in said
    assert "Practice is no licence." in said
    assert "the guide stays open" in said.replace("\n", " ")


def test_nothing_of_practice_is_kept_of_a_lamb(night: Night, dealer: Dealer, book: PracticeBook) -> None:
    """The casebook stays as it was, and no walk was begun."""
    session = practising(night, dealer, book, "Imani", "1")
    by_the_guide(session)
    assert session.desk.keeping.book is not None
    assert session.desk.keeping.book.count_open() == 0
    assert session.walk.moves == ()


def test_a_real_look_rings_in_practice_too(night: Night, dealer: Dealer) -> None:
    """A lamb in care that is due is said on each page of practice."""
    real = night.open("6", "39.3", "1", "5", "2h", "6", "4.2kg")
    assert real.walk.finished
    session = practising(night, dealer, None, "Imani", "1")
    night.passes(60 * 30)
    assert session.watch()
    assert session.page().alarm


def test_each_page_says_that_it_is_practice(night: Night, dealer: Dealer) -> None:
    """In its title, in both faces."""
    session = practising(night, dealer, None, "Imani", "1")
    for _ in range(2):
        lines: list[str] = []
        show(session.page(), session, lines.append, 76)
        assert lines[1] == "Practice: an invented lamb"
        assert head(session.page(), session.vet)[-1].startswith("Practice")
        assert prompt(session.page()).startswith("A number")
        session.take("d")
