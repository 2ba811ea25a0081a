"""The leader's sheets and the owner's page: what stands on them, and on which side."""

from __future__ import annotations

from datetime import date

from tests.paper.made import parsed, words
from triage.guide.model import Guide
from triage.paper.laying import laid
from triage.paper.leader import leader_parts
from triage.paper.ready import Row, ready_parts
from triage.paper.sheets import Foot, sheets_of
from triage.practice.dealing import Dealer
from triage.practice.leading import AT_ONCE, LETTERS, chosen, to_play

DAY = date(2026, 2, 1)


def test_answers_are_on_the_back(guide: Guide) -> None:
    """A case begins a leaf; its page and what is right stand on no sheet from which is read."""
    dealer = Dealer(guide)
    written = [posed for posed, _ in dealer.written]
    for posed in written[::9]:
        play = to_play(posed, "metric")
        sheets = laid(leader_parts([play, play]))
        assert len(sheets) % 2 == 0 or len(sheets) == len(laid(leader_parts([play]))) * 2
        fronts = [sheet.html for sheet in sheets if "When asked for" in sheet.html]
        assert len(fronts) == 2
        assert all(play.remember not in front for front in fronts)
        starts = [at for at, sheet in enumerate(sheets) if "When asked for" in sheet.html]
        assert all(start % 2 == 0 for start in starts)


def test_a_leader_can_tell_all_that_the_guide_needs(guide: Guide) -> None:
    """Each hidden finding with its answer, each question with its letters, and which of them are right."""
    for posed, _ in Dealer(guide).written:
        play = to_play(posed, "metric")
        told = {label for label, _ in play.tell}
        assert {guide.findings[name].label for name in posed.case.hidden} <= told
        assert len(play.asked) == len(posed.questions)
        for asked, question in zip(play.asked, posed.questions, strict=True):
            assert len(asked.lines) == len(question.options)
            right = [LETTERS[at] for at, option in enumerate(question.options) if option.right]
            assert asked.right == ", ".join(right)


def test_which_cases(guide: Guide) -> None:
    """Of a topic, of a name, or some that put much to the test; the same all day, others the next."""
    written = [posed for posed, _ in Dealer(guide).written]
    some = chosen(guide, written, None, "", DAY)
    assert len(some) == AT_ONCE
    assert some == chosen(guide, written, None, "", DAY)
    assert some != chosen(guide, written, None, "", date(2026, 2, 2))
    scours = chosen(guide, written, guide.topics["scours"], "scours", DAY)
    assert {posed.case.page.topic for posed in scours} == {"scours"}
    (one,) = chosen(guide, written, None, "wait-for-vet-1", DAY)
    assert one.case.name == "wait-for-vet-1"


def test_the_owners_page(guide: Guide) -> None:
    """A row for each helper, what is wanting and weak, and the caution; typed names are inert."""
    rows = [
        Row("Tam <b>", False, "12, 1", "1 of 30 (3.3%)", "0 of 9", "on 1 Feb", ("more cases",), ("Limp",)),
        Row("Imani", True, "60, 0", "0 of 80 (0.0%)", "3 of 30 (10.0%)", "on 2 Feb"),
    ]
    page = parsed(
        sheets_of("Ready", tuple(ready_parts("Asked: much.", rows, "No licence.")), Foot("1", "today"), "a4")
    )
    said = words(page)
    for wanted in ("Tam <b>", "not yet", "yes", "12, 1", "more cases", "Limp", "No licence.", "Asked: much."):
        assert wanted in said
    empty = parsed(
        sheets_of("Ready", tuple(ready_parts("Asked.", [], "No licence.")), Foot("1", "today"), "a4")
    )
    assert "Nobody has practised yet." in words(empty)
