"""`triage --version`: the program's version and the guide's edition."""

from __future__ import annotations

import argparse

from triage.commands.shared import Exit, open_guide, say


def print_version(parsed: argparse.Namespace) -> int:
    """Print the program's version and the guide's edition."""
    import triage

    guide = open_guide(parsed.guide)
    if isinstance(guide, Exit):
        return guide
    from datetime import date

    from triage.review.of import said_of

    say(f"triage {triage.__version__}, guide edition {guide.front.edition} of {guide.front.date}")
    # A guide that is named has been checked as it was opened; what the shipped one lacks has been told.
    if parsed.guide or (guide.known and guide.known.seals_in):
        say("It passed its check.")
    say(said_of(guide, date.today()))
    return Exit.FINE
