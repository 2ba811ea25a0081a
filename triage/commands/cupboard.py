"""`triage cupboard`: its arguments; the work is loaded when it is asked for."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from triage.commands.shared import Exit, complain, open_guide, say, units_here

if TYPE_CHECKING:
    from triage.guide.model import Guide


def add_cupboard(command: argparse.ArgumentParser, shared: Callable[[argparse.ArgumentParser], None]) -> None:
    """Add what `triage cupboard` takes."""
    shared(command)
    command.add_argument(
        "things",
        nargs="*",
        metavar="thing[=amount]",
        help='such as thermometer=2 milk-powder="10 kg, 2027-03"',
    )
    command.add_argument("--lambs", metavar="N", help="how many lambs you will feed by hand; kept")
    command.add_argument("--show-nodes", action="store_true", help="name every page that needs a thing")
    command.set_defaults(run=run_cupboard)


def run_cupboard(parsed: argparse.Namespace) -> int:
    """Tell the list or one thing of it, or write down what is on the shelf."""
    guide = open_guide(parsed.guide, also={"rearing", "cupboard"})
    if isinstance(guide, Exit):
        return guide
    if not guide.cupboard:
        complain("This guide has no cupboard.yaml, so there is nothing to list.")
        return Exit.UNREADABLE
    from triage.holding.place import Nowhere, shelf_file

    place = shelf_file()
    typed, wrong = _typed(parsed, guide)
    if typed and isinstance(place, Nowhere):
        complain(f"There is no place to keep it: {place.why}.")
        return Exit.UNREADABLE
    if typed and isinstance(place, Path):
        from triage.cupboard.file import change_shelf
        from triage.cupboard.listing import units_of

        wrong += change_shelf(typed, place, units_of(guide), write=not wrong)
    if wrong:
        for line in wrong:
            complain(line)
        complain("Nothing was changed.")
        return Exit.PROBLEMS
    return _tell(parsed, guide, place if isinstance(place, Path) else None, typed)


def _typed(parsed: argparse.Namespace, guide: Guide) -> tuple[dict[str, str], list[str]]:
    """Return what is to be set, and a sentence for each word that can't be understood."""
    from triage.cupboard.shelf import LAMBS
    from triage.page.inert import inert
    from triage.problems import nearest

    typed: dict[str, str] = {LAMBS: parsed.lambs} if parsed.lambs is not None else {}
    wrong: list[str] = []
    for pair in parsed.things:
        name, equals, text = pair.partition("=")
        name = name.strip().lower()
        if not equals and name not in guide.cupboard:
            near = nearest(name, guide.cupboard) or "; 'triage cupboard' tells the names."
            wrong.append(f"There is no '{inert(name, 40)}' in the cupboard{near}")
        elif name in typed:
            wrong.append(f"{inert(name, 40)}: It is there twice. Give it once, its packs parted by ;")
        elif equals:
            typed[name] = text
    return typed, wrong


def _tell(parsed: argparse.Namespace, guide: Guide, place: Path | None, typed: dict[str, str]) -> int:
    from triage.clock import Now
    from triage.cupboard.file import MORE, read_shelf
    from triage.cupboard.listing import cupboard_of, units_of
    from triage.cupboard.shelf import Shelf, ShelfRead
    from triage.cupboard.text import item_lines, list_lines, stock_lines
    from triage.page.inert import inert

    read = read_shelf(place, units_of(guide)) if place else ShelfRead(Shelf())
    for problem in read.problems:
        complain(inert(str(problem)))
    today = Now.read().moment.astimezone().date()
    cupboard, system = cupboard_of(guide, read.shelf, today), units_here(parsed)
    asked = [thing.strip().lower() for thing in parsed.things if "=" not in thing]
    changed = [name.removesuffix(MORE) for name in typed if name.removesuffix(MORE) in guide.cupboard]
    if asked or changed:
        told = [item_lines(guide, cupboard, name, system) for name in dict.fromkeys(asked)]
        told += [stock_lines(guide, cupboard, name, system) for name in dict.fromkeys(changed)]
    else:
        told = [list_lines(guide, cupboard, system, parsed.show_nodes)]
    for line in (line for lines in told for line in (*lines, "")):
        say(line)
    if place:
        say(f"{'Kept' if typed else 'What is there is kept'} in {place}, a text file that you can also edit.")
    return Exit.PROBLEMS if read.problems else Exit.FINE
