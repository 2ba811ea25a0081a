"""The answers to a question, each with where it leads; the walk itself says which branch it takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from triage.book.bands import band_words, bands_of
from triage.book.brought import Brought
from triage.book.words import Words
from triage.facts import UNSURE
from triage.guide.model import Ask, Branch
from triage.walk import branch_for

NOT_SURE = "Not sure"
ANY_OTHER = "Any other answer"
MANY = 3
"""So many choices that lead to one place stand as one, where the question was answered before."""


@dataclass(frozen=True)
class Way:
    """One answer in words (HTML) and the branch that it takes."""

    words: str
    branch: Branch


def ways_of(words: Words, node: Ask, brought: Brought | None = None) -> tuple[Way, ...]:
    """Return the answers to a question. With `brought` it surely was answered before, with one of these."""
    finding = words.guide.findings[node.finding]
    ways = [*(_measured(words, node) if finding.measure else _chosen(words, node, brought))]
    asked = not finding.never_unsure and (brought is None or brought.may_answer(node, UNSURE))
    unsure = branch_for(words.guide, node, UNSURE) if asked else None
    if unsure:
        ways.append(Way(words.plain(finding.unsure or NOT_SURE), unsure))
    return tuple(ways)


def _measured(words: Words, node: Ask) -> Iterator[Way]:
    for band in bands_of(words, node):
        yield Way(band_words(words, node, band), band.branch)


def _chosen(words: Words, node: Ask, brought: Brought | None) -> Iterator[Way]:
    finding = words.guide.findings[node.finding]
    names = [name for name in finding.choices if brought is None or brought.may_answer(node, name)]
    found = [(name, branch_for(words.guide, node, name)) for name in names]
    leading = [(name, branch) for name, branch in found if branch]
    most = max((branch for _, branch in leading), key=[b for _, b in leading].count, default=None)
    among = [branch for _, branch in leading].count(most) if most else 0
    one = most if brought and MANY <= among < len(leading) else None
    yield from (
        Way(words.plain(finding.choices[name]), branch) for name, branch in leading if branch is not one
    )
    if one:
        yield Way(ANY_OTHER, one)
