"""`triage new`: lay down a part of the guidance to begin with, and tell what else it asks for."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain, say

if TYPE_CHECKING:
    from collections.abc import Mapping

    from triage.author.entries import Entry
    from triage.guide.names import Known

KINDS = ("topic", "number", "finding", "how-to", "rule", "source")
"""What is begun in a knowledge folder, each under a name of its own."""

OWN, WORDS = "own", "words"

NOT_YET = "Nothing was written."


def add_new(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command to its parser."""
    parser.add_argument(
        "what", choices=(*KINDS, OWN, WORDS), metavar="WHAT", help=f"{', '.join(KINDS)}; own, words"
    )
    parser.add_argument("name", nargs="?", default="", metavar="NAME", help="its name, such as worms")
    parser.add_argument(
        "--in", dest="into", type=Path, metavar="FOLDER", help="a knowledge folder, or an own one"
    )
    parser.add_argument(
        "--language", default="", metavar="CODE", help="of new words: the language they will be in"
    )
    parser.set_defaults(run=run_new, version=False)


def run_new(parsed: argparse.Namespace) -> int:
    """Begin something: 0 when done, 1 when it is there already, 2 when it can't be written or understood."""
    if parsed.what == OWN:
        return _own(parsed)
    if parsed.what == WORDS:
        return _words(parsed)
    return _part(parsed)


def _part(parsed: argparse.Namespace) -> int:
    """Begin a part of a knowledge folder."""
    from triage.guide.find import knowledge_root
    from triage.guide.names import names_in
    from triage.guide.shapes import NAME

    folder, kind, name = parsed.into or parsed.guide or knowledge_root(), parsed.what, parsed.name
    if not NAME.fullmatch(name):
        said = f"'{name[:40]}' is no name" if name else "A name is missing"
        complain(
            f"{said}. Write one of lower-case letters, digits and single hyphens: triage new {kind} worms"
        )
        return Exit.UNREADABLE
    if not isinstance(folder, Path):
        complain(f"{NOT_YET} The shipped guide is packed and can't be changed; name a folder with --in.")
        return Exit.UNREADABLE
    known = names_in(folder)
    if known.unreadable:
        complain(f"{NOT_YET} {known.unreadable[:1].upper()}{known.unreadable[1:]}.")
        return Exit.UNREADABLE
    taken = _taken(known, kind, name)
    if taken:
        complain(f"{NOT_YET} {taken}; take another name.")
        return Exit.PROBLEMS
    return _topic(folder, name, known) if kind == "topic" else _entry(folder, kind, name)


def _taken(known: Known, kind: str, name: str) -> str:
    """Return what has the name already, as a sentence without its stop."""
    from triage.author.topic import nodes_of

    if name in known.names[kind]:
        return f"There is a {kind} '{name}' already"
    if kind == "number" and name in known.names["amount"]:
        return f"There is a sum '{name}' already"
    nodes = nodes_of(name) if kind == "topic" else ()
    there = next((node for node in nodes if node in known.names["node"]), "")
    return f"There is a place '{there}' in another topic already" if there else ""


def _topic(folder: Path, name: str, known: Known) -> int:
    from triage.author.topic import BORROWED, file_of, topic_text

    if status := _written({file_of(name): topic_text(name)}, folder):
        return status
    lacking = [each for kind, names in BORROWED.items() for each in names if each not in known.names[kind]]
    if lacking:
        say(f"This guide has no {', '.join(lacking)}: write other names there, of its own.")
    return _told_ways(folder, name)


def _told_ways(folder: Path, name: str) -> int:
    """Tell what else a new topic asks for, in lines to paste."""
    from triage.author.pastes import told
    from triage.author.ways import ways_to
    from triage.guide.read import read_guide

    guide = read_guide(folder).guide
    if guide is None:
        say("The guide has mistakes, so it can't be told how to lead there. 'triage check' tells them.")
        return Exit.FINE
    ways = ways_to(folder, guide, name)
    say("\nNo answer leads there yet. Paste these by hand, in this order, with the spaces they begin with.\n")
    for line in told(ways.pastes):
        say(line)
    say("Then run 'triage schema' and 'triage check' for the folder. What nobody but you can decide:")
    for line in ways.open:
        say(f"- {line}")
    return Exit.FINE


def _entry(folder: Path, kind: str, name: str) -> int:
    """Write an entry into a file of its own, or print it for the end of the file that such entries share."""
    from triage.author.entries import ENTRIES, entry_text, file_of
    from triage.page.inert import inert

    entry: Entry = ENTRIES[kind]
    file = file_of(kind, name)
    if entry.alone:
        return _written({file: entry_text(kind, name)}, folder)
    # A comment, so that the whole of what is printed may go to the end of the file as it is.
    say(f"# Put this at the end of {inert(str(folder / file), 300)}, from the name on.")
    say(entry_text(kind, name), end="")
    return Exit.FINE


def _own(parsed: argparse.Namespace) -> int:
    from triage.author.own import EXAMPLES, README

    folder = _own_folder(parsed)
    if isinstance(folder, str):
        complain(f"{NOT_YET} {folder}")
        return Exit.UNREADABLE
    if status := _written(EXAMPLES, folder):
        return status
    say(f"They change nothing yet. Begin with {folder / README}.")
    _say_where(parsed, folder)
    return Exit.FINE


def _words(parsed: argparse.Namespace) -> int:
    from triage.author.words import FILE, words_text
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide

    folder = _own_folder(parsed)
    if isinstance(folder, str):
        complain(f"{NOT_YET} {folder}")
        return Exit.UNREADABLE
    read = read_guide(parsed.guide or knowledge_root(), own=folder if folder.is_dir() else None)
    if read.guide is None:
        for line in (read.unreadable,) if read.unreadable else map(str, read.problems):
            complain(line)
        complain(f"{NOT_YET} Mend what is above first.")
        return Exit.UNREADABLE if read.unreadable else Exit.PROBLEMS
    text = words_text(read.guide, " ".join(parsed.language.split()))
    if status := _written({FILE: text}, folder):
        return status
    say(f"{text.count('    here: '):,} texts, each as it is until you type over it. The file's top says how.")
    _say_where(parsed, folder)
    return Exit.FINE


def _own_folder(parsed: argparse.Namespace) -> Path | str:
    """Return the person's own folder, also before there is one, or why there is no place for it."""
    from triage.holding.place import Nowhere, holding_file, own_folder

    there = parsed.into or own_folder()
    if there:
        return Path(there)
    place = holding_file()
    if isinstance(place, Nowhere):
        return f"Your own folder has no place to go to, as {place.why}; name one with --in."
    return place.parent / "own"


def _say_where(parsed: argparse.Namespace, folder: Path) -> None:
    """Say what has to be set so that the folder is looked into, where that is not the usual one."""
    from triage.holding.place import own_folder

    if own_folder() is None or (parsed.into and folder.resolve() != Path(own_folder() or "").resolve()):
        say(f"To put it to use, set TRIAGE_OWN to {folder.resolve()}.")


def _written(texts: Mapping[str, str], folder: Path) -> Exit:
    """Write files that are not there yet, and say which. FINE when at least one was."""
    from triage.author.laying import write_new
    from triage.own_file import make_folder

    new = {name: text for name, text in texts.items() if not _there(folder / name)}
    for name in texts:
        if name not in new:
            complain(f"{folder / name} is there already, and is left as it is.")
    if not new:
        complain(NOT_YET)
        return Exit.PROBLEMS
    for name, text in new.items():
        try:
            make_folder((folder / name).parent)
            write_new(text, folder / name)
        except OSError as error:
            complain(f"{folder / name} could not be written: {error.strerror or error}.")
            return Exit.UNREADABLE
        say(f"New: {folder / name}")
    return Exit.FINE


def _there(file: Path) -> bool:
    return file.exists() or file.is_symlink()
