"""Someone who reads the book: follows its links by what they say, and knows nothing else of the guide's branches."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import Protocol
from xml.etree.ElementTree import Element

import html5lib

from triage.facts import UNSURE, Value
from triage.guide.model import Ask, Finding, Guide
from triage.units import KG_PER_LB, System, convert
from triage.walk import Answer, Done, Move

NUMBER = r"(-?[0-9.]+)"
ONLY = "Any other answer"
REMEMBERED = re.compile(r"You (may )?have answered this already: take the same answer\.")


def words_of(element: Element) -> str:
    """All text of an element, with single spaces."""
    return " ".join("".join(element.itertext()).split())


@dataclass(frozen=True)
class Link:
    """A link of the book: what it says, the call that stands with it, where it leads, and the number it shows."""

    words: str
    call: str
    to: str
    number: str


class Book:
    """A book as it was parsed."""

    def __init__(self, html: str, strict: bool = False) -> None:
        parser = html5lib.HTMLParser(strict=strict, namespaceHTMLElements=False)
        self.html = html
        self.root: Element = parser.parse(html)
        self._links: dict[str, list[Link]] = {}

    @cached_property
    def by_id(self) -> dict[str, Element]:
        """Every element that has an anchor."""
        return {each.attrib["id"]: each for each in self.root.iter() if "id" in each.attrib}

    def links(self, section: str) -> list[Link]:
        """The answers of a section."""
        if section not in self._links:
            self._links[section] = [self._link(each) for each in self._answers(section)]
        return self._links[section]

    def kind(self, section: str) -> str:
        """Whether a section is a question, an act or an end."""
        return self.by_id[section].attrib["class"].split()[-1]

    def call(self, section: str) -> str:
        """How soon an end calls the vet."""
        return words_of(next(self.by_id[section].iter("strong")))

    def go(self, section: str, link: Link) -> str:
        """Turn to where a link leads, and return where that is."""
        return link.to

    def _answers(self, section: str) -> Iterator[Element]:
        for listed in self.by_id[section].iter("ul"):
            if listed.attrib.get("class") == "answers":
                yield from listed.iter("a")

    def _link(self, element: Element) -> Link:
        parts = {part.tag: words_of(part) for part in element}
        return Link(
            parts["span"], parts.get("strong", ""), element.attrib["href"].removeprefix("#"), parts["i"]
        )

    def text(self, section: str) -> str:
        """All that a section says."""
        return words_of(self.by_id[section])


class Pages(Protocol):
    """A book as it lies open: parsed, or in a browser."""

    def kind(self, section: str) -> str: ...
    def text(self, section: str) -> str: ...
    def call(self, section: str) -> str: ...
    def links(self, section: str) -> list[Link]: ...
    def go(self, section: str, link: Link) -> str: ...


@dataclass
class Reader:
    """Goes through a book with a pencil: answers, calls met, and how often each act was done."""

    book: Pages
    guide: Guide
    at: str
    system: System = "metric"
    known: dict[str, Value] = field(default_factory=dict)
    calls: list[str] = field(default_factory=list)
    done: dict[str, int] = field(default_factory=dict)
    asked_anew: int = 0

    def follow(self, moves: list[Move]) -> str:
        """Go on with the moves of a walk, as far as they reach, and return the section one has come to."""
        left = list(moves)
        while True:
            name = self.at.removeprefix("node-")
            node = self.guide.nodes[name]
            kind = self.book.kind(self.at)
            if kind == "end":
                assert not left, f"the book ends at {name}, the walk goes on with {left}"
                self.calls.append(self.book.call(self.at))
                return name
            if kind == "act":
                if not self._act(name, left):
                    return name
            else:
                assert isinstance(node, Ask)
                if not self._ask(self.guide.findings[node.finding], left):
                    return name

    def _act(self, name: str, left: list[Move]) -> bool:
        links, text = self.book.links(self.at), self.book.text(self.at)
        most = re.search(r"Do this at most (once|([0-9]+) times)", text)
        times = self.done.get(name, 0)
        if most and times >= int(most[2] or 1):
            self._go(next(link for link in links if link.words.startswith("I have done this")))
            return True
        if not left:
            return False
        move = left.pop(0)
        assert isinstance(move, Done)
        assert move.act == name
        self.done[name] = times + 1
        anew = re.search(r"take no earlier answer, for: ([^.]*)\.", text)
        labels = anew[1].split("; ") if anew else []
        for finding in self.guide.findings.values():
            if any(finding.label.lower() == label.lower() for label in labels):
                self.known.pop(finding.name, None)
        self._go(next(link for link in links if link.words == "It is done: go on"))
        return True

    def _ask(self, finding: Finding, left: list[Move]) -> bool:
        if finding.name in self.known:
            assert REMEMBERED.search(self.book.text(self.at)), f"{self.at} does not say that it was answered"
        else:
            if not left:
                return False
            move = left.pop(0)
            assert isinstance(move, Answer), f"{move} at {self.at}"
            assert move.finding == finding.name, f"{move} at {self.at}"
            self.known[finding.name] = move.value
            self.asked_anew += 1
        link = self._chosen(finding, self.known[finding.name])
        if link.call:
            self.calls.append(link.call.removesuffix(", then go on"))
        self._go(link)
        return True

    def _go(self, link: Link) -> None:
        self.at = self.book.go(self.at, link)

    def _chosen(self, finding: Finding, value: Value) -> Link:
        links = self.book.links(self.at)
        if value is UNSURE:
            found = [link for link in links if link.words == plain(finding.unsure or "Not sure")]
        elif isinstance(value, float):
            found = [link for link in links if holds(link.words, value, finding.measure, self.system)]
        else:
            assert isinstance(value, str)
            said = plain(self.filled(finding.choices[value]))
            found = [link for link in links if same(link.words, said)]
            found = found or [link for link in links if link.words == ONLY]
        assert len(found) == 1, f"{self.at}: {value!r} fits {[link.words for link in found]} of {links}"
        return found[0]

    def filled(self, text: str) -> str:
        """A choice with its numbers left open."""
        return re.sub(r"\{[^}]*\}", "{}", text)


def plain(text: str) -> str:
    """A text with single spaces."""
    return " ".join(text.split())


def same(shown: str, choice: str) -> bool:
    """Whether a link shows a choice, whatever its numbers are."""
    pattern = ".+?".join(re.escape(part) for part in choice.split("{}"))
    return re.fullmatch(pattern, shown, re.IGNORECASE) is not None


def holds(words: str, value: float, unit: str, system: System) -> bool:
    """Whether a reading is in a band, by nothing but the words of the band in the reader's own units."""
    own = re.sub(r" \([^)]*\)", "", words)
    reading = round(in_own_units(value, unit, system), 6)
    if own.startswith("Any "):
        return True
    tests: dict[str, Callable[[float], bool]] = {
        r"more than (.+?)(?:,|$)": lambda line: reading > line,
        r"less than (.+?)(?:,|$)": lambda line: reading < line,
        r"up to (.+?)(?:,|$)": lambda line: reading <= line,
        r"^(.+?) or more(?:,|$)": lambda line: reading >= line,
    }
    found = [
        test(line_of(match[1], unit, system))
        for pattern, test in tests.items()
        if (match := re.search(pattern, own, re.IGNORECASE))
    ]
    return bool(found) and all(found)


def in_own_units(value: float, unit: str, system: System) -> float:
    """A reading as the reader's own instrument shows it: degrees F and ounces in the US system."""
    if system == "us" and unit == "degC":
        return convert(value, "degC", "degF")
    return value / KG_PER_LB * 16 if system == "us" and unit == "kg" else value


def line_of(words: str, unit: str, system: System) -> float:
    """The value of a line in words, in the unit in which `in_own_units` gives a reading."""
    if system == "us" and unit == "kg":
        pounds = re.search(rf"{NUMBER} lb", words)
        ounces = re.search(rf"{NUMBER} oz", words)
        return float(pounds[1] if pounds else 0) * 16 + float(ounces[1] if ounces else 0)
    value, word = re.fullmatch(rf"{NUMBER}\s*(.*)", words).groups()  # type: ignore[union-attr]
    hours = {"day": 24.0, "days": 24.0, "hour": 1.0, "hours": 1.0, "minutes": 1 / 60, "minute": 1 / 60}
    return float(value) * (hours[word] if unit == "h" else 1.0)
