"""`triage practice --ready`: what each helper has shown, for the owner."""

from __future__ import annotations

import argparse

from triage.commands.shared import Exit, complain, open_guide, say


def print_ready(parsed: argparse.Namespace) -> int:
    """Print what each helper, or the one named, has shown; 1 where somebody named has not met the mark."""
    from triage.casebook.failing import NotKept
    from triage.clock import Now
    from triage.commands.house import practice_book
    from triage.holding.found import find_holding
    from triage.holding.holding import Holding
    from triage.page.inert import inert
    from triage.page.lines import lay_out
    from triage.page.page import Page
    from triage.practice.school import all_shown, mark_of
    from triage.practice.shown import shown_blocks

    guide = open_guide(parsed.guide, also={"proof", "practice"})
    if isinstance(guide, Exit):
        return guide
    book, told = practice_book(parsed)
    if book is None:
        complain(told)
        return Exit.UNREADABLE
    found = find_holding().read
    mark, now = mark_of(found.holding if found else Holding()), Now.read()
    shown = all_shown(guide, book, mark, parsed.helper)
    if isinstance(shown, NotKept):
        complain(f"The practice book can't be read: {shown.why}.")
        return Exit.UNREADABLE
    if not shown:
        name = inert(parsed.helper, 40)
        say(f"Nobody called '{name}' practises here." if name else "Nobody practises here yet.")
        return Exit.UNREADABLE if name else Exit.FINE
    for learner, readiness in shown:
        say(inert(learner.helper.name, 40))
        for line in lay_out(Page("side", "", tuple(shown_blocks(guide, learner, readiness, now))), 76):
            say(line.text)
        say()
    return Exit.PROBLEMS if parsed.helper and not all(each.ready for _, each in shown) else Exit.FINE
