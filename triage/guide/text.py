"""YAML text as maps, lists and texts that know their place; the only module that touches PyYAML.

The subset is small on purpose: no tags, anchors, aliases or merge keys, and every scalar stays
text until the model gives it a type, so `no`, `12:30` and `010` arrive as they were written.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import yaml

from triage.problems import Place, Problem

BIGGEST = 1_000_000
DEEPEST = 20

_FASTEST: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


_new = tuple.__new__
"""Makes a named tuple in half the time of its own name; a guide is twenty thousand of them."""


_Scalar, _Sequence = yaml.ScalarNode, yaml.SequenceNode


class _Loader(_FASTEST):  # type: ignore[misc]
    """Composes nodes and guesses no types: every scalar is text, so there is nothing to resolve."""

    def resolve(self, kind: object, value: object, implicit: object) -> str:
        return ""

    def descend_resolver(self, node: object, index: object) -> None:
        pass

    def ascend_resolver(self) -> None:
        pass


class Text(NamedTuple):
    """A scalar, as written."""

    text: str
    place: Place


class Items(NamedTuple):
    """A list."""

    items: tuple[Any, ...]
    place: Place


class Fields(NamedTuple):
    """A map; keys keep their own places."""

    fields: dict[str, Any]
    keys: dict[str, Place]
    place: Place


Written = Text | Items | Fields


class _Refused(Exception):
    def __init__(self, problem: Problem) -> None:
        self.problem = problem


def read_text(text: str, file: str, problems: list[Problem]) -> Fields | None:
    """Read one YAML file's text as a map, adding every refusal to `problems`."""
    start = Place(file)
    if len(text) > BIGGEST:
        size = f"the file has {len(text):,} characters; a knowledge file has at most {BIGGEST:,}"
        problems.append(Problem(start, size, "too-big"))
        return None
    try:
        refusal = _forbidden(text, file)
        if refusal:
            problems.append(refusal)
            return None
        node = yaml.compose(text, Loader=_Loader)
        if node is None:
            problems.append(Problem(start, "the file is empty; it should hold a map of names", "empty"))
            return None
        written = _build(node, file, problems, 0)
    except yaml.YAMLError as error:
        problems.append(_syntax(text, file, error))
        return None
    except _Refused as refused:
        problems.append(refused.problem)
        return None
    _warn_of_cut_texts(text, file, node, problems)
    if not isinstance(written, Fields):
        problems.append(
            Problem(written.place, "the file should be a map, with lines like 'name: ...'", "shape")
        )
        return None
    return written


def _forbidden(text: str, file: str) -> Problem | None:
    """Find the first anchor, alias, tag or second document, before anything is built from them.

    An alias bomb is harmless to parse and deadly to walk, so it is stopped at its first event.
    """
    if not any(sign in text for sign in "&*!") and "\n---" not in text:
        return None
    documents = 0
    for event in yaml.parse(text, Loader=_Loader):
        place = _place(event, file)
        if isinstance(event, yaml.AliasEvent):
            return Problem(place, "aliases (*name) are not used here; write it out again", "alias")
        if getattr(event, "anchor", None):
            return Problem(place, "anchors (&name) are not used here; write it out again", "anchor")
        if getattr(event, "tag", None) and getattr(event, "start_mark", None):
            return Problem(
                place, f"tags ({getattr(event, 'tag', '')}) are not used here; write plain text", "tag"
            )
        if isinstance(event, yaml.DocumentStartEvent):
            documents += 1
            if documents > 1:
                return Problem(
                    place, "a second document (---) begins here; use one file for each", "documents"
                )
    return None


def _build(node: Any, file: str, problems: list[Problem], depth: int) -> Written:
    mark = node.start_mark
    place = _new(Place, (file, mark.line + 1, mark.column + 1))
    if depth > DEEPEST:
        raise _Refused(Problem(place, f"nested more than {DEEPEST} deep; flatten it", "too-deep"))
    kind = type(node)
    if kind is _Scalar:
        return _new(Text, (node.value, place))
    if kind is _Sequence:
        return Items(tuple([_build(each, file, problems, depth + 1) for each in node.value]), place)
    return _build_map(node, file, problems, depth, place)


def _build_map(node: Any, file: str, problems: list[Problem], depth: int, place: Place) -> Fields:
    fields: dict[str, Written] = {}
    keys: dict[str, Place] = {}
    depth += 1
    for key_node, value_node in node.value:
        mark = key_node.start_mark
        at = _new(Place, (file, mark.line + 1, mark.column + 1))
        if type(key_node) is not _Scalar:
            problems.append(Problem(at, "a name should be plain text, not a list or a map", "key"))
            continue
        key = key_node.value
        if key == "<<":
            problems.append(Problem(at, "merge keys (<<) are not used here; write it out again", "merge-key"))
            continue
        if key in keys:
            first = f"line {keys[key].line}, column {keys[key].column}"
            problems.append(
                Problem(at, f"'{key}' is here twice, first at {first}; keep one", "duplicate-key")
            )
            continue
        keys[key] = at
        fields[key] = _build(value_node, file, problems, depth)
    return Fields(fields, keys, place)


def _place(node: Any, file: str) -> Place:
    mark = node.start_mark
    return _new(Place, (file, mark.line + 1, mark.column + 1))


def _syntax(text: str, file: str, error: yaml.YAMLError) -> Problem:
    """Parse again with the Python loader, whose message is plainer than the C loader's.

    Not where the C loader stopped at its own depth: the Python loader has none, and takes minutes.
    """
    mark = getattr(error, "problem_mark", None)
    if mark and "nesting" in str(error):
        deep = Place(file, mark.line + 1, mark.column + 1)
        return Problem(deep, f"nested more than {DEEPEST} deep; flatten it", "too-deep")
    try:
        for _ in yaml.parse(text, Loader=yaml.SafeLoader):
            pass
    except yaml.YAMLError as plainer:
        error = plainer
    except RecursionError:
        pass
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    place = Place(file, mark.line + 1, mark.column + 1) if mark else _unreadable_at(text, file, error)
    said = " ".join(
        part for part in (getattr(error, "context", None), getattr(error, "problem", None)) if part
    )
    said = said or str(getattr(error, "reason", "")) or "it can't be read"
    hint = "; check the indenting, and put texts that hold ': ' or start with a sign in \"quotes\""
    return Problem(place, f"not YAML: {said}{hint}", "syntax")


def _unreadable_at(text: str, file: str, error: yaml.YAMLError) -> Place:
    before = text[: getattr(error, "position", 0) or 0]
    return Place(file, before.count("\n") + 1, len(before) - before.rfind("\n"))


def _warn_of_cut_texts(text: str, file: str, root: Any, problems: list[Problem]) -> None:
    """Warn where an unquoted text ends at ' #': YAML takes the rest for a comment, silently."""
    if " #" not in text:
        return
    lines = text.split("\n")
    waiting = [root]
    while waiting:
        node = waiting.pop()
        if isinstance(node, yaml.MappingNode):
            waiting += [value for _, value in node.value]
        elif isinstance(node, yaml.SequenceNode):
            waiting += node.value
        elif not node.style and node.value and " " in node.value:
            end = node.end_mark
            if lines[end.line][end.column :].lstrip(" ").startswith("#"):
                place = Place(file, end.line + 1, end.column + 1)
                what = "the text is cut here: ' #' begins a comment; put the whole text in \"quotes\""
                problems.append(Problem(place, what, "cut-text", "warning"))
