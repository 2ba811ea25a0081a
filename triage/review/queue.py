"""What a vet should read next: by what changed, by what could do most harm, by what was read longest ago.

It is cut to an evening. How long a statement takes is reckoned from its words, at a pace at which figures can
be weighed, and each asks for a decision.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from triage.guide.model import Act, Ask, Branch, End, Guide
from triage.guide.rewording import texts_of_value
from triage.guide.texts import finding_texts, steps_of
from triage.review.standing import Review
from triage.review.statements import values_of

EVENING = 90.0
"""Minutes after which nobody weighs a figure any more; a rough allowance, from memory."""

PACE = 150.0
"""Words a minute at which a text is weighed and not only read: from memory, below the usual 200 to 250."""

DECIDING = 0.25
"""Minutes for each decision."""

INTO = frozenset({"feed-by-mouth", "tube-feed", "medicine", "vet-injection"})
"""Tags of steps that put something into a lamb."""

RISKS = (
    "can do harm at once: what is put into a lamb, and what decides that",
    "can do harm by delay: who is kept from a vet",
    "is asked or looked at on the way",
    "explains, lists or names",
)
"""The classes of risk, the gravest first."""


@dataclass(frozen=True)
class Due:
    """A statement to be read: why now, how grave it would be if it were wrong, and how long it takes."""

    key: str
    why: str
    risk: int
    """Its place in RISKS."""
    minutes: float
    last: str = ""
    """The day on which a vet signed it last, as it is or as it was."""


def queue_of(
    guide: Guide, review: Review, moved: Iterable[str] = (), fresh: Iterable[str] = ()
) -> tuple[Due, ...]:
    """Return everything that a vet has not signed as it is, in the order in which it should be read.

    `moved` are statements that an own folder changed, which wait for a vet before all others; `fresh` are
    those that this edition changed, which come before what has stood unread for longer.
    """
    values, own, newer = values_of(guide), frozenset(moved), frozenset(fresh)
    deciding = _deciding(values)
    due = []
    for key in review.counted:
        if review.how[key] == "signed" and key not in review.objections:
            continue
        why = _why(review, key, own, newer)
        risk = risk_of(key, values.get(key), guide, deciding)
        due.append(Due(key, why, risk, _minutes(guide, values.get(key)), _last(review, key)))
    order = {key: at for at, key in enumerate(review.counted)}
    return tuple(sorted(due, key=lambda each: (WHYS.index(each.why), each.risk, each.last, order[each.key])))


WHYS = (
    "changed on this holding",
    "objected to",
    "changed since it was reviewed",
    "changed in this edition",
    "never reviewed",
)
"""Why a statement is to be read, the most pressing first."""


def _why(review: Review, key: str, own: frozenset[str], fresh: frozenset[str]) -> str:
    if key in own:
        return WHYS[0]
    if key in review.objections:
        return WHYS[1]
    if review.how[key] == "changed":
        return WHYS[2]
    return WHYS[3] if key in fresh else WHYS[4]


def _last(review: Review, key: str) -> str:
    return next((sitting.on for sitting in review.vets if key in sitting.signed), "")


def evening(queue: tuple[Due, ...], minutes: float = EVENING) -> tuple[Due, ...]:
    """Return as much of a queue as can be read in so many minutes; at least one statement."""
    spent = 0.0
    for count, due in enumerate(queue):
        spent += due.minutes
        if spent > minutes and count:
            return queue[:count]
    return queue


def _deciding(values: Mapping[str, Any]) -> frozenset[str]:
    """Return the keys of the numbers by which ways part."""
    branches = (each for value in values.values() if isinstance(value, Ask) for each in value.branches)
    return frozenset(f"number/{each.below or each.up_to}" for each in branches if _banded(each))


def _banded(branch: Branch) -> bool:
    return bool(branch.below or branch.up_to)


def risk_of(key: str, value: Any, guide: Guide, deciding: frozenset[str]) -> int:
    """Return the class of risk of a statement, as a place in RISKS."""
    kind = key.partition("/")[0]
    if kind in ("sum", "rule") or key in deciding:
        return 0
    if isinstance(value, Act | End):
        if any(INTO & set(step.tag) for step in steps_of(value)):
            return 0
        calls = isinstance(value, End) and bool(guide.urgency(value.urgency).opens)
        return 2 if calls else 1
    if kind in ("number", "urgency", "how-to", "duty"):
        return 1
    return 2 if isinstance(value, Ask) or kind == "finding" else 3


def _minutes(guide: Guide, value: Any) -> float:
    texts = list(texts_of_value(value))
    if isinstance(value, Ask):
        texts += [passage.text for passage in finding_texts(guide.findings[value.finding])]
    return sum(len(text.split()) for text in texts) / PACE + DECIDING
