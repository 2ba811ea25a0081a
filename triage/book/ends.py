"""An end of the walk as a section: how soon a vet is needed, what to do, what to keep away from."""

from __future__ import annotations

import re

from triage.book.marks import labelled, listed, para, section
from triage.book.phone import numbers
from triage.book.places import how_anchor, node_anchor
from triage.book.words import Words
from triage.guide.model import Act, Ask, End, Guide, Step
from triage.page.page import CERTAINTY_WORDS

CALLED = "Did you meet a more urgent call on the way here? Then that one counts."
_CHANGED = re.compile(r"[Pp]ress a, and change (?:what )?(?:the |is |it )*(\w+)")


def end_section(words: Words, node: End) -> str:
    """Return an end as a section."""
    guide = words.guide
    urgency, rank = guide.urgency(node.urgency), guide.rank(node.urgency)
    call = f"<strong>{words.plain(urgency.say)}</strong> {words.fill(urgency.means)}"
    again = f" Look again in {words.number(node.look_again)}." if node.look_again else ""
    inner = (
        (para(CALLED, "again") if rank else "")
        + para(call + _number(words, rank), f"call c{min(rank, 2)}")
        + (labelled("It may be:", words.fill(node.likely)) if node.likely else "")
        + steps(words, node.do)
        + cautions(words, node.cautions)
        + labelled("When to phone:", words.fill(node.call_vet) + again)
        + _gone_back(words, node)
        + sources_line(words, node)
        + words.standing(f"node/{node.name}")
    )
    anchor = node_anchor(node.name)
    return section(anchor, words.places.number(anchor), words.plain(node.title), inner, "walk end")


def _number(words: Words, rank: int) -> str:
    """Return the number to phone, where a vet is needed at all."""
    dial = numbers(words.making)
    return f"<br>{dial}." if dial and words.guide.front.urgencies[rank].opens else ""


def steps(words: Words, done: tuple[Step, ...]) -> str:
    """Return what is done, numbered, with a link to each technique."""
    return listed((_step(words, step) for step in done), "steps", "ol")


def _step(words: Words, step: Step) -> str:
    said = words.fill(step.do)
    if not step.how:
        return said
    how = words.guide.how_tos[step.how]
    return f"{said} How: {words.places.link(how_anchor(how.name), words.plain(how.title))}."


def cautions(words: Words, said: tuple[str, ...]) -> str:
    """Return what to keep away from."""
    return f"<h4>Take care</h4>{listed(map(words.fill, said), 'care')}" if said else ""


def sources_line(words: Words, node: Act | End) -> str:
    """Return how sure this is, and where it comes from."""
    sure = CERTAINTY_WORDS.get(node.certainty, "")
    named = f"Sources: {words.sources(node.sources)}." if node.sources else ""
    return para(" ".join(filter(None, (sure, named))), "behind")


def _gone_back(words: Words, node: End) -> str:
    """Return links to the questions that a text says to answer otherwise."""
    said = " ".join((*(step.do for step in node.do), *node.cautions, node.call_vet, node.likely))
    asked = [_asking(words.guide, found[1]) for found in _CHANGED.finditer(said)]
    links = [
        words.places.link(node_anchor(each.name), words.plain(words.guide.findings[each.finding].ask))
        for each in dict.fromkeys(asked)
        if each
    ]
    return labelled("The question to go back to:", "; ".join(links)) if links else ""


def _asking(guide: Guide, word: str) -> Ask | None:
    """Return the first question that is called, or asks, by a word such as `trouble` or `Glucose`."""
    asking = (node for node in guide.nodes.values() if isinstance(node, Ask))
    stem = word.lower().removesuffix("es").removesuffix("s")
    for node in asking:
        finding = guide.findings[node.finding]
        if stem in f"{finding.label} {finding.ask}".lower():
            return node
    return None
