"""What a part of the shipped guide loses by an own folder: all that was neither added nor made safer.

Only additions are free. A field that is not named here must be as it was, so that a field which a later
version adds is held too. Other words for a text stand in `words.yaml`, which keeps the figures.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, replace
from typing import Any

from triage.guide.model import Act, Ask, End, Guide, Node, Number, Step
from triage.guide.texts import steps_of

ADDED: Mapping[str, tuple[str, ...]] = {
    "Finding": ("choices", "stand_ins"),
    "Act": ("steps", "cautions", "must_say", "forget", "sources"),
    "End": ("do", "cautions", "must_say", "sources"),
    "HowTo": ("steps", "cautions", "need", "sources"),
    "Duty": ("do", "cautions", "sources"),
    "Law": ("says", "sources"),
    "Item": ("cautions", "words", "tags", "shows", "sources"),
    "Term": ("also",),
}
"""Fields that may be added to."""

SOONER = ("wait", "look_again")
"""Fields that name a time, which may become shorter."""

WAYS = ("finding", "branches", "then", "else_")
"""Fields that say where a lamb comes to: both guides are walked for that."""

FITTED: Mapping[str, tuple[str, ...]] = {"Item": ("first", "how_many", "at_hand", "dated")}
"""Fields that are a holding's own affair."""

CALLED: Mapping[str, str] = {
    "call_vet": "its words on when to call a vet",
    "for_": "what says for whom it is",
    "wait": "its wait, which is longer now",
    "look_again": "its next look, which is later now",
}
LISTED: Mapping[str, str] = {
    "cautions": "caution",
    "must_say": "words that must stand there,",
    "sources": "source",
    "forget": "question asked again,",
    "stand_ins": "stand-in",
}
"""How a field, and an entry of a list, is told."""


@dataclass(frozen=True)
class Losing:
    """What is lost between two guides."""

    base: Guide
    whole: Guide

    def of(self, before: Any, now: Any) -> Iterator[str]:
        """Yield what a part of the guide lost, each in a few words."""
        if type(before) is not type(now):
            yield "everything: it is gone, or of another kind"
            return
        kind = type(before).__name__
        ways = WAYS if isinstance(before, Ask | Act) else ()
        free = {"place", *ways, *FITTED.get(kind, ())}
        for each in (field.name for field in fields(before) if field.name not in free):
            old, new = getattr(before, each), getattr(now, each)
            if old == new or (not old and each in SOONER):
                continue
            if each in ADDED.get(kind, ()):
                yield from _dropped(each, old, new)
            elif each == "at_most":
                yield from (["a limit to its rounds"] if not 0 < new <= old else [])
            elif each == "urgency" and isinstance(before, End):
                yield from (["its urgency"] if self.whole.rank(new) > self.base.rank(old) else [])
            elif each not in SOONER or not self._sooner(old, new):
                yield _called(each)

    def _sooner(self, old: str, new: str) -> bool:
        if not new:
            return False
        was, now = self.base.numbers[old].quantity, self.whole.numbers[new].quantity
        return now.to(was.unit).value <= was.value


def _dropped(name: str, old: Any, new: Any) -> Iterator[str]:
    """Yield what is missing of a list or map that may only be added to."""
    if isinstance(old, Mapping):
        yield from (f"'{key}' as it was" for key, each in old.items() if new.get(key) != each)
    elif old and isinstance(old[0], Step):
        yield from _steps_dropped(old, new)
    else:
        yield from (f"the {LISTED.get(name, 'line')} '{each}'" for each in old if each not in new)


def _steps_dropped(old: tuple[Step, ...], new: tuple[Step, ...]) -> Iterator[str]:
    """Yield each step that is gone, or known to do less, or done in another way or order."""
    at = 0
    for step in old:
        found = next((i for i in range(at, len(new)) if new[i].do == step.do), None)
        if found is None:
            moved = any(each.do == step.do for each in new)
            yield f"the step '{step.do}'" + (" at its place" if moved else "")
            continue
        at = found + 1
        if not set(step.tag) <= set(new[found].tag):
            yield f"a tag of '{step.do}'"
        if step.how != new[found].how:
            yield f"the technique of '{step.do}'"


def _called(name: str) -> str:
    return CALLED.get(name, f"its '{name.rstrip('_')}' as it was")


def same_number(before: Number, now: Number) -> bool:
    """Whether two numbers differ at most in what may be fitted: value, note, and more that is published."""
    return all(
        getattr(before, each.name) == getattr(now, each.name)
        for each in fields(Number)
        if each.name not in ("value", "note", "published", "place")
    )


def within(before: Number, value: float) -> bool:
    """Whether a value lies inside what the shipped guide names as published."""
    spans = before.published.values()
    low, high = min(span[0] for span in spans), max(span[1] for span in spans)
    return min(low, before.value) <= value <= max(high, before.value)


def routing(node: object) -> object:
    """Return where a node sends a lamb, for telling whether that was changed."""
    return type(node), [getattr(node, each, None) for each in WAYS]


def with_signed(base: Guide, whole: Guide, signed: frozenset[str]) -> Guide:
    """Return the shipped guide with those changes of an own folder that a vet signed, and with no other.

    A signed question that leads to a page of the own folder which nobody signed stays as it was.
    """
    nodes = dict(base.nodes)
    waiting = {name: node for name, node in whole.nodes.items() if f"node/{name}" in signed}
    while waiting:
        known = nodes.keys() | waiting.keys()
        unfit = [name for name, node in waiting.items() if not _goes(node) <= known]
        if not unfit:
            break
        for name in unfit:
            del waiting[name]
    held: dict[str, Any] = {
        kind: {
            name: new if f"{key}/{name}" in signed else getattr(base, kind).get(name, new)
            for name, new in getattr(whole, kind).items()
        }
        for key, kind in (("number", "numbers"), ("finding", "findings"))
    }
    return replace(base, nodes=nodes | waiting, **held)


def _goes(node: Node) -> set[str]:
    if isinstance(node, Ask):
        return {branch.go for branch in node.branches}
    return {go for go in (node.then, node.else_) if go} if isinstance(node, Act) else set()


def not_on(before: Act | End, now: Act | End) -> Iterator[str]:
    """Yield the cautions and steps of a page that another page, to which the same lamb comes now, has not."""
    yield from (f"the caution '{text}'" for text in before.cautions if text not in now.cautions)
    kept = {step.do for step in steps_of(now)}
    yield from (f"the step '{step.do}'" for step in steps_of(before) if step.do not in kept)
