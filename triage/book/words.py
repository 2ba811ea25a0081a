"""Texts as HTML: numbers in both unit systems, and each sum as a link to the table that holds it."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from triage.book.keyless import keyless
from triage.book.making import Making
from triage.book.places import Places, table_anchor
from triage.guide.model import NOT_PUBLISHED, PLACEHOLDER, Finding
from triage.page.wall import MEASURE, SAID
from triage.page.working import source_words
from triage.paper.html import safe
from triage.units import System, show


class Words:
    """Everything that the book says, for one making of it."""

    def __init__(self, making: Making, places: Places) -> None:
        self.making, self.guide, self.places = making, making.guide, places
        self._kept: dict[str, str] = {}

    @cached_property
    def other(self) -> System:
        """The unit system that stands in brackets."""
        return "metric" if self.making.system == "us" else "us"

    def fill(self, text: str) -> str:
        """Return a text of the guide as HTML; it begins with a capital letter."""
        if text not in self._kept:
            # Escaping leaves the braces alone, so what they name is put in afterwards.
            html = safe(keyless(text))
            self._kept[text] = _capital(PLACEHOLDER.sub(lambda found: self._named(found[1]), html))
        return self._kept[text]

    def plain(self, text: str) -> str:
        """Return a text as HTML with no link in it, for what is itself a link or a heading."""
        html = safe(keyless(text))
        return _capital(PLACEHOLDER.sub(lambda found: self._named(found[1], link=False), html))

    def _named(self, name: str, link: bool = True) -> str:
        if name in self.guide.numbers:
            return self.number(name)
        said = SAID.get(name, MEASURE)
        anchor = table_anchor(name)
        if not link or anchor not in self.places.numbers:
            return said
        return f'<a href="#{anchor}">{said} (table {self.places.number(anchor)})</a>'

    def number(self, name: str) -> str:
        """Return a number of the guide in both systems."""
        number = self.guide.numbers[name]
        return self.both(number.value, number.unit)

    def both(self, value: float, unit: str) -> str:
        """Return a quantity in the reader's units, and in the others in brackets where those differ."""
        here, there = self.one(value, unit), _held(safe(show(value, unit, self.other)))
        return here if here == there else f"{here} ({there})"

    def one(self, value: float, unit: str) -> str:
        """Return a quantity in the reader's units."""
        return _held(safe(show(value, unit, self.making.system)))

    def small(self, text: str) -> str:
        """Return a text as HTML that goes on a sentence."""
        said = self.plain(text)
        return said[:1].lower() + said[1:]

    @cached_property
    def source_numbers(self) -> dict[str, int]:
        """The number of each publication, by the order in which the guide lists them."""
        return {name: number for number, name in enumerate(self.guide.sources, 1)}

    def sources(self, names: Iterable[str]) -> str:
        """Return publications by their numbers, each a link; words stand where there is none."""
        return ", ".join(self.source(name) for name in names)

    def source(self, name: str) -> str:
        """Return one publication by its number."""
        if name in NOT_PUBLISHED:
            said = source_words(self.guide, name).rstrip(".")
            return safe(said[:1].lower() + said[1:])
        return f'<a href="#source-{name}">S{self.source_numbers[name]}</a>'

    def standing(self, key: str) -> str:
        """Return the line on how a statement stands with vets, or nothing where there is none to say."""
        said = self.making.told.each.get(key, "")
        return f'<p class="standing">{safe(said)}</p>' if said else ""

    def label(self, finding: Finding) -> str:
        """Return what a finding is called."""
        return self.plain(finding.label)


def _capital(html: str) -> str:
    return html[:1].upper() + html[1:]


def _held(html: str) -> str:
    """Keep a figure on the same line as its unit, where both are short."""
    return html.replace(" ", "\u00a0", 1) if html.count(" ") == 1 else html
