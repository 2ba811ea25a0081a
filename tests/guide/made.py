"""Knowledge files made at random from the table of fields, sound ones and spoiled ones.

A tree is what a file says: texts, lists and maps. `emit` writes it as YAML in flow style.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import singledispatch
from typing import Any

from hypothesis import strategies as st

from triage.guide import fields
from triage.guide.leaves import Day, Decimal, OneOf, Plain, Prose, Ref, Span, Whole, Yes
from triage.guide.limits import ExactlyOne, Lacks, Needs, NotBoth
from triage.guide.shapes import ListOf, MapOf, Record

Tree = Any
Made = st.SearchStrategy[Tree]
Names = Mapping[str, frozenset[str]]

_WORDS = [
    "limp",
    "warm",
    "Warm it.",
    "2026.1",
    "12",
    "no",
    "true",
    "yes",
    "12:30",
    "2026-01-01",
    "a: b # c",
    "ünïcode",
]
_NAMED = st.sampled_from(["red", "blue-green", "x1"])


@singledispatch
def made(shape: object, names: Names) -> Made:
    """Return what a shape could be written as, with names that exist."""
    raise TypeError(f"nothing is made for a {type(shape).__name__} yet; add it here")


@made.register
def _plain(shape: Plain, names: Names) -> Made:
    return st.sampled_from(_WORDS)


@made.register
def _day(shape: Day, names: Names) -> Made:
    return st.dates().map(str)


@made.register
def _prose(shape: Prose, names: Names) -> Made:
    known = sorted({name for kind in shape.fills for name in names[kind]})
    filled = st.sampled_from(known).map("Give {{{}}} now.".format) if known else st.nothing()
    return st.sampled_from(_WORDS) | filled


@made.register
def _ref(shape: Ref, names: Names) -> Made:
    return _known(shape.kinds, names)


def _known(kinds: tuple[str, ...], names: Names) -> st.SearchStrategy[str]:
    return st.sampled_from(sorted({name for kind in kinds for name in names[kind]}))


@made.register
def _one_of(shape: OneOf, names: Names) -> Made:
    return st.sampled_from(shape.words)


@made.register
def _decimal(shape: Decimal, names: Names) -> Made:
    return st.sampled_from(["37", "37.0", "-1.5", ".5", "5.", "0"])


@made.register
def _whole(shape: Whole, names: Names) -> Made:
    return st.sampled_from(["1", "2", "999999"])


@made.register
def _yes(shape: Yes, names: Names) -> Made:
    return st.just("true")


@made.register
def _span(shape: Span, names: Names) -> Made:
    pair = st.sampled_from([["25", "43"], ["-1.5", ".5"], ["36", "36"]])
    return pair | _decimal(Decimal(), names) if shape.or_one else pair


@made.register(ListOf)
def _list(shape: ListOf[Any], names: Names) -> Made:
    each = made(shape.each, names)
    several = st.lists(each, min_size=1, max_size=2)
    return each | several if shape.or_one else several


@made.register(MapOf)
def _map(shape: MapOf[Any], names: Names) -> Made:
    keys = _known(shape.ref, names) if shape.ref else _NAMED
    return st.dictionaries(keys, made(shape.each, names), min_size=1, max_size=2)


@made.register(Record)
def _record(shape: Record[Any], names: Names) -> Made:
    each = {name: made(field, names) for name, (field, _) in shape.shapes.items()}
    must = {name: each[name] for name in shape.must}
    may = {name: each[name] for name in shape.may}
    plain = st.fixed_dictionaries(must, optional=may)
    kept = st.builds(_Keeping(shape, each).kept, plain, st.data())
    return kept | plain


@dataclass(frozen=True)
class _Keeping:
    """Makes a record keep its limits, as fields drawn one by one rarely would."""

    record: Record[Any]
    each: Mapping[str, Made]

    def kept(self, tree: dict[str, Tree], data: st.DataObject) -> dict[str, Tree]:
        for limit in self.record.limits:
            match limit:
                case ExactlyOne(kinds):
                    self._one(tree, data.draw(st.sampled_from(kinds)), kinds, data)
                case Needs(field, other) if field in tree and other not in tree:
                    tree[other] = data.draw(self.each[other])
                case NotBoth(field, other) if field in tree:
                    tree.pop(other, None)
                case Lacks(field, inner) if isinstance(tree.get(field), dict):
                    tree[field].pop(inner, None)
        return tree

    def _one(
        self,
        tree: dict[str, Tree],
        kind: tuple[str, ...],
        kinds: tuple[tuple[str, ...], ...],
        data: st.DataObject,
    ) -> None:
        for field in (field for other in kinds if other != kind for field in other):
            tree.pop(field, None)
        if not tree.keys() & set(kind):
            tree[kind[0]] = data.draw(self.each[kind[0]])


def topics(names: Names) -> Made:
    """Return topic files of one node."""
    nodes = st.one_of(*(made(record, names) for record in fields.NODES.values()))
    head = {name: made(shape, names) for name, shape in fields.TOPIC_FIELDS.items()}
    return st.fixed_dictionaries(
        head | {"topic": st.just("made"), "nodes": st.dictionaries(_NAMED, nodes, min_size=1, max_size=2)}
    )


def how_tos(names: Names) -> Made:
    """Return how-to files."""
    return made(fields.HOW_TO, names).map(lambda tree: {"how-to": "made", **tree})


_SPOILS: list[Tree] = [
    "words here",
    "",
    "  ",
    "12",
    "true",
    "{gone}",
    "{chill",
    "x}",
    [],
    {},
    ["a", "b"],
    {"a": "b"},
]
_STRANGE = sorted(
    {"bogus", *(name for each in vars(fields).values() if isinstance(each, Record) for name in each.shapes)}
)


@st.composite
def spoiled(draw: st.DrawFn, tree: Tree) -> Tree:
    """Return a tree with one thing changed: left out, put in, renamed, or written otherwise."""
    tree = json.loads(json.dumps(tree))
    holder, key = draw(st.sampled_from(_places(tree)))
    if isinstance(holder, list):
        holder[key] = draw(st.sampled_from(_SPOILS))
        return tree
    match draw(st.sampled_from(["leave out", "put in", "rename", "empty", "write", "wrap"])):
        case "leave out":
            del holder[key]
        case "put in":
            holder[draw(st.sampled_from(_STRANGE))] = draw(st.sampled_from([*_SPOILS, "chill", "danger"]))
        case "rename":
            holder[draw(st.sampled_from(["Bad Name", "red", *_STRANGE]))] = holder.pop(key)
        case "empty":
            holder[key] = type(holder[key])()
        case "wrap":
            holder[key] = [holder[key]]
        case _:
            holder[key] = draw(st.sampled_from(_SPOILS))
    return tree


def _places(tree: Tree) -> list[tuple[Any, Any]]:
    """List every place in a tree as the map or list that holds it, and its key or index."""
    inner = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    return [place for key, each in inner for place in [(tree, key), *_places(each)]]


_BARE = re.compile(r"(?![-+.]?[0-9]+[eE])[A-Za-zü0-9.-][A-Za-z0-9ü .:-]*(?<![ :])")
_OWN = ("topic", "how-to")


def emit(tree: Tree, bare: bool) -> str:
    """Write a tree as YAML; `bare` leaves out the quotes where that says the same to an editor.

    It says something else for a file's own name that looks like a number; such a name needs its quotes.
    """
    if isinstance(tree, dict):
        inner = (
            f"{_scalar(key, bare=False)}: {emit(each, bare and key not in _OWN)}"
            for key, each in tree.items()
        )
        return f"{{{', '.join(inner)}}}"
    if isinstance(tree, list):
        return f"[{', '.join(emit(each, bare) for each in tree)}]"
    return _scalar(tree, bare)


def _scalar(text: str, bare: bool) -> str:
    return text if bare and _BARE.fullmatch(text) else json.dumps(text, ensure_ascii=False)
