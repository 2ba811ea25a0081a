"""`triage setup`: its arguments; the work is loaded when it is asked for."""

from __future__ import annotations

import argparse


def add_setup(command: argparse.ArgumentParser) -> None:
    """Add what `triage setup` takes."""
    command.add_argument("--show", action="store_true", help="only show what is kept, and where")
    command.add_argument("values", nargs="*", metavar="field=value", help='such as vet="01632 960111"')
    command.set_defaults(run=run_setup, version=False)


def run_setup(parsed: argparse.Namespace) -> int:
    """Show, set or ask what is kept of this holding."""
    from triage.commands.holding import set_up

    return set_up(parsed)
