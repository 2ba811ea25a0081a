"""Reading a knowledge folder: every file, every mistake, in one run."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from typing import Any

from triage.amounts import AMOUNTS
from triage.guide import fields, model, model_practice, model_rearing, model_rules
from triage.guide.files import list_files, own_files
from triage.guide.find import Folder
from triage.guide.fitting import fitted, layered
from triage.guide.items import Item
from triage.guide.leaves import Plain
from triage.guide.links import look_up
from triage.guide.model import Read
from triage.guide.partial import whole_parts
from triage.guide.resting import collector_at_rest
from triage.guide.shapes import NAME, Reading, Record
from triage.guide.text import BIGGEST, Fields, Text, Written, read_text
from triage.guide.wanted import EVERYTHING, Part, is_wanted
from triage.problems import Place, errors


@dataclass
class _Parts:
    """The pieces gathered so far, by name."""

    fronts: dict[str, model.Front]
    topics: dict[str, model.Topic]
    findings: dict[str, model.Finding]
    nodes: dict[str, model.Node]
    numbers: dict[str, model.Number]
    how_tos: dict[str, model.HowTo]
    glossary: dict[str, model.Term]
    sources: dict[str, model.Source]
    rules: dict[str, model_rules.Rule]
    duties: dict[str, model_rearing.Duty]
    laws: dict[str, model_rearing.Law]
    cupboard: dict[str, Item]
    cases: dict[str, model_practice.WrittenCase]
    deeds: dict[str, model_practice.Deed]
    farms: dict[str, model_practice.Farm]


_DEFINED_IN = {
    "guide.yaml": {"urgency", "act tag"},
    "numbers.yaml": {"number"},
    "sources.yaml": {"source"},
    "findings": {"finding"},
    "topics": {"topic", "node"},
    "how-to": {"how-to"},
    "practice": {"case"},
    "rules.yaml": {"rule"},
}
"""The kinds of names that each file or folder defines."""


FARM = "farm.yaml"

_PROOF_ONLY = re.compile(r"^    (?:for|must_say):.*\n(?:      .*\n)*", re.MULTILINE)
"""A field of a page that only the check goes by, as it is written in a topic."""


@collector_at_rest()
def read_guide(folder: Folder, also: AbstractSet[Part] = EVERYTHING, own: Folder | None = None) -> Read:
    """Read a knowledge folder. Never raises for anything that is in it, or missing from it.

    A walk goes by no rule and by nothing that says which lambs a page is for, raises no lamb and opens no
    cupboard, so the way to a question may leave all that out; what is proved needs it. What `own` holds is
    laid over the guide, entry by entry (`fitting.py`); its places begin with `own/`.
    """
    files, mine = list_files(folder), own_files(own)
    if isinstance(files, str) or isinstance(mine, str):
        return Read(None, (), files if isinstance(files, str) else str(mine))
    reading = Reading(proof="proof" in also)
    parts = _Parts({}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {})
    for name, layers in layered(files, mine):
        if not is_wanted(name, also):
            continue
        written = fitted([read_file(place, file, reading) for place, file in layers], reading)
        if written is None:
            reading.unread |= _DEFINED_IN.get(name.partition("/")[0], set())
        else:
            _place_file(name, written, parts, reading)
    look_up(reading, _names(parts), parts)
    problems = tuple(sorted(set(reading.problems)))
    front = parts.fronts.get("guide.yaml")
    if front is None:
        return Read(None, problems)
    if errors(problems):
        return Read(None, problems, part=whole_parts(front, parts))
    return Read(_whole(front, parts), problems)


def _whole(front: model.Front, parts: _Parts) -> model.Guide:
    return model.Guide(
        front,
        {name: parts.topics[name] for name in front.topics},
        parts.findings,
        parts.nodes,
        parts.numbers,
        parts.how_tos,
        parts.glossary,
        parts.sources,
        parts.rules,
        parts.duties,
        parts.laws,
        parts.cupboard,
        parts.cases,
        parts.deeds,
        parts.farms.get(FARM),
    )


def read_file(name: str, file: Folder, reading: Reading) -> Fields | None:
    """Read one file as a map, or add why it can't be read."""
    try:
        with file.open("rb") as opened:
            raw = opened.read(BIGGEST * 4 + 1)
        text = raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        reading.wrong(Place(name, line), "not UTF-8 text; save the file as UTF-8", "encoding")
        return None
    except OSError as error:
        reading.wrong(Place(name), f"the file can't be read: {error.strerror or error}", "unreadable")
        return None
    if not reading.proof and name.startswith("topics/"):
        # Half the time goes by the sign, so they are not even parsed; every other line keeps its number.
        text = _PROOF_ONLY.sub(lambda field: "\n" * field[0].count("\n"), text)
    return read_text(text, name, reading.problems)


def _place_file(name: str, written: Fields, parts: _Parts, reading: Reading) -> None:
    folder = name.rpartition("/")[0]
    keyed: dict[str, tuple[dict[str, Any], Record[Any], str]] = {
        "numbers.yaml": (parts.numbers, fields.NUMBER, "name"),
        "glossary.yaml": (parts.glossary, fields.TERM, "word"),
        "sources.yaml": (parts.sources, fields.SOURCE, "name"),
        "rules.yaml": (parts.rules, fields.RULE, "name"),
        "rearing.yaml": (parts.duties, fields.DUTY, "name"),
        "laws.yaml": (parts.laws, fields.LAW, "name"),
        "cupboard.yaml": (parts.cupboard, fields.ITEM, "name"),
        "deeds.yaml": (parts.deeds, fields.DEED, ""),
    }
    if name == "guide.yaml":
        front = fields.FRONT.read(written, reading)
        if front is None:
            reading.unread |= _DEFINED_IN[name]
        else:
            parts.fronts[name] = front
    elif name in keyed:
        _read_entries(written, reading, *keyed[name])
    elif name == FARM:
        farm = fields.FARM.read(written, reading)
        parts.farms |= {name: farm} if farm else {}
    elif folder == "findings":
        _read_entries(written, reading, parts.findings, fields.FINDING, "name")
    elif folder == "practice":
        _read_entries(written, reading, parts.cases, fields.CASE, "name")
    elif folder == "topics":
        _read_topic(written, parts, reading)
    elif folder == "how-to":
        _read_how_to(written, parts, reading)
    else:
        what = "no place for this file; findings, topics, how-tos and practice have folders of those names"
        reading.wrong(Place(written.place.file), what, "stray-file")


def _read_entries(
    written: Fields, reading: Reading, into: dict[str, Any], record: Record[Any], named: str
) -> None:
    for name, value in written.fields.items():
        if named != "word":
            _check_name(name, written.keys[name], reading)
        place = written.keys[name]
        given = {named: name, "place": place} if named else {"place": place}
        _add(into, name, place, record.read_with(value, reading, given), reading)


def _check_name(name: str, place: Place, reading: Reading) -> None:
    if not NAME.fullmatch(name):
        what = f"'{name}' should be lower-case letters, digits and single hyphens"
        reading.wrong(place, what, "name")


def _add(into: dict[str, Any], name: str, place: Place, value: Any, reading: Reading) -> None:
    if name in into:
        first = into[name].place
        reading.wrong(place, f"'{name}' is already defined at {first}; rename one", "duplicate-name")
    elif value is None:
        reading.broken.add(name)
    else:
        into[name] = value


def _read_topic(written: Fields, parts: _Parts, reading: Reading) -> None:
    name = _own_name(written, "topic", reading)
    head = {key: value for key, value in written.fields.items() if key != "nodes"}
    shapes = {key: shape for key, shape in fields.TOPIC_FIELDS.items() if key != "topic"}
    record: Record[model.Topic] = Record("topic", model.Topic, shapes)
    rest = {key: value for key, value in head.items() if key != "topic"}
    topic = record.read_with(Fields(rest, written.keys, written.place), reading, {"name": name})
    _add(parts.topics, name, written.keys.get("topic", written.place), topic, reading)
    nodes = written.fields.get("nodes")
    if nodes is None:
        reading.wrong(written.place, "this topic lacks 'nodes'", "missing-field")
    elif not isinstance(nodes, Fields):
        reading.wrong(nodes.place, "'nodes' should be a map, each node under its name")
    else:
        for node_name, value in nodes.fields.items():
            _check_name(node_name, nodes.keys[node_name], reading)
            place = nodes.keys[node_name]
            node = _read_node(value, {"name": node_name, "topic": name, "place": place}, reading)
            _add(parts.nodes, node_name, place, node, reading)


def _read_node(value: Written, given: Mapping[str, Any], reading: Reading) -> model.Node | None:
    if not isinstance(value, Fields):
        reading.wrong(value.place, "a node should be a map that begins with 'ask', 'act' or 'end'")
        return None
    kinds = [kind for kind in fields.NODES if kind in value.fields]
    if len(kinds) != 1:
        found = " and ".join(f"'{kind}'" for kind in kinds) or "none of them"
        reading.wrong(value.place, f"a node has exactly one of 'ask', 'act' and 'end'; this has {found}")
        return None
    return fields.NODES[kinds[0]].read_with(value, reading, given)


def _read_how_to(written: Fields, parts: _Parts, reading: Reading) -> None:
    name = _own_name(written, "how-to", reading)
    rest = {key: value for key, value in written.fields.items() if key != "how-to"}
    how_to = fields.HOW_TO.read_with(Fields(rest, written.keys, written.place), reading, {"name": name})
    _add(parts.how_tos, name, written.keys.get("how-to", written.place), how_to, reading)


def _own_name(written: Fields, key: str, reading: Reading) -> str:
    """Return the name a file gives itself, under its first key."""
    value = written.fields.get(key)
    if value is None:
        reading.wrong(written.place, f"this file lacks '{key}', its own name", "missing-field")
        return ""
    name = Plain().read(value, reading) or ""
    if name and isinstance(value, Text):
        _check_name(name, value.place, reading)
    return name


def _names(parts: _Parts) -> dict[str, Iterable[str]]:
    """Return every name that may be mentioned, by kind."""
    front = parts.fronts.get("guide.yaml")
    return {
        "finding": parts.findings,
        "node": parts.nodes,
        "topic": parts.topics,
        "number": parts.numbers,
        "how-to": parts.how_tos,
        "source": (*parts.sources, *model.NOT_PUBLISHED),
        "urgency": [each.name for each in front.urgencies] if front else (),
        "act tag": front.act_tags if front else (),
        "amount": AMOUNTS,
        "case": parts.cases,
        "rule": parts.rules,
    }
