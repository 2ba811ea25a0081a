"""What a page says to do, and what a rule forbids there: the lines that a helper has to tell apart."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from triage.guide.model import PLACEHOLDER, Act, End, Guide
from triage.guide.model_practice import Deed
from triage.guide.model_rules import Rule
from triage.guide.texts import steps_of
from triage.page.wall import SAID
from triage.walk import Walk

Kind = Literal["step", "caution", "call", "deed"]

_LEANING = re.compile(
    r"(?:If|Once|When|Then|Again|Else|After|Only|So|Not|Until|Do that|The same|It needs|It drinks|Newborn)\b"
    r"|[^?]*\?\s"
)
"""How a line begins that says nothing without the line before it, or is not for every such lamb."""


@dataclass(frozen=True)
class Option:
    """One line to choose or to leave: the page's own, or a deed that people are tempted to do."""

    name: str
    kind: Kind
    text: str
    rules: tuple[str, ...] = ()
    """The rules that a wrong one breaks."""
    right: bool = True


def own_lines(walk: Walk) -> tuple[Option, ...]:
    """Return the steps and the cautions of the page of a walk, in order.

    Where the answers on the way ask for more than the page does, the call comes first, as on the screen.
    """
    page = page_at(walk)
    urgency = walk.state.urgency
    asked = isinstance(page, End) and urgency != page.urgency
    call = (Option("call", "step", f"{walk.guide.urgency(urgency).say}."),) if asked else ()
    steps = (Option(f"step-{at}", "step", step.do) for at, step in enumerate(steps_of(page)))
    cautions = (Option(f"caution-{at}", "caution", text) for at, text in enumerate(page.cautions))
    return (*call, *steps, *cautions)


def page_at(walk: Walk) -> Act | End:
    """Return the page where the walk of a case has come to."""
    assert isinstance(walk.node, Act | End)
    return walk.node


def stands_alone(line: Option) -> bool:
    """Whether a line can be judged by itself, torn from its page: its words, and what it says how much of."""
    return not _LEANING.match(line.text) and not set(PLACEHOLDER.findall(line.text)) & SAID.keys()


def tempting(guide: Guide, rules: Iterable[Rule]) -> Iterator[Option]:
    """Yield each deed that breaks a rule which bears on this lamb, with all those rules."""
    bearing = tuple(rules)
    for name, deed in guide.deeds.items():
        broken = tuple(rule.name for rule in bearing if breaks(guide, deed, rule))
        if broken:
            yield Option(name, "deed", deed.do, broken, right=False)


def breaks(guide: Guide, deed: Deed, rule: Rule) -> bool:
    """Whether a deed does what a rule forbids, or goes against what it asks for."""
    never, always = rule.never, rule.always
    if never is None:
        asked = always.urgency if always else ""
        late = bool(asked and deed.later_than) and guide.rank(asked) <= guide.rank(deed.later_than)
        return late or rule.name in deed.against
    pairs = ((never.tag, deed.tag), (never.shows, deed.shows), (never.says, deed.says))
    return any(not set(one).isdisjoint(other) for one, other in pairs)


def idle(guide: Guide, page: Act | End, rules: Iterable[Rule]) -> Iterator[Option]:
    """Yield each deed that breaks no rule here and that the page does not ask for either."""
    there = {tag for step in steps_of(page) for tag in step.tag}
    wrong = {option.name for option in tempting(guide, rules)}
    for name, deed in guide.deeds.items():
        if deed.tag and name not in wrong and there.isdisjoint(deed.tag):
            yield Option(name, "deed", deed.do, right=False)
