"""The printed pages of practice: cases to play aloud, and who is ready."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from triage.casebook.failing import NotKept
from triage.clock import Now
from triage.commands.house import practice_book
from triage.commands.shared import Exit, open_guide
from triage.page.inert import inert
from triage.paper import leader, ready
from triage.practice.dealing import Dealer
from triage.practice.leading import chosen, to_play
from triage.practice.readiness import Readiness
from triage.practice.school import all_shown, mark_of
from triage.practice.shown import NOT_A_LICENCE, mark_words, share_words, weak_spots, when_last
from triage.problems import nearest

if TYPE_CHECKING:
    from triage.commands.pages import Making, Sheets
    from triage.guide.model import Guide


def practice_sheets(parsed: argparse.Namespace, making: Making) -> Sheets | str:
    """Return the page that was asked for, or a sentence on why there is none."""
    guide = open_guide(parsed.guide, also={"proof", "practice"})
    if isinstance(guide, Exit) or not guide.cases:
        return "This guide has no practice cases."
    if parsed.what == "leader":
        return _leader(guide, making, parsed.name or "")
    return _readiness(parsed, guide, making)


def _leader(guide: Guide, making: Making, name: str) -> Sheets | str:
    from triage.commands.pages import Sheets

    if name and name not in guide.topics and name not in guide.cases:
        near = nearest(name, (*guide.topics, *guide.cases))
        return f"There is no topic or case '{inert(name, 40)}'{near or '.'}"
    written = [posed for posed, _ in Dealer(guide).written]
    today = making.now.moment.astimezone(making.now.zone).date()
    picked = chosen(guide, written, guide.topics.get(name), name, today)
    plays = [to_play(posed, making.system) for posed in picked]
    return Sheets(f"leader{'-' if name else ''}{name}", leader.NAME, tuple(leader.leader_parts(plays)))


def _readiness(parsed: argparse.Namespace, guide: Guide, making: Making) -> Sheets | str:
    from triage.commands.pages import Sheets

    book, told = practice_book(parsed)
    if book is None:
        return told
    mark = mark_of(making.holding)
    shown = all_shown(guide, book, mark, parsed.name or "")
    if isinstance(shown, NotKept):
        return f"The practice book can't be read: {shown.why}."
    if parsed.name and not shown:
        return f"Nobody called '{inert(parsed.name, 40)}' practises here."
    rows = [
        ready.Row(
            inert(learner.helper.name, 40),
            each.ready,
            f"{len(each.dangers)}, {each.misses}",
            share_words(each.under),
            share_words(each.over),
            when_last(each, Now(making.now.moment, making.now.zone)),
            tuple(each.wanting),
            weak_spots(guide, learner),
        )
        for learner, each in shown
    ]
    parts = ready.ready_parts(mark_words(Readiness(guide, (), mark)), rows, NOT_A_LICENCE)
    return Sheets("readiness", ready.NAME, tuple(parts))
