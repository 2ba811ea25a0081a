"""What to have in the house, as the groups of a page to print."""

from __future__ import annotations

from triage.cupboard.listing import Cupboard, Entry
from triage.cupboard.text import WHEN, amount_words
from triage.facts import Facts
from triage.guide.model import Guide
from triage.page.words import Reader
from triage.paper.cupboard import Group, Line
from triage.units import System


def lead_of(cupboard: Cupboard) -> str:
    """Return for how many lambs it is counted, as a sentence."""
    lambs = "one lamb" if cupboard.lambs == 1 else f"{cupboard.lambs} lambs"
    return f"Counted for {lambs} fed by hand. Law, label and vet come first: nothing here is a prescription."


def groups_of(guide: Guide, cupboard: Cupboard, system: System) -> tuple[Group, ...]:
    """Return what is to be bought, the first first, then what a vet is asked, and what is there."""
    reader = Reader(guide, Facts(guide.values(), {}), system)

    def line(entry: Entry, note: str) -> Line:
        need, have = entry.need, entry.have
        return Line(
            entry.item.title,
            amount_words(need, entry.unit, system) if need else "",
            amount_words(have, entry.unit, system) if have else "",
            "; ".join(lot.until.said for lot in entry.usable if lot.until),
            reader.fill(note),
        )

    buy = tuple(
        Group(f"{order}. {reason}", tuple(line(entry, entry.item.why) for entry in cupboard.to_buy(when)))
        for when, (order, reason) in WHEN.items()
    )
    asked = tuple(line(entry, entry.item.ask_vet) for entry in cupboard.vet)
    enough = tuple(line(entry, "") for entry in cupboard.enough)
    at_hand = tuple(line(entry, "") for entry in cupboard.at_hand)
    rest = (("Ask your vet", asked), ("Enough", enough), ("At hand in any house: know where it is", at_hand))
    return (*buy, *(Group(title, lines) for title, lines in rest))
