"""The statements of a guide: each thing that a vet reads, argues with and signs, with a digest of it.

A digest goes by meaning and wording alone: the names of fields and their values, in a settled order, without
places, comments or layout. Fields that are not filled in count for nothing, so that a field which a later
version of the program adds leaves every digest as it was.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import MISSING, Field, dataclass, fields, is_dataclass
from typing import Any

from triage.amounts import AMOUNTS, Amount
from triage.guide.model import NOT_PUBLISHED, PLACEHOLDER, Ask, Front, Guide, Node
from triage.problems import Place
from triage.review.probes import formula, worked

LONG = 20
"""Hexadecimal digits of a digest: 80 bits, far more than chance or haste can meet twice."""

LEANS: Mapping[str, Mapping[str, str]] = {
    "Ask": {"finding": "finding"},
    "Branch": {"below": "number", "up_to": "number", "at_least": "urgency"},
    "Step": {"how": "how-to"},
    "Act": {"wait": "number", "forget": "finding", "sources": "source", "for_": "finding"},
    "End": {"urgency": "urgency", "look_again": "number", "sources": "source", "for_": "finding"},
    "Condition": {"above": "number", "from_": "number", "below": "number", "up_to": "number"},
    "Finding": {"how": "how-to"},
    "Rises": {"by": "number"},
    "Number": {"published": "source"},
    "HowTo": {"sources": "source"},
    "Rule": {"sources": "source", "when": "finding"},
    "Trait": {"shows": "shown", "urgency": "urgency"},
    "Pages": {"shows": "shown", "end": "urgency"},
    "Duty": {"from_": "number", "until": "number", "every": "number", "sources": "source", "for_": "finding"},
    "Law": {"sources": "source", "ring_until": "number"},
    "Item": {"sources": "source", "shows": "shown"},
    "HowMany": {"each_lamb": "number"},
    "WrittenCase": {"findings": "finding", "vet_if": "finding", "right_if": "finding"},
    "Deed": {"shows": "shown", "against": "rule", "later_than": "urgency"},
}
"""For each part of a guide its fields that name another statement, and of which kind that is."""

UNLINKED = ("name", "topic", "place", "go", "story")
"""Fields that name no statement; the `{finding}` in a story is among the findings of its case."""

CUT_ANEW = ("edition", "date", "review_by")
"""What is other in each edition of the first page without saying anything about lambs."""


@dataclass(frozen=True)
class Statement:
    """One thing that the guidance says. `key` is its kind and name, as `node/chilled-feed`."""

    key: str
    title: str
    place: Place
    own: str
    """The digest of its own meaning and wording."""
    leans_on: tuple[str, ...] = ()
    """The keys of the statements whose change changes this one too."""
    beside: str = ""
    """The digest of what it shows that is not its own: how urgent the pages are that it leads to, and their
    titles; of a sum, what it gives for many lambs."""

    @property
    def kind(self) -> str:
        """What kind of statement it is."""
        return self.key.partition("/")[0]

    @property
    def name(self) -> str:
        """Its name among its kind."""
        return self.key.partition("/")[2]


def statements_of(guide: Guide) -> dict[str, Statement]:
    """Return every statement by its key, in reading order. The guide must have been read whole."""
    found: dict[str, Statement] = {}
    for key, title, value in _values(guide):
        beside = _digest(list(_leads(guide, value))) if isinstance(value, Ask) else ""
        place = getattr(value, "place", Place("guide.yaml"))
        leans = tuple(each for each in dict.fromkeys(leans_of(value)) if each != key)
        found[key] = Statement(key, title, place, _digest(_plain(value)), leans, beside)
    for name, amount in AMOUNTS.items():
        if set(amount.numbers) <= guide.numbers.keys() and set(amount.needs) <= guide.findings.keys():
            found[f"sum/{name}"] = _sum(guide, amount)
    return found


def values_of(guide: Guide) -> dict[str, Any]:
    """Return what each statement but a sum was made from: a part of the guide, by the statement's key."""
    return {key: value for key, _, value in _values(guide)}


def seals_of(statements: Mapping[str, Statement]) -> dict[str, str]:
    """Return for each statement the digest of it and of all that it leans on."""
    seals: dict[str, str] = {}

    def seal(key: str) -> str:
        if key not in seals:
            statement = statements[key]
            under = [[each, seal(each)] for each in sorted(statement.leans_on) if each in statements]
            seals[key] = _digest([statement.own, statement.beside, under])
        return seals[key]

    for key in statements:
        seal(key)
    return seals


def used_by(statements: Mapping[str, Statement]) -> dict[str, tuple[str, ...]]:
    """Return for each statement the keys of those that lean on it, in reading order."""
    found: dict[str, list[str]] = {key: [] for key in statements}
    for statement in statements.values():
        for each in statement.leans_on:
            if each in found:
                found[each].append(statement.key)
    return {key: tuple(each) for key, each in found.items()}


def _values(guide: Guide) -> Iterator[tuple[str, str, Any]]:
    """Yield the key, the title and the value of each statement but the sums."""
    yield "guide/front", guide.front.title, guide.front
    for urgency in guide.front.urgencies:
        yield f"urgency/{urgency.name}", urgency.say, urgency
    for topic in guide.topics.values():
        yield f"topic/{topic.name}", topic.title, topic
        for node in guide.by_topic.get(topic.name, ()):
            yield f"node/{node.name}", _titled(guide, node), node
    for finding in guide.findings.values():
        yield f"finding/{finding.name}", finding.label, finding
    many: tuple[tuple[str, Mapping[str, Any], str], ...] = (
        ("number", guide.numbers, "title"),
        ("how-to", guide.how_tos, "title"),
        ("rule", guide.rules, "because"),
        ("duty", guide.duties, "title"),
        ("law", guide.laws, "where"),
        ("item", guide.cupboard, "title"),
        ("term", guide.glossary, "word"),
        ("source", guide.sources, "title"),
        ("deed", guide.deeds, "do"),
        ("case", guide.cases, "story"),
    )
    for kind, values, title in many:
        for name, value in values.items():
            yield f"{kind}/{name}", getattr(value, title), value
    if guide.farm:
        yield "guide/farm", guide.farm.farm, guide.farm


def _titled(guide: Guide, node: Node) -> str:
    return guide.findings[node.finding].ask if isinstance(node, Ask) else node.title


def _leads(guide: Guide, node: Ask) -> Iterator[list[str]]:
    """Yield what stands at the end of each way out: the next question, or an end's urgency and title."""
    for branch in node.branches:
        target = guide.nodes[branch.go]
        yield [branch.go, getattr(target, "urgency", ""), _titled(guide, target)]


def _sum(guide: Guide, amount: Amount) -> Statement:
    """Return a sum as a statement. What it gives for many lambs tells when its formula is another one."""
    leans = [f"number/{each}" for each in amount.numbers]
    leans += [f"finding/{each}" for each in (*amount.needs, *amount.uses)]
    meant = formula(amount, guide)
    own = _digest([amount.title, amount.needs, amount.uses, amount.numbers, meant])
    gives = _digest(list(worked(amount, guide)))
    return Statement(f"sum/{amount.name}", amount.title, Place("sums"), own, tuple(leans), gives)


def _plain(value: Any) -> Any:
    """Return a value as lists, maps and texts, without places and without what is not filled in."""
    if is_dataclass(value):
        left_out = {"place", *(CUT_ANEW if isinstance(value, Front) else ())}
        kept = (each for each in fields(value) if each.name not in left_out)
        return {
            each.name: _plain(of) for each in kept if (of := getattr(value, each.name)) != _unfilled(each)
        }
    if isinstance(value, Mapping):
        return [[name, _plain(each)] for name, each in value.items()]
    if hasattr(value, "place") and hasattr(value, "text"):
        return value.text
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return value


def _unfilled(field: Field[Any]) -> Any:
    """Return what a field holds where nothing was written for it; a field that must be there has no such."""
    return field.default if field.default_factory is MISSING else field.default_factory()


def leans_of(value: Any, kind: str = "") -> Iterator[str]:
    """Yield the keys that a value names: by its fields, and by the `{names}` in its texts."""
    if is_dataclass(value):
        links = LEANS.get(type(value).__name__, {})
        for each in fields(value):
            if each.name not in UNLINKED:
                yield from leans_of(getattr(value, each.name), links.get(each.name, ""))
    elif isinstance(value, Mapping):
        for name, each in value.items():
            yield from (_named(kind, name) if kind else ())
            yield from leans_of(each)
    elif isinstance(value, tuple | list):
        for each in value:
            yield from leans_of(each, kind)
    elif isinstance(value, str):
        yield from _named(kind, value) if kind else _filled(value)


def _named(kind: str, name: str) -> Iterable[str]:
    if not name or name in NOT_PUBLISHED:
        return ()
    return (_shown(name),) if kind == "shown" else (f"{kind}/{name}",)


def _filled(text: str) -> Iterable[str]:
    return map(_shown, PLACEHOLDER.findall(text)) if "{" in text else ()


def _shown(name: str) -> str:
    return f"sum/{name}" if name in AMOUNTS else f"number/{name}"


def _digest(value: Any) -> str:
    written = json.dumps(value, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return hashlib.sha256(written.encode("utf-8", errors="surrogatepass")).hexdigest()[:LONG]
