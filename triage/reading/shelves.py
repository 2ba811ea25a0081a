"""Lists of statements to choose from: the contents, and every longer list in parts that a screen holds."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from triage.page.wall import Wall
from triage.reading.collection import Collection, Group
from triage.reading.kinds import kind_of, lasting_title, parted, title_of

MOST = 9
"""Choices on one page: one for each digit."""

SHORT, LONG = 26, 96
"""Signs of a title where two stand on one line, and where it stands alone."""


@dataclass(frozen=True)
class Shelf:
    """A list of statements by their keys. One that is `sorted_` goes by the alphabet, and is parted by it."""

    title: str
    keys: tuple[str, ...] = ()
    shelves: tuple[Shelf, ...] = ()
    """Lists within it; then it has no keys of its own."""
    about: str = ""
    kinds: bool = False
    """Whether its statements are of several kinds, so that each says which."""


Choosable = str | Shelf
"""What a choice leads to: a statement by its key, or a list."""


def contents(collection: Collection, wall: Wall) -> Shelf:
    """Return the contents of the whole guide."""

    def all_of(title: str, kind: str, about: str = "") -> Shelf:
        return Shelf(title, _by_title(wall, collection.of_kind.get(kind, ())), about=about)

    def as_written(title: str, kind: str, about: str = "") -> Shelf:
        return Shelf(title, collection.of_kind.get(kind, ()), about=about)

    front = Shelf(
        "What this guide is for, and how soon a vet is needed",
        ("guide/front", *collection.of_kind["urgency"]),
    )
    practice = Shelf(
        "Invented lambs of practice",
        shelves=(
            all_of("Practice cases", "case"),
            all_of("What people are tempted to do", "deed"),
            Shelf("The farm", tuple(key for key in collection.of_kind["guide"] if key == "guide/farm")),
        ),
    )
    rest = (front, all_of("Sources", "source"), practice)
    figures = (as_written("Sums", "sum"), all_of("Numbers", "number"))
    raising = (as_written("What is done, by age", "duty"), all_of("Laws of places", "law"))
    shelves = (
        as_written("Topics, each with its map", "topic"),
        all_of("What is looked for and measured", "finding"),
        all_of("How to do it", "how-to"),
        Shelf("Amounts and numbers", shelves=_filled(figures)),
        all_of("Rules: never and always", "rule", "What the guide is proved against, on every walk."),
        Shelf("Raising a lamb, and the law", shelves=_filled(raising)),
        all_of("The cupboard", "item"),
        all_of("Words", "term"),
        Shelf("About the guide, sources, practice", shelves=_filled(rest)),
    )
    return Shelf("Contents", shelves=_filled(shelves))


def _filled(shelves: Sequence[Shelf]) -> tuple[Shelf, ...]:
    kept = (Shelf(each.title, each.keys, _filled(each.shelves), each.about) for each in shelves)
    return tuple(each for each in kept if each.keys or each.shelves)


def _by_title(wall: Wall, keys: Sequence[str]) -> tuple[str, ...]:
    return tuple(sorted(keys, key=lambda key: title_of(wall, key).casefold()))


def choices_on(collection: Collection, shelf: Shelf, wall: Wall) -> tuple[tuple[str, Choosable], ...]:
    """Return what can be chosen on a list: words, and what they lead to. Never more than there are digits."""
    if shelf.shelves:
        return tuple((f"{each.title} ({_count(each)})", each) for each in shelf.shelves)
    if len(shelf.keys) <= MOST:
        return tuple((_line(collection, wall, key, shelf.kinds), key) for key in shelf.keys)
    if shelf.kinds and len(kinds := _kinds(shelf, wall)) > 1:
        return tuple(_kind_choice(collection, wall, each) for each in kinds)
    return tuple((each.title, each) for each in _parts(collection, shelf, wall))


def _line(collection: Collection, wall: Wall, key: str, kinds: bool) -> str:
    title = titled(collection, wall, key)
    return f"{kind_of(wall, key).capitalize()}: {title}" if kinds else title


def titled(collection: Collection, wall: Wall, key: str) -> str:
    """Return a title to choose by; that of a place with where it stands, as many ask the same."""
    where = collection.where(key)
    title = cut(title_of(wall, key), LONG)
    return f"{title} ({where})" if where else title


def _kind_choice(collection: Collection, wall: Wall, shelf: Shelf) -> tuple[str, Choosable]:
    """Return the choice of a list of one kind; one that holds a single statement leads to it at once."""
    kind = kind_of(wall, shelf.keys[0]).capitalize()
    if len(shelf.keys) == 1:
        return _line(collection, wall, shelf.keys[0], kinds=True), shelf.keys[0]
    return f"{kind} ({len(shelf.keys)})", shelf


def _count(shelf: Shelf) -> int:
    return len(shelf.keys) or sum(map(_count, shelf.shelves))


def _kinds(shelf: Shelf, wall: Wall) -> tuple[Shelf, ...]:
    """Return a mixed list as one list for each kind; none where these would be too many."""
    found: dict[str, list[str]] = {}
    for key in shelf.keys:
        found.setdefault(kind_of(wall, key), []).append(key)
    lists = (Shelf(f"{shelf.title}, {kind}", tuple(keys)) for kind, keys in found.items())
    return tuple(lists) if len(found) <= MOST else ()


def _parts(collection: Collection, shelf: Shelf, wall: Wall) -> tuple[Shelf, ...]:
    """Return a long list in parts of about the same length, each called by its first and its last."""
    count = min(MOST, ceil(len(shelf.keys) / MOST))
    edges = [round(len(shelf.keys) * at / count) for at in range(count + 1)]
    pieces = (shelf.keys[low:high] for low, high in pairwise(edges))
    return tuple(
        Shelf(_span(collection, wall, keys), keys, about=shelf.title, kinds=shelf.kinds) for keys in pieces
    )


def _span(collection: Collection, wall: Wall, keys: Sequence[str]) -> str:
    numbers = [collection.number(parted(key)[1]) for key in keys if parted(key)[0] == "node"]
    if len(numbers) == len(keys) and numbers == list(range(numbers[0], numbers[0] + len(keys))):
        return f"{numbers[0]} to {numbers[-1]} on its map, from: {cut(title_of(wall, keys[0]), SHORT)}"
    first, last = (cut(lasting_title(wall, key), SHORT) for key in (keys[0], keys[-1]))
    return f"{first} to {last}"


def cut(text: str, most: int) -> str:
    """Return a text of at most so many signs, cut between two words, with a sign that it was cut."""
    if len(text) <= most:
        return text
    kept = text[: most - 2].rpartition(" ")[0] or text[: most - 2]
    return f"{kept.rstrip(' ,.;:')}.."


def leading_on(collection: Collection, wall: Wall, key: str) -> tuple[tuple[str, Choosable], ...]:
    """Return the choices at the foot of a page: each statement by itself, as far as there are digits for it.

    Where there are too many, the longest groups become lists of their own.
    """
    found: list[tuple[str, Choosable]] = []
    groups = collection.groups(key)
    together = _too_long(groups)
    for group in groups:
        if group in together:
            title = f"{group.says}: {cut(lasting_title(wall, key), LONG)}"
            listed = Shelf(title, group.keys, kinds=group.mixed)
            found.append((f"{group.says} {len(group.keys)} {group.many}", listed))
        else:
            found += [(_on_to(collection, wall, group, each), each) for each in group.keys]
    return tuple(found)


def _too_long(groups: Sequence[Group]) -> list[Group]:
    together: list[Group] = []
    for group in sorted(groups, key=lambda each: -len(each.keys)):
        choices = sum(1 if each in together else len(each.keys) for each in groups)
        if choices > MOST:
            together.append(group)
    return together


def _on_to(collection: Collection, wall: Wall, group: Group, key: str) -> str:
    return f"{group.says} the {kind_of(wall, key)}: {titled(collection, wall, key)}"
