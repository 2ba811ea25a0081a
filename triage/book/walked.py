"""The sections that are walked: questions with their answers, and things to do now."""

from __future__ import annotations

from collections.abc import Iterator

from triage.book.answers import Way, ways_of
from triage.book.brought import Brought
from triage.book.ends import cautions, end_section, sources_line, steps
from triage.book.marks import labelled, listed, para, section
from triage.book.memory import Memory
from triage.book.places import how_anchor, node_anchor
from triage.book.words import Words
from triage.facts import UNSURE, Value
from triage.guide.model import Act, Ask, End, Finding, Node

MAYBE = "You may have answered this already: take the same answer."
SURELY = "You have answered this already: take the same answer."
ANEW = "What was seen before this no longer counts. Look anew, and take no earlier answer, for"
BOX = '<span class="box"></span>'


class Walked:
    """Nodes of the guide as sections of the book."""

    def __init__(self, words: Words, memory: Memory, brought: Brought) -> None:
        self._words, self._memory, self._brought = words, memory, brought

    def section(self, node: Node) -> str:
        """Return a node as a section."""
        if isinstance(node, Ask):
            return self._ask(node)
        return self._act(node) if isinstance(node, Act) else end_section(self._words, node)

    def nodes(self, nodes: tuple[Node, ...]) -> Iterator[str]:
        """Yield each of these nodes as a section."""
        yield from map(self.section, nodes)

    def _ask(self, node: Ask) -> str:
        words, finding = self._words, self._words.guide.findings[node.finding]
        surely = self._memory.surely(node)
        maybe = self._memory.maybe(node)
        again = SURELY if surely else MAYBE if maybe else ""
        title = f"{words.label(finding)}: as you answered" if surely else words.plain(finding.ask)
        ways = ways_of(words, node, self._brought if surely else None)
        # What was answered before has been explained before.
        before = "" if surely else self._look(finding)
        after = "" if maybe else self._why(finding)
        inner = (
            para(f"{again} {self._otherwise(node)}".strip() if surely else again, "again")
            + before
            + listed((self._link(way) for way in ways), "answers")
            + after
            + words.standing(f"node/{node.name}")
        )
        return self._numbered(node, title, inner, "walk ask")

    def _otherwise(self, node: Ask) -> str:
        """Return where to go with an answer that can't have been given, and that may be true by now."""
        finding, start = self._words.guide.findings[node.finding], self._words.places.start
        answers: tuple[Value, ...] = (*finding.choices, UNSURE)
        if all(self._brought.may_answer(node, name) for name in answers):
            return ""
        link = self._words.places.link(node_anchor(start), "begin again at the danger signs")
        return f"Is it otherwise now? Then {link}."

    def _look(self, finding: Finding) -> str:
        words = self._words
        said = words.fill(finding.look) if finding.look else ""
        if finding.how:
            how = words.guide.how_tos[finding.how]
            said += f" How: {words.places.link(how_anchor(how.name), words.plain(how.title))}."
        return para(said.strip(), "look")

    def _why(self, finding: Finding) -> str:
        return labelled("Why:", self._words.fill(finding.why), "why")

    def _link(self, way: Way) -> str:
        """Return one answer as a link: itself, whom to phone on the way, and the number it leads to."""
        call = ""
        if way.branch.at_least:
            say = self._words.plain(self._words.guide.urgency(way.branch.at_least).say)
            call = f"<strong>{say}, then go on</strong> "
        return self._go(way.branch.go, way.words, call)

    def _go(self, name: str, said: str, call: str = "") -> str:
        anchor = node_anchor(name)
        number = self._words.places.number(anchor)
        return f'<a href="#{anchor}"><span>{said}</span> {call}<i>go to {number}</i></a>'

    def _act(self, node: Act) -> str:
        words = self._words
        done, ways = [], [self._go(node.then, "It is done: go on")]
        if node.at_most:
            often = f"{node.at_most} times" if node.at_most > 1 else "once"
            boxes = f'<span class="paper"> Tick each time: {BOX * node.at_most}</span>'
            done = [para(f"Do this at most {often}.{boxes}", "again")]
            ways.append(self._go(node.else_, f"I have done this {often} already"))
        wait = f"Then wait {words.number(node.wait)} and go on." if node.wait else "Then go on."
        inner = (
            "".join(done)
            + steps(words, node.steps)
            + cautions(words, node.cautions)
            + para(wait, "wait")
            + self._anew(node)
            + listed(ways, "answers")
            + sources_line(words, node)
            + words.standing(f"node/{node.name}")
        )
        return self._numbered(node, words.plain(node.title), inner, "walk act")

    def _anew(self, node: Act) -> str:
        findings = [self._words.guide.findings[name] for name in node.forget]
        said = "; ".join(self._words.small(finding.label) for finding in findings)
        return para(f"{ANEW}: {said}.") if said else ""

    def _numbered(self, node: Ask | Act | End, title: str, inner: str, kind: str) -> str:
        anchor = node_anchor(node.name)
        return section(anchor, self._words.places.number(anchor), title, inner, kind)
