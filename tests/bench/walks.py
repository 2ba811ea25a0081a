"""Keys that walk the shipped guide forth and back, each with the words it must bring to the screen."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from random import Random
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from triage.guide.model import Finding, Guide
    from triage.page.page import Page
    from triage.session import Session

DEEPEST = 12
"""Moves after which a walk turns back, if no act or end has turned it back before."""


BACK = "\x1b[D"
"""The left arrow: it goes back from every page, where a letter can be part of a measurement."""


@dataclass(frozen=True, slots=True)
class Press:
    """Letters typed first, the key that brings the next page, and that page."""

    typed: str
    key: str
    page: Page

    @property
    def kind(self) -> str:
        """What kind of page the key brings."""
        return "measurement" if self.page.measure else {"ask": "choice"}.get(self.page.kind, self.page.kind)

    @property
    def words(self) -> str:
        """Words that the key must bring to the screen."""
        return _heading(self.page)


def first_page() -> Page:
    """Return the first question's page."""
    return _session().page()


def first_words() -> str:
    """Return the first question's words."""
    return _heading(first_page())


def presses(count: int) -> list[Press]:
    """Return this many page turns, the same in every run."""
    return list(islice(_walks(Random(7)), count))


def _guide() -> Guide:
    from triage.guide.find import knowledge_root
    from triage.guide.read import read_guide

    guide = read_guide(knowledge_root()).guide
    if guide is None:
        raise SystemExit("The shipped guide has mistakes; run the check first.")
    return guide


def _session() -> Session:
    guide = _guide()
    from triage.session import Session
    from triage.walk import Walk

    return Session(Walk(guide))


def _walks(chance: Random) -> Iterator[Press]:
    session = _session()
    while True:
        while session.page().kind == "ask" and len(session.walk.moves) < DEEPEST:
            yield _forth(session, chance)
        while session.walk.moves:
            session.take("b")
            yield Press("", BACK, session.page())


def _forth(session: Session, chance: Random) -> Press:
    before = session.walk
    typed, key = _way_on(session, chance)
    session.take(typed if key == "\r" else key)
    if session.walk is before:
        raise ValueError(f"{typed + key!r} does not go on from {_heading(session.page())!r}")
    return Press(typed, key, session.page())


def _way_on(session: Session, chance: Random) -> tuple[str, str]:
    from triage.guide.model import Ask

    node, choices = session.walk.node, session.page().choices
    assert isinstance(node, Ask)
    finding = session.walk.guide.findings[node.finding]
    if finding.measure:
        return _typed(finding, chance), "\r"
    # Half of all first answers are that there is no sign of danger: the rest of the guide lies there.
    known = [choice.key for choice in choices if choice.key != "n"]
    calm = not session.walk.moves and chance.random() < 0.5
    return "", known[-1] if calm else chance.choice(known)


def _typed(finding: Finding, chance: Random) -> str:
    """Return a usual value, nearer the low end, where lambs of a few days are."""
    low, high = finding.usual or finding.plausible
    value = low + (high - low) * chance.random() ** 2
    return f"{value:.1f}{'' if finding.measure == 'count' else finding.measure}"


def _heading(page: Page) -> str:
    """Return the first three words of the heading, which no width under test can wrap."""
    return " ".join(page.blocks[0].text.split()[:3])
