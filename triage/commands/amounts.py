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
    from triage.holding.bag import BAG, bag_of
    from triage.holding.found import find_holding
    from triage.holding.holding import Holding

    read = find_holding().read
    holding = read.holding if read else Holding()
    added = bag_of(holding, parsed.name, parsed.known)
    came = work_out(guide, parsed.name, [*parsed.known, *added], units_of(parsed, holding))
    if isinstance(came, str):
        complain(came)
        return Exit.UNREADABLE
    for line in came:
        say(line)
    if added:
        say(BAG)
    return Exit.FINE
