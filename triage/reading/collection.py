"""All statements of a guide with what joins them, worked out when first asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from triage.guide.glossary import Glossary
from triage.guide.model import Guide
from triage.guide.texts import Passage
from triage.maps.topic_map import map_of
from triage.maps.words import leads_to
from triage.reading.kinds import parted
from triage.reading.said import passages_of
from triage.reading.values import names_in
from triage.review.statements import Statement, statements_of, used_by

if TYPE_CHECKING:
    from triage.cupboard.needs import Needed


@dataclass(frozen=True)
class Group:
    """Statements that one page leads on to, and what they are to it."""

    says: str
    """Such as `Leans on` or `Used by`."""
    keys: tuple[str, ...]
    many: str = "others"
    """What they are together, where there are too many to name."""
    mixed: bool = True
    """Whether they are of several kinds, so that a long list of them is parted by kind."""


@dataclass
class Collection:
    """A guide that was read whole, ready to be read in. It knows nothing of the reader's units."""

    guide: Guide

    @cached_property
    def statements(self) -> Mapping[str, Statement]:
        """Every statement by its key, in reading order."""
        return statements_of(self.guide)

    @cached_property
    def users(self) -> Mapping[str, tuple[str, ...]]:
        """For each statement those that lean on it."""
        return used_by(self.statements)

    @cached_property
    def of_kind(self) -> Mapping[str, tuple[str, ...]]:
        """The keys of each kind, in reading order: all that the contents need, and no digest."""
        return {
            kind: tuple(f"{kind}/{name}" for name in names) for kind, names in names_in(self.guide).items()
        }

    @cached_property
    def passages(self) -> Mapping[str, tuple[Passage, ...]]:
        """The texts of each statement."""
        return {key: tuple(passages_of(self.guide, key)) for key in self.statements}

    def groups(self, key: str) -> tuple[Group, ...]:
        """Return where one can go on from the page of a statement, what matters most first."""
        kind, name = parted(key)
        found = [*self._ways(kind, name)]
        statement = self.statements.get(key)
        if statement:
            found.append(
                Group("Leans on", tuple(each for each in statement.leans_on if each in self.statements))
            )
            found.append(Group("Used by", self.users[key]))
        if kind == "term":
            found.append(Group("Said by", self._saying.get(name, ())))
        if kind == "item":
            found.append(Group("Needed by", self._needing(name)))
        return tuple(group for group in found if group.keys)

    def where(self, key: str) -> str:
        """Return where a place of a walk stands: its number on the map of its topic; empty for all else."""
        kind, name = parted(key)
        if kind != "node":
            return ""
        topic = self.guide.nodes[name].topic
        return f"{self._numbers[name]} in {self.guide.topics[topic].title}"

    def number(self, node: str) -> int:
        """Return the number of a place on the map of its topic."""
        return self._numbers[node]

    @cached_property
    def _numbers(self) -> Mapping[str, int]:
        """The number of each place on its map: titles alone would not tell two questions apart."""
        return {
            spot.name: spot.number for topic in self.guide.topics for spot in map_of(self.guide, topic).spots
        }

    def _ways(self, kind: str, name: str) -> Iterator[Group]:
        if kind == "node":
            node = self.guide.nodes[name]
            yield Group("Leads to", tuple(dict.fromkeys(f"node/{to}" for to in leads_to(node))))
            yield Group("Comes from", self._coming.get(name, ()))
            yield Group("Belongs to", (f"topic/{node.topic}", f"map/{node.topic}"))
        elif kind == "topic":
            yield Group("See", (f"map/{name}",))
            held = sorted((node.name for node in self.guide.by_topic.get(name, ())), key=self.number)
            yield Group("Holds", tuple(f"node/{each}" for each in held), "places", mixed=False)
        elif kind == "finding":
            stand_ins = self.guide.findings[name].stand_ins
            yield Group("In its place", tuple(f"finding/{each}" for each in stand_ins))

    @cached_property
    def _coming(self) -> Mapping[str, tuple[str, ...]]:
        found: dict[str, dict[str, None]] = {}
        for node in self.guide.nodes.values():
            for to in leads_to(node):
                found.setdefault(to, {})[f"node/{node.name}"] = None
        return {name: tuple(keys) for name, keys in found.items()}

    @cached_property
    def _saying(self) -> Mapping[str, tuple[str, ...]]:
        """For each trade word the statements whose texts use it."""
        glossary = Glossary(self.guide.glossary.values())
        found: dict[str, list[str]] = {}
        for key, passages in self.passages.items():
            for term in glossary.terms_in(passage.text for passage in passages):
                if key != f"term/{term.word}":
                    found.setdefault(term.word, []).append(key)
        return {word: tuple(keys) for word, keys in found.items()}

    def _needing(self, item: str) -> tuple[str, ...]:
        needed = self._needs[item]
        kinds = (("how-to", needed.how_tos), ("node", needed.nodes), ("duty", needed.duties))
        return tuple(f"{kind}/{name}" for kind, names in kinds for name in names)

    @cached_property
    def _needs(self) -> Mapping[str, Needed]:
        from triage.cupboard.needs import needs_of

        return needs_of(self.guide)
