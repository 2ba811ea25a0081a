"""`triage findings`: everything the guide can ask."""

from __future__ import annotations

import argparse

from triage.commands.shared import Exit, open_guide, say, units_here


def run_findings(parsed: argparse.Namespace) -> int:
    """List every finding with its choices or its unit."""
    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    from triage.page.listing import finding_lines

    for line in finding_lines(guide, units_here(parsed)):
        say(line)
    return Exit.FINE
