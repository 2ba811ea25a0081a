"""A whole night: several lambs, each resumed where it was, looked at when due, and nothing lost."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.session.conftest import START, Night, listed, texts, typed
from triage.casebook.failing import NotKept
from triage.casebook.rows import Case
from triage.clock import Now
from triage.facts import UNSURE
from triage.guide.model import Ask, Guide
from triage.looks import Alarm
from triage.session import Session
from triage.session.desk import House
from triage.walk import Answer, Done, Walk

COLD = ("5", "36.2", "3h", "d")
FIRST_MILK = ("6", "39.3", "1", "5", "2h", "6", "4.2kg")


def test_each_answer_is_on_the_disk_before_the_next_screen(night: Night) -> None:
    """After every key the casebook holds what the screen stands on, as another process reads it."""
    session = night.open()
    for line in (*COLD, "38.1", "b", "38.3"):
        session.take(line)
        case = night.open().desk.keeping.book.case(session.desk.keeping.case.id)  # type: ignore[union-attr]
        assert case.moves == session.walk.moves  # type: ignore[union-attr]
        assert [move.at for move in case.moves] == [move.at for move in session.walk.moves]  # type: ignore[union-attr]


def test_looking_only_keeps_nothing(night: Night) -> None:
    """Opening the guide and reading its pages leaves no lamb behind."""
    night.open("?", "b", "a", "b", "u", "9", "q")

    assert night.open().desk.keeping.book.lambs() == ()  # type: ignore[union-attr]


def test_a_walk_is_resumed_exactly_where_it_was(night: Night) -> None:
    """However the guide was left, the lamb is listed, and one key leads to the same page with the same answers."""
    before = night.open(*COLD)
    after = night.open("2")

    assert after.walk.moves == before.walk.moves
    assert after.page().blocks == before.page().blocks


def test_the_longest_due_lamb_stands_first(night: Night) -> None:
    """The opening list shows each lamb with what is due when, overdue ones first, and the way to a new lamb."""
    night.open(*COLD)
    night.passes(2)
    night.open("1", *FIRST_MILK)
    night.passes(1)
    night.open("1", "6")
    night.passes(30)

    lines = listed(night.open())

    assert lines["1"] == "Another lamb: begin with the danger signs"
    assert lines["2"].startswith("Lamb of 02:10: look now, due 02:30, 13 minutes ago. Phone the vet now.")
    assert lines["3"].startswith("Lamb of 02:12: look at 04:12, in 89 minutes.")
    assert lines["4"].startswith("Lamb of 02:13: left at 02:13.")


def test_a_new_lamb_is_two_keys_from_a_call(night: Night) -> None:
    """With lambs in care, a danger sign on another one still reaches `phone now` in two keys."""
    night.open(*COLD)

    session = night.open("1", "1")

    assert session.page().urgency.name == session.walk.guide.top  # type: ignore[union-attr]
    assert len(night.open().desk.keeping.book.lambs()) == 2  # type: ignore[union-attr, arg-type]


def test_a_due_look_is_said_on_every_page_and_rings(night: Night) -> None:
    """When the wait is over the bell rings once and every page says whose look is due, until it is answered."""
    session = night.open(*COLD)
    assert not session.watch()
    night.passes(20)

    assert session.watch()
    assert not session.watch()
    for keys in (("?",), ("b", "v"), ("b", "a"), ("b", "l"), ("c",), ("b", "o")):
        assert typed(session, *keys).page().alarm == "Look again now: Lamb of 02:10."
    typed(session, "2", "38.1")
    assert session.page().alarm == ""


def test_overdue_looks_come_first_after_a_restart(night: Night) -> None:
    """Started again after the time, the guide rings at once and says whose look is due."""
    night.open(*COLD)
    night.passes(200)

    session = night.open()

    assert session.watch()
    assert "Look again now: Lamb of 02:10." in session.page().alarm


def test_a_look_can_be_called_done(night: Night) -> None:
    """One key on the lamb's page takes the look away, and it stays away after a restart."""
    session = night.open(*FIRST_MILK)
    night.passes(300)
    session.watch()

    typed(session, "l", "k")

    assert session.page().alarm == ""
    again = night.open()
    assert not again.watch()
    assert "left at" in listed(again)["2"]


def test_looking_afresh_takes_the_place_of_the_old_walk(night: Night) -> None:
    """A new look at the same lamb begins at the danger signs. The old look rings on until the new walk has come
    to an end, so that whoever is called away in the middle is not forgotten; then one case is open."""
    session = night.open(*FIRST_MILK)
    night.passes(130)

    typed(session, "l", "f")
    assert session.walk.moves == ()
    assert night.open().watch()
    typed(session, "6", "39.3")
    assert night.open().watch()
    typed(session, *FIRST_MILK[2:4], "", *FIRST_MILK[5:])
    assert session.walk.finished

    assert not night.open().watch()
    book = night.open().desk.keeping.book
    assert book.count_open() == 1  # type: ignore[union-attr]
    assert len(book.lambs()) == 1  # type: ignore[union-attr, arg-type]
    assert len(book.cases_of(book.lambs()[0].id)) == 2  # type: ignore[union-attr, arg-type, index]


def test_what_is_known_of_a_lamb_is_offered(night: Night) -> None:
    """In a second walk the age is reckoned from the birth, and a weight of today offered; Enter takes it.
    A temperature is never offered."""
    session = night.open(*FIRST_MILK)
    night.passes(130)
    typed(session, "l", "f", "6")
    assert not session.page().offers
    typed(session, "39.3", "1", "5")

    assert "Kept: 4.2 hours old, born about 00:10. Enter takes it." in texts(session)
    typed(session, "")
    [age] = [move for move in session.walk.moves if isinstance(move, Answer) and move.finding == "age"]
    assert age.value == pytest.approx(4.17, abs=0.01)
    assert session.told == "Taken as kept: 4.2 hours old, born about 00:10."
    typed(session, "6")
    assert "Kept: 4.2 kg, weighed 02:10. Enter takes it." in texts(session)


def test_an_exact_birth_outranks_a_reckoned_one(night: Night) -> None:
    """A time of birth that was given stays; a later vague age does not move it."""
    session = night.open("5", "36.2", "born 23:30")
    lamb = session.desk.keeping.lamb
    assert lamb is not None
    assert (lamb.born, lamb.born_guessed) == (START.replace(day=10, hour=23, minute=30), False)

    typed(session, "l", "f", "5", "36.0", "5 h")

    assert session.desk.keeping.lamb.born == lamb.born  # type: ignore[union-attr]


def test_a_changed_age_changes_the_card(night: Night) -> None:
    """An age that was a slip, once mended, is mended on the card too."""
    session = night.open("5", "36.2", "3h", "a", "3", "9h")

    lamb = night.open().desk.keeping.book.lambs()[0]  # type: ignore[union-attr, index]
    assert session.walk.moves[2] == Answer("age", 9.0)
    assert lamb.born == START - timedelta(hours=9)


def test_a_closed_lamb_leaves_the_list_and_keeps_its_story(night: Night) -> None:
    """Two presses end the care; the lamb is no longer listed, and nothing of it is lost."""
    session = night.open(*COLD, "l", "x")
    assert "once more" in session.told
    session.take("x")

    assert session.page().kind == "lambs"
    book = night.open().desk.keeping.book
    assert book.count_open() == 0  # type: ignore[union-attr]
    assert len(book.cases_of(book.lambs()[0].id)[0].moves) == 4  # type: ignore[union-attr, index]


def test_one_press_of_x_does_no_harm(night: Night) -> None:
    """Any other key between forgets it."""
    session = night.open(*COLD, "l", "x", "u", "x")

    assert "once more" in session.told
    assert night.open().desk.keeping.book.count_open() == 1  # type: ignore[union-attr]


def without(guide: Guide, finding: str, choice: str) -> Guide:
    """A later edition of the guide in which a choice of a finding has another name."""
    old = guide.findings[finding]
    choices = {("was-" + name if name == choice else name): text for name, text in old.choices.items()}
    nodes = dict(guide.nodes)
    for name, node in guide.nodes.items():
        if isinstance(node, Ask) and node.finding == finding:
            branches = tuple(
                replace(each, is_=tuple("was-" + it if it == choice else it for it in each.is_))
                for each in node.branches
            )
            nodes[name] = replace(node, branches=branches)
    front = replace(guide.front, edition="2027.1")
    return replace(
        guide, findings={**guide.findings, finding: replace(old, choices=choices)}, nodes=nodes, front=front
    )


def test_a_changed_guidance_is_told(night: Night) -> None:
    """If the guidance has changed, the answers that fit are replayed and those that don't are named."""
    night.open("6", "39.3", "1", "5", "2h")
    later = without(night.guide, "reason", "no-first-milk")

    session = night.open("2", guide=later)

    assert len(session.walk.moves) == 3
    assert f"(edition {night.guide.front.edition}, now 2027.1)" in session.told
    assert "No longer used: reason: no-first-milk; Age: 2 hours" in session.told
    assert "Next: What is the trouble?" in session.told


def test_the_same_answers_in_a_new_edition(night: Night) -> None:
    """Where every answer still fits, that is told too."""
    night.open("6", "39.3")
    later = replace(night.guide, front=replace(night.guide.front, edition="2027.1"))

    session = night.open("2", guide=later)

    assert "Your answers still fit" in session.told
    assert len(session.walk.moves) == 2


def test_an_act_that_is_gone_is_told(night: Night) -> None:
    """A walk with an act that the present guidance lacks is taken up as far as it goes."""
    session = night.open(*COLD)
    case, book = session.desk.keeping.case, session.desk.keeping.book
    assert case is not None
    assert book is not None
    gone = Done("an-act-of-before", START)
    kept = book.keep(replace(case, moves=(*case.moves[:-1], gone)), START)
    assert isinstance(kept, Case)

    again = night.open("2")

    assert "done: an-act-of-before" in again.told
    assert len(again.walk.moves) == 3


def test_old_answers_are_told_to_be_old(night: Night) -> None:
    """Taken up again after a while, the guide says from when the answers are."""
    night.open("6", "39.3")
    night.passes(25)

    assert night.open("2").told == "You left it at 02:10. The answers are from then."


def test_a_walk_in_the_middle_of_a_change_is_not_lost(night: Night) -> None:
    """Killed while an earlier answer is being changed, the walk is as it was before."""
    session = night.open(*COLD, "a", "2")
    assert session.changing

    assert len(night.open("2").walk.moves) == 4


LINES = st.lists(
    st.sampled_from(["1", "2", "3", "5", "6", "n", "d", "b", "a", "v", "l", "o", "f", "g", "k", "c", "x", "?", "w", "u", "",
                     "39.2", "36.2", "3h", "4.2kg", "at 1:30", "60", "x y", "h", "q", "-", "[/]", "\x1b[2J"]),
    max_size=40,
)  # fmt: skip


@given(LINES)
@settings(max_examples=60, deadline=None)
def test_no_keys_lose_anything_or_crash(guide: Guide, lines: list[str]) -> None:
    """Whatever is typed anywhere, no page fails, and what is in hand is what is on the disk."""
    from pathlib import Path
    from tempfile import TemporaryDirectory

    with TemporaryDirectory() as folder:
        night = Night(guide, Path(folder) / "casebook.sqlite")
        session = night.open()
        for line in lines:
            session.take(line)
            assert session.page().blocks or session.page().choices
            case = session.desk.keeping.case
            if case is not None:
                kept = night.books[0].case(case.id)
                assert kept.moves == session.whole.moves  # type: ignore[union-attr]
        for book in night.books:
            book.close()


def test_a_session_without_a_casebook_walks_all_the_same(guide: Guide) -> None:
    """With nothing to keep, every page and every note still works."""
    session = typed(
        Session(Walk(guide)),
        *COLD,
        "l",
        "1",
        "38.2",
        "b",
        "v",
        "1",
        "Dr Example",
        "Bring it in",
        "b",
        "o",
        "1",
    )

    assert session.walk.moves == ()
    assert UNSURE not in session.walk.state.known.values()


def test_two_lambs_of_one_minute_are_told_apart(night: Night) -> None:
    """Until somebody names them, lambs begun in the same minute are numbered."""
    night.open("6")
    night.open("1", "6")

    book = night.open().desk.keeping.book
    lambs = book.lambs() if book else ()
    assert not isinstance(lambs, NotKept)
    assert {lamb.name for lamb in lambs} == {"Lamb of 02:10", "Lamb of 02:10 (2)"}


def test_the_age_in_view_is_that_of_now(night: Night) -> None:
    """A walk taken up hours later shows how old the lamb is now, not how old it was."""
    night.open(*COLD)
    night.passes(240)

    assert night.open("2").page().lamb == "Lamb of 02:10, 7 hours old, 36.2 °C"


def test_a_birth_mended_on_the_card_stays_mended(night: Night) -> None:
    """What was corrected by hand is not put back by the next answer of the walk it came from."""
    session = night.open("5", "36.2", "born 23:30", "l", "c", "2", "born 22:00", "", "b")
    typed(session, "d")

    lamb = session.desk.keeping.lamb
    assert lamb is not None
    assert lamb.born == START.replace(day=10, hour=22, minute=0)


def test_opening_a_lamb_writes_nothing(night: Night) -> None:
    """A walk that no longer fits the guidance is taken up shorter; the file keeps it whole until an answer comes."""
    night.open(*FIRST_MILK)
    later = without(night.guide, "reason", "no-first-milk")
    session = night.open("2", guide=later)
    assert len(session.walk.moves) == 3

    assert len(night.open().desk.keeping.book.looks(9)) == 1  # type: ignore[union-attr, arg-type]
    kept = night.open("2").walk
    assert len(kept.moves) == len(FIRST_MILK)


def test_a_look_that_could_not_be_kept_rings_all_the_same(guide: Guide) -> None:
    """Without a casebook the walk in hand rings while the guide is open, and so does one that was set down; a
    look that was called done does not."""
    moment = [START]

    def steady() -> float:
        return moment[0].timestamp()

    session = Session(Walk(guide), clock=lambda: Now(moment[0], UTC), house=House(alarm=Alarm(steady)))
    typed(session, *COLD)
    moment[0] += timedelta(minutes=20)
    assert session.watch()
    typed(session, "o", "1")
    assert "Look again now" in session.page().alarm
    typed(session, *COLD)
    moment[0] += timedelta(minutes=20)
    session.watch()
    typed(session, "l", "k")
    assert session.page().alarm.count("Look again now") == 1


def test_lambs_that_can_not_be_kept_stay_within_reach(guide: Guide) -> None:
    """Without a casebook several lambs of a night are listed while the guide is open, and each is gone on with."""
    session = typed(Session(Walk(guide), clock=lambda: Now(START, UTC)), *COLD, "o", "1", "6", "39.3", "o")

    assert "There is no casebook. These stay only while the guide is open." in texts(session)
    assert any(text.startswith("Lamb of 02:10: look at") for text in texts(session))
    typed(session, "2")
    assert len(session.walk.moves) == len(COLD)
    typed(session, "o", "2")
    assert len(session.walk.moves) == 2


def test_a_number_means_what_it_meant_when_it_was_shown(night: Night) -> None:
    """A look that comes due while the list is read moves its lamb up, but not under the finger."""
    night.open("6")
    session = night.open("1", *COLD, "o")
    shown = listed(session)
    night.passes(30)
    place = next(number for number, text in shown.items() if "left at" in text)

    typed(session, place)

    assert len(session.walk.moves) == 1


def test_a_lamb_that_grew_older_meanwhile_is_not_warmed_by_its_old_age(night: Night) -> None:
    """Cold at four hours it is dried and warmed. Gone on with three hours later it is past five hours old: no
    heat before glucose (Eales, Small and Gilmour 1982, Veterinary Record 110: a fasted lamb that is warmed
    first may fit and die)."""
    session = night.open("6", "36.2", "4h", "d")
    assert session.walk.state.times == {"warm-by-thermometer": 1}
    night.passes(180)

    again = night.open("2")

    assert "It is 7 hours old by now." in again.told
    assert "glucose by needle" in texts(again)[0]
    assert again.walk.state.urgency == again.walk.guide.top


def test_a_guide_left_open_grows_with_the_lamb(night: Night) -> None:
    """The same holds with the guide left open: a key pressed hours later is not taken for the page it was meant
    for, and the page of now is shown."""
    session = night.open("6", "36.2", "4h", "d")
    night.passes(180)

    session.take("36.4")

    assert "It is 7 hours old by now." in session.told
    assert "glucose by needle" in texts(session)[0]
    other = night.open("1", "6", "36.2", "4h")
    night.passes(120)
    other.watch()
    assert "glucose by needle" in texts(other)[0]


def test_an_age_that_changes_nothing_is_told_to_nobody(night: Night) -> None:
    """Where the same page is right at the age of now, it stays, and the answers do."""
    session = night.open("6", "39.3", "1", "5", "2h")
    before = session.page().blocks
    night.passes(40)
    session.watch()

    assert session.told == ""
    assert session.page().blocks == before
    assert session.walk.facts.measured("age") == 2.67
