"""A page of reading as lines for a pipe: all of it, with every statement that it leads on to by its key."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from triage.maps.told import map_lines
from triage.page.lines import lay_block, lay_out
from triage.page.page import Block, Page
from triage.page.wall import Wall
from triage.reading.collection import Collection
from triage.reading.kinds import kind_of, parted, title_of
from triage.reading.pages import statement_blocks
from triage.units import System


def key_lines(collection: Collection, key: str, system: System, width: int) -> Iterator[str]:
    """Yield a statement or a map; of a topic both."""
    kind, name = parted(key)
    wall = Wall(collection.guide, system)
    if kind != "map":
        yield from (line.text for line in lay_out(Page("side", "", statement_blocks(wall, key)), width))
        for group in collection.groups(key):
            yield from ("", f"{group.says}:", *_listed(collection, wall, group.keys, width))
    if kind in ("map", "topic"):
        yield from ("", *(line.text for line in map_lines(collection.guide, name, width, system)))


def found_lines(
    collection: Collection, typed: str, keys: Sequence[str], system: System, width: int
) -> Iterator[str]:
    """Yield what a search found, the best first."""
    yield from (
        f"{len(keys)} found: {typed}",
        *_listed(collection, Wall(collection.guide, system), keys, width),
    )


def _listed(collection: Collection, wall: Wall, keys: Sequence[str], width: int) -> Iterator[str]:
    for key in keys:
        where = ", ".join(filter(None, (kind_of(wall, key), collection.where(key))))
        text = f"{key}: {title_of(wall, key)} ({where})"
        yield from (line.text for line in lay_block(Block("body", text, "-"), width))
