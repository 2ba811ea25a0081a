"""What a row of `rule_cases` is made of: lambs, and pages that a rule allows them or does not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from enum import Enum

from triage.facts import Unsure
from triage.units import Quantity


class NotAsked(Enum):
    """Not an answer: the finding was not asked, as if it were not named at all."""

    NOT_ASKED = "not asked"


NOT_ASKED = NotAsked.NOT_ASKED

Answer = str | Quantity | Unsure | NotAsked
Lamb = Mapping[str, Answer]
"""What was answered of a lamb; a finding that is not here was not asked.

Where a rule is about a finding only when it was not asked, its lambs name it as NOT_ASKED.
"""

UNASKED: Lamb = {}
URGENCIES = ("vet-now", "vet-today", "watch", "care-here")


@dataclass(frozen=True)
class Page:
    """What a page has, and the urgency to which the walk had `raised` before it.

    `no_tags` gives it every tag of the guide but these, and `no_shows` every number and sum but these.
    """

    tags: tuple[str, ...] = ()
    no_tags: tuple[str, ...] = ()
    shows: tuple[str, ...] = ()
    no_shows: tuple[str, ...] = ()
    says: tuple[str, ...] = ()
    end: str = "care-here"
    raised: str = ""
    act: bool = False


@dataclass(frozen=True)
class Pages:
    """Pages at which a rule stops the lambs that it is about, and pages at which it stops no lamb."""

    wrong: tuple[Page, ...]
    right: tuple[Page, ...]


@dataclass(frozen=True)
class Row:
    """A rule stops each bad lamb at each wrong page; good lambs, and right pages, it leaves alone."""

    pages: Pages
    bad: tuple[Lamb, ...]
    good: tuple[Lamb, ...]


def row(pages: Pages, bad: Iterable[Lamb], good: Iterable[Lamb] = ()) -> Row:
    return Row(pages, tuple(bad), tuple(good))


def degc(value: float) -> Quantity:
    return Quantity(float(value), "degC")


def hours(value: float) -> Quantity:
    return Quantity(float(value), "h")


def kg(value: float) -> Quantity:
    return Quantity(float(value), "kg")


def days(value: float) -> Quantity:
    return Quantity(float(value), "day")


def each(finding: str, *values: Answer, of: Lamb = UNASKED) -> list[Lamb]:
    """Return for each answer to a finding a lamb that is otherwise the same."""
    return [{**of, finding: value} for value in values]


def one_unasked(lamb: Lamb) -> list[Lamb]:
    """Return for each finding of a lamb the same lamb without it."""
    return [{name: value for name, value in lamb.items() if name != left} for left in lamb]


def never_tags(*tags: str) -> Pages:
    """Any of these tags is wrong, at an end and before it; every other tag is right."""
    wrong = (Page((tag,), act=act) for tag in tags for act in (False, True))
    return Pages(tuple(wrong), (Page(no_tags=tags), Page(no_tags=tags, act=True)))


def never_shows(*sums: str) -> Pages:
    """Any of these sums is wrong; another one is right."""
    wrong = (Page(shows=(name,), act=act) for name in sums for act in (False, True))
    return Pages(
        tuple(wrong), (Page(("feed-by-mouth",)), Page(shows=("milk-feed", "milk-day", "milk-count")))
    )


def calls(urgency: str) -> Pages:
    """Anything less urgent is wrong; an end that says it is right, and so is any end once the walk has."""
    at = URGENCIES.index(urgency)
    milder, enough = URGENCIES[at + 1 :], URGENCIES[: at + 1]
    wrong = [*(Page(end=each) for each in milder), *(Page(raised=each) for each in milder)]
    right = [*(Page(end=each) for each in enough), *(Page(raised=each) for each in enough), Page(act=True)]
    return Pages(tuple(wrong), tuple(right))


def says(words: tuple[str, ...], *kinds: Page, elsewhere: Page, nearly: str = "") -> Pages:
    """On pages of these kinds it is wrong to leave out any of the words; elsewhere it is right.

    `nearly` is a text that has parts of the words but not the words.
    """
    texts = [tuple(each for each in words if each != word) for word in words]
    texts += [(nearly,)] if nearly else []
    wrong = (replace(kind, says=text) for kind in kinds for text in texts)
    return Pages(tuple(wrong), (*(replace(kind, says=words) for kind in kinds), elsewhere))


def says_with_tag(tag: str, *words: str, nearly: str = "") -> Pages:
    """A page with this tag must say all the words, be it an end or not; pages with other tags need not."""
    return says(words, Page((tag,)), Page((tag,), act=True), elsewhere=Page(no_tags=(tag,)), nearly=nearly)


def says_with_sum(sums: tuple[str, ...], *words: str, nearly: str = "") -> Pages:
    """A page that shows any of these sums must say all the words; pages with all other sums need not."""
    kinds = (Page(shows=(name,), act=act) for name in sums for act in (False, True))
    return says(words, *kinds, elsewhere=Page(no_tags=("record",), no_shows=sums), nearly=nearly)
