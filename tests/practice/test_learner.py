"""What a helper has done is kept: each answer at once, and what came of it before it is told."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random

import pytest

from tests.practice.helpers import by_the_guide, looked_by_the_guide
from triage.casebook.failing import NotKept
from triage.casebook.opening import Opened, open_book
from triage.casebook.practice import Helper, PracticeBook
from triage.practice.dealing import Dealer
from triage.practice.learner import Learner
from triage.practice.names import plain_name, same
from triage.practice.questions import Posed
from triage.practice.round import Round
from triage.practice.stored import case_from, case_parts

NOW = datetime(2026, 2, 1, 19, tzinfo=UTC)
TAM = Helper("tam-1", "Tam", NOW)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    """Where the practice book lies."""
    return tmp_path / "practice.sqlite"


@pytest.fixture
def book(path: Path) -> Iterator[PracticeBook]:
    """An open practice book with one helper."""
    opened = open_book(PracticeBook, path)
    assert isinstance(opened, Opened)
    opened.book.keep_helper(TAM)
    yield opened.book
    opened.book.close()


def test_a_round_left_in_the_middle_is_gone_on_with(dealer: Dealer, book: PracticeBook) -> None:
    """At the very question, with all that was given."""
    learner = Learner.of(TAM, book)
    posed = dealer.written[5][0]
    learner.begin(posed, NOW)
    played = looked_by_the_guide(posed).answer("watch")
    learner.give(played)

    again = Learner.of(TAM, book).resume(dealer)

    assert again is not None
    assert again.given == played.given
    assert again.posed == posed


def test_what_came_of_a_round_is_there_the_next_time(dealer: Dealer, book: PracticeBook) -> None:
    """The rounds, the cards with their next days, and nothing is left open."""
    learner = Learner.of(TAM, book)
    for number, (posed, _) in enumerate(dealer.written[:8]):
        now = NOW + number * timedelta(minutes=3)
        learner.begin(posed, now)
        learner.finish(by_the_guide(posed), now)

    again = Learner.of(TAM, book)

    assert again.shown == learner.shown
    assert len(again.shown) == 8
    assert again.kept == learner.kept
    assert again.past(dealer.guide) == learner.past(dealer.guide)
    assert again.resume(dealer) is None


def test_any_case_is_kept_whole(dealer: Dealer) -> None:
    """Written or drawn, it comes back with its walk and what is supposed of it."""
    drawn = [posed.case for posed in (dealer.draw(Random(seed)) for seed in range(10)) if posed]
    for case in [*(posed.case for posed, _ in dealer.written), *drawn]:
        assert case_from(dealer.guide, case_parts(case)) == case


def test_a_round_that_the_guide_no_longer_knows_is_forgotten(dealer: Dealer, book: PracticeBook) -> None:
    """Its page may have gone with an edition; practice goes on with another case."""
    learner = Learner.of(TAM, book)
    learner.begin(dealer.written[0][0], NOW)
    row = book.open_round(TAM.id)
    assert row is not None
    assert not isinstance(row, NotKept)
    book.drop_round(row.id)
    book.keep_round(
        TAM, replace(row, edition="2020.1", parts={**row.parts, "moves": '[["answer", "no-such", "x"]]'})
    )

    assert Learner.of(TAM, book).resume(dealer) is None
    assert book.open_round(TAM.id) is None


def test_what_could_not_be_written_is_written_later(
    dealer: Dealer, book: PracticeBook, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A full disk is told, costs nothing, and is made good with the next answer."""
    learner = Learner.of(TAM, book)
    first, second = dealer.written[0][0], dealer.written[1][0]
    learner.begin(first, NOW)
    with monkeypatch.context() as patched:
        patched.setattr(PracticeBook, "_transaction", lambda *_: (_ for _ in ()).throw(OSError(28, "full")))
        learner.finish(by_the_guide(first), NOW)
        assert learner.why_not == "the disk is full"
        assert Learner.of(TAM, book).shown == []

    learner.begin(second, NOW + timedelta(minutes=2))

    assert learner.why_not == ""
    assert [each.case for each in Learner.of(TAM, book).shown] == [first.case.name]
    assert Learner.of(TAM, book).kept == learner.kept


def test_without_a_book_practice_works_on(dealer: Dealer) -> None:
    """And everything counts as long as the program runs."""
    learner = Learner.of(TAM, None)
    posed = dealer.written[0][0]
    learner.begin(posed, NOW)
    learner.finish(by_the_guide(posed), NOW)
    assert len(learner.shown) == 1
    assert learner.kept


def test_cards_that_can_t_be_read_begin_anew(dealer: Dealer, book: PracticeBook) -> None:
    """One spoilt row costs itself."""
    learner = Learner.of(TAM, book)
    posed = dealer.written[0][0]
    learner.begin(posed, NOW)
    learner.finish(by_the_guide(posed), NOW)
    cards = book.cards_of(TAM.id)
    assert not isinstance(cards, NotKept)
    book.keep_cards(TAM, [replace(cards[0], parts={"knew": 1.0})])

    assert set(Learner.of(TAM, book).kept) == set(learner.kept) - {cards[0].about}


def test_a_damaged_practice_book_is_set_aside(dealer: Dealer, path: Path) -> None:
    """What can be read of it goes into a new one, as with the casebook."""
    opened = open_book(PracticeBook, path)
    assert isinstance(opened, Opened)
    opened.book.keep_helper(TAM)
    learner = Learner.of(TAM, opened.book)
    for posed, _ in dealer.written[:12]:
        learner.begin(posed, NOW)
        learner.finish(by_the_guide(posed), NOW)
    opened.book.close()
    spoilt = bytearray(path.read_bytes())
    spoilt[20_000:20_400] = bytes(400)
    path.write_bytes(spoilt)

    came = open_book(PracticeBook, path)

    assert isinstance(came, Opened)
    if came.told:
        assert came.told.startswith("The practice book was damaged. It is kept as")
        assert list(path.parent.glob("practice.sqlite.damaged-*"))
    helpers = came.book.helpers()
    assert isinstance(helpers, tuple)
    assert [each.id for each in helpers] == [TAM.id]
    came.book.close()


def test_the_file_of_another_program_is_left_alone(path: Path) -> None:
    """Above all the casebook: practice never writes into what is kept of a sick lamb."""
    from triage.casebook.opening import open_casebook

    casebook = open_casebook(path)
    assert isinstance(casebook, Opened)
    casebook.book.close()
    before = path.read_bytes()

    assert isinstance(open_book(PracticeBook, path), NotKept)
    assert path.read_bytes() == before


def test_a_round_is_finished_but_once(dealer: Dealer, book: PracticeBook, path: Path) -> None:
    """A second copy can't make a failed round one that was passed, nor a finished one open again."""
    posed = next(posed for posed, _ in dealer.written if posed.case.urgency == "vet-now")
    one = Learner.of(TAM, book)
    one.begin(posed, NOW)
    opened = open_book(PracticeBook, path)
    assert isinstance(opened, Opened)
    other = Learner.of(TAM, opened.book)
    taken = other.resume(dealer)
    assert taken is not None
    assert one.finish(answered_worst(posed), NOW).fails

    other.give(taken.decide())
    assert other.why_not == "another copy of practice has finished this case"
    other.finish(by_the_guide(posed), NOW)

    assert other.shown == []
    assert [each.fails for each in Learner.of(TAM, book).shown] == [True]
    opened.book.close()


def answered_worst(posed: Posed) -> Round:
    """Answer everything as mildly as can be, and look at nothing."""
    played = Round(posed).decide()
    while question := played.question:
        played = played.answer(*([] if question.many else [question.options[-1].name]))
    return played


def test_a_clock_set_back_changes_no_order(dealer: Dealer, book: PracticeBook) -> None:
    """What was done last counts last, whatever the clock says."""
    learner = Learner.of(TAM, book)
    for days, (posed, _) in zip((0, -400, -300), dealer.written, strict=False):
        now = NOW + timedelta(days=days)
        learner.begin(posed, now)
        learner.finish(by_the_guide(posed), now)

    names = [posed.case.name for posed, _ in dealer.written[:3]]
    assert [each.case for each in Learner.of(TAM, book).shown] == names


def test_a_spoilt_row_costs_itself(dealer: Dealer, book: PracticeBook, path: Path) -> None:
    """Of the rounds and of the cards; the others count, and a spoilt card begins anew."""
    learner = Learner.of(TAM, book)
    for posed, _ in dealer.written[:4]:
        learner.begin(posed, NOW)
        learner.finish(by_the_guide(posed), NOW)
    with sqlite3.connect(path) as raw:
        raw.execute("UPDATE rounds SET parts = 'x' WHERE rowid = 2")
        raw.execute("""UPDATE cards SET parts = replace(parts, '"fsrs_state": 1', '"fsrs_state": 9')""")
    raw.close()

    again = Learner.of(TAM, book)
    assert len(again.shown) == 3
    posed = dealer.written[0][0]
    again.begin(posed, NOW + timedelta(days=1))
    assert not again.finish(by_the_guide(posed), NOW + timedelta(days=1)).fails
    assert again.why_not == ""


def test_a_helper_that_could_not_be_written_comes_with_the_first_round(dealer: Dealer, path: Path) -> None:
    """So that no later round is lost for want of a name."""
    opened = open_book(PracticeBook, path)
    assert isinstance(opened, Opened)
    learner = Learner.of(TAM, opened.book)
    posed = dealer.written[0][0]
    learner.begin(posed, NOW)
    learner.finish(by_the_guide(posed), NOW)
    helpers = opened.book.helpers()
    assert isinstance(helpers, tuple)
    assert [each.name for each in helpers] == ["Tam"]
    assert learner.why_not == ""
    opened.book.close()


def test_what_is_supposed_must_still_lead_somewhere(dealer: Dealer) -> None:
    """A choice that has gone with an edition makes the case one that is forgotten, and no crash."""
    case = next(posed.case for posed, _ in dealer.written if posed.case.vet_if)
    parts = case_parts(case)
    parts["vet_if"] = '["answer", "danger", "no-such-sign"]'
    assert case_from(dealer.guide, parts) is None


@pytest.mark.parametrize(
    ("one", "other"), [("Jos\u00e9", "Jose\u0301"), ("Tam", " tam  "), ("Tam\u200b", "TAM")]
)
def test_a_name_is_the_same_however_it_is_typed(one: str, other: str) -> None:
    """Accents, capitals, blanks and signs that can't be seen make no second person."""
    assert same(one, other)
    assert plain_name("\u200b") == ""
