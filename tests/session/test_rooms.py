"""The pages beside the walk: notes, the card, the holding and the vet."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

from tests.session.conftest import START, Night, texts, typed
from triage.guide.model import Guide
from triage.holding.file import read_holding
from triage.session import Session
from triage.session.desk import House
from triage.walk import Walk

COLD = ("5", "36.2", "3h", "d")


def seen(night: Night) -> list[tuple[str, dict[str, object]]]:
    """What is written down of the only lamb, as another process reads it."""
    book = night.open().desk.keeping.book
    lamb = book.lambs()[0]  # type: ignore[union-attr, index]
    return [(each.kind, dict(each.parts)) for each in book.observations_of(lamb.id)]  # type: ignore[union-attr]


def test_each_kind_has_one_key_and_a_few_short_questions(night: Night) -> None:
    """From the lamb's page a digit opens each kind; what is typed is kept as it was typed."""
    session = night.open(*COLD, "l")
    for lines in (
        ("1", "38.2"),
        ("2", "4.2 kg"),
        ("3", "3", "120 ml", "2"),
        ("4", "3", "1"),
        ("5", "4"),
        ("6", "An invented drug [/]", "1 ml", "Dr Example"),
        ("7", "Moved to the pen by the door"),
    ):
        typed(session, *lines)
        assert session.told.startswith("Written down: ")

    assert seen(night) == [
        ("temperature", {"temperature": 38.2}),
        ("weight", {"weight": 4.2}),
        ("feed", {"what": "milk", "amount": 120.0, "how": "some"}),
        ("passed", {"dung": "watery", "urine": "seen"}),
        ("manner", {"manner": "dull"}),
        ("treatment", {"what": "An invented drug [/]", "amount": "1 ml", "ordered": "Dr Example"}),
        ("note", {"note": "Moved to the pen by the door"}),
    ]


def test_a_note_may_be_of_an_earlier_time(night: Night) -> None:
    """The time is now unless it is typed, with the value or by itself; a time to come is refused."""
    session = night.open(*COLD, "l", "1", "38.2 at 1:30", "3", "at 23:50 yesterday", "3", "60", "1")
    typed(session, "1", "38.3 at 2:30")
    assert "still to come" in session.told

    book = night.open().desk.keeping.book
    at = [each.at for each in book.observations_of(book.lambs()[0].id)]  # type: ignore[union-attr, index]
    assert at == [START - timedelta(hours=2, minutes=20), START - timedelta(minutes=40)]


def test_an_unusual_value_is_asked_again_once(night: Night) -> None:
    """A weight that few lambs have is asked again; typed once more it is kept."""
    session = night.open("5", "36.2", "3h", "l", "2", "12")
    assert "unusual" in session.told
    session.take("12")

    assert seen(night) == [("weight", {"weight": 12.0})]


def test_going_back_in_a_form_goes_one_question(night: Night) -> None:
    """b drops the last part of an observation, and from the first question leaves the form."""
    session = night.open(*COLD, "l", "3", "3", "b")
    assert texts(session)[0] == "What was it offered?"
    session.take("b")

    assert session.page().kind == "lamb"


def test_the_card_is_kept(night: Night) -> None:
    """Name, birth, sex and birth type are kept at once, and a name may hold anything."""
    typed(night.open(*COLD, "l", "c", "1"), "Blue [/] 7", "2", "born 22:00", "3", "1", "4", "3")

    lamb = night.open().desk.keeping.book.lambs()[0]  # type: ignore[union-attr, index]
    assert (lamb.name, lamb.sex, lamb.birth_type) == ("Blue [/] 7", "ewe", "triplet")
    assert (lamb.born, lamb.born_guessed) == (START.replace(day=10, hour=22, minute=0), False)


def test_words_in_a_box_are_never_commands(night: Night) -> None:
    """On the full screen a lamb may be called b, v or q."""
    session = night.open(*COLD, "l", "c", "1")
    session.take("q", words=True)

    assert not session.left
    assert session.desk.keeping.lamb.name == "q"  # type: ignore[union-attr]


def test_the_vets_words_are_kept(night: Night) -> None:
    """From the vet's page the answer is written down, by whom and when, and stands in the lamb's story."""
    session = night.open(*COLD, "v", "1", "Dr Example", "Tube 50 ml, then bring it in")

    assert seen(night) == [("vet-said", {"who": "Dr Example", "said": "Tube 50 ml, then bring it in"})]
    assert "02:10  The vet said: Dr Example, Tube 50 ml, then bring it in" in texts(typed(session, "b", "l"))


def test_the_vets_page_is_one_key_from_every_page(night: Night) -> None:
    """v opens it from the walk, its side pages, the list, the lamb, its card and a form, and b goes back."""
    session = night.open(*COLD)
    for keys in ((), ("?",), ("b", "a"), ("b", "l"), ("c",), ("b", "1"), ("b", "o")):
        typed(session, *keys)
        before = session.page()
        assert texts(typed(session, "v"))[0] == "Phone the vet"
        session.take("b")
        assert session.page() == before


def test_the_vets_page_is_saved_to_print(night: Night) -> None:
    """One key writes the page and the text beside the casebook, and says where."""
    session = night.open(*COLD, "v", "2")

    page, text = (next(night.path.parent.glob(f"for-the-vet-*.{end}")) for end in ("html", "txt"))
    assert str(page.with_suffix("")) in session.told
    assert "36.2 °C at 02:10" in page.read_text(encoding="utf-8")
    assert "36.2 °C at 02:10" in text.read_text(encoding="utf-8")


def test_the_holding_is_asked_once_and_never_in_an_emergency(guide: Guide, tmp_path: Path) -> None:
    """Leaving a finished or unfinished walk for the first time asks; after a call for the vet it does not."""
    place = tmp_path / "holding.yaml"

    def left(*lines: str, ask: bool = True) -> Session:
        return typed(Session(Walk(guide), house=House(holding_file=place, ask=ask)), *lines)

    assert left("q").left
    assert left("5", "q", "q").left
    session = left("6", "q", "q")
    assert not session.left
    assert texts(session)[0] == "What is your vet's number?"
    typed(session, "01632 960111", "")
    assert read_holding(place).holding.vet == "01632 960111"
    assert session.vet == "01632 960111"
    session.take("b")
    assert session.left
    assert left("6", "q", "q", ask=False).left


def test_the_number_for_the_hour_stands_first(night: Night) -> None:
    """At night the number out of hours is in view first, by day the other one; both are there."""
    from dataclasses import replace

    night.holding = replace(night.holding, vet="01632 960111", out_of_hours="01632 960222")
    assert night.open().vet == "01632 960222 (by day 01632 960111)"
    night.passes(60 * 8)
    assert night.open().vet == "01632 960111 (at night 01632 960222)"


def test_who_is_vet_taught_is_named_where_it_matters(night: Night) -> None:
    """A page with a step for a vet-taught hand names who that is here; other pages do not."""
    from dataclasses import replace

    night.holding = replace(night.holding, taught={"Ann": "glucose by needle"})
    line = "Vet-taught here: Ann: glucose by needle."

    needle = night.open("6", "35.8", "14h", "2", "6", "4.2 kg")
    assert any(tag == "vet-injection" for step in needle.walk.node.do for tag in step.tag)  # type: ignore[union-attr]
    assert line in texts(needle)
    assert line not in texts(night.open("1", *COLD[:3]))


def test_a_page_recalls_the_vet_and_the_last_feed(night: Night) -> None:
    """What the vet said stands before what a page says, and on a page with a feed the last one is told."""
    session = night.open("6", "39.3", "1", "5", "2h", "6", "4.2kg", "l", "3", "1", "50", "1", "b")
    assert any("50 ml" in text and "Count it in." in text for text in texts(session))
    typed(session, "v", "1", "Dr Example", "No milk till 6", "b")

    assert any("No milk till 6" in text and "It comes before this page." in text for text in texts(session))
    night.passes(60 * 30)
    assert not any("Count it in." in text or "before this page" in text for text in texts(session))


def test_the_sickest_lamb_rings_and_stands_first(night: Night) -> None:
    """A lamb for which the vet is called now is looked at again too, and stands before one that can wait."""
    night.open("1", "n")
    night.open("1", "6", "39.3")
    sick = night.open("1", "6", "34.0", "2h")
    assert sick.walk.state.urgency == sick.walk.guide.top

    lines = [text for text in texts(night.open()) if text.startswith("Lamb of")]
    assert all("Phone the vet now" in line for line in lines[:2])


def test_the_vet_hears_of_the_danger_that_is_over(night: Night) -> None:
    """After a fresh look that finds the lamb well, the earlier danger sign is still told, with its time."""
    session = night.open("5", "36.2", "3h", "d", "38.2")
    night.passes(40)
    typed(session, "l", "f", "6", "39.2", "v")

    said = " ".join(texts(session))
    assert "Limp, or can't stand" in said
    assert "normal: danger sign" not in said
