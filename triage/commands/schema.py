"""`triage schema`: what an author's editor needs to complete and warn in a knowledge folder."""

from __future__ import annotations

import argparse
from pathlib import Path

from triage.commands.shared import Exit, complain, say

HOUSE = ".schema"
"""The folder they are kept in; the reader passes over names that begin with a dot."""


def add_schema(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of the command to its parser."""
    parser.add_argument("folder", nargs="?", type=Path, help="a knowledge folder; the shipped one if none")
    parser.add_argument("--no-names", action="store_true", help="allow any name, whether it exists or not")
    parser.set_defaults(run=run_schema, version=False)


def run_schema(parsed: argparse.Namespace) -> int:
    """Write the schemas: 0 when done, 1 when a file hides its names, 2 when that can't be read or written."""
    from triage.guide.find import knowledge_root
    from triage.guide.names import names_in
    from triage.guide.schema import schema_texts

    folder = parsed.folder or parsed.guide or knowledge_root()
    if not isinstance(folder, Path):
        complain("No schema was written: the shipped guide is packed and can't be changed; name a folder.")
        return Exit.UNREADABLE
    known = names_in(folder)
    if known.unreadable:
        complain(f"No schema was written: {known.unreadable}.")
        return Exit.UNREADABLE
    if known.problems and not parsed.no_names:
        for problem in known.problems:
            complain(str(problem))
        complain("No schema was written, as the names in such a file are not known. Mend it first.")
        return Exit.PROBLEMS
    return _write(folder / HOUSE, schema_texts(None if parsed.no_names else known.names))


def _write(house: Path, texts: dict[str, str]) -> int:
    from triage.whole_file import write_whole

    try:
        house.mkdir(exist_ok=True)
        for name, text in texts.items():
            write_whole(text, house / name)
    except OSError as error:
        complain(f"The schemas could not be written to {house}: {error.strerror or error}.")
        return Exit.UNREADABLE
    say(f"{len(texts)} schemas are in {house}.")
    say(f"Begin a file with its line, such as: # yaml-language-server: $schema=../{HOUSE}/topic.json")
    return Exit.FINE
