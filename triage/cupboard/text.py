"""The list, and one thing of it, as lines of text."""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator

from triage.cupboard.listing import Cupboard, Entry
from triage.facts import Facts
from triage.guide.model import Ask, Guide
from triage.page.page import CERTAINTY_WORDS
from triage.page.words import Reader
from triage.page.working import number_words, source_words
from triage.units import System, convert, show, tidy

WIDTH = 76
FEW = 3
"""Titles named of what needs a thing; all of them are asked for."""

WHEN = {
    "tonight": ("Buy first", "The first hours hang on it, so have it before the next lamb."),
    "this-week": ("Buy this week", "The first bad day needs it."),
    "season": ("Buy for the season", "There is time to order it."),
}
BEGUN = "One lamb has enough, so the rest may come later."
OTHERS = "Law, label and vet come first. Nothing here is a prescription."


def list_lines(guide: Guide, cupboard: Cupboard, system: System, every: bool = False) -> Iterator[str]:
    """Yield the whole list; with `every` all that needs a thing is named, and not only a few titles."""
    teller = _Teller(guide, cupboard, system)
    yield from _wrapped(teller.head())
    for when, (order, reason) in WHEN.items():
        entries = cupboard.to_buy(when)
        yield from _titled(
            f"{order}. {reason}", (line for entry in entries for line in teller.to_buy(entry, every))
        )
    for title, entries, tell in (
        ("Past its date. Use it no more.", cupboard.gone, teller.gone),
        ("Near its date. Use it first, and buy anew.", cupboard.soon, teller.soon),
        ("No date written down. Look at the label.", cupboard.undated, teller.undated),
        ("Ask your vet.", cupboard.vet, teller.ask),
        ("Enough.", cupboard.enough, teller.enough),
        ("At hand in any house. Nothing to buy, but know where it is.", cupboard.at_hand, teller.at_hand),
    ):
        yield from _titled(title, (line for entry in entries for line in tell(entry, every)))
    yield ""
    yield OTHERS


def item_lines(guide: Guide, cupboard: Cupboard, name: str, system: System) -> Iterator[str]:
    """Yield all that is known of one thing, and every page and how-to that needs it."""
    teller = _Teller(guide, cupboard, system)
    entry = next(each for each in cupboard.entries if each.item.name == name)
    item = entry.item
    yield from _wrapped(f"{item.title} ({name})")
    yield from _wrapped(teller.filled(item.why), "  ")
    yield from teller.stock(entry)
    for text in (item.ask_vet, item.keeps):
        yield from _wrapped(teller.filled(text), "  ") if text else ()
    for text in item.cautions:
        yield from _wrapped(teller.filled(text), "  !  ", "     ")
    yield from _wrapped(CERTAINTY_WORDS[item.certainty], "  ")
    for number in item.how_many.each_lamb if item.how_many else ():
        yield from _wrapped(f"- {teller.number(number)}", "  ", "    ")
    for source in item.sources:
        yield from _wrapped(f"- {source_words(guide, source)}", "  ", "    ")
    yield ""
    yield "What needs it:"
    yield from teller.all_needing(entry)


def stock_lines(guide: Guide, cupboard: Cupboard, name: str, system: System) -> Iterator[str]:
    """Yield what there is of one thing, and what is still to be bought."""
    entry = next(each for each in cupboard.entries if each.item.name == name)
    yield from _wrapped(f"{entry.item.title} ({name})")
    yield from _Teller(guide, cupboard, system).stock(entry)


class _Teller:
    """Who tells: the guide, the list, and the units of the reader."""

    def __init__(self, guide: Guide, cupboard: Cupboard, system: System) -> None:
        self._guide = guide
        self._cupboard = cupboard
        self._system = system
        self._reader = Reader(guide, Facts(guide.values(), {}), system)

    def head(self) -> str:
        lambs = self._lambs()
        if not self._cupboard.told:
            return f"The cupboard, counted for {lambs}. Say how many you will feed by hand: --lambs 5."
        return f"The cupboard, counted for {lambs} fed by hand."

    def filled(self, text: str) -> str:
        return self._reader.fill(text)

    def number(self, name: str) -> str:
        return number_words(self._reader, self._guide.numbers[name])

    def to_buy(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, f": {self._buy(entry)}")
        yield from _wrapped(self.filled(entry.item.why), "      ")
        if entry.begun:
            yield from _wrapped(BEGUN, "      ")
        if entry.gone:
            yield from _wrapped("Some of what is there is past its date.", "      ")
        for text in entry.item.cautions:
            yield from _wrapped(self.filled(text), "   !  ", "      ")
        yield from self._needing(entry, every)

    def gone(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, f": {'; '.join(map(str, entry.gone))}")

    def soon(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, f": {'; '.join(map(str, entry.soon))}")

    def undated(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, f": {'; '.join(map(str, entry.undated))}")

    def ask(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, f": {'; '.join(map(str, entry.usable))}" if entry.usable else "")
        yield from _wrapped(f"{self.filled(entry.item.why)} {self.filled(entry.item.ask_vet)}", "      ")
        for text in entry.item.cautions:
            yield from _wrapped(self.filled(text), "   !  ", "      ")
        yield from self._needing(entry, every)

    def enough(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, f": {self._amount(entry.have, entry)} of {self._need(entry)}")
        yield from self._needing(entry, every) if every else ()

    def at_hand(self, entry: Entry, every: bool) -> Iterator[str]:
        yield from self._named(entry, "")
        yield from self._needing(entry, every) if every else ()

    def stock(self, entry: Entry) -> Iterator[str]:
        """Yield how much there should be and why so much, and what is there."""
        if entry.need is not None:
            yield from _wrapped(f"{self._working(entry)} There is {self._amount(entry.have, entry)}.", "  ")
        for words, lots in (("On the shelf", entry.usable), ("Past its date", entry.gone)):
            yield from _wrapped(f"{words}: {'; '.join(map(str, lots))}", "  ") if lots else ()
        if entry.short:
            order, reason = WHEN[entry.when]
            reason = BEGUN if entry.begun else reason
            yield from _wrapped(f"{order}: {self._amount(entry.short, entry)}. {reason}", "  ")
        elif entry.need is not None:
            yield from _wrapped("That is enough.", "  ")

    def all_needing(self, entry: Entry) -> Iterator[str]:
        """Yield the name and the title of each page, how-to and duty that needs a thing."""
        for name in entry.needed.how_tos:
            yield from _wrapped(f"how-to {name}: {self._guide.how_tos[name].title}", "  ", "    ")
        for name in entry.needed.nodes:
            yield from _wrapped(f"{self._guide.nodes[name].topic}, {name}: {self._title(name)}", "  ", "    ")
        for name in entry.needed.duties:
            yield from _wrapped(f"raising, {name}: {self._duty(name)}", "  ", "    ")

    def _named(self, entry: Entry, more: str) -> Iterator[str]:
        yield from _wrapped(f"{entry.item.title} ({entry.item.name}){more}", "  ", "    ")

    def _buy(self, entry: Entry) -> str:
        if not entry.have:
            return f"{self._need(entry)}, and there is none"
        return f"{self._amount(entry.short, entry)} more; there is {self._amount(entry.have, entry)}"

    def _needing(self, entry: Entry, every: bool) -> Iterator[str]:
        if every:
            yield from (f"    {line}" for line in self.all_needing(entry))
            return
        titles = [self._guide.how_tos[name].title for name in entry.needed.how_tos]
        pages = sorted(entry.needed.nodes, key=lambda name: isinstance(self._guide.nodes[name], Ask))
        raising = map(self._duty, entry.needed.duties)
        titles = list(dict.fromkeys((*titles, *map(self._title, pages), *raising)))
        more = f"; and {len(titles) - FEW} more" if len(titles) > FEW else ""
        yield from _wrapped(f"For: {'; '.join(titles[:FEW])}{more}.", "      ")

    def _title(self, node: str) -> str:
        page = self._guide.nodes[node]
        text = self._guide.findings[page.finding].ask if isinstance(page, Ask) else page.title
        return self.filled(text).rstrip(".")

    def _duty(self, name: str) -> str:
        return self.filled(self._guide.duties[name].title)

    def _working(self, entry: Entry) -> str:
        how_many, need = entry.item.how_many, self._need(entry)
        if how_many and how_many.each_lamb:
            parts = " x ".join(self._reader.number(name) for name in how_many.each_lamb)
            return f"It takes {need}: {parts} {self._each()}."
        if how_many and how_many.one_for:
            least = f"{how_many.least} at least, and " if how_many.least else ""
            return f"It takes {need} for {self._lambs()}: {least}one for every {how_many.one_for}."
        return f"It takes {need}, however many lambs."

    def _need(self, entry: Entry) -> str:
        return self._amount(entry.need or 0.0, entry)

    def _each(self) -> str:
        return "for one lamb" if self._cupboard.lambs == 1 else f"for each of {self._lambs()}"

    def _lambs(self) -> str:
        return "one lamb" if self._cupboard.lambs == 1 else f"{self._cupboard.lambs} lambs"

    def _amount(self, value: float, entry: Entry) -> str:
        return amount_words(value, entry.unit, self._system)


def amount_words(value: float, unit: str, system: System) -> str:
    """Return an amount as one would ask for it in a shop."""
    if not value:
        return "none"
    if unit == "ml" and system == "us" and value >= convert(1, "qt", "ml"):
        return f"{tidy(convert(value, 'ml', 'qt'), 1)} qt"
    if unit == "ml" and system == "metric" and value >= 1000:
        return "1 litre" if value == 1000 else f"{tidy(value / 1000, 2)} litres"
    return show(value, unit, system)


def _titled(title: str, lines: Iterable[str]) -> Iterator[str]:
    """Yield lines under a title; neither, where there are none."""
    told = tuple(lines)
    if told:
        yield ""
        yield from _wrapped(title)
        yield from told


def _wrapped(text: str, first: str = "", rest: str | None = None) -> Iterator[str]:
    yield from textwrap.wrap(
        text, WIDTH, initial_indent=first, subsequent_indent=first if rest is None else rest,
        break_on_hyphens=False,
    )  # fmt: skip
