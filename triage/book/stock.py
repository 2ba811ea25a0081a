"""What to have in the house, counted for one lamb."""

from __future__ import annotations

from triage.book.marks import labelled, listed, para, part, tag
from triage.book.words import Words
from triage.cupboard.listing import how_much, unit_of
from triage.cupboard.text import WHEN, amount_words
from triage.guide.items import Item
from triage.paper.html import safe

LEAD = "Counted for one lamb fed by hand. Law, label and vet come first: nothing here is a prescription."


def stock_part(words: Words) -> str:
    """Return the list: what to buy first, what a vet is asked, what any house has."""
    items = words.guide.cupboard.values()
    groups = [
        (f"{order}. {reason}", [item for item in items if item.first == when and item.how_many])
        for when, (order, reason) in WHEN.items()
    ]
    groups.append(("Ask your vet", [item for item in items if item.ask_vet]))
    groups.append(("At hand in any house: know where it is", [item for item in items if item.at_hand]))
    inner = "".join(
        tag("h3", safe(title)) + listed((_item(words, item) for item in found), "entries")
        for title, found in groups
        if found
    )
    return part("cupboard", words.places.number("cupboard"), "What to have in the house", para(LEAD) + inner)


def _item(words: Words, item: Item) -> str:
    guide = words.guide
    need = ""
    if item.how_many:
        need = amount_words(how_much(guide, item.how_many, 1), unit_of(guide, item), words.making.system)
    said = [words.fill(text) for text in (item.why, item.keeps, item.ask_vet) if text]
    care = " ".join(words.fill(text) for text in item.cautions)
    return (
        f'<span id="item-{item.name}"><b>{words.plain(item.title)}</b>'
        f"{f': {safe(need)}' if need else ''}.</span> "
        + " ".join(said)
        + (f" <b>Take care:</b> {care}" if care else "")
        + labelled("Sources:", f"{words.sources(item.sources)}.", "behind")
        + words.standing(f"item/{item.name}")
    )
