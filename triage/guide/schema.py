"""JSON Schema of the knowledge files, made from the table that the reader obeys.

An editor that knows YAML completes and warns by it while somebody types. Draft 7 is what such editors
know best. A schema says less than the reader: what hangs on another file, or on how a number is spelled,
is left to `triage check`, and `tests/guide/test_schema.py` lists it.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import singledispatch
from typing import Any

from triage.guide import fields, model
from triage.guide.leaves import AsTyped, Day, Decimal, OneOf, Plain, Prose, Ref, Span, Whole, Yes
from triage.guide.notes import FILE_NOTES, NOTES
from triage.guide.shapes import NAME, ListOf, MapOf, Record

Schema = dict[str, Any]

_SAYS_SOMETHING = r"(?=[\s\S]*\S)"
_NAME = {
    "type": "string",
    "pattern": f"^{NAME.pattern}$",
    "patternErrorMessage": "A name is lower-case letters, digits and single hyphens.",
}
_DECIMAL = {
    "type": ["number", "string"],
    "pattern": r"^-?([0-9]+\.?[0-9]*|\.[0-9]+)$",
    "patternErrorMessage": "This should be a plain number, like 37.0.",
}


def _text(pattern: str, says: str) -> Schema:
    """Return the schema of a text.

    Without quotes YAML makes a number of `2026.1` and a truth value of `true`, which are text to us. A
    truth value is let through by a detour, as an editor would offer it in each text if it were named.
    """
    text = {"type": ["string", "number"], "pattern": pattern, "patternErrorMessage": says}
    return {"anyOf": [text, {"if": {"type": "boolean"}, "else": False}]}


@dataclass
class Book:
    """One schema in the making: the names known for each kind, and the definitions used so far.

    Without names, whatever could be a name is allowed.
    """

    names: Mapping[str, Iterable[str]] = field(default_factory=dict)
    definitions: dict[str, Schema] = field(default_factory=dict)

    def known(self, kinds: tuple[str, ...]) -> list[str] | None:
        """Return the names of these kinds in order, or None where names are left out."""
        if not self.names:
            return None
        return sorted({name for kind in kinds for name in self.names.get(kind, ())})

    def define(self, name: str, schema: Schema) -> Schema:
        """Keep a schema that many fields share, and return a reference to it."""
        key = name.replace(" ", "-")
        if self.definitions.setdefault(key, schema) != schema:
            raise ValueError(f"two schemas would be called '{key}'; give one of the records another name")
        return {"$ref": f"#/definitions/{key}"}


_PLAIN = _text(r"\S", "Write a text.")


@singledispatch
def schema_of(shape: object, book: Book) -> Schema:
    """Return the JSON Schema of what a shape reads."""
    raise TypeError(f"schema.py has no schema for a {type(shape).__name__}; register one there")


@schema_of.register
def _day(shape: Day, book: Book) -> Schema:
    return {
        "type": "string",
        "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$",
        "patternErrorMessage": 'Write a day year first, in quotes, like "2027-01-31".',
    }


@schema_of.register
def _plain(shape: Plain, book: Book) -> Schema:
    return dict(_PLAIN)


@schema_of.register
def _as_typed(shape: AsTyped, book: Book) -> Schema:
    return dict(_PLAIN)


@schema_of.register
def _prose(shape: Prose, book: Book) -> Schema:
    kinds = " or ".join(shape.fills)
    known = book.known(shape.fills)
    inside = "[^{}]+" if known is None else "|".join(filter(NAME.fullmatch, known))
    fill = rf"|\{{(?:{inside})\}}" if shape.fills and inside else ""
    says = f"A name in braces is the name of a {kinds}." if kinds else "No name in braces can stand here."
    text = _text(rf"^{_SAYS_SOMETHING}(?:[^{{}}]{fill})*$", f"Write a text. {says}")
    return book.define(f"text with {kinds}" if kinds else "text without numbers", text)


@schema_of.register
def _ref(shape: Ref, book: Book) -> Schema:
    return _names(shape.kinds, book)


def _names(kinds: tuple[str, ...], book: Book) -> Schema:
    known = book.known(kinds)
    if known is None:
        return dict(_PLAIN)
    kind = " or ".join(kinds)
    says = f"There is no {kind} of this name. If it is new, save its file and run 'triage schema'."
    return book.define(f"name of {kind}", {"enum": known, "errorMessage": says})


@schema_of.register
def _one_of(shape: OneOf, book: Book) -> Schema:
    return {"enum": list(shape.words)}


@schema_of.register
def _decimal(shape: Decimal, book: Book) -> Schema:
    return dict(_DECIMAL)


@schema_of.register
def _whole(shape: Whole, book: Book) -> Schema:
    return {
        "type": ["integer", "string"],
        "minimum": 1,
        "maximum": 999_999,
        "pattern": "^[1-9][0-9]{0,5}$",
        "patternErrorMessage": "This should be a whole number of 1 or more.",
    }


@schema_of.register
def _yes(shape: Yes, book: Book) -> Schema:
    return {"enum": [True, "true"]}


@schema_of.register
def _span(shape: Span, book: Book) -> Schema:
    pair = {"type": "array", "items": _DECIMAL, "minItems": 2, "maxItems": 2}
    return {"anyOf": [_DECIMAL, pair]} if shape.or_one else pair


@schema_of.register(ListOf)
def _list(shape: ListOf[Any], book: Book) -> Schema:
    each = schema_of(shape.each, book)
    several = {"type": "array", "items": each, "minItems": 1}
    return {"anyOf": [each, several]} if shape.or_one else several


@schema_of.register(MapOf)
def _map(shape: MapOf[Any], book: Book) -> Schema:
    keys = _names(shape.ref, book) if shape.ref else _NAME
    return {"minProperties": 1, **_keyed(keys, schema_of(shape.each, book))}


@schema_of.register(Record)
def _record(shape: Record[Any], book: Book) -> Schema:
    return book.define(shape.what, _with_fields(shape, book, {}))


def _with_fields(record: Record[Any], book: Book, first: Mapping[str, Schema]) -> Schema:
    """Return a record's schema; `first` are fields that the reader takes off before it reads the rest."""
    notes = NOTES.get(record.what, {})
    written = {**first, **{name: schema_of(shape, book) for name, (shape, _) in record.shapes.items()}}
    schema: Schema = {
        "title": record.what,
        "type": "object",
        "properties": {
            name: {"description": notes[name], **each} if name in notes else each
            for name, each in written.items()
        },
        "required": [*first, *record.must],
        "additionalProperties": False,
    }
    if record.limits:
        schema["allOf"] = [limit.schema() for limit in record.limits]
    return schema


def _keyed(keys: Schema, each: Schema) -> Schema:
    return {"type": "object", "propertyNames": keys, "additionalProperties": each}


def _entries(record: Record[Any], keys: Schema = _NAME) -> Callable[[Book], Schema]:
    """Return the maker for a file that holds a record under each name."""
    return lambda book: _keyed(keys, schema_of(record, book))


def _guide(book: Book) -> Schema:
    return _with_fields(fields.FRONT, book, {})


def _topic(book: Book) -> Schema:
    head: Record[model.Topic] = Record(
        "topic", model.Topic, {name: each for name, each in fields.TOPIC_FIELDS.items() if name != "topic"}
    )
    node = {"oneOf": [schema_of(record, book) for record in fields.NODES.values()]}
    return _with_fields(head, book, {"topic": _NAME, "nodes": _keyed(_NAME, node)})


def _how_to(book: Book) -> Schema:
    return _with_fields(fields.HOW_TO, book, {"how-to": _NAME})


def _changes(book: Book) -> Schema:
    key = _text(r"^[^/]+/.+$", "Write a statement as kind/name, like number/severe-chill.")
    several = {"anyOf": [key, {"type": "array", "items": key, "minItems": 1}]}
    reason = {
        "type": "object",
        "properties": {"of": several, "why": dict(_PLAIN)},
        "required": ["of", "why"],
        "additionalProperties": False,
    }
    return _keyed({"type": "string"}, {"type": "array", "items": reason})


FILES: dict[str, Callable[[Book], Schema]] = {
    "guide": _guide,
    "findings": _entries(fields.FINDING),
    "topic": _topic,
    "how-to": _how_to,
    "numbers": _entries(fields.NUMBER),
    "glossary": _entries(fields.TERM, {"type": "string"}),
    "sources": _entries(fields.SOURCE),
    "rules": _entries(fields.RULE),
    "rearing": _entries(fields.DUTY),
    "laws": _entries(fields.LAW),
    "cupboard": _entries(fields.ITEM),
    "practice": _entries(fields.CASE),
    "deeds": _entries(fields.DEED),
    "farm": lambda book: _with_fields(fields.FARM, book, {}),
    "changes": _changes,
}
"""A schema for each kind of file, by the name it is kept under."""

_IN_FOLDERS = {"findings": "findings", "topics": "topic", "how-to": "how-to", "practice": "practice"}


def schema_name(path: str) -> str:
    """Return the schema for a file, by its path inside the knowledge folder."""
    folder, _, file = path.rpartition("/")
    return _IN_FOLDERS[folder] if folder else file.partition(".")[0]


def file_schema(name: str, names: Mapping[str, Iterable[str]] | None = None) -> Schema:
    """Return the whole schema of one kind of file; with `names`, only those can be referred to."""
    book = Book(names or {})
    schema = FILES[name](book)
    return {
        "$schema": "http://json-schema.org/draft-07/schema#",
        "$comment": "Made by 'triage schema' from triage/guide/fields.py; do not edit.",
        "description": FILE_NOTES[name],
        **schema,
        "definitions": dict(sorted(book.definitions.items())),
    }


def schema_texts(names: Mapping[str, Iterable[str]] | None = None) -> dict[str, str]:
    """Return the schemas as they are kept: a text for each file name."""
    return {f"{name}.json": _text_of(file_schema(name, names)) for name in FILES}


def _text_of(schema: Schema) -> str:
    return json.dumps(schema, indent=2, ensure_ascii=False) + "\n"
