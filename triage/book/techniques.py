"""How-tos as sections."""

from __future__ import annotations

from collections.abc import Iterator

from triage.book.ends import cautions
from triage.book.marks import labelled, listed, para, section
from triage.book.places import how_anchor
from triage.book.words import Words
from triage.guide.model import HowTo
from triage.page.page import CERTAINTY_WORDS


def technique_sections(words: Words) -> Iterator[str]:
    """Yield each technique."""
    for how in words.guide.how_tos.values():
        anchor = how_anchor(how.name)
        yield section(anchor, words.places.number(anchor), words.plain(how.title), _inner(words, how), "how")


def _inner(words: Words, how: HowTo) -> str:
    need = "; ".join(words.fill(each) for each in how.need)
    sure = CERTAINTY_WORDS.get(how.certainty, "")
    named = f"Sources: {words.sources(how.sources)}." if how.sources else ""
    return (
        para(words.fill(how.why) if how.why else "")
        + labelled("You need:", f"{need}." if need else "")
        + listed(map(words.fill, how.steps), "steps", "ol")
        + labelled("It went right when:", words.fill(how.right) if how.right else "")
        + labelled("Stop:", words.fill(how.stop) if how.stop else "")
        + cautions(words, how.cautions)
        + para(words.fill(how.note) if how.note else "")
        + para(" ".join(filter(None, (sure, named))), "behind")
        + words.standing(f"how-to/{how.name}")
    )
