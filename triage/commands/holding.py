"""Asking what is kept of this holding, or setting it at once."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from triage.commands.shared import Exit, complain, say, units_of
from triage.holding.fields import BY_NAME, FIELDS, text_of, with_text
from triage.holding.file import read_holding, write_holding
from triage.holding.holding import Holding
from triage.holding.place import Nowhere, holding_file
from triage.page.inert import inert
from triage.problems import nearest


def set_up(parsed: argparse.Namespace) -> int:
    """Show, set or ask it. Each answer is written at once."""
    place = holding_file()
    if isinstance(place, Nowhere):
        complain(f"There is no place to keep it: {place.why}.")
        return Exit.UNREADABLE
    read = read_holding(place)
    for problem in read.problems:
        complain(str(problem))
    if parsed.show:
        return _show(read.holding, place, bool(read.problems))
    if read.problems and place.exists():
        aside = place.with_name(f"{place.name}.before")
        complain(f"What can't be used will be gone when this is written; the file as it is: {aside}.")
        aside.write_bytes(place.read_bytes()) if place.is_file() else None
    if parsed.values:
        return _set(read.holding, place, parsed)
    return _ask(read.holding, place, parsed)


def _show(holding: Holding, place: Path, wrong: bool) -> int:
    say(f"{place}{'' if place.exists() else ' (not there yet)'}")
    for field in FIELDS:
        say(f"  {field.name}: {inert(text_of(holding, field.name)) or '-'}")
    return Exit.PROBLEMS if wrong else Exit.FINE


def _set(holding: Holding, place: Path, parsed: argparse.Namespace) -> int:
    for pair in parsed.values:
        name, equals, text = pair.partition("=")
        if not equals or name not in BY_NAME:
            known = ", ".join(BY_NAME)
            complain(f"'{inert(pair, 40)}' is not field=value{nearest(name, BY_NAME)}. The fields: {known}.")
            return Exit.PROBLEMS
        came = with_text(holding, name, text or "-", units_of(parsed, holding))
        if isinstance(came, str):
            complain(f"{name}: {came}")
            return Exit.PROBLEMS
        holding = came
    failed = write_holding(holding, place)
    if failed:
        complain(failed)
        return Exit.UNREADABLE
    return _show(holding, place, False)


def _ask(holding: Holding, place: Path, parsed: argparse.Namespace) -> int:
    say(f"Kept in {place}, a text file that you can also edit.")
    say("Enter leaves a thing as it is, - empties it, Ctrl-C stops. Each answer is written at once.")
    status = Exit.FINE
    for field in FIELDS:
        say()
        say(f"{field.ask} {field.why}")
        while True:
            kept = inert(text_of(holding, field.name))
            print(f"{f'Kept: {kept}' if kept else f'Like {field.example}'}. Answer: ", end="", flush=True)
            try:
                typed = input().strip()
            except (EOFError, KeyboardInterrupt):
                say()
                return status
            if not sys.stdin.isatty():
                say(typed)
            if not typed:
                break
            came = with_text(holding, field.name, typed, units_of(parsed, holding))
            if isinstance(came, str):
                say(came)
                continue
            holding = came
            failed = write_holding(holding, place)
            if failed:
                complain(failed)
                status = Exit.UNREADABLE
            break
    return status
