"""What each statement is called: its kind in a word or two, and a title short enough to choose by."""

from __future__ import annotations

from collections.abc import Callable

from triage.amounts import AMOUNTS
from triage.guide.model import Act, Ask, Source
from triage.page.wall import Wall

KINDS = {
    "guide": "about this guide",
    "urgency": "how soon",
    "topic": "topic",
    "node": "end",
    "finding": "what is looked for",
    "number": "number",
    "how-to": "how to",
    "rule": "rule",
    "sum": "sum",
    "duty": "raising",
    "law": "law",
    "item": "cupboard",
    "term": "word",
    "source": "source",
    "deed": "temptation",
    "case": "practice case",
    "map": "map",
}
"""The word for each kind of key. A node may also be a question, or something to do."""

MANY = 3
"""Names of writers from which on only the first is told."""

FARM = "The invented farm"
FRONT = "What this guide is for"


def parted(key: str) -> tuple[str, str]:
    """Return the kind and the name of a key."""
    kind, _, name = key.partition("/")
    return kind, name


def kind_of(wall: Wall, key: str) -> str:
    """Return what a statement is, in a word or two."""
    kind, name = parted(key)
    if kind == "node":
        node = wall.guide.nodes[name]
        if isinstance(node, Ask):
            return "question"
        return "to do" if isinstance(node, Act) else "end"
    return KINDS[kind]


def title_of(wall: Wall, key: str) -> str:
    """Return the title of a statement, with its numbers; KeyError where there is none such."""
    kind, name = parted(key)
    return _TITLES[kind](wall, name)


def lasting_title(wall: Wall, key: str) -> str:
    """Return a title that is the same in all units: of a number without its value."""
    kind, name = parted(key)
    return wall.fill(wall.guide.numbers[name].title) if kind == "number" else title_of(wall, key)


def _node(wall: Wall, name: str) -> str:
    node = wall.guide.nodes[name]
    return wall.fill(wall.guide.findings[node.finding].ask if isinstance(node, Ask) else node.title)


def _number(wall: Wall, name: str) -> str:
    return f"{wall.fill(wall.guide.numbers[name].title)}: {wall.number(name)}"


def source_named(source: Source) -> str:
    """Return a source by who wrote it and when, and its title."""
    who = who_wrote(source)
    return f"{who}: {source.title}" if who else source.title


def who_wrote(source: Source) -> str:
    """Return who wrote a source, and when; of many names the first, and how many more."""
    names = source.by.split(", ")
    surnames = all(" " not in name for name in names)
    by = f"{names[0]} and {len(names) - 1} others" if len(names) >= MANY and surnames else source.by
    return " ".join(part for part in (by, source.year) if part)


def worded(name: str) -> str:
    """Return a name as words: `no-heat-while-it-fits` is `No heat while it fits`."""
    words = name.replace("-", " ")
    return words[:1].upper() + words[1:]


_TITLES: dict[str, Callable[[Wall, str], str]] = {
    "guide": lambda wall, name: FRONT if name == "front" else FARM,
    "urgency": lambda wall, name: wall.fill(wall.guide.urgency(name).say),
    "topic": lambda wall, name: wall.fill(wall.guide.topics[name].title),
    "node": _node,
    "finding": lambda wall, name: wall.fill(wall.guide.findings[name].label),
    "number": _number,
    "how-to": lambda wall, name: wall.fill(wall.guide.how_tos[name].title),
    "rule": lambda wall, name: worded(wall.guide.rules[name].name),
    "sum": lambda wall, name: AMOUNTS[name].title,
    "duty": lambda wall, name: wall.fill(wall.guide.duties[name].title),
    "law": lambda wall, name: wall.guide.laws[name].where,
    "item": lambda wall, name: wall.fill(wall.guide.cupboard[name].title),
    "term": lambda wall, name: wall.guide.glossary[name].word,
    "source": lambda wall, name: source_named(wall.guide.sources[name]),
    "deed": lambda wall, name: wall.fill(wall.guide.deeds[name].do),
    "case": lambda wall, name: worded(wall.guide.cases[name].name),
    "map": lambda wall, name: f"The way through: {wall.fill(wall.guide.topics[name].title)}",
}
