"""Asking what is kept of this holding, or setting it at once."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from triage.commands.shared import Exit, complain, say, units_of
from triage.holding.bag import lacking
from triage.holding.fields import BY_NAME, EMPTY, FIELDS, HoldingField, with_text, words_of
from triage.holding.file import aside_for, change_holding, read_holding
from triage.holding.holding import Holding
from triage.holding.place import Nowhere, holding_file
from triage.page.inert import inert
from triage.problems import errors, nearest

HOW = "Enter leaves a thing as it is, - empties it, Ctrl-C stops. Each answer is written at once."


def set_up(parsed: argparse.Namespace) -> int:
    """Show, set or ask it. Each answer is written at once."""
    place = holding_file()
    if isinstance(place, Nowhere):
        complain(f"There is no place to keep it: {place.why}.")
        return Exit.UNREADABLE
    if parsed.show and parsed.values:
        complain("--show changes nothing. Leave it out to set something.")
        return Exit.UNREADABLE
    read = read_holding(place)
    for problem in read.problems:
        complain(inert(str(problem)))
    if parsed.show:
        return _show(read.holding, place, bool(errors(read.problems)))
    if parsed.values:
        return _set(read.holding, place, parsed)
    return _ask(Sitting(place, read.holding, parsed))


def _show(holding: Holding, place: Path, wrong: bool) -> int:
    say(f"{place}{'' if os.path.exists(place) else ' (not there yet)'}")
    for field in FIELDS:
        say(f"  {field.name}: {inert(words_of(holding, field.name)) or EMPTY}")
    if lacking(holding):
        say(f"Of the bag this is not kept: {', '.join(lacking(holding))}. Without it no sum uses the bag.")
    return Exit.PROBLEMS if wrong else Exit.FINE


def _set(holding: Holding, place: Path, parsed: argparse.Namespace) -> int:
    """Set all that was given, or nothing where any of it is wrong."""
    typed, wrong = _values(parsed.values)
    for name, text in typed.items():
        came = with_text(holding, name, text, units_of(parsed, holding))
        if isinstance(came, str):
            wrong.append(f"{name}: {came}")
        else:
            holding = came
    for line in wrong:
        complain(line)
    if wrong:
        complain("Nothing was changed.")
        return Exit.PROBLEMS
    tell_aside(place)
    kept = change_holding(typed, place, units_of(parsed, holding))
    if isinstance(kept, str):
        complain(kept)
        return Exit.UNREADABLE
    return _show(kept, place, False)


def _values(pairs: Sequence[str]) -> tuple[dict[str, str], list[str]]:
    """Return what each field was set to, and a line for each pair that can't be understood."""
    typed: dict[str, str] = {}
    wrong: list[str] = []
    for pair in pairs:
        name, equals, text = pair.partition("=")
        if not equals or name not in BY_NAME:
            near = "." if name in BY_NAME else nearest(name, BY_NAME) or "."
            wrong.append(f"'{inert(pair, 40)}' is not field=value{near} The fields: {', '.join(BY_NAME)}.")
        elif name in typed:
            wrong.append(f"{name}: It is there twice. Give it once.")
        else:
            typed[name] = text.strip() or EMPTY
    return typed, wrong


def tell_aside(place: Path) -> None:
    """Tell where the file as it is will be found, when writing it anew would lose something of it."""
    aside = aside_for(place)
    if aside:
        complain(
            f"The file is written anew. As it was, with what can't be carried over, it is kept: {aside}."
        )


class Sitting:
    """One person answering: what is kept now, and what of their answers could not be written yet."""

    def __init__(self, place: Path, holding: Holding, parsed: argparse.Namespace) -> None:
        self.place = place
        self.holding = holding
        self.unwritten: dict[str, str] = {}
        self._parsed = parsed

    def take(self, name: str, text: str) -> str:
        """Take an answer and write it. Returns what is wrong with it as a sentence, or an empty text."""
        system = units_of(self._parsed, self.holding)
        came = with_text(self.holding, name, text, system)
        if isinstance(came, str):
            return came
        self.holding = came
        self.unwritten[name] = text
        tell_aside(self.place)
        # These fields alone: what was changed in the file meanwhile, by hand or by the guide, stays.
        kept = change_holding(self.unwritten, self.place, system)
        if isinstance(kept, str):
            complain(kept)
            return ""
        self.holding = kept
        self.unwritten.clear()
        say(f"Kept: {inert(words_of(kept, name)) or 'nothing'}.")
        return ""


def _ask(sitting: Sitting) -> int:
    say(f"Kept in {sitting.place}, a text file that you can also edit.")
    say(HOW)
    stopped = False
    try:
        for field in FIELDS:
            say()
            say(f"{field.ask} {field.why}")
            _ask_field(field, sitting)
    except EOFError:
        say()
    except KeyboardInterrupt:
        say()
        stopped = True
    if sitting.unwritten:
        complain("Not kept yet. Set it later with:")
        complain(f"  triage setup {_as_arguments(sitting.unwritten)}")
        return Exit.UNREADABLE
    return Exit.INTERRUPTED if stopped else Exit.FINE


def _ask_field(field: HoldingField, sitting: Sitting) -> None:
    while True:
        kept = inert(words_of(sitting.holding, field.name))
        say(f"{f'Kept: {kept}' if kept else f'Like {field.example}'}. Answer: ", end="")
        typed = input().strip()
        if not sys.stdin.isatty():
            say(inert(typed))
        wrong = sitting.take(field.name, typed) if typed else ""
        if not wrong:
            return
        say(wrong)


def _as_arguments(typed: dict[str, str]) -> str:
    import shlex

    return " ".join(shlex.quote(f"{name}={text}") for name, text in typed.items())
