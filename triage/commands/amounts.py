"""`triage amounts`: the sums, or one of them worked out."""

from __future__ import annotations

import argparse

from triage.commands.shared import Exit, complain, open_guide, say, units_of


def run_amounts(parsed: argparse.Namespace) -> int:
    """List the sums, or work one out from findings given on the line."""
    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    from triage.page.listing import amount_lines, work_out

    if parsed.name is None:
        for line in amount_lines(guide):
            say(line)
        return Exit.FINE
    came = work_out(guide, parsed.name, parsed.known, units_of(parsed))
    if isinstance(came, str):
        complain(came)
        return Exit.UNREADABLE
    for line in came:
        say(line)
    return Exit.FINE
