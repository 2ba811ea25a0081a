"""Giving a report: to the terminal, to a program, or into a file."""

from __future__ import annotations

import sys
from pathlib import Path

from triage.commands.shared import complain, say


def give_report(text: str, form: str, out: Path | None) -> bool:
    """Print a report of some form, or write it to `out`; whether that could be done."""
    from triage.whole_file import write_whole

    if out is None:
        _print(text, form)
        return True
    try:
        write_whole(text, out)
    except OSError as error:
        complain(f"The report could not be written to {out}: {error.strerror or error}.")
        return False
    return True


def _print(text: str, form: str) -> None:
    if form == "text":
        say(text.removesuffix("\n"))
        return
    # A program reads it, and JSON is UTF-8 whatever the locale says.
    sys.stdout.flush()
    sys.stdout.buffer.write(text.encode("utf-8", errors="replace"))
