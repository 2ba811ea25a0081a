"""Asking an observation part by part: what is taken, what is asked again, and at which time it was so."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.observations.conftest import LONDON, NIGHT, asked, kept, note, utc
from triage.clock import Now
from triage.entry import AnswerReader, AskAgain
from triage.guide.model import Guide
from triage.observations import KINDS, Kept, Noting
from triage.observations.noting import LONGEST


@pytest.mark.parametrize(
    ("kind", "lines", "parts"),
    [
        ("temperature", ["39,2"], {"temperature": 39.2}),
        ("temperature", ["102.5F"], {"temperature": 39.1667}),
        ("weight", ["9 lb 4 oz"], {"weight": 4.1957}),
        ("feed", ["3", "120 ml", "1"], {"what": "milk", "amount": 120.0, "how": "all"}),
        ("feed", ["first milk", "0", "refused"], {"what": "first-milk", "amount": 0.0, "how": "refused"}),
        ("passed", ["3", "2"], {"dung": "watery", "urine": "not-seen"}),
        ("passed", ["5", "1"], {"dung": "none", "urine": "seen"}),
        ("manner", ["limp"], {"manner": "limp"}),
        ("treatment", ["A drug", "2 ml", "Dr X"], {"what": "A drug", "amount": "2 ml", "ordered": "Dr X"}),
        ("note", ["Moved indoors"], {"note": "Moved indoors"}),
        ("vet-said", ["Dr X", "Wait"], {"who": "Dr X", "said": "Wait"}),
    ],
)
def test_each_kind_is_kept_in_parts(guide: Guide, kind: str, lines: list[str], parts: object) -> None:
    """Each kind is asked part by part, and kept with now as its time."""
    came = kept(guide, kind, *lines)

    assert (came.kind, came.parts, came.at) == (kind, parts, NIGHT.moment)


@pytest.mark.parametrize("kind", KINDS)
def test_a_form_asks_its_first_part_first(guide: Guide, kind: str) -> None:
    """The page of a form is titled with its kind, asks one part, and says how to give another time."""
    part = KINDS[kind].parts[0].under(guide)
    page = Noting(KINDS[kind], guide, NIGHT).question("metric")

    assert (page.kind, page.title, page.timed) == ("form", KINDS[kind].label, True)
    assert [block.text for block in page.blocks] == [
        part.ask,
        "Now. For another time, type it like: at 1:30.",
    ]
    assert [choice.key for choice in page.choices] == [str(n + 1) for n in range(len(part.choices))]
    assert (page.words, page.measure) == (part.words, part.measure)


def test_the_page_says_which_time_is_set(guide: Guide) -> None:
    """Once a time is given, the question says so in place of now."""
    came = note(guide, "feed", "at 1:30")

    assert isinstance(came, Noting)
    assert came.question("metric").blocks[1].text == "At 01:30."


@pytest.mark.parametrize(
    ("typed", "at", "told"),
    [
        ("39.2 at 1:30", utc(2026, 2, 11, 1, 30), "At 01:30."),
        ("39.2 at 23:30", utc(2026, 2, 10, 23, 30), "At 23:30 yesterday."),
        ("39.2 at 23:30 yesterday", utc(2026, 2, 10, 23, 30), "At 23:30 yesterday."),
        ("39.2 yesterday at 23:30", utc(2026, 2, 10, 23, 30), "At 23:30 yesterday."),
        ("39.2 AT 1.30 AM", utc(2026, 2, 11, 1, 30), "At 01:30."),
        ("39.2 at 2026-02-01 9:00", utc(2026, 2, 1, 9), "At 09:00 on 01 Feb."),
    ],
)
def test_a_time_stands_behind_a_value(guide: Guide, typed: str, at: datetime, told: str) -> None:
    """A measurement may end in the time at which it was taken; what was understood is told."""
    came = kept(guide, "temperature", typed)

    assert (came.parts, came.at) == ({"temperature": 39.2}, at)
    assert came.told == told


@pytest.mark.parametrize("kind", KINDS)
def test_a_time_by_itself_asks_the_part_again(guide: Guide, kind: str) -> None:
    """In every kind a time alone sets when it was, says so, and asks the same part."""
    came = note(guide, kind, "at 1:30")

    assert isinstance(came, Noting)
    assert (came.parts, came.at, came.told) == ({}, utc(2026, 2, 11, 1, 30), "At 01:30.")


def test_a_time_holds_for_all_parts_and_the_last_one_counts(guide: Guide) -> None:
    """A time given at one part is the time of the whole; another one later takes its place."""
    first = kept(guide, "feed", "3 at 1:30", "120", "1")
    second = kept(guide, "feed", "3 at 1:30", "120", "at 0:45", "1")

    assert (first.at, first.told) == (utc(2026, 2, 11, 1, 30), "At 01:30.")
    assert second.at == utc(2026, 2, 11, 0, 45)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("39.2 at 2:11", "That time is still to come today. For yesterday, add the word."),
        ("39.2 at 2:11 today", "That is still to come: it is 02:10 on 2026-02-11 now. Type when it was."),
        ("39.2 at 2026-01-01 12:00", "That is more than 30 days ago."),
        ("39.2 at 2024-06-01 12:00", "That is more than 30 days ago."),
        ("39.2 at 25:00", "'at 25:00' is not a time. Type it like at 1:30, or at 23:30 yesterday."),
        ("39.2 at 5", "'at 5' is not a time."),
        ("at 2:11", "That time is still to come today."),
    ],
)
def test_a_time_that_can_not_be_is_refused(guide: Guide, typed: str, why: str) -> None:
    """A time to come, too long ago, or none at all, is refused in a sentence, and nothing is taken."""
    assert asked(guide, "temperature", typed).startswith(why)


def test_the_clock_goes_on_while_a_form_is_open(guide: Guide) -> None:
    """A form opened at 02:10 takes 02:15 at 02:20, and without a time it keeps the time of its end."""
    begun = Noting(KINDS["temperature"], guide, NIGHT)
    later = AnswerReader(guide, "metric", Now(NIGHT.moment + timedelta(minutes=10), LONDON))

    timed, untimed = begun.take("39.2 at 2:15", later), begun.take("39.2", later)

    assert isinstance(timed, Kept)
    assert isinstance(untimed, Kept)
    assert (timed.at, untimed.at) == (utc(2026, 2, 11, 2, 15), utc(2026, 2, 11, 2, 20))


@pytest.mark.parametrize(
    ("typed", "at", "told"),
    [
        (
            "at 1:05",
            utc(2026, 10, 25, 1, 5),
            "At 01:05 GMT. The clock showed that time twice. For the other one type: at 2026-10-25 01:05 BST.",
        ),
        (
            "at 2026-10-25 01:05 BST",
            utc(2026, 10, 25, 0, 5),
            "At 01:05 BST. The clock showed that time twice. For the other one type: at 2026-10-25 01:05 GMT.",
        ),
        ("at 1:30", utc(2026, 10, 25, 0, 30), "At 01:30 BST."),
    ],
)
@pytest.mark.parametrize("kind", ["temperature", "note"])
def test_an_hour_shown_twice_is_told_apart(
    guide: Guide, kind: str, typed: str, at: datetime, told: str
) -> None:
    """On the night the clock goes back the last such time is taken, and the words for the other one work."""
    came = note(guide, kind, typed, now=Now(utc(2026, 10, 25, 1, 10), LONDON))

    assert isinstance(came, Noting)
    assert (came.at, came.told) == (at, told)


@pytest.mark.parametrize(
    "words",
    [
        "at 5 lambs now",
        "at 1:30 it drank",
        "at 1:30 again",
        "at the gate",
        "fed at 1:30",
        "It was 39.2 at 23:30 yesterday",
    ],
)
def test_a_sentence_with_a_time_in_it_stays_whole(guide: Guide, words: str) -> None:
    """In words only a time and nothing else is a time; a sentence is never refused or cut for one."""
    came = kept(guide, "note", words)

    assert (came.parts, came.at) == ({"note": words}, NIGHT.moment)


def test_a_time_before_words(guide: Guide) -> None:
    """A note takes its time first, alone, and then its words."""
    came = kept(guide, "note", "at 1:30", "Moved indoors")

    assert (came.parts, came.at) == ({"note": "Moved indoors"}, utc(2026, 2, 11, 1, 30))


ANY = st.text(st.characters(), min_size=1, max_size=200).filter(lambda text: text.strip() != "")


@given(ANY.filter(lambda text: not text.strip().lower().startswith(("at", "yesterday", "today"))))
def test_words_are_kept_whole(guide: Guide, words: str) -> None:
    """Whatever is in them, words are kept as they were typed."""
    assert kept(guide, "note", words).parts == {"note": words}


@pytest.mark.parametrize("words", ["x" * 10_000, "[red]\x1b[2J\u202e{0}{}%s", " n ", "{note}"])
def test_long_and_odd_words_are_kept_whole(guide: Guide, words: str) -> None:
    """Ten thousand signs, markup, control codes and braces are words like others."""
    assert kept(guide, "note", words).parts == {"note": words}


@given(st.sampled_from(sorted(KINDS)), st.lists(st.text(max_size=30), max_size=6))
def test_nothing_typed_breaks_a_form(guide: Guide, kind: str, lines: list[str]) -> None:
    """Whatever is typed, each line is taken, or told in a sentence why not."""
    came: Noting | Kept | AskAgain = Noting(KINDS[kind], guide, NIGHT)
    for line in lines:
        if isinstance(came, Noting):
            parts = came.parts
            next_ = came.take(line, AnswerReader(guide, "us", NIGHT))
            if isinstance(next_, AskAgain):
                assert next_.why.endswith((".", "?"))
                continue
            assert len(next_.parts) - len(parts) in (0, 1)
            came = next_


def test_nothing_and_too_much_are_asked_again(guide: Guide) -> None:
    """Words that are not there, or more than a book, are asked for again."""
    assert asked(guide, "note", "  ") == "Nothing was typed. Type a few words, or go back."
    assert asked(guide, "note", "x" * (LONGEST + 1)) == "That is too long to keep: at most 20,000 signs."


@pytest.mark.parametrize(
    ("kind", "typed", "why"),
    [
        ("temperature", "n", "Measure it, or go back and write nothing."),
        ("manner", "not sure", "Choose what fits best, or go back and write nothing."),
        ("manner", "9", "'9' is not one of the answers. Type 1 to 7."),
        ("manner", "", "Nothing was chosen. Type 1 to 7."),
        ("temperature", "392", "392 can't be right: it must be from 25 °C to 43 °C. Did you mean 39.2?"),
        ("weight", "4 litres", "That is a volume. Here it takes a mass, like 4.2 kg."),
    ],
)
def test_what_can_not_be_is_told(guide: Guide, kind: str, typed: str, why: str) -> None:
    """A wrong key, an impossible value, or no opinion is answered with what would do."""
    assert asked(guide, kind, typed) == why


def test_the_unusual_is_asked_once_more(guide: Guide) -> None:
    """An unusual weight is doubted; the same again keeps it, and another one is judged anew."""
    doubted = note(guide, "weight", "12", age=3.0)

    assert isinstance(doubted, Noting)
    assert doubted.told.startswith("12 kg is unusual; most such lambs are 1.5 kg to 7.1 kg.")
    assert kept(guide, "weight", "12", "12", age=3.0).parts == {"weight": 12.0}
    other = note(guide, "weight", "12", "13", age=3.0)
    assert isinstance(other, Noting)
    assert other.told.startswith("13 kg is unusual")


def test_the_age_decides_what_is_unusual(guide: Guide) -> None:
    """Twelve kilos are usual at a month, and without an age nothing is too heavy."""
    assert kept(guide, "weight", "12", age=24.0 * 30).parts == {"weight": 12.0}
    assert kept(guide, "weight", "12").parts == {"weight": 12.0}


def test_a_doubted_value_keeps_its_time(guide: Guide) -> None:
    """The same value again keeps it, with the time that stood behind the first one."""
    came = kept(guide, "weight", "12 at 1:30", "12", age=3.0)

    assert (came.parts, came.at, came.told) == ({"weight": 12.0}, utc(2026, 2, 11, 1, 30), "At 01:30.")


def test_what_was_taken_for_granted_is_told(guide: Guide) -> None:
    """A bare number that can only be the other unit is told as it was understood, with its time."""
    came = note(guide, "feed", "3", "4 at 1:30", system="us")

    assert isinstance(came, Noting)
    assert came.told == "At 01:30. Taken as 4 oz."


def test_a_volume_in_ounces(guide: Guide) -> None:
    """With US units a bare amount is in fluid ounces."""
    came = note(guide, "feed", "3", "4", system="us")

    assert isinstance(came, Noting)
    assert came.parts["amount"] == pytest.approx(118.3, abs=0.1)


def test_a_step_back_is_the_value_before(guide: Guide) -> None:
    """Taking an answer makes a new value, so the one before is still there to go back to."""
    first = Noting(KINDS["feed"], guide, NIGHT)

    second = first.take("3", AnswerReader(guide, "metric", NIGHT))

    assert (first.parts, second.parts) == ({}, {"what": "milk"})  # type: ignore[union-attr]


def test_choices_have_the_guides_numbers_in_them(guide: Guide) -> None:
    """A choice that names a number of the guide is shown with the number."""
    dung = replace(guide.findings["dung"], choices={"loose": "Loose since {missed-feeds} feeds"})
    changed = replace(guide, findings={**guide.findings, "dung": dung})

    page = Noting(KINDS["passed"], changed, NIGHT).question("metric")

    assert [choice.text for choice in page.choices] == ["Loose since 2 feeds", "None seen"]


def test_a_guide_without_the_finding_takes_words(small: Guide) -> None:
    """Under a guide that knows no dung it is told in words, and still kept."""
    assert kept(small, "passed", "Yellow", "1").parts == {"dung": "Yellow", "urine": "seen"}
