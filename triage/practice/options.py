"""What a page says to do, and what a rule forbids there: the lines that a helper has to tell apart."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from triage.guide.model import PLACEHOLDER, Act, End, Guide, Rule
from triage.guide.model_practice import Deed
from triage.guide.texts import steps_of

Kind = Literal["step", "caution", "call", "deed"]


@dataclass(frozen=True)
class Option:
    """One line to choose or to leave: the page's own, or a deed that people are tempted to do."""

    name: str
    kind: Kind
    text: str
    rules: tuple[str, ...] = ()
    """The rules that ask for it where it is right, or forbid it where it is wrong."""
    right: bool = True


def own_lines(page: Act | End, rules: Iterable[Rule]) -> tuple[Option, ...]:
    """Return what a page says, each line with the rules that ask for something it says."""
    asking = [rule for rule in rules if rule.always and not rule.always.urgency]
    lines: list[tuple[Kind, str, tuple[str, ...]]] = [
        *(("step", step.do, step.tag) for step in steps_of(page)),
        *(("caution", text, ()) for text in page.cautions),
    ]
    if isinstance(page, End):
        lines.append(("call", page.call_vet, ()))
    bound: dict[int, list[str]] = {}
    for rule in asking:
        for at in _asked_for(rule, lines):
            bound.setdefault(at, []).append(rule.name)
    return tuple(
        Option(f"{kind}-{at}", kind, text, tuple(bound.get(at, ())))
        for at, (kind, text, _) in enumerate(lines)
    )


def _asked_for(rule: Rule, lines: Sequence[tuple[Kind, str, tuple[str, ...]]]) -> set[int]:
    """Return which lines a rule asks for: the first that has each thing it wants said, shown or done."""
    asked = rule.always
    assert asked is not None
    tests: list[Callable[[str, tuple[str, ...]], bool]]
    if asked.tag:
        tests = [lambda text, tags: not set(asked.tag).isdisjoint(tags)]
    elif asked.shows:
        tests = [lambda text, tags: not set(asked.shows).isdisjoint(PLACEHOLDER.findall(text))]
    else:
        tests = [_saying(word.lower()) for word in asked.says]
    found = (
        next((at for at, (_, text, tags) in enumerate(lines) if test(text, tags)), None) for test in tests
    )
    return {at for at in found if at is not None}


def _saying(word: str) -> Callable[[str, tuple[str, ...]], bool]:
    return lambda text, tags: word in text.lower()


def tempting(guide: Guide, rules: Iterable[Rule]) -> Iterator[Option]:
    """Yield each deed that a rule forbids for this lamb, with all the rules that do."""
    forbidding = [rule for rule in rules if rule.never]
    for name, deed in guide.deeds.items():
        against = tuple(rule.name for rule in forbidding if forbids(rule, deed))
        if against:
            yield Option(name, "deed", deed.do, against, right=False)


def forbids(rule: Rule, deed: Deed) -> bool:
    """Whether what a rule forbids is what a deed does."""
    never = rule.never
    if never is None:
        return False
    pairs = ((never.tag, deed.tag), (never.shows, deed.shows), (never.says, deed.says))
    return any(not set(one).isdisjoint(other) for one, other in pairs)


def idle(guide: Guide, page: Act | End, rules: Iterable[Rule]) -> Iterator[Option]:
    """Yield each deed that no rule forbids here and that the page does not ask for either."""
    there = {tag for step in steps_of(page) for tag in step.tag}
    wrong = {option.name for option in tempting(guide, rules)}
    for name, deed in guide.deeds.items():
        if deed.tag and name not in wrong and there.isdisjoint(deed.tag):
            yield Option(name, "deed", deed.do, right=False)
