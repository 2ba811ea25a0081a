"""What is said fits into 150 words, and what must be said is never what gives way."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.handover.made import AT, HOLDING, HOSTILE, NIGHT, NOW, WORDY, full, lamb, noted, walks
from triage.casebook.rows import Observation, Part
from triage.check.screens import MOST_SCREENS
from triage.facts import UNSURE
from triage.guide.model import Ask, Guide
from triage.handover import Handover, Situation, handover_of
from triage.handover.speaking import words_in
from triage.handover.wording import LONGEST_ANSWER, WORD, cut
from triage.observations import KINDS
from triage.page.words import Reader
from triage.walk import Walk

MOST_WORDS = 150

FED = tuple(KINDS["feed"].parts[0].choices)


def line(handover: Handover, label: str) -> str:
    """Return the spoken line that begins so, or an empty text."""
    return next((each.text for each in handover.spoken if each.text.startswith(label)), "")


@pytest.mark.parametrize("text", ["", HOSTILE, WORDY])
def test_a_full_night_fits(guide: Guide, text: str) -> None:
    """With every kind of note, and names and words of any length, no walk takes more than 150 words."""
    for walk in walks(guide, 60 if text else 1000, 1):
        assert words_in(handover_of(full(walk, text)).spoken) <= MOST_WORDS


def test_thousands_of_walks_fit_with_nothing_left_out(guide: Guide) -> None:
    """A walk alone, however it goes, is told whole: nothing is counted that could be said."""
    for walk in walks(guide, 6000, 2):
        told = handover_of(Situation(walk, NOW, lamb=lamb(), holding=HOLDING)).spoken
        assert words_in(told) <= MOST_WORDS
        assert not any("below" in each.text for each in told)


@pytest.mark.parametrize("text", ["", HOSTILE, WORDY])
def test_what_was_not_checked_and_why_now_are_always_said_whole(guide: Guide, text: str) -> None:
    """However little room there is, each thing not checked is said by name, and so is the reason."""
    for walk in walks(guide, 40 if text else 300, 3):
        told = handover_of(full(walk, text))
        said = line(told, "Not checked: ").removeprefix("Not checked: ").rstrip(".").split(", ")
        assert [each.text.lower() for each in told.not_checked] == [each.lower() for each in said]
        assert "Why now: " in told.spoken[0].text
        urgency = walk.state.urgency
        assert not urgency or guide.urgency(urgency).say[1:] in told.spoken[0].text
        assert told.spoken[-1].text.endswith("?")


def test_what_went_in_is_always_said(guide: Guide) -> None:
    """Four kinds of feeds, each given many times, and three treatments are all named on every walk."""
    feeds = [
        noted("feed", -60 * at - 5, what=what, amount=60.0 + at, how="all")
        for at, what in enumerate(FED[:4])
        for _ in range(20)
    ]
    treated = [
        noted("treatment", -50 * at, what=f"Made-up{at} by needle", amount=f"{at + 1} ml", ordered="Dr Field")
        for at in range(3)
    ]
    for walk in walks(guide, 400, 4):
        told = handover_of(Situation(walk, NOW, "metric", lamb(), (*feeds, *treated), (), HOLDING))
        said = line(told, "Given: ")
        assert "below" not in said
        assert all(KINDS["feed"].parts[0].choices[what][1:] in said for what in FED[:4])
        assert all(f"Made-up{at}" in said and f"{at + 1} ml" in said for at in range(3))
        assert said.count("20 times") == 4


def test_no_walk_at_all_can_take_more(guide: Guide) -> None:
    """At its shortest, with as many findings as a walk can ask not checked at once, it still fits.

    A walk has 12 screens at most, the end among them (`triage check`); a vet asks of a few findings more.
    The longest labels of all are taken, whether or not one walk can meet them.
    """
    reader = Reader(guide, Walk(guide).facts)
    asked = {node.finding for node in guide.nodes.values() if isinstance(node, Ask)}
    labels = [_count(guide.findings[name].label) for name in asked | set(guide.front.vet_asks)]
    on_a_walk = sorted((_count(guide.findings[name].label) for name in asked), reverse=True)[
        : MOST_SCREENS - 1
    ]
    on_a_walk += [_count(guide.findings[name].label) for name in guide.front.vet_asks]
    said = [_count(reader.choice(each, name)) for each in guide.findings.values() for name in each.choices]
    said += [_count(reader.fill(node.title)) for node in guide.nodes.values() if not isinstance(node, Ask)]
    time = _count("at 01:30 CEST on 22 Nov")
    who = _count("This is a b c at a b c.")
    which = _count("I have a lamb: a b c, a ewe lamb, about 9.8 hours old, triplet, 9 lb 4 oz.")
    why = _count("Why now:") + max(labels) + time + max(said)
    says = _count("The guide says:") + max(_count(each.say) for each in guide.front.urgencies)
    counted = _count("Found: 9 things, below. Noted: 2 things, below. Given: 9 things, below.")
    counted += _count(
        "Looked at, normal: 9 things, below. Done: 9 things, below. Normal again: 9 things, below."
    )
    missing = _count("Not checked:") + sum(on_a_walk)
    asks = max(_count(each.asks) for each in guide.front.urgencies)

    assert who + which + why + says + counted + missing + asks <= MOST_WORDS


def _count(text: str) -> int:
    return len(text.split())


def _kinds() -> st.SearchStrategy[Observation]:
    def parts(kind: str) -> st.SearchStrategy[dict[str, Part]]:
        asked = KINDS[kind].parts
        return st.fixed_dictionaries({
            part.name: st.text(max_size=60) | st.sampled_from([HOSTILE, WORDY])
            if part.words
            else st.floats(0, 40).map(lambda value: round(value, 1))
            if part.measure
            else st.sampled_from([*part.choices])
            for part in asked
        })  # fmt: skip

    return st.sampled_from([*KINDS]).flatmap(
        lambda kind: st.builds(
            lambda made, after: noted(kind, after, **made), parts(kind), st.integers(-4000, 60)
        )
    )


@settings(deadline=None)
@given(
    st.lists(_kinds(), max_size=12),
    st.text(max_size=80),
    st.integers(0, 500),
)
def test_any_notes_fit(guide: Guide, seen: list[Observation], name: str, seed: int) -> None:
    """Whatever was written down, the handover is made, fits, and names what was not checked."""
    walk = next(walks(guide, 1, seed))
    told = handover_of(Situation(walk, NOW, "us", lamb(name), tuple(seen), (), HOLDING))

    assert words_in(told.spoken) <= MOST_WORDS
    assert all(each.text[1:] in line(told, "Not checked") for each in told.not_checked)


def test_normal_findings_give_way_before_found_ones(guide: Guide) -> None:
    """When words run out normal findings are counted, with where they stand, while the found ones are said."""
    fed = tuple(noted("feed", -at * 60, what=what, amount=60.0, how="all") for at, what in enumerate(FED))
    seen = (*fed, *(each for each in NIGHT if each.kind in ("manner", "passed", "vet-said")))
    normal_alone = found_too = 0
    for walk in walks(guide, 1500, 6):
        told = handover_of(Situation(walk, NOW, "metric", lamb(), seen, (), HOLDING))
        counted = ["below" in line(told, label) for label in ("Looked at, normal: ", "Found: ")]
        normal_alone += counted == [True, False]
        found_too += counted[1]

    assert normal_alone > 20
    assert found_too < 30, "six feeds and a full night crowd out what was found only on the longest walks"


def test_an_answer_of_the_guide_is_never_cut(guide: Guide) -> None:
    """Half an answer can mean its opposite, so every choice is short enough to be said whole."""
    for finding in guide.findings.values():
        for name in finding.choices:
            said = Reader(guide, Walk(guide).facts).choice(finding, name)
            assert cut(said, LONGEST_ANSWER) == said


@pytest.mark.parametrize(
    ("text", "most", "shown"),
    [
        ("one two three", 3, "one two three"),
        ("one two three four", 3, "one two three.."),
        ("one, two, three", 2, "one, two.."),
        ("", 3, ""),
        ("x" * 50, 3, "x" * 30 + ".."),
        ("Pen 0.25 ml " + "9" * 40, 4, "Pen 0.25 ml.."),
        ("1" * 50, 3, ".."),
    ],
)
def test_a_cut_is_seen_and_never_halves_a_figure(text: str, most: int, shown: str) -> None:
    """What was typed is cut at a word, with two dots; a figure stands whole or not at all."""
    assert cut(text, most) == shown
    assert len(cut(text, most)) <= most * WORD + 2


def test_a_long_name_is_shortened_with_a_sign(guide: Guide) -> None:
    """A name of 10,000 signs is said in its first ones."""
    told = handover_of(Situation(Walk(guide), NOW, lamb=lamb("B" + "o" * 9_999)))

    assert "I have a lamb: B" + "o" * 21 + ".., a ewe lamb" in told.spoken[0].text


def test_a_walk_that_was_not_sure_of_anything_fits(guide: Guide) -> None:
    """Not sure at every question: all of them are told as not checked."""
    walk = Walk(guide)
    while isinstance(walk.node, Ask):
        finding = guide.findings[walk.node.finding]
        walk = walk.answer(next(iter(finding.choices)) if finding.never_unsure else UNSURE, at=AT)
    told = handover_of(Situation(walk, NOW))

    assert len(told.not_checked) >= len({move.finding for move in walk.moves if move.value is UNSURE})  # type: ignore[union-attr]
    assert words_in(told.spoken) <= MOST_WORDS
